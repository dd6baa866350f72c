import type { PlacedVerdict } from '@halfcup/core';
import { pointAt } from '@halfcup/core/geometry';
import { expect, test } from 'vitest';
import { openDemo, openedFrom, straightPlan } from '../../testing.ts';
import { coursesOf, leadOf } from '../../state/view/derive.ts';
import { openFiles } from '../../state/open/open.ts';
import { labelPadding, stationPadding, within } from '../fit.ts';
import { createScenes } from '../scene.ts';
import { background, hasLand } from './context.ts';
import { courseEnds, courseLines } from './courses.ts';
import { anchorTowards, away, screenOffset } from './directions.ts';
import { itemShapes, stationBounds, TABLE_DEPTH } from './items.ts';
import { stationPoints } from './stations.ts';
import { trueWidth } from '../style/items.ts';
import { unitMarks } from './unitMarks.ts';

const demo = openDemo();
const { analysis } = demo;
const full = coursesOf(analysis)[0]!;

/** Metres between two places less than a few hundred metres apart, on a sphere of WGS 84's mean radius; 0.5 % is enough here. */
function apart(a: readonly number[], b: readonly number[]): number {
  const north = ((a[1]! - b[1]!) * Math.PI * 6_371_008.8) / 180;
  const east = (((a[0]! - b[0]!) * Math.PI * 6_371_008.8) / 180) * Math.cos((a[1]! * Math.PI) / 180);
  return Math.hypot(north, east);
}

const straight = (stations: readonly object[], course: object = {}) =>
  openedFrom(
    openFiles(
      [
        straightPlan({
          courses: [
            {
              id: 'c',
              name: 'Straight',
              line: [
                [0, 0],
                [0.1, 0],
              ],
              drawn: 'centre',
              ...course,
            },
          ],
          stations,
        }),
      ],
      null,
    ),
  ).analysis;

const station = (side: string, more: object = {}): object => ({
  id: `s-${side}`,
  name: side,
  on: { course: 'c', measure: '5 km', side, offset: '5 m' },
  ...more,
});

test('an out-and-back is drawn as retraced, a straight run is not', () => {
  const outAndBack = straight([], {
    line: [
      [0, 0],
      [0.02, 0],
      [0, 0.00002],
    ],
  });
  expect(
    courseLines(coursesOf(outAndBack), 'c').features.filter((one) => one.properties.retraced).length,
  ).toBeGreaterThan(0);
  expect(courseLines(coursesOf(straight([])), 'c').features.map((one) => one.properties.retraced)).toEqual([false]);
});

test('laps the same way round are no two lanes', () => {
  const round = [
    [0, 0],
    [0.005, 0],
    [0.005, 0.005],
    [0, 0.005],
  ];
  const laps = straight([], { line: [...round, ...round, [0, 0]] });
  expect(courseLines(coursesOf(laps), 'c').features.map((one) => one.properties.retraced)).toEqual([false]);
});

test('the stretches of a course together are the whole course, and the current course is drawn last', () => {
  const lines = courseLines(coursesOf(analysis), 'half').features;
  expect(lines.at(-1)?.properties.course).toBe('half');
  const own = courseLines(coursesOf(analysis), 'full').features.filter((one) => one.properties.course === 'full');
  for (const [index, line] of own.slice(1).entries())
    expect(line.geometry.coordinates[0]).toEqual(own[index]!.geometry.coordinates.at(-1));
});

test('a course whose ends meet has one shape for both, else one for each', () => {
  expect(courseEnds(full).features.map((one) => one.properties.end)).toEqual(['start', 'finish']);
  const loop = coursesOf(
    straight([], {
      line: [
        [0, 0],
        [0.01, 0],
        [0.01, 0.01],
        [0, 0.0001],
      ],
    }),
  )[0]!;
  expect(courseEnds(loop).features.map((one) => one.properties.label)).toEqual(['Start and finish']);
});

