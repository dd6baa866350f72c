/** A course from points that a program holds itself. */
import type { Result } from '../finding.ts';
import type { Course } from './course.ts';
import { type ForeignOptions, columnsOf, courseOfLines, isForeignOptions } from './foreign.ts';
import { indexedOnce } from './indexed.ts';
import { want } from '../wants.ts';

/** How points become a course. */
export type LineOptions = Omit<ForeignOptions, 'track'>;

/**
 * A course through points in running order, each `[longitude, latitude]` in degrees or `[longitude, latitude, elevation]` with metres;
 * measured on WGS 84 and indexed. Errors: a point that is no position, fewer than two different points. Steps far longer than the
 * others give a warning. Throws a TypeError where no list is given.
 * @example
 * ```ts
 * import { courseFromLine, courseLength, passesOf } from '@halfcup/core/geometry';
 *
 * const course = courseFromLine([[-30.1, 12.2, 2], [-30.09, 12.2, 6], [-30.1, 12.2, 4]]);
 * course.ok && courseLength(course.value); // → 2176.434
 * course.ok && passesOf(course.value, [-30.095, 12.20005]).map(({ side }) => side); // → ['left', 'right']
 * courseFromLine([[-30.1, 12.2], [12.2, -130.1]]).findings[0]?.code; // → 'position'
 * ```
 */
export function courseFromLine(points: readonly (readonly number[])[], options: LineOptions = {}): Result<Course> {
  if (!Array.isArray(points))
    throw new TypeError(
      `courseFromLine takes a list of points, each [longitude, latitude] or [longitude, latitude, elevation]; this is ${points === null ? 'null' : typeof points}`,
    );
  want('courseFromLine', 'options', isForeignOptions, options);
  const { segment, faults } = columnsOf(
    points.map((point: unknown, k) => {
      const [lon, lat, ele] = Array.isArray(point) ? (point as readonly unknown[]) : [];
      return { lon, lat, ele, point: k + 1, where: { path: `/${k}` } };
    }),
  );
  const line = { kind: 'track', name: null, segments: [segment], faults } as const;
  const made = courseOfLines({ file: 'line', tracks: points.length === 0 ? [] : [line], routes: [] }, options);
  if (made.ok) indexedOnce(made.value);
  return made;
}
