import { expect, test } from 'vitest';
import { openDemo } from '../../testing.ts';
import { createStore, type OpenPlan, type Store } from '../store/store.ts';
import { readWaiver, sameKind, removeWaiver, waiveFinding, waiverAt } from './waivers.ts';
import { run, undo } from './workbench.ts';
import { receive } from '../open/receive.ts';

const now = (store: Store): OpenPlan => store.open.value!;

test('a waiver is for every finding of its kind at its station, and goes again with its very bytes', () => {
  const store = createStore();
  receive(store, ['demo'], { kind: 'opened', plan: openDemo() });
  const before = now(store).document.text;
  const target = now(store).findings.find(({ waived, where }) => waived === undefined && where.station !== undefined)!;
  expect(waiverAt(now(store), target)).toBe(-1);
  expect(run(store, waiveFinding(now(store), target, { by: 'A', reason: 'B' }))).toEqual([]);
  const alike = now(store).findings.filter((one) => sameKind(one, target));
  expect(alike.length).toBeGreaterThan(0);
  for (const one of alike) expect(one.waived).toEqual({ by: 'A', reason: 'B' });
  expect(now(store).findings.filter(({ waived }) => waived?.by === 'A')).toHaveLength(alike.length);
  expect(run(store, removeWaiver(now(store), alike[0]!))).toEqual([]);
  expect(now(store).findings.find((one) => sameKind(one, target))!.waived).toBeUndefined();
  undo(store);
  undo(store);
  expect(now(store).document.text).toBe(before);
});

test('a waiver that matches nothing is taken out by its own finding', () => {
  const store = createStore();
  receive(store, ['demo'], { kind: 'opened', plan: openDemo() });
  run(
    store,
    waiveFinding(
      now(store),
      { code: 'leg-long', severity: 'error', message: '', where: { station: 's1' } },
      { by: 'A', reason: 'B' },
    ),
  );
  const idle = now(store).findings.find(({ code }) => code === 'waiver-unmatched')!;
  expect(run(store, removeWaiver(now(store), idle))).toEqual([]);
  expect(now(store).findings.some(({ code }) => code === 'waiver-unmatched')).toBe(false);
});

test('what is typed for a waiver is read, or said to be wrong field by field', () => {
  expect(readWaiver({ by: ' A ', reason: ' B ', date: '' })).toEqual({ waiver: { by: 'A', reason: 'B' } });
  expect(readWaiver({ by: 'A', reason: 'B', date: '2028-02-29' })).toEqual({
    waiver: { by: 'A', reason: 'B', date: '2028-02-29' },
  });
  for (const date of ['2027-02-29', '2027-13-01', '1 August 2027', '27-08-01'])
    expect(readWaiver({ by: 'A', reason: 'B', date })).toEqual({ trouble: { date: expect.stringContaining(date) } });
  expect(readWaiver({ by: ' ', reason: '', date: '' })).toEqual({
    trouble: { by: expect.any(String), reason: expect.any(String) },
  });
});