test('a mark stands at every whole kilometre, or mile, of calibrated measure', () => {
  expect(unitMarks(full, 'metric').features).toHaveLength(42);
  expect(unitMarks(full, 'imperial').features).toHaveLength(26);
  const tenth = unitMarks(full, 'metric').features[9]!;
  expect(tenth.properties).toMatchObject({ label: '10 km', every: 10 });
  expect(apart(tenth.geometry.coordinates, pointAt(full, 10_000)!.at)).toBeLessThan(0.001);
});

test('the tick of a station points to its side of the road', () => {
  const [left, right] = stationPoints(straight([station('left'), station('right')])).features;
  // The course runs east: north is left, south is right.
  expect(Math.cos((left!.properties.bearing * Math.PI) / 180)).toBeCloseTo(1, 6);
  expect(Math.cos((right!.properties.bearing * Math.PI) / 180)).toBeCloseTo(-1, 6);
  expect(left!.properties.ringAt[1]).toBeLessThan(0);
  expect(right!.properties.ringAt[1]).toBeGreaterThan(0);
});

test('a station whose side is unclear is a ring without a tick', () => {
  const [one] = stationPoints(straight([{ id: 'u', name: 'Unclear', at: [0.05, 0] }])).features;
  expect(one!.properties.shape).toBe('ring');
  expect(one!.properties.ringAt).toEqual([0, 0]);
});

test('tables are lines along the kerb, as long as on the ground, half a table’s depth behind their front edge', () => {
  const shapes = itemShapes(straight([station('right', { serves: ['water'], tables: { water: 4 } })])).features;
  const table = shapes.find((one) => one.properties.draw === 'table')!;
  if (table.geometry.type !== 'LineString') throw new Error('expected a line');
  const { coordinates } = table.geometry;
  // Four tables of 6 ft (1.8288 m).
  expect(apart(coordinates[0]!, coordinates.at(-1)!)).toBeCloseTo(4 * 1.8288, 1);
  expect(apart(coordinates[0]!, [coordinates[0]![0]!, 0])).toBeCloseTo(5 + TABLE_DEPTH / 2, 1);
  expect(coordinates[0]![1]).toBeLessThan(0);
});

test('every item has its own shape and its whole word', () => {
  const shapes = itemShapes(
    straight([station('left', { serves: ['gel', 'sportsDrink', 'water'], boxes: 3 })]),
  ).features.map((one) => one.properties);
  expect(new Set(shapes.map((one) => one.word))).toEqual(new Set(['Sign', 'Gel', 'Sports drink', 'Water', 'Trash']));
  expect(shapes.filter((one) => one.draw === 'box')).toHaveLength(3);
  expect(shapes.filter((one) => one.draw === 'table').map((one) => one.kind)).toEqual(['gel', 'sportsDrink', 'water']);
});

test('tables are drawn once, though runners of two directions meet them', () => {
  const line = [
    [0, 0],
    [0.05, 0],
    [0, 0.00001],
  ];
  const both = straight([{ id: 'p', name: 'Both ways', at: [0.02, -0.00005], passes: 'all', serves: ['water'] }], {
    line,
  });
  expect(both.stations[0]!.directions.length).toBe(2);
  const shapes = itemShapes(both).features.map((one) => one.properties.draw);
  expect(shapes.filter((draw) => draw === 'table')).toHaveLength(1);
  expect(shapes.filter((draw) => draw === 'sign')).toHaveLength(2);
});

test('a sign before the start has no place and is not drawn', () => {
  const early = straight([
    { id: 'e', name: 'Early', on: { course: 'c', measure: '50 m', side: 'right', offset: '5 m' } },
  ]);
  expect(itemShapes(early).features.map((one) => one.properties.draw)).not.toContain('sign');
});

test('the bounds of a station hold its sign and its trash drop', () => {
  for (const one of analysis.stations) {
    const [west, south, east, north] = stationBounds(one);
    for (const at of leadOf(one)!.items.flatMap((item) => item.at)) {
      if (at === null) continue;
      expect(at[0] >= west && at[0] <= east && at[1] >= south && at[1] <= north).toBe(true);
    }
  }
});

