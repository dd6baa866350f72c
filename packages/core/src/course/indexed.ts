/** The index of a course, made when it is first asked for and remembered for as long as the course is. */
import type { Course } from './course.ts';
import { type IndexedCourse, indexCourse } from './segmentIndex.ts';

const INDEXES = new WeakMap<Course, IndexedCourse>();

/** A course with its index, which is made once; one that is given with an index stays as it is. */
export function indexedOnce(on: IndexedCourse | Course): IndexedCourse {
  if ('course' in on) return on;
  const known = INDEXES.get(on);
  if (known !== undefined) return known;
  const made = indexCourse(on);
  INDEXES.set(on, made);
  return made;
}
