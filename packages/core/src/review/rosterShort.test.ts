import { describe, expect, it } from 'vitest';
import type { PlanPerson } from '../plan/plan.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';

const of = (
  crew: readonly Omit<PlanPerson, 'name' | 'station'>[] | undefined,
  captain?: string,
): ReturnType<typeof analysisOf> =>
  analysisOf(STRAIGHT, [{ ...AT_1500, people: captain === undefined ? {} : { captain } }], {
    races: [runners(300)],
    ...(crew === undefined
      ? {}
      : { people: { crew: crew.map((one, k) => ({ name: `Volunteer ${k}`, station: 's1', ...one })) } }),
  });
const found = (...args: Parameters<typeof of>): unknown[] =>
  of(...args)
    .findings.filter(({ code }) => code === 'roster-short')
    .map(({ params }) => params);

const { day } = of(undefined);
const [{ openFrom, openUntil, crew }] = day!.stations as [(typeof day & {})['stations'][0]];
const needed = crew.total;
const many = (count: number): object[] => Array.from({ length: count }, () => ({}));

describe('roster-short', () => {
  it('finds a station with one too few, and none with exactly as many as it needs, captain included', () => {
    const at = Math.floor(openFrom! / 60) * 60;
    expect(found(many(needed - 1))).toEqual([{ there: needed - 1, at, needed }]);
    expect(found(many(needed))).toEqual([]);
    expect(found(many(needed - 1), 'Captain, Shore')).toEqual([]);
    expect(found(many(needed - 2), 'Captain, Shore')).toEqual([{ there: needed - 1, at, needed }]);
  });

  it('counts the captain once who is on the roster too', () => {
    expect(found(many(needed), 'volunteer 0')).toEqual([]);
    expect(found(many(needed - 1), 'volunteer 0')).toHaveLength(1);
  });

  it('counts who is there at the time: late comers, and those who leave before the station closes', () => {
    const minutes = (seconds: number): number => Math.floor(seconds / 60) * 60;
    expect(found([...many(needed - 1), { from: minutes(openFrom!) }])).toEqual([]);
    expect(found([...many(needed - 1), { from: minutes(openFrom!) + 60 }])).toEqual([
      { there: needed - 1, at: minutes(openFrom!), needed },
    ]);
    expect(found([...many(needed - 1), { until: minutes(openUntil!) }])).toEqual([]);
    expect(found([...many(needed - 1), { until: minutes(openUntil!) - 60 }])).toEqual([
      { there: needed - 1, at: minutes(openUntil!) - 60, needed },
    ]);
    const half = minutes((openFrom! + openUntil!) / 2);
    expect(found([...many(needed - 1), { until: half }, { from: half }])).toEqual([]);
    expect(found([...many(needed - 1), { until: half }, { from: half + 60 }])).toEqual([
      { there: needed - 1, at: half, needed },
    ]);
  });

  it('asks no plan for a roster', () => {
    expect(found(undefined)).toEqual([]);
    expect(found([])).toEqual([]);
  });
});
