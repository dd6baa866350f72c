import { expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import { ORIGIN, courseOfSegments, courseThrough, from, turtle, turtlePoints } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { wheelFolds } from './wheelFolds.ts';

/** A centre line with a jog to the left, so many metres long, between sign and pin; the station stands 6 m to one side. */
const jog = (leg: number, side: 'left' | 'right'): readonly Finding[] => {
  const course = {
    ...turtle(ORIGIN, [
      [90, 1000],
      [0, leg],
      [90, 1000],
    ]),
    drawn: 'centre' as const,
  };
  return wheelFolds.find(layoutOf([course], [{ on: { course: 'c', measure: 1050, side, offset: 6 } }]));
};

it('an item behind a corner whose leg is shorter than its trim is noted: no wheel distance is given', () => {
  // A square corner at 6 m takes 6 m off each leg.
  for (const side of ['left', 'right'] as const) {
    expect(jog(5.9, side)).toEqual([
      expect.objectContaining({
        code: 'wheel-folds',
        severity: 'note',
        message: expect.stringContaining('6 m beside the course'),
        where: expect.objectContaining({ path: '/stations/0', station: 's1', course: 'c', item: 'sign' }),
      }),
    ]);
    expect(jog(6.1, side)).toEqual([]);
  }
});

it('an item without a place is not told again', () => {
  expect(
    wheelFolds.find(
      layoutOf([turtle(ORIGIN, [[90, 1000]])], [{ on: { course: 'c', measure: 50, side: 'left', offset: 6 } }]),
    ),
  ).toEqual([]);
});

it('an item behind a skipped gap is told so, with the item that it is', () => {
  const gapped = courseOfSegments(
    [turtlePoints(ORIGIN, [[90, 1000]], 100), turtlePoints(from(ORIGIN, 90, 1200), [[90, 1000]], 100)],
    'skip',
  );
  const found = wheelFolds.find(layoutOf([gapped], [{ on: { course: 'c', measure: 1030, side: 'right', offset: 6 } }]));
  expect(
    found.map(({ where, message }) => [
      where.item,
      message.includes('a skipped gap lies between the chalk mark and it'),
    ]),
  ).toEqual([['sign', true]]);
  const ahead = wheelFolds.find(layoutOf([gapped], [{ on: { course: 'c', measure: 970, side: 'right', offset: 6 } }]));
  expect(ahead.map(({ where }) => where.item)).toEqual(['trash']);
});

it('no recorder’s wander on a straight road folds it, wherever an item begins', () => {
  // Points each 8 m, up to 2 m off the road, as recorders set them.
  let seed = 7;
  const off = (): number => {
    seed = (seed * 16_807) % 2_147_483_647;
    return (seed / 2_147_483_647 - 0.5) * 4;
  };
  let [wander, k] = [0, 0];
  const points: LonLat[] = [];
  for (; k <= 250; k++) {
    wander = 0.87 * wander + 0.5 * off();
    points.push(from(from(ORIGIN, 90, 8 * k), 180, wander));
  }
  const road = courseThrough(points);
  const stations = Array.from({ length: 40 }, (_, at) => ({
    on: { course: 'c', measure: 300 + 37.3 * at, side: 'right' as const, offset: 5 },
  }));
  const layout = layoutOf([road], stations);
  expect(wheelFolds.find(layout)).toEqual([]);
  for (const { directions } of layout.stations)
    for (const { items } of directions) for (const { wheel } of items) expect(wheel).not.toBeNull();
});
