/** A crew that is due only after its road has closed, or after the first of any race has come by. */
import { findById } from '../plan/lookups.ts';
import type { LateCrew } from '../text/params/reviewTimes.ts';
import { type Check, COMMON_PRACTICE, dayCheck } from './check.ts';
import { type RoadPlace, SAME_TIME, roadPlaces } from './roadTimes.ts';

const lateness = ({ crewAt, before }: LateCrew): number => crewAt - before.time;

function lateAt({ station, closes, first }: RoadPlace, crewAt: number): LateCrew[] {
  const late = { station: station!, crewAt };
  if (closes !== null && crewAt > closes + SAME_TIME)
    return [{ ...late, before: { is: 'closes', time: closes }, race: null }];
  if (first === null || crewAt <= first.time + SAME_TIME) return [];
  return [{ ...late, before: { is: 'first', time: first.time }, race: first.race }];
}

export const crewLate: Check = dayCheck(
  { code: 'crew-late', severity: 'error', source: COMMON_PRACTICE },
  (layout, facts) => {
    const stations = roadPlaces(layout, facts)
      .flatMap((place) => {
        const crewAt = place.station === null ? null : (findById(facts.day.stations, place.station)?.crewAt ?? null);
        return crewAt === null ? [] : lateAt(place, crewAt);
      })
      .sort((a, b) => lateness(b) - lateness(a));
    const [worst] = stations;
    if (worst === undefined) return [];
    const alone = stations.length === 1 ? { station: worst.station } : {};
    return [
      {
        params: { stations },
        where: { path: '/stations', ...alone },
        measured: lateness(worst),
        limit: 0,
        unit: 's',
      },
    ];
  },
);
