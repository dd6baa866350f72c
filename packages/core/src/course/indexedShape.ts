/** The shape of an indexed course; a course by itself is told apart, for it is what people give. */
import { type Shape, column, finite, listOf, recordOf, remembered, want } from '../wants.ts';
import { isCourse } from './course.ts';
import type { IndexedCourse } from './segmentIndex.ts';

const indexed: Shape = remembered(
  recordOf<IndexedCourse>('the course that indexCourse returns', {
    course: isCourse,
    boxes: recordOf('the index of indexCourse', { levels: listOf(column, 1) }),
    tangles: listOf(recordOf('a tangle', { from: finite, to: finite })),
  }),
);

export const isIndexed: Shape = (value) => {
  const found = indexed(value);
  if (found === null || isCourse(value) !== null) return found;
  return { path: '', expected: '', found: 'the course itself, which indexCourse makes into one' };
};

/** Refuses what is no indexed course. One look where it has been seen before. */
export function wantIndexed(who: string, value: unknown): void {
  if (indexed(value) === null) return;
  if (isCourse(value) === null)
    throw new TypeError(`${who} wants the course that indexCourse returns, not the course itself`);
  want(who, 'the course that indexCourse returns', indexed, value);
}

/** Refuses what is neither a course nor one with its index. */
export function wantOnCourse(who: string, value: unknown): void {
  if (indexed(value) === null) return;
  const hasIndex = typeof value === 'object' && value !== null && 'course' in value;
  if (hasIndex) want(who, 'the course that indexCourse returns', indexed, value);
  else want(who, 'course', isCourse, value);
}
