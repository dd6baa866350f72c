import { point } from '@turf/turf';
import type { Feature } from 'geojson';
import { expect, test } from 'vitest';
import { sourceDiff } from './sourceDiff.ts';

const feature = (id: number): Feature => ({ ...point([id, 0]), id });
const [one, two, three] = [feature(1), feature(2), feature(3)];

test('the same records are no change, in whatever order', () => {
  expect(sourceDiff([one, two], [two, one])).toBeNull();
  expect(sourceDiff([], [])).toBeNull();
});

test('a feature that is another record is given anew, one that has gone is taken away, the others are left alone', () => {
  const other = feature(2);
  expect(sourceDiff([one, two, three], [one, other])).toEqual({ remove: [3], add: [other] });
  expect(sourceDiff([], [one])).toEqual({ remove: [], add: [one] });
});
