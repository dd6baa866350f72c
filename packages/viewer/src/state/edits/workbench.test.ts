import { analyse, type Analysis, type Plan } from '@halfcup/core';
import { pointAt } from '@halfcup/core/geometry';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openDemo, tries } from '../../testing.ts';
import { coursesOf } from '../view/derive.ts';
import { deleteStation, rawPlan, setOfStation, setValue, valueAt, type Command } from './edits.ts';
import { addAt, duplicate, nudge, remove, sendTo } from './moves.ts';
import { alongPlacement, freePlacement, offsetLineOf } from './placing.ts';
import { createStore, type OpenPlan, type Store } from '../store/store.ts';
import { redo, run, showVariant, undo } from './workbench.ts';
import { dropTrial } from '../store/trial.ts';
import { beginTrial, finishTrial, moveTrial } from '../trial/trial.ts';
import { receive } from '../open/receive.ts';

function opened(): Store {
  const store = createStore();
  receive(store, ['demo'], { kind: 'opened', plan: openDemo() });
  return store;
}

const now = (store: Store): OpenPlan => {
  if (store.open.value === null) throw new Error('no plan is open');
  return store.open.value;
};
const text = (store: Store): string => now(store).document.text;
const stationNow = (store: Store, id: string): Analysis['stations'][number] =>
  now(store).analysis.stations.find((one) => one.id === id)!;

/** The whole analysis of the plan that is in the text, from nothing. */
function afresh(open: OpenPlan, plan: Plan = open.analysis.plan): Analysis {
  const made = analyse(plan, open.files);
  if (!made.ok) throw new Error(made.findings[0]?.message);
  return made.value;
}

const same = (store: Store): void => {
  const open = now(store);
  const { courses: _, ...shown } = open.analysis;
  const { courses: __, ...whole } = afresh(open);
  expect(shown).toEqual(whole);
};

describe('commands', () => {
  test('an edit changes only its own bytes, and undo brings the first bytes back', () => {
    const store = opened();
    const first = text(store);
    expect(run(store, setValue(['name'], 'Another name', 'name'))).toEqual([]);
    expect(text(store)).toBe(first.replace('"Ganneth Island Marathon and Half"', '"Another name"'));
    expect(undo(store)).toBe('name');
    expect(text(store)).toBe(first);
    expect(redo(store)).toBe('name');
    expect(now(store).analysis.plan.name).toBe('Another name');
  });

  test('a value that the plan cannot take is told with its place, and nothing changes', () => {
    const store = opened();
    const before = now(store);
    const found = run(store, setValue(['practice', 'signAhead'], '100 furlongs', 'sign'));
    expect(found[0]?.where.path).toBe('/practice/signAhead');
    expect(now(store)).toBe(before);
    expect(store.history.value.past).toEqual([]);
  });

  test('what is shown after an edit is what core finds in the text', () => {
    const store = opened();
    run(store, setOfStation('s3', ['practice', 'signAhead'], '60 m', 'sign'));
    same(store);
    run(store, setValue(['races', 0, 'waves', 0, 'entrants'], 900, 'entrants'));
    same(store);
  });

  test('nudges are one step, sent to a measure the station stands there, and beyond the course it is told', () => {
    const store = opened();
    const first = text(store);
    const from = stationNow(store, 's4').directions[0]!.measure;
    for (let k = 0; k < 3; k++) expect(nudge(store, 's4', 10)).toEqual([]);
    expect(stationNow(store, 's4').directions[0]!.measure).toBeCloseTo(from + 30, 1);
    expect(store.history.value.past).toHaveLength(1);
    undo(store);
    expect(text(store)).toBe(first);
    sendTo(store, 's4', 16_500);
    expect(text(store)).toContain('"measure": "16.5 km"');
    expect(sendTo(store, 's4', 99_000)[0]?.message).toContain('Choose a distance from 0');
  });

  test('adding, doubling and deleting keep the plan readable, and deleting takes what names the station', () => {
    const store = opened();
    const first = text(store);
    addAt(store, [-17.4, -33.19]);
    expect(now(store).analysis.stations.at(-1)?.id).toBe(store.selected.value);
    duplicate(store, 's3');
    expect(now(store).analysis.stations.at(-1)?.name).toBe('Wrack Fork (copy)');
    run(store, setValue(['waivers', '-'], { code: 'sign-distance', station: 's2', by: 'r', reason: 'x' }, 'waive'));
    remove(store, 's2');
    expect(text(store)).not.toContain('"s2"');
    same(store);
    while (undo(store) !== null);
    expect(text(store)).toBe(first);
    expect(
      store.selected.value === null || now(store).analysis.stations.some(({ id }) => id === store.selected.value),
    ).toBe(true);
  });

  test('in a variant the plan as made stays as it is', () => {
    const store = opened();
    run(store, setValue(['variants'], [{ name: 'trial', stations: {} }], 'variant'));
    const planned = stationNow(store, 's5').at;
    showVariant(store, 'trial');
    nudge(store, 's5', 100);
    run(store, setOfStation('s5', ['tables', 'water'], 9, 'tables'));
    expect(stationNow(store, 's5').at).not.toEqual(planned);
    expect(valueAt(rawPlan(now(store).document), ['stations', 4, 'tables'])).toBeUndefined();
    same(store);
    showVariant(store, null);
    expect(stationNow(store, 's5').at).toEqual(planned);
  });
});

