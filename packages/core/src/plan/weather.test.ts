import { describe, expect, it, test } from 'vitest';
import { valueOf } from '../testing/courses.ts';
import { MINIMAL_PLAN } from '../testing/plans.ts';
import { readPlan } from './read.ts';
import { hottestOf, hoursWithin, levelOf, strongestOf, wbgtOfAir, weatherHours } from './weather.ts';
import type { Plan } from './plan.ts';

describe('the level of a temperature', () => {
  // Levels of the ACSM position stand of 1996, as quoted by Road Race Management.
  test.each([
    [9.9, 'white'],
    [10, 'green'],
    [17.9, 'green'],
    [18, 'yellow'],
    [22, 'yellow'],
    [23, 'red'],
    [28, 'red'],
    [28.1, 'black'],
  ] as const)('%d °C is %s', (celsius, level) => {
    expect(levelOf(celsius)).toBe(level);
  });
});

describe('WBGT from air and humidity', () => {
  // By hand from the formula of the Australian Bureau of Meteorology: e = 0.6 × 6.105 × exp(17.27 × 30 / 267.7) = 25.37 hPa.
  it('has a value worked by hand, and rises with both', () => {
    expect(wbgtOfAir(30, 0.6)).toBeCloseTo(0.567 * 30 + 0.393 * 25.37 + 3.94, 1);
    expect(wbgtOfAir(30, 0.7)).toBeGreaterThan(wbgtOfAir(30, 0.6));
    expect(wbgtOfAir(31, 0.6)).toBeGreaterThan(wbgtOfAir(30, 0.6));
  });
});

describe('the hours of a day', () => {
  const hours = weatherHours([
    { at: 36_000, wbgtC: 24 },
    { at: 28_800, wbgtC: 17, windKmh: 20 },
    { at: 43_200, airC: 26, humidity: 0.5, windKmh: 45 },
    { at: 46_800, windKmh: 50 },
  ]);

  it('stand in order, and the hottest and the windiest are found with their entry', () => {
    expect(hours.map(({ at }) => at)).toEqual([28_800, 36_000, 43_200, 46_800]);
    expect(hottestOf(hours)).toMatchObject({ at: 43_200, by: 'humidity', level: 'red', index: 2 });
    expect(strongestOf(hours)).toMatchObject({ at: 46_800, kmh: 50 });
    expect(strongestOf(hours.slice(0, 2))).toBeNull();
    expect(hottestOf(hours.slice(3))).toBeNull();
  });

  it('hold until the next, so that a station is told of those in which it is open', () => {
    const within = (from: number, until: number): number[] => hoursWithin(hours, from, until).map(({ at }) => at);
    expect(within(30_000, 37_000)).toEqual([28_800, 36_000]);
    expect(within(36_000, 36_500)).toEqual([36_000]);
    expect(within(50_000, 60_000)).toEqual([46_800]);
    expect(within(1000, 2000)).toHaveLength(4);
  });
});

describe('the heat of a plan', () => {
  const planOf = (keys: object): Plan =>
    valueOf(readPlan({ ...(MINIMAL_PLAN as object), ...keys } as never, 'plan.json')).plan;
  const weather = [
    { at: '08:00', wbgtC: 17 },
    { at: '11:00', wbgtC: 24 },
  ];

  it('is that of the hottest hour, unless the plan says another', () => {
    expect(planOf({}).supplies.heat).toBeUndefined();
    expect(planOf({ weather }).supplies.heat).toBe('hot');
    expect(planOf({ weather: weather.slice(0, 1) }).supplies.heat).toBe('cool');
    expect(planOf({ weather, supplies: { heat: 'warm' } }).supplies.heat).toBe('warm');
    expect(planOf({ weather, supplies: { wbgtC: 12, heatSteps: [18, 23] } }).supplies.heat).toBeUndefined();
    expect(planOf({ weather: [{ at: '08:00', windKmh: 40 }] }).supplies.heat).toBeUndefined();
  });

  it('and its hours are read with bounds', () => {
    expect(planOf({ weather }).weather).toEqual([
      { at: 28_800, wbgtC: 17 },
      { at: 39_600, wbgtC: 24 },
    ]);
    const said = (hour: object): string =>
      readPlan({ ...(MINIMAL_PLAN as object), weather: [hour] } as never, 'plan.json')
        .findings.map(({ message }) => message)
        .join(' ');
    expect(said({ at: '08:00', humidity: 60 })).toContain('humidity');
    expect(said({ at: '08:00', wbgtC: 200 })).toContain('wet-bulb globe temperature');
    expect(said({ wbgtC: 20 })).not.toBe('');
  });
});
