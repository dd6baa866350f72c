/**
 * A pass of a race that the station serves, by the same tables, that the default leaves unserved:
 * runners on their way back, or on another leg. Where the plan lists passes, or asks for all, it has
 * said what it means.
 */
import { leadOf } from '../plan/lookups.ts';
import type { StationLayout } from '../layout/layout.ts';
import { leadingPass, servesRace } from '../station/directions.ts';
import type { StationPass } from '../station/station.ts';
import type { ReviewParams } from '../text/params/review.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { runsAgainst } from '../station/sides.ts';

type Way = ReviewParams['seen-not-served']['way'];

export const seenNotServed: Check = check(
  {
    code: 'seen-not-served',
    severity: 'note',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const seen = station.passes.filter(
        (pass) => !pass.served && pass.end === undefined && servesRace(station.station, pass.race),
      );
      if (station.station.passes !== 'lead' || seen.length === 0) return [];
      // Where the way was taken without the plan's word, that is what is asked.
      if (['pin', 'side'].includes(leadingPass(station.station, station.passes).by)) return [];
      const nearest = seen.reduce((near, pass) => (pass.distance < near.distance ? pass : near), seen[0]!);
      const { course, race, measure, distance } = nearest;
      return [
        {
          params: {
            way: wayOf(seen, station),
            passes: seen.map((pass) => ({ race: pass.race, measure: pass.measure, time: pass.pass + 1 })),
          },
          where: { ...atStation(station, 'passes'), course, race, measure },
          measured: distance,
          limit: station.practice.snapRadius,
          unit: 'm',
        },
      ];
    }),
);

/** How passes that nobody serves run: all back from where the served ones of their race ran, all against the lead, or neither. */
function wayOf(seen: readonly StationPass[], station: StationLayout): Way {
  const lead = leadOf(station);
  if (lead === undefined || !seen.every((pass) => runsAgainst(pass.azimuthDeg, lead.azimuthDeg))) return 'again';
  const served = lead.passes.map((k) => station.passes[k]!);
  const back = seen.every((pass) => served.some((one) => one.race === pass.race && one.measure < pass.measure));
  return back ? 'back' : 'other';
}
