import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation, Served } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf, planRace } from '../testing/plans.ts';
import { gelWithoutWater } from './gelWithoutWater.ts';

const course = turtle(ORIGIN, [[90, 6000]], 100);
const on = (measure: number, serves: readonly Served[], keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  on: { course: 'c', measure, side: 'right', offset: 5 },
  serves,
  ...keys,
});
const found = (...stations: readonly Partial<PlanStation>[]): readonly Finding[] =>
  gelWithoutWater.find(layoutOf([course], stations));

// Common practice, no source: a gel is taken with water.
describe('gel-without-water', () => {
  it('is a warning where the next water is farther than 1.6 km, with how far it is', () => {
    expect(found(on(1000, ['gel', 'sportsDrink']), on(2600.1, ['water']))).toEqual([
      expect.objectContaining({
        code: 'gel-without-water',
        severity: 'warning',
        measured: expect.closeTo(1600.1, 3),
        limit: 1600,
        unit: 'm',
        where: expect.objectContaining({ station: 's1', race: 'c', item: 'gel', path: '/stations/0/serves' }),
      }),
    ]);
    expect(found(on(1000, ['gel', 'sportsDrink']), on(2599.9, ['water']))).toEqual([]);
  });

  it('is silent where the station has water after its gel', () => {
    expect(found(on(1000, ['gel', 'water']))).toEqual([]);
  });

  it('has no measured distance where no water follows at all, and counts none that was before', () => {
    const [finding, ...more] = found(on(500, ['water']), on(1000, ['gel']));
    expect(more).toEqual([]);
    expect(finding).not.toHaveProperty('measured');
    expect(finding!.message).toContain('no later station of that race has any');
  });

  it('counts only stops that serve the same race', () => {
    const shared = { races: [planRace('long', 'c'), planRace('short', 'c')] };
    const layout = layoutOf([course], [on(1000, ['gel']), on(2000, ['water'], { races: ['long'] })], shared);
    expect(gelWithoutWater.find(layout).map(({ where }) => where.race)).toEqual(['short']);
  });

  it('tells of runners who come the other way and meet the water before the gel', () => {
    const back = turtle(
      ORIGIN,
      [
        [90, 1500],
        [270, 1500],
      ],
      100,
    );
    const station: Partial<PlanStation> = { at: from(from(ORIGIN, 90, 500), 180, 5), serves: ['gel', 'water'] };
    expect(gelWithoutWater.find(layoutOf([back], [station]))).toEqual([]);
    expect(
      gelWithoutWater.find(layoutOf([back], [{ ...station, passes: 'all' }])).map(({ where }) => where.measure),
    ).toEqual([expect.closeTo(2500, 0)]);
  });

  it('cannot run where nobody serves gel', () => {
    expect(gelWithoutWater.missing!(layoutOf([course], [on(1000, ['water'])]))).toBe('no-gel');
    expect(gelWithoutWater.missing!(layoutOf([course], [on(1000, ['gel'])]))).toBeNull();
  });
});

describe('what a finding on gel says', () => {
  it('is how far the next water is, or that there is none, and whether these runners meet water before the gel', () => {
    expect(found(on(1000, ['gel']), on(3000, ['water']))[0]!.message).toContain(
      'c at 1.00 km gets gel but no water here, and the next water is 2.00 km on. Water should follow the gel, here or within 1.60 km.',
    );
    expect(found(on(1000, ['gel']))[0]!.message).toContain(
      'gets gel but no water here, and no later station of that race has any.',
    );
    const back = turtle(
      ORIGIN,
      [
        [90, 1500],
        [270, 1500],
      ],
      100,
    );
    const [met] = gelWithoutWater.find(
      layoutOf([back], [{ at: from(from(ORIGIN, 90, 500), 180, 5), serves: ['gel', 'water'], passes: 'all' }]),
    );
    expect(met!.message).toContain('c at 2.50 km gets gel only after the water here,');
  });

  it('takes the nearest water ahead of several, and the pass after which it is farthest', () => {
    expect(found(on(1000, ['gel']), on(5000, ['water']), on(3000, ['water']))[0]!.measured).toBeCloseTo(2000, 2);
    // Two laps of 1.4 km: after the first pass water comes in 1.7 km, after the second in 0.3 km.
    const laps = turtle(
      ORIGIN,
      [
        [90, 500],
        [0, 200],
        [270, 500],
        [180, 200],
        [90, 3000],
      ],
      50,
    );
    const layout = layoutOf(
      [laps],
      [
        { at: from(from(ORIGIN, 90, 100), 180, 5), serves: ['gel'] },
        { on: { course: 'c', measure: 3300, side: 'right', offset: 5 }, serves: ['water'] },
      ],
    );
    expect(layout.stations[0]!.passes.map(({ served }) => served)).toEqual([true, true]);
    expect(gelWithoutWater.find(layout)).toEqual([expect.objectContaining({ measured: expect.closeTo(3200, 0) })]);
  });

  it('is silent at just 1.6 km, where sports drink stands too, and where gel has no table', () => {
    const layout = layoutOf([course], [on(1000, ['gel']), on(2600, ['water'])]);
    const [gel, water] = layout.stations;
    const exact = {
      ...water!,
      passes: water!.passes.map((pass) => ({ ...pass, measure: gel!.passes[0]!.measure + 1600 })),
    };
    expect(gelWithoutWater.find({ ...layout, stations: [gel!, exact] })).toEqual([]);
    expect(found(on(1000, ['gel'], { tables: { gel: 0 } }))).toEqual([]);
    expect(found(on(1000, ['gel']), on(2000, ['water'], { tables: { water: 0 } }))).toHaveLength(1);
    expect(found(on(1000, ['gel', 'sportsDrink', 'water']))).toEqual([]);
  });
});

it('nothing is said of passes that are not served, though they run the same way', () => {
  const laps = turtle(
    ORIGIN,
    [
      [90, 500],
      [0, 200],
      [270, 500],
      [180, 200],
      [90, 3000],
    ],
    50,
  );
  const layout = layoutOf(
    [laps],
    [{ at: from(from(ORIGIN, 90, 100), 180, 5), serves: ['gel'], passes: [{ race: 'c', pass: 1 }] }],
  );
  expect(gelWithoutWater.find(layout).map(({ where }) => Math.round(where.measure!))).toEqual([1500]);
  const served = layoutOf(
    [laps],
    [
      { at: from(from(ORIGIN, 90, 100), 180, 5), serves: ['gel'], passes: [{ race: 'c', pass: 1 }] },
      { on: { course: 'c', measure: 2000, side: 'right', offset: 5 }, serves: ['water'] },
    ],
  );
  expect(gelWithoutWater.find(served)).toEqual([]);
});
