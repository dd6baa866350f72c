/** The files that a plan names: the one list that the command line, the page and other programs read them by. */
import type { Plan } from './plan.ts';
import { isPlanNames } from './shapes.ts';
import { want } from '../wants.ts';

/** Names as the plan gives them, relative to its folder; each once, in the plan's order. */
export interface NamedFiles {
  /** GPX files of courses. */
  readonly gpx: readonly string[];
  /** CSV files of past results, of races and of their waves. */
  readonly results: readonly string[];
  /** The background drawing (GeoJSON), if there is one. */
  readonly context: readonly string[];
  /** The ground beside the courses, if a map of it is named. */
  readonly ground: readonly string[];
}

/**
 * The files that a plan names, by what they are. Nothing is read, so they may not be there.
 * @example
 * ```ts
 * import { filesNamedBy, readPlan } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "full", "gpx": "full.gpx" }, { "id": "back", "gpx": "full.gpx", "reverse": true }],
 *   "races": [{ "id": "r", "course": "full", "finish": { "csv": "past.csv", "column": "time" } }], "stations": [] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * filesNamedBy(read.value.plan); // → { gpx: ['full.gpx'], results: ['past.csv'], context: [], ground: [] }
 * ```
 */
export function filesNamedBy(plan: Pick<Plan, 'courses' | 'races' | 'context' | 'ground'>): NamedFiles {
  want('filesNamedBy', 'plan', isPlanNames, plan);
  const { courses, races, context, ground } = plan;
  const finishes = races.flatMap(({ finish, waves }) => [finish, ...waves.map((wave) => wave.finish)]);
  return {
    gpx: [...new Set(courses.flatMap(({ gpx }) => gpx ?? []))],
    results: [...new Set(finishes.flatMap((finish) => (finish !== undefined && 'csv' in finish ? [finish.csv] : [])))],
    context: context === undefined ? [] : [context],
    ground: ground === undefined ? [] : [ground],
  };
}
