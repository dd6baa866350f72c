import { expect, it } from 'vitest';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { en } from '../text/en.ts';
import { kerbGates, kerbPoints, nearestShare, pointWord, spotsAlong } from './stationGround.ts';

const at = (along: number, off: number): readonly [number, number] => from(from(ORIGIN, 90, 2000 + along), 180, off);
const layout = layoutOf(
  [turtle(ORIGIN, [[90, 4000]], 100)],
  [
    {
      on: { course: 'c', measure: 2000, side: 'right', offset: 5 },
      points: [
        { kind: 'drop', at: at(-12, 8) },
        { kind: 'medical', at: at(30, 6) },
        { kind: 'toilets', at: at(30, 60) },
        { kind: 'other', name: 'Life-ring', at: at(60, 5) },
      ],
    },
  ],
);
const station = layout.stations[0]!;

it('finds how far along the course each point stands from the pin’s foot, and leaves out what is not at the kerb', () => {
  const found = kerbPoints(layout, station, station.directions[0]!, en);
  expect(found.map(({ word }) => word)).toEqual(['Supplies drop', 'First aid', 'Life-ring']);
  [-12, 30, 60].forEach((along, k) => expect(found[k]!.along).toBeCloseTo(along, 1));
});

it('finds a gate of 130,000 corners at the kerb', () => {
  const [[west, lat], [east]] = [at(-10, 6), at(20, 6)];
  const polygon = Array.from({ length: 130_000 }, (_, k) => [west + (k / 130_000) * (east - west), lat] as const);
  const zones = [{ name: 'Gate', rule: 'keep-clear' as const, polygon }];
  const [gate, ...more] = kerbGates({ ...layout, plan: { zones } }, station, station.directions[0]!);
  expect(more).toEqual([]);
  [-10, 20].forEach((along, k) => expect(gate!.along[k]).toBeCloseTo(along, 1));
});

it('calls a point by its kind, and one of no kind by its own name', () => {
  expect(pointWord({ kind: 'medical', name: 'Tent' }, en)).toBe('First aid');
  expect(pointWord({ kind: 'other' }, en)).toBe('Point');
  expect(pointWord({ kind: 'other', name: 'x'.repeat(40) }, en)).toHaveLength(24);
});

it('gives the nearest place on a bent line, and none on a line without length', () => {
  expect(
    nearestShare(
      [
        [0, 0],
        [10, 0],
        [10, 10],
      ],
      [12, 5],
    ),
  ).toEqual({ share: 0.75, distance: 2, left: false });
  expect(
    nearestShare(
      [
        [0, 0],
        [10, 0],
      ],
      [-3, 4],
    ),
  ).toEqual({ share: 0, distance: 5, left: true });
  expect(nearestShare([[1, 1]], [0, 0])).toBeNull();
});

it('has no points at the kerb where nothing is laid out, and no line of a course that is not there', () => {
  expect(kerbPoints(layout, station, { ...station.directions[0]!, items: [] }, en)).toEqual([]);
  expect(spotsAlong(layout, 'other', [0, 100], ORIGIN)).toEqual([]);
  expect(spotsAlong(layout, 'c', [0, 200], ORIGIN).map(([east]) => Math.round(east))).toEqual([0, 100, 200]);
});

it('passes over a piece of line without length', () => {
  expect(
    nearestShare(
      [
        [0, 0],
        [0, 0],
        [10, 0],
      ],
      [4, 3],
    ),
  ).toEqual({ share: 0.4, distance: 3, left: true });
});
