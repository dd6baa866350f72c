import { describe, expect, it } from 'vitest';
import { MARATHON_FINISH, inSeconds, raceWith } from '../testing/fields.ts';
import { valueOf } from '../testing/courses.ts';
import type { PlanRace } from '../plan/plan.ts';
import { raceArrivals, runRace } from './arrivals.ts';
import { fieldOf } from './field.ts';
import { linearAt } from './finishTimes.ts';
import { slowByPace, slowingOf } from './slowing.ts';

const rounded = (slow: ArrayLike<number>): number[] => Array.from(slow, (value) => Number(value.toFixed(3)));

describe('slowing', () => {
  it('goes by pace: the share of recorded finishers who were faster, halved under 30 km', () => {
    expect(slowByPace(7000, 42_195)).toBe(0.06);
    expect(slowByPace(232.43 * 60, 42_195)).toBeCloseTo(0.23, 3);
    expect(slowByPace(40_000, 42_195)).toBe(0.4);
    // Riegel: a half marathon in 1:28:15 is a marathon in 3:04:00.
    expect(slowByPace(5295, 21_097.5)).toBeCloseTo(slowByPace(11_040, 42_195) / 2, 4);
  });

  it('is none for wheels, and what the plan gives goes by rank as it is', () => {
    const times = Float64Array.of(300, 100, 200);
    expect(rounded(slowingOf(raceWith({ division: 'wheels' }), 42_195, times))).toEqual([0, 0, 0]);
    expect(rounded(slowingOf(raceWith({ slow: [0.1, 0.2] }), 10_000, times))).toEqual([0.2, 0.1, 0.15]);
    expect(rounded(slowingOf(raceWith({ slow: [0.1, 0.2] }), 10_000, Float64Array.of(100)))).toEqual([0.1]);
  });
});

describe('a field without its slow half', () => {
  const [shares, seconds] = [0, 1].map((k) => inSeconds(MARATHON_FINISH).map((row) => row[k]!));
  const half = Array.from({ length: 16_065 }, (_, i) => linearAt(shares!, seconds!, (i + 0.5) / 31_931));
  const keys: Partial<PlanRace> = {
    waves: [{ time: 0, entrants: half.length }],
    finish: { times: half },
    show: 1,
    startFlow: Infinity,
  };
  const field = valueOf(fieldOf(raceWith(keys), 42_195, new Map()));

  // Open results of 31,931 finishers: see testing/fields.ts. Their 1, 10 and 25 % quantiles are the 2, 20 and 50 % of the faster half.
  it.each([
    [5, 18.02, 20.88, 22.67],
    [10, 36.2, 41.72, 45.43],
    [20, 73.05, 83.83, 91.82],
    [25, 91.65, 105.18, 115.53],
    [30, 110.9, 127.45, 140.75],
    [40, 150.73, 174.37, 193.95],
  ])('comes to %d km when they did, within 3 %%: the 1, 10 and 25 %% of the whole', (km, ...recorded) => {
    const { times } = raceArrivals(runRace(field, [0, 42_195], null, null), [km * 1000]);
    recorded.forEach((minutes, k) => {
      const place = Math.round([0.01, 0.1, 0.25][k]! * 31_931);
      expect(Math.abs(times[place]! / 60 / minutes - 1)).toBeLessThan(0.03);
    });
  });
});
