/** Whole analyses for tests: courses drawn in the plan itself, so that no file is needed. Not part of the package. */
import { type Analysis, analyse } from '../analyse.ts';
import type { LonLat } from '../finding.ts';
import type { Plan, PlanRace, PlanStation } from '../plan/plan.ts';
import { ORIGIN, turtlePoints, valueOf } from './courses.ts';
import { planCourse, planOf, planRace, planStation } from './plans.ts';

/** 4 km due east from ORIGIN, a vertex each 100 m. */
export const STRAIGHT: readonly LonLat[] = turtlePoints(ORIGIN, [[90, 4000]], 100);

/** 3 km out due east and back along the same road. */
export const OUT_AND_BACK: readonly LonLat[] = turtlePoints(
  ORIGIN,
  [
    [90, 3000],
    [270, 3000],
  ],
  100,
);

/** Race `m` on course `c`: so many entrants, all of whom start, in one wave at 08:00. */
export const runners = (entrants: number = 100, keys: Partial<PlanRace> = {}): PlanRace => ({
  ...planRace('m', 'c'),
  name: 'Mile Run',
  show: 1,
  waves: [{ time: 8 * 3600, entrants }],
  finish: { median: 1800, spread: 0.1 },
  ...keys,
});

/** Stations s1, s2, … on one course `c`, drawn through the points; race `m` without waves, unless the keys say otherwise. */
export const analysisOf = (
  line: readonly LonLat[],
  stations: readonly Partial<PlanStation>[],
  keys: Partial<Plan> = {},
): Analysis =>
  valueOf(
    analyse(
      {
        ...planOf({
          courses: [planCourse('c', { name: 'Shore', line, drawn: 'centre' })],
          races: [planRace('m', 'c')],
          stations: stations.map((station, k) => planStation({ id: `s${k + 1}`, name: `s${k + 1}`, ...station })),
        }),
        ...keys,
      },
      { gpx: new Map() },
    ),
  );

/** 1.5 km along course `c`, 5 m to the right of it, with a side that is declared by it. */
export const AT_1500: Partial<PlanStation> = { on: { course: 'c', measure: 1500, side: 'right', offset: 5 } };
