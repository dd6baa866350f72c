import { expect, test } from 'vitest';
import { openDemo } from '../../testing.ts';
import { createStore, type OpenPlan, type Store } from '../store/store.ts';
import { readWaiver, waivedTogether, removeWaiver, waiveFinding, waiverAt } from './waivers.ts';
import { run, undo } from './workbench.ts';
import { receive } from '../open/receive.ts';

const AS = { by: 'Ada Kelp', reason: 'a driveway', date: '2027-08-01' };
const now = (store: Store): OpenPlan => store.open.value!;

test('a waiver is for every finding of its kind at its station, and goes again with its very bytes', () => {
  const store = createStore();
  receive(store, ['demo'], { kind: 'opened', plan: openDemo() });
  const before = now(store).document.text;
  const target = now(store).findings.find(({ waived, where }) => waived === undefined && where.station !== undefined)!;
  expect(waiverAt(now(store), target)).toBe(-1);
  expect(run(store, waiveFinding(now(store), target, AS))).toEqual([]);
  const alike = now(store).findings.filter((one) => waivedTogether(target, one));
  expect(alike.length).toBeGreaterThan(0);
  for (const one of alike) expect(one.waived).toEqual(AS);
  expect(now(store).findings.filter(({ waived }) => waived?.by === AS.by)).toHaveLength(alike.length);
  expect(run(store, removeWaiver(now(store), alike[0]!))).toEqual([]);
  expect(now(store).findings.find((one) => waivedTogether(target, one))!.waived).toBeUndefined();
  undo(store);
  undo(store);
  expect(now(store).document.text).toBe(before);
});

test('a waiver that matches nothing is taken out by its own finding', () => {
  const store = createStore();
  receive(store, ['demo'], { kind: 'opened', plan: openDemo() });
  run(
    store,
    waiveFinding(now(store), { code: 'leg-long', severity: 'error', message: '', where: { station: 's1' } }, AS),
  );
  const idle = now(store).findings.find(({ code }) => code === 'waiver-unmatched')!;
  expect(run(store, removeWaiver(now(store), idle))).toEqual([]);
  expect(now(store).findings.some(({ code }) => code === 'waiver-unmatched')).toBe(false);
});

test('what is typed for a waiver is read, or said to be wrong field by field', () => {
  const typed = { by: ' Ada Kelp ', reason: ' a driveway ', date: '2028-02-29' };
  const waiver = { by: 'Ada Kelp', reason: 'a driveway', date: '2028-02-29' };
  expect(readWaiver(typed, undefined)).toEqual({ waiver });
  expect(readWaiver(typed, '2028-02-29')).toEqual({ waiver });
  expect(readWaiver(typed, '2028-02-28')).toEqual({
    trouble: { date: 'The race is on 2028-02-28: a waiver is given before it.' },
  });
  for (const date of ['2027-02-29', '2027-13-01', '1 August 2027', '27-08-01'])
    expect(readWaiver({ ...typed, date }, undefined)).toEqual({ trouble: { date: expect.stringContaining(date) } });
  expect(readWaiver({ by: ' ', reason: '- 7 -', date: '' }, undefined)).toEqual({
    trouble: { by: expect.any(String), reason: expect.any(String), date: expect.any(String) },
  });
});
