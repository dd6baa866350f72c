/** Steep stretches of a course, and the grade at the tables of a pass. */
import type { Course } from '@halfcup/core/stages';
import { gradeBetween, steepStretches, type SteepStretch } from '@halfcup/core/geometry';
import { isTable, keep } from '../state/view/derive.ts';
import type { Item } from '@halfcup/core';

const known: (course: Course) => Map<number, readonly SteepStretch[]> = keep(() => new Map());

/** Steeper than a limit, kept with the course. */
export function steepOf(course: Course, limit: number): readonly SteepStretch[] {
  const found = known(course).get(limit) ?? (limit > 0 ? steepStretches(course, limit) : []);
  known(course).set(limit, found);
  return found;
}

/** Course before and after the tables that counts with them, metres, as in the review. */
const AROUND = 25;

/** `null` where no tables stand, or the course has no elevations. */
export function gradeAtTables(course: Course, items: readonly Pick<Item, 'kind' | 'from' | 'to'>[]): number | null {
  const tables = items.filter(({ kind }) => isTable(kind));
  if (tables.length === 0) return null;
  const [from, to] = [Math.min(...tables.map((one) => one.from)), Math.max(...tables.map((one) => one.to))];
  return gradeBetween(course, from - AROUND, to + AROUND);
}
