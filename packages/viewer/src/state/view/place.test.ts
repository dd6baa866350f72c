import { expect, test } from 'vitest';
import { openedFrom, straightPlan } from '../../testing.ts';
import { openFiles } from '../open/open.ts';
import { placeFacts, placeLines } from './place.ts';

const open = openedFrom(
  openFiles(
    [
      straightPlan({
        races: [
          { id: 'r', name: 'Long', course: 'c' },
          { id: 'q', name: 'Short', course: 'c' },
        ],
        stations: [
          { id: 'a', name: 'Low Rock', on: { course: 'c', measure: '2 km', side: 'left', offset: '5 m' } },
          { id: 'b', name: 'High Rock', on: { course: 'c', measure: '9 km', side: 'left', offset: '5 m' } },
        ],
      }),
    ],
    null,
  ),
);

test('a place is told in both units, by coordinates, grid and neighbours', () => {
  const facts = placeFacts(open, { course: 'c', measure: 5565.974539 })!;
  // 0.05 degrees of the equator of WGS 84 are 5,565.97 m: its radius is 6,378,137 m exactly.
  expect(facts.at[0]).toBeCloseTo(0.05, 7);
  expect(facts.comesBy.map(({ race }) => race)).toEqual(['Long', 'Short']);
  const lines = placeLines(open, facts);
  expect(lines).toContain('Long, 5.57 km (3.46 mi) from the start, runners heading east');
  expect(lines).toContain('Also Short, 5.57 km (3.46 mi) from the start, runners heading east');
  expect(lines).toContain('Latitude, longitude: 0.000000, 0.050000 (decimal degrees, WGS 84)');
  expect(lines.find((line) => line.includes('past station 1, Low Rock'))).toMatch(/^3\.57 km \(2\.22 mi\)/u);
  expect(lines.find((line) => line.includes('before station 2, High Rock'))).toMatch(/^3\.43 km \(2\.13 mi\)/u);
});

test('before the first station and past the last there is one neighbour, and beyond the ends the end is meant', () => {
  expect(placeFacts(open, { course: 'c', measure: 100 })!.before).toBeNull();
  expect(placeFacts(open, { course: 'c', measure: 99_999 })!).toMatchObject({
    after: null,
    before: { name: 'High Rock' },
  });
  expect(placeFacts(open, { course: 'c', measure: -5 })!.measure).toBe(0);
});

test('a course that is not in the plan has no places', () => {
  expect(placeFacts(open, { course: 'other', measure: 5 })).toBeNull();
});
