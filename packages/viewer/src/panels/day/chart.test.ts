import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openDemo } from '../../testing.ts';
import { arrivalBins, arrivalsGeometry, clockTicks } from './chart.ts';

const FRAME = { width: 480, left: 40, right: 10, top: 30, bottom: 180 };
const at = (clock: number, count: number): readonly [number, Readonly<Record<string, number>>] => [clock, { m: count }];

test('minutes without arrivals are drawn as nobody, not left out', () => {
  const { step, bins } = arrivalBins([at(36_000, 4), at(36_180, 2)], ['m']);
  expect(step).toBe(60);
  expect(bins).toEqual([
    { from: 36_000, counts: [4] },
    { from: 36_060, counts: [0] },
    { from: 36_120, counts: [0] },
    { from: 36_180, counts: [2] },
  ]);
});

test('three hours stay in minutes; one minute more is drawn by five, on round clock times', () => {
  expect(arrivalBins([at(36_000, 1), at(36_000 + 179 * 60, 1)], ['m']).step).toBe(60);
  const long = arrivalBins([at(36_120, 1), at(36_240, 5), at(36_120 + 180 * 60, 1)], ['m']);
  expect(long.step).toBe(300);
  expect(long.bins[0]).toEqual({ from: 36_000, counts: [6] });
  expect(long.bins.every(({ from }) => from % 300 === 0)).toBe(true);
});

test('no arrival is lost or made, however they come', () => {
  const minutes = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 2000 }), fc.nat(300), fc.nat(300)), {
    selector: ([minute]) => minute,
    minLength: 1,
    maxLength: 60,
  });
  fc.assert(
    fc.property(minutes, (rows) => {
      const sorted = rows.toSorted(([a], [b]) => a - b);
      const { bins, step } = arrivalBins(
        sorted.map(([minute, m, h]) => [minute * 60, { m, h }] as const),
        ['m', 'h'],
      );
      expect(bins.reduce((all, { counts }) => all + counts[0]!, 0)).toBe(rows.reduce((all, [, m]) => all + m, 0));
      expect(bins.reduce((all, { counts }) => all + counts[1]!, 0)).toBe(rows.reduce((all, [, , h]) => all + h, 0));
      expect(bins.every(({ from }, k) => k === 0 || from - bins[k - 1]!.from === step)).toBe(true);
    }),
    { seed: 20_270_912 },
  );
});

test('the second race stands on the first, and a minute without it breaks its outline', () => {
  const bins = arrivalBins(
    [
      [0, { m: 1, h: 1 }],
      [60, { m: 2, h: 0 }],
      [120, { m: 0, h: 2 }],
    ],
    ['m', 'h'],
  );
  const { outlines, x, y } = arrivalsGeometry(bins, 2, null, { width: 190, left: 0, right: 10, top: 0, bottom: 100 });
  expect([x(0), x(60), x(180)]).toEqual([0, 60, 180]);
  expect([y(0), y(2)]).toEqual([100, 0]);
  expect(outlines).toEqual([
    'M0.00,50.00L60.00,50.00L60.00,0.00L120.00,0.00L120.00,100.00L60.00,100.00L60.00,100.00L0.00,100.00Z',
    'M0.00,0.00L60.00,0.00L60.00,50.00L0.00,50.00ZM120.00,0.00L180.00,0.00L180.00,100.00L120.00,100.00Z',
  ]);
});

test('clock ticks are round and leave room for their words', () => {
  expect(clockTicks(7 * 3600 + 100, 9 * 3600, 300, 52)).toEqual([7.5, 8, 8.5, 9].map((hour) => hour * 3600));
  expect(clockTicks(23.5 * 3600, 25.5 * 3600, 150, 52)).toEqual([24 * 3600, 25 * 3600]);
  const times = fc.tuple(fc.integer({ min: 0, max: 1e5 }), fc.integer({ min: 60, max: 1e5 }));
  fc.assert(
    fc.property(times, ([from, span]) => {
      const ticks = clockTicks(from, from + span, 420, 52);
      for (const [k, tick] of ticks.entries()) {
        expect(tick).toBeGreaterThanOrEqual(from);
        expect(tick).toBeLessThanOrEqual(from + span);
        if (k > 0) expect((420 * (tick - ticks[k - 1]!)) / span).toBeGreaterThanOrEqual(52);
      }
    }),
    { seed: 20_270_912 },
  );
});

test('for every station of the demo the chart holds all arrivals, and the whole time since it is ready', () => {
  const { day, plan } = openDemo().analysis;
  const races = plan.races.map(({ id }) => id);
  expect(day!.stations.length).toBeGreaterThan(0);
  for (const station of day!.stations) {
    const bins = arrivalBins(station.perMinute, races);
    expect(bins.bins.flatMap(({ counts }) => counts).reduce((all, one) => all + one, 0)).toBe(station.arrivals);
    const { x, y, countTicks } = arrivalsGeometry(bins, races.length, station.openFrom, FRAME);
    expect(x(station.openFrom!)).toBeGreaterThanOrEqual(FRAME.left);
    expect(x(station.quantiles!.last)).toBeLessThanOrEqual(FRAME.width - FRAME.right);
    for (const tick of countTicks) expect(y(tick)).toBeGreaterThanOrEqual(FRAME.top);
  }
});