describe('a trial of a station', () => {
  test('follows freely, declares the side on which it stands, and is one step when put down', () => {
    const store = opened();
    const first = text(store);
    const before = stationNow(store, 's5');
    beginTrial(store, 's5');
    const course = coursesOf(now(store).analysis)[0]!;
    const measure = before.directions[0]!.measure;
    for (let k = 1; k <= 5; k++)
      moveTrial(
        store,
        freePlacement(store.trial.value!.from.analysis, before, pointAt(course, measure + k * 20, -6)!.at),
      );
    expect(text(store)).toBe(first);
    expect(stationNow(store, 's5').station.side).toBe('right');
    expect(finishTrial(store)).toEqual([]);
    expect(store.history.value.past).toHaveLength(1);
    expect(stationNow(store, 's5').directions[0]!.measure).toBeCloseTo(measure + 100, 1);
    expect(stationNow(store, 's5').station.side).toBe('right');
    same(store);
    undo(store);
    expect(text(store)).toBe(first);
  });

  test('is put back by dropping it, and by undo', () => {
    const store = opened();
    const before = now(store);
    for (const back of [dropTrial, undo]) {
      beginTrial(store, 's1');
      moveTrial(store, { at: [-17.42, -33.21] });
      expect(now(store)).not.toBe(before);
      back(store);
      expect(now(store)).toBe(before);
    }
    expect(store.history.value.past).toEqual([]);
  });

  test('keeps its offset along the course, and its form in the file', () => {
    const store = opened();
    const station = stationNow(store, 's1');
    const line = offsetLineOf(station, 'full', 2620)!;
    beginTrial(store, 's1');
    moveTrial(store, alongPlacement(now(store).analysis, station, line, 3000)!);
    finishTrial(store);
    expect(text(store)).toContain('"on": { "course": "full", "measure": "3 km", "side": "left", "offset": "5 m" }');
    const crossed = alongPlacement(now(store).analysis, stationNow(store, 's1'), line, 3000, 'right');
    expect(crossed).toMatchObject({ on: { side: 'right', offset: 5 } });
  });
});

const COMMANDS = tries(500);

test('random commands, all undone, give the first bytes; all redone, the last', () => {
  const store = opened();
  const first = text(store);
  const pick = <T>(list: readonly T[], n: number): T => list[n % list.length]!;
  const acts: readonly ((n: number, x: number) => unknown)[] = [
    (n, x) => nudge(store, pick(now(store).analysis.stations, n).id, x * 100),
    (n, x) => sendTo(store, pick(now(store).analysis.stations, n).id, Math.abs(x) * 40_000),
    (_, x) => now(store).analysis.stations.length < 14 && addAt(store, [-17.4 + x * 0.02, -33.19]),
    (n) => now(store).analysis.stations.length < 14 && duplicate(store, pick(now(store).analysis.stations, n).id),
    (n) =>
      now(store).analysis.stations.length > 4 &&
      run(store, deleteStation(pick(now(store).analysis.stations, n).id, 'x')),
    (n, x) =>
      run(store, setOfStation(pick(now(store).analysis.stations, n).id, ['width'], Math.abs(x) * 10 + 1, 'width')),
    (n, x) =>
      run(
        store,
        setOfStation(pick(now(store).analysis.stations, n).id, ['note'], x > 0 ? `“${x}” \\ "q"` : undefined, 'note'),
      ),
    (n) =>
      run(
        store,
        pick<Command>(
          [
            setValue(['practice', 'signAhead'], '80 m', 'p'),
            setValue(['practice'], undefined, 'p'),
            setValue(
              ['zones', '-'],
              {
                name: 'z',
                rule: 'allowed',
                polygon: [
                  [0, 0],
                  [1, 0],
                  [1, 1],
                ],
              },
              'z',
            ),
          ],
          n,
        ),
      ),
    (n, x) => {
      const station = pick(now(store).analysis.stations, n);
      beginTrial(store, station.id);
      moveTrial(store, freePlacement(now(store).analysis, station, [station.at[0] + x * 0.001, station.at[1]]));
      if (x > -0.5) finishTrial(store);
      else dropTrial(store);
    },
    (n) => (n % 3 === 0 ? undo(store) : n % 3 === 1 ? redo(store) : null),
    (n) => showVariant(store, n % 2 === 0 ? null : (now(store).document.plan.variants[0]?.name ?? null)),
  ];
  const random = fc.sample(
    fc.tuple(fc.nat(acts.length - 1), fc.nat(1000), fc.double({ min: -1, max: 1, noNaN: true })),
    { seed: 11, numRuns: COMMANDS },
  );
  for (const [act, n, x] of random) acts[act]!(n, x);
  while (redo(store) !== null);
  const last = text(store);
  expect(store.history.value.past.length).toBeGreaterThan(COMMANDS / 5);
  while (undo(store) !== null);
  expect(text(store)).toBe(first);
  while (redo(store) !== null);
  expect(text(store)).toBe(last);
  same(store);
}, 600_000);

test('a name that is the distance follows a station that is moved, until it is written by hand', () => {
  const store = opened();
  const { id, passes } = now(store).analysis.stations[1]!;
  const { measure } = passes[0]!;
  const nameNow = (): string => stationNow(store, id).name;
  run(store, setOfStation(id, ['name'], `${Number((measure / 1000).toFixed(2))} km`, ''));
  expect(sendTo(store, id, measure + 137)).toEqual([]);
  expect(nameNow()).toBe(`${Number(((measure + 137) / 1000).toFixed(2))} km`);
  nudge(store, id, -37);
  expect(nameNow()).toBe(`${Number(((measure + 100) / 1000).toFixed(2))} km`);
  // A distance that is not its own was written by somebody.
  run(store, setOfStation(id, ['name'], '5 km', ''));
  nudge(store, id, 20);
  expect(nameNow()).toBe('5 km');
  // Each edit reviews the whole plan again: 500 of them take minutes where the machine has other work.
}, 600_000);
