/**
 * Spacing per race over served passes: start to first, station to station, last to finish.
 */
import type { PlanRace } from '../plan/plan.ts';
import type { Leg, RaceSpacing, StationPass } from './station.ts';

/** A race's served passes in running order, whatever the order of the stations. */
export function spacingOf(
  race: PlanRace,
  length: number,
  stations: readonly { readonly id: string; readonly passes: readonly StationPass[] }[],
): RaceSpacing {
  const stops = stations
    .flatMap(({ id, passes }) => passes.filter((pass) => pass.race === race.id && pass.served).map(({ measure }) => ({ id, measure })))
    .sort((a, b) => a.measure - b.measure);
  const ends = [{ id: 'start', measure: 0 }, ...stops, { id: 'finish', measure: length }];
  const legs: Leg[] = ends.slice(1).map((to, k) => ({ from: ends[k]!.id, to: to.id, length: to.measure - ends[k]!.measure, end: to.measure }));
  const lengths = legs.map((leg) => leg.length);
  return {
    race: race.id,
    course: race.course,
    legs,
    longest: Math.max(...lengths),
    shortest: Math.min(...lengths),
    mean: length / legs.length,
  };
}
