/** What runners take by where they last drank, on whole plans. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import { planFrom } from '../testing/plans.ts';
import type { StationDay } from './day.ts';

/** Days of stations at so many kilometres of a course of 40 km. */
function daysAt(
  km: readonly number[],
  keys: Readonly<Record<string, unknown>> = {},
  race: object = {},
): readonly StationDay[] {
  const plan = planFrom({
    courses: [
      {
        id: 'c',
        line: [
          [-30.2, 12.2],
          [-29.832, 12.2],
        ],
        drawn: 'centre',
      },
    ],
    races: [
      {
        id: 'r',
        course: 'c',
        waves: [{ time: '08:00', entrants: 300 }],
        finish: { median: '5:00:00', spread: 0.2 },
        ...race,
      },
    ],
    stations: km.map((at, k) => ({
      id: `s${k}`,
      on: { course: 'c', measure: `${at} km`, side: 'right' },
      serves: ['water'],
    })),
    ...keys,
  });
  const analysed = analyse(plan, { gpx: new Map() });
  if (!analysed.ok) throw new Error(analysed.findings[0]!.message);
  return analysed.value.day!.stations;
}

describe('Legs', () => {
  it('begin at the last station with a drink, of the same race, else at the start', () => {
    const [first, second, third] = daysAt([5, 8, 13]);
    const since = (day: StationDay | undefined): number => day!.races[0]!.sinceDrink!;
    expect(since(second) / since(first)).toBeCloseTo(3 / 5, 1);
    expect(since(third) / since(first)).toBeCloseTo(5 / 5, 0);
    // Gel alone is no drink.
    const plan = daysAt([5, 8, 13], {
      stations: [5, 8, 13].map((at, k) => ({
        id: `s${k}`,
        on: { course: 'c', measure: `${at} km`, side: 'right' },
        serves: k === 1 ? ['gel'] : ['water'],
      })),
    });
    expect(since(plan[2])).toBeGreaterThan(since(third) * 1.5);
  });

  it('of 1.4 km after the start ask for less than a third of what 5 km ask for', () => {
    const each = (km: number): number => daysAt([km])[0]!.races[0]!.take!.water;
    expect(each(1.4)).toBeLessThan(each(5) / 3);
  });

  it('of 9.7 km on a trail fill at least 0.4 l for each hour of them into bottles, and no cups', () => {
    for (const heat of ['cool', 'warm', 'hot']) {
      const days = daysAt([9.7, 19.4, 29.1, 38.8], { supplies: { handOut: 'bottles', heat } }, { cutoff: '17:00' });
      for (const day of days) {
        const [race] = day.races;
        const litres = day.packs.find(({ kind }) => kind === 'waterJug')!;
        expect(race!.take!.litres).toBeGreaterThanOrEqual((0.4 * race!.sinceDrink!) / 3600 - 1e-9);
        expect(litres.count * litres.pack).toBeGreaterThanOrEqual(race!.take!.litres * day.arrivals);
        expect(day.cups).toEqual({ water: 0, sportsDrink: 0 });
        expect(day.prePour).toEqual({});
        expect(day.packs.some(({ kind }) => kind === 'cups')).toBe(false);
        expect(day.crew.handOut).toBeGreaterThan(0);
      }
    }
  });
});
