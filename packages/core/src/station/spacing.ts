/**
 * Spacing per race over served passes: start to first, station to station, last to finish.
 */
import { type Course, courseLength, startMeasure } from '../course/course.ts';
import type { PlanRace } from '../plan/plan.ts';
import type { Leg, RaceSpacing, StationPass } from './station.ts';

/** Course distances of start and finish, as `spacingOf` takes them. */
export const courseEnds = (course: Course): [start: number, finish: number] => [
  startMeasure(course),
  courseLength(course),
];

/** A race's served passes in running order, whatever the order of the stations; `ends` are the measures of start and finish. */
export function spacingOf(
  race: PlanRace,
  ends: readonly [start: number, finish: number],
  stations: readonly { readonly id: string; readonly passes: readonly StationPass[] }[],
): RaceSpacing {
  const stops = stations
    .flatMap(({ id, passes }) =>
      passes.filter((pass) => pass.race === race.id && pass.served).map(({ measure }) => ({ id, measure })),
    )
    .sort((a, b) => a.measure - b.measure);
  const [start, finish] = ends;
  const all = [{ id: 'start', measure: start }, ...stops, { id: 'finish', measure: finish }];
  const legs: Leg[] = all
    .slice(1)
    .map((to, k) => ({ from: all[k]!.id, to: to.id, length: to.measure - all[k]!.measure, end: to.measure }));
  const lengths = legs.map((leg) => leg.length);
  return {
    race: race.id,
    course: race.course,
    legs,
    longest: Math.max(...lengths),
    shortest: Math.min(...lengths),
    mean: (finish - start) / legs.length,
  };
}