test('a table’s depth is true to scale from the zoom where it reaches its least width', () => {
  const [, , , zoom, least, deep, width] = trueWidth(0.762, 0, 7) as unknown as [
    string,
    unknown,
    unknown,
    number,
    number,
    number,
    number,
  ];
  // Ground resolution at the equator: 40,075,016.7 m over 512 pixels at zoom 0 (EPSG:3857).
  expect((0.762 * 512 * 2 ** zoom) / 40_075_016.7).toBeCloseTo(least, 9);
  expect(width / least).toBeCloseTo(2 ** (deep - zoom), 6);
});

test('right is clockwise of the running direction, left against it', () => {
  expect(away(350, 'right')).toBe(80);
  expect(away(350, 'left')).toBe(260);
});

test('screen offsets count east and south, anchors lie opposite', () => {
  expect(screenOffset(0, 10)).toEqual([0, -10]);
  expect(screenOffset(90, 10)).toEqual([10, 0]);
  expect(anchorTowards(90)).toBe('left');
  expect(anchorTowards(0)).toBe('bottom');
  expect(anchorTowards(359)).toBe('bottom');
});

test('the background sorts what it knows, and draws the rest by its geometry', () => {
  const drawing = background(demo.files.context);
  expect(hasLand(drawing)).toBe(true);
  expect(hasLand(background(null))).toBe(false);
  const odd = background({
    type: 'FeatureCollection',
    features: [
      {
        type: 'Feature',
        properties: null,
        geometry: {
          type: 'LineString',
          coordinates: [
            [0, 0],
            [1, 1],
          ],
        },
      },
    ],
  });
  expect(odd.features.map((one) => one.properties)).toEqual([{ ground: 'line', name: '' }]);
});

test('the scene of no plan is empty, and every source of a plan is filled', () => {
  expect(
    Object.values(createScenes()({ open: null, course: null, units: 'metric' })).every(
      (one) => one.features.length === 0,
    ),
  ).toBe(true);
  const scene = createScenes()({
    open: demo,
    course: 'full',
    units: 'metric',
    trial: null,
    against: null,
    runsOf: null,
  });
  expect(scene.zones.features).toHaveLength(demo.document.plan.zones.length);
  const { trial, against, runs, placed, flags, streets: _, ...drawn } = scene;
  expect(Object.values(drawn).every((one) => one.features.length > 0)).toBe(true);
  expect([trial, against, runs, placed, flags].map((one) => one.features)).toEqual([[], [], [], [], []]);
});

test('the whole plan leaves more room where names stand outside it, and never all of a small window', () => {
  const points = stationPoints(straight([station('left')]));
  const padding = labelPadding(points, [0, -0.01, 0.1, 0.00005]);
  expect(padding.top).toBeGreaterThan(padding.bottom);
  const small = within(padding, 100, 100);
  expect(small.top + small.bottom).toBeLessThanOrEqual(60);
  expect(stationPadding(90).right).toBeGreaterThan(stationPadding(90).left);
});

test('a recorded point is drawn where it was recorded, with its verdict in words', () => {
  const verdict: PlacedVerdict = {
    station: 's1',
    item: 'trash',
    end: 'to',
    course: 'full',
    verdict: 'cannot tell',
    measured: 0,
    limit: [0, 1],
    margin: 1,
    move: 0,
    at: [-17.4, -33.2],
    by: 'position',
    reference: 'placed',
    side: 'left',
    confidence: 1,
  };
  const { placed } = createScenes()({ open: demo, course: 'full', units: 'metric', placed: [verdict] });
  expect(placed.features).toMatchObject([
    {
      geometry: { coordinates: [-17.4, -33.2] },
      properties: { verdict: 'cannot tell', said: 'Trash, last box: unclear' },
    },
  ]);
});
