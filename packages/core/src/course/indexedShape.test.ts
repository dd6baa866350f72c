import { expect, it } from 'vitest';
import { ORIGIN, courseThrough, from } from '../testing/courses.ts';
import { wantIndexed, wantOnCourse, isIndexed } from './indexedShape.ts';
import { indexCourse } from './segmentIndex.ts';

const course = courseThrough([ORIGIN, from(ORIGIN, 90, 500)]);
const indexed = indexCourse(course);

it('takes an indexed course, and tells who gives the course itself what is missing', () => {
  expect(isIndexed(indexed)).toBeNull();
  expect(() => wantIndexed('passesOf', indexed)).not.toThrow();
  expect(isIndexed(course)).toMatchObject({ found: 'the course itself, which indexCourse makes into one' });
  expect(() => wantIndexed('passesOf', course)).toThrow(
    new TypeError('passesOf wants the course that indexCourse returns, not the course itself'),
  );
});

it('refuses what is neither', () => {
  for (const wrong of [null, 7, 'course', {}, { course, boxes: [] }]) {
    expect(isIndexed(wrong)).not.toBeNull();
    expect(() => wantIndexed('passesOf', wrong)).toThrow(/^passesOf wants .*the course that indexCourse returns/u);
  }
});

it('takes either where either will do, and says of a broken index that it is the index', () => {
  for (const good of [course, indexed]) expect(() => wantOnCourse('pointAt', good)).not.toThrow();
  expect(() => wantOnCourse('pointAt', { course, boxes: [] })).toThrow(
    /^pointAt wants .*the course that indexCourse returns/u,
  );
  for (const wrong of [null, 7, {}]) expect(() => wantOnCourse('pointAt', wrong)).toThrow(/^pointAt wants .*course/u);
});
