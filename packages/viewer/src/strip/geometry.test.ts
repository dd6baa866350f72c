import { courseLength } from '@halfcup/core/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coursesOf, samplesOf } from '../state/view/derive.ts';
import { openDemo } from '../testing.ts';
import {
  axisTicks,
  CLOSEST,
  detail,
  fitView,
  legLabels,
  panView,
  profile,
  rings,
  stripPasses,
  stripScale,
  wholeView,
  zoomView,
} from './geometry.ts';

const demo = openDemo();
const [full, half] = coursesOf(demo.analysis) as [
  ReturnType<typeof coursesOf>[number],
  ReturnType<typeof coursesOf>[number],
];
const length = courseLength(full);
const whole = stripScale(wholeView(full), 1400, 18);

test('the whole view is the whole course', () => {
  expect(wholeView(full)).toEqual([0, length]);
  expect(whole(0)).toBe(18);
  expect(whole(length)).toBeCloseTo(1382, 9);
});

test('any zoom and pan stays on the course, and no closer than allowed', () => {
  const measures = fc.double({ min: -1e5, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(
      measures,
      measures,
      measures,
      fc.double({ min: 0.01, max: 100, noNaN: true }),
      (from, to, by, factor) => {
        for (const [start, end] of [
          fitView([from, to], full),
          panView([from, to], by, full),
          zoomView([from, to], by, factor, full),
        ]) {
          expect(start).toBeGreaterThanOrEqual(-1e-6);
          expect(end).toBeLessThanOrEqual(length + 1e-6);
          expect(end - start).toBeGreaterThanOrEqual(CLOSEST - 1e-6);
        }
      },
    ),
    { seed: 20_270_912 },
  );
});

test('zooming keeps the place under the pointer where it is', () => {
  const view = [10_000, 12_000] as const;
  const at = 10_400;
  const after = zoomView(view, at, 0.5, full);
  expect((at - after[0]) / (after[1] - after[0])).toBeCloseTo((at - view[0]) / (view[1] - view[0]), 9);
});

test('each served pass stands once, in running order, though two races run it', () => {
  const passes = stripPasses(demo.analysis.stations, 'full');
  const expected = demo.analysis.stations.flatMap((station) =>
    station.passes.filter((pass) => pass.course === 'full' && pass.served),
  ).length;
  expect(passes.filter((pass) => pass.served)).toHaveLength(expected);
  expect(passes.map((pass) => pass.measure)).toEqual(passes.map((pass) => pass.measure).toSorted((a, b) => a - b));
});

test('on a course other than the lead’s, items stand as far from that course’s own pass', () => {
  const passes = stripPasses(demo.analysis.stations, 'half');
  const third = passes.find((pass) => pass.id === 's3')!;
  const lead = demo.analysis.stations.find((station) => station.id === 's3')!.directions[0]!;
  const sign = lead.items.find((item) => item.kind === 'sign')!;
  expect(third.items.find((item) => item.kind === 'sign')!.from - third.measure).toBeCloseTo(
    sign.from - lead.measure,
    6,
  );
  expect(courseLength(half)).toBeLessThan(length);
});

test('rings closer than the gap on one side go one level up', () => {
  const pass = (measure: number, side: 'left' | 'right') => ({
    id: `${measure}`,
    nth: 0,
    number: 1,
    name: '',
    measure,
    side,
    served: true,
    items: [],
  });
  const placed = rings([pass(100, 'left'), pass(200, 'left'), pass(250, 'right'), pass(5000, 'left')], whole, 22, 2);
  expect(placed.map((ring) => ring.level)).toEqual([0, 1, 0, 0]);
});

test('a leg’s length is written where it fits, and left out where it does not', () => {
  const { legs } = demo.analysis.spacing[0]!;
  const wide = legLabels(legs, whole, (value) => (value / 1000).toFixed(2));
  expect(wide).toHaveLength(legs.length);
  expect(wide.every((label) => label.text !== '')).toBe(true);
  const tight = legLabels(legs, stripScale(wholeView(full), 200, 10), (value) => (value / 1000).toFixed(2));
  expect(tight.some((label) => label.text === '')).toBe(true);
});

test('the closer the strip, the more of the items it shows', () => {
  expect(
    [wholeView(full), [10_000, 12_000] as const, [11_500, 11_700] as const].map((view) =>
      detail(stripScale(view, 1400, 18)),
    ),
  ).toEqual(['none', 'shapes', 'words']);
});

test.each([
  ['metric', wholeView(full)],
  ['imperial', wholeView(full)],
  ['metric', [11_410, 11_710]],
  ['imperial', [11_410, 11_710]],
] as const)('axis labels in %s units are all different and carry the unit', (units, view) => {
  const labels = axisTicks(stripScale(view, 1400, 18), units).map((tick) => tick.label);
  expect(labels.length).toBeGreaterThan(3);
  expect(new Set(labels).size).toBe(labels.length);
  expect(labels.every((label) => label.endsWith(units === 'metric' ? ' km' : ' mi'))).toBe(true);
});

test('the profile spans the strip from edge to edge', () => {
  const drawn = profile(samplesOf(full), whole)!;
  expect(drawn.points[0]![0]).toBe(18);
  expect(drawn.points.at(-1)![0]).toBeCloseTo(1382, 6);
  expect(drawn.high).toBeGreaterThan(drawn.low);
});
