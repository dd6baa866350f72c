import { expect, it } from 'vitest';
import { indexCourse } from '../course/segmentIndex.ts';
import type { ItemKind } from '../kinds.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { byId, courseById, findByRace, findById, findCourse, itemOf, leadOf, nameById } from './lookups.ts';

const stations = [
  { id: 's1', name: 'Pier' },
  { id: 's2', name: 'Chapel' },
];

it('finds an entry by its id, and says which ids there are where it must exist and does not', () => {
  expect(byId(stations, 's2')).toBe(stations[1]);
  expect(findById(stations, 's3')).toBeUndefined();
  expect(() => byId(stations, 's3')).toThrow(new RangeError('no "s3" among "s1", "s2"'));
  expect(() => byId([], 's3')).toThrow(new RangeError('no "s3" among none'));
});

it('names an entry, and lets an id without one stand for itself', () =>
  expect([nameById(stations, 's1'), nameById(stations, 'finish')]).toEqual(['Pier', 'finish']));

it('finds a course by the id inside', () => {
  const courses = ['a', 'b'].map((id) => indexCourse(turtle(ORIGIN, [[90, 100]], 20, id)));
  expect(courseById(courses, 'b')).toBe(courses[1]);
  expect(findCourse(courses, 'a')).toBe(courses[0]);
  expect(findCourse([], 'a')).toBeUndefined();
  expect(() => courseById(courses, 'c')).toThrow('no "c" among "a", "b"');
});

it('finds the lead, an item by its kind, and what is kept for a race', () => {
  const items: { kind: ItemKind }[] = [{ kind: 'sign' }, { kind: 'water' }];
  const directions = [{ lead: false }, { lead: true }];
  expect(leadOf({ directions })).toBe(directions[1]);
  expect(leadOf({ directions: [] })).toBeUndefined();
  expect(itemOf({ items }, 'water')).toBe(items[1]);
  expect(itemOf({ items }, 'gel')).toBeUndefined();
  expect(findByRace([{ race: 'full' }, { race: 'half' }], 'half')).toEqual({ race: 'half' });
});
