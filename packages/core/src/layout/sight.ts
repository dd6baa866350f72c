/**
 * Sight from the sign to the first table: how far the course swings away from the straight line
 * between them. Where it swings far, the tables may be hidden.
 */
import type { Course } from '../course/course.ts';
import { pointAt, sliceLine } from '../course/locate.ts';
import { eastNorth } from '../geodesy/frame.ts';

/** Largest distance in metres between the course from `from` to `to` (measures) and the chord; `null` where an end is off the course. */
export function swingFromChord(course: Course, from: number, to: number): number | null {
  if (pointAt(course, from) === null || pointAt(course, to) === null) return null;
  const line = sliceLine(course, from, to);
  const [first] = line;
  const last = line.at(-1);
  if (first === undefined || last === undefined || line.length < 2) return null;
  const end = eastNorth(first, last);
  const length = Math.hypot(end.east, end.north);
  return line.reduce((widest, point) => {
    const { east, north } = eastNorth(first, point);
    const across = length === 0 ? Math.hypot(east, north) : Math.abs(east * end.north - north * end.east) / length;
    return Math.max(widest, across);
  }, 0);
}
