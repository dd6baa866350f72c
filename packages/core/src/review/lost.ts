/**
 * Stations that serve nobody, as the plan stands: off the course, or with no pass chosen. Each has one finding that says
 * so; that a race goes without it for long, or without any, is the same thing said again.
 */
import { swappedPosition } from '../course/swapped.ts';
import { nearestOn } from '../course/passes.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { courseById } from '../plan/lookups.ts';
import { servesRace } from '../station/directions.ts';
import type { Leg } from '../station/station.ts';
import { isServing } from './check.ts';

/** A pin farther off than this, metres, does not tell where along the course it belongs. */
const TELLS = 1000;

/** The stations of a race that serve nobody. */
export const lostOf = (race: string, { stations }: Pick<Layout, 'stations'>): StationLayout[] =>
  stations.filter((station) => !isServing(station) && servesRace(station.station, race));

/** Whether a station that serves nobody belongs into a leg: by its place, or by its place among the plan's stations. */
export function lostFrom(leg: Leg, race: string, layout: Layout): boolean {
  const at = (id: string): number | undefined => layout.stations.find((station) => station.id === id)?.index;
  const from = leg.from === 'start' ? -1 : at(leg.from);
  const to = leg.to === 'finish' ? Infinity : at(leg.to);
  return lostOf(race, layout).some((station) => {
    const measure = measureOf(station, layout);
    if (measure !== null) return measure > leg.end - leg.length && measure < leg.end;
    return from !== undefined && to !== undefined && station.index > from && station.index < to;
  });
}

/** Where along its nearest course a station belongs, metres; `null` where its pin does not tell. */
function measureOf({ nearest, at, passes }: StationLayout, { courses }: Layout): number | null {
  if (nearest === null) return passes[0]?.measure ?? null;
  if (nearest.distance <= TELLS) return nearest.measure;
  const indexed = courseById(courses, nearest.course);
  const swapped = swappedPosition(indexed, at);
  return swapped === null ? null : nearestOn(indexed, swapped).measure;
}
