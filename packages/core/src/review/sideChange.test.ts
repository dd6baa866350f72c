import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { DeclaredSide, PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf, planRace } from '../testing/plans.ts';
import { sideChange } from './sideChange.ts';

const course = turtle(ORIGIN, [[90, 6000]]);
const on = (measure: number, side: DeclaredSide): Partial<PlanStation> => ({
  on: { course: 'c', measure, side, offset: 5 },
});

describe('side-change', () => {
  it('is a note where neighbours closer than 1.6 km stand on different sides', () => {
    expect(sideChange.find(layoutOf([course], [on(1000, 'left'), on(2599.9, 'right')]))).toEqual([
      expect.objectContaining({
        code: 'side-change',
        severity: 'note',
        measured: expect.closeTo(1599.9, 2),
        limit: 1600,
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/1', station: 's2', race: 'c', course: 'c' }),
      }),
    ]);
    expect(sideChange.find(layoutOf([course], [on(1000, 'left'), on(2600.1, 'right')]))).toEqual([]);
    expect(sideChange.find(layoutOf([course], [on(1000, 'left'), on(2000, 'left')]))).toEqual([]);
  });

  it('is silent of stations face to face, which are one on each side', () => {
    expect(sideChange.find(layoutOf([course], [on(1000, 'left'), on(1049, 'right')]))).toEqual([]);
    expect(sideChange.find(layoutOf([course], [on(1000, 'left'), on(1051, 'right')]))).toHaveLength(1);
  });

  it('takes neighbours in running order, not in the plan’s', () => {
    const found = sideChange.find(layoutOf([course], [on(3000, 'right'), on(1000, 'left'), on(2000, 'left')]));
    expect(found.map(({ where }) => where.station)).toEqual(['s1']);
  });

  it('is told once where races share the road', () => {
    const races = [planRace('a', 'c'), planRace('b', 'c')];
    expect(sideChange.find(layoutOf([course], [on(1000, 'left'), on(2000, 'right')], { races }))).toEqual([
      expect.objectContaining({ where: expect.objectContaining({ race: 'a' }) }),
    ]);
  });

  it('is silent where a side is unclear', () => {
    expect(
      sideChange.find(layoutOf([course], [on(1000, 'left'), { at: from(from(ORIGIN, 90, 2000), 180, 0.5) }])),
    ).toEqual([]);
    expect(
      sideChange.find(
        layoutOf([course], [on(1000, 'left'), { at: from(from(ORIGIN, 90, 2000), 180, 0.5), side: 'right' }]),
      ),
    ).toHaveLength(1);
  });
});

describe('which stations are neighbours', () => {
  it('are those of one race that both serve it, not a station passed twice', () => {
    const races = [planRace('a', 'c'), planRace('b', 'c')];
    expect(
      sideChange.find(
        layoutOf(
          [course],
          [
            { ...on(1000, 'left'), races: ['a'] },
            { ...on(2000, 'right'), races: ['b'] },
          ],
          { races },
        ),
      ),
    ).toEqual([]);
    const back = turtle(ORIGIN, [
      [90, 600],
      [270, 600],
    ]);
    expect(sideChange.find(layoutOf([back], [{ at: from(from(ORIGIN, 90, 300), 180, 5), passes: 'all' }]))).toEqual([]);
    // Seen on the way home, but not served there.
    const home = turtle(ORIGIN, [
      [90, 3000],
      [270, 3000],
    ]);
    expect(sideChange.find(layoutOf([home], [on(1000, 'left'), { ...on(2000, 'left') }]))).toEqual([]);
  });

  it('may be as near as the practice says, and the finding tells both sides and how far they are apart', () => {
    const layout = layoutOf([course], [on(1000, 'left'), on(2000, 'right')]);
    const [a, b] = layout.stations.map((station) => station.passes[0]!.measure);
    const held = (minSpacing: number): readonly Finding[] =>
      sideChange.find({ ...layout, plan: { ...layout.plan, practice: { ...layout.plan.practice, minSpacing } } });
    expect(held(b! - a!)).toEqual([]);
    expect(held(b! - a! + 1e-6)[0]!.message).toContain(
      ' has s1 on the left and, 1.00 km on, this station on the right.',
    );
  });
});

it('two neighbours of one station, each of another race, are two changes', () => {
  const races = [planRace('a', 'c'), planRace('b', 'c')];
  const stations = [{ ...on(1000, 'left'), races: ['a'] }, { ...on(1200, 'left'), races: ['b'] }, on(2000, 'right')];
  expect(
    sideChange
      .find(layoutOf([course], stations, { races }))
      .map(({ where, measured }) => [where.race, Math.round(measured as number)]),
  ).toEqual([
    ['a', 1000],
    ['b', 800],
  ]);
});
