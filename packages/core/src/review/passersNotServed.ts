/**
 * Runners who are not served, on the road of the tables: they ask for cups that are not counted. They are those of a race
 * that the station does not serve, unless the plan lists the passes that are served and so has said what it means; and
 * those who come the way of the served, as on one lap of three, whatever the plan says: nobody at the tables can tell.
 */
import type { StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { leadPass, servesRace } from '../station/directions.ts';
import { runsAgainst } from '../station/sides.ts';
import type { StationPass } from '../station/station.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import { type Check, COMMON_PRACTICE, atStation, stationCheck } from './check.ts';
import { tableEnds } from './standing.ts';

/** Lines farther apart than this, metres, are two roads. */
const ONE_ROAD = 10;
/** Ways that differ by less, degrees, run together. */
const TOGETHER = 60;

export const passersNotServed: Check = stationCheck(
  {
    code: 'passers-not-served',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (station) => {
    const passers = passersOf(station);
    const [first] = passers;
    if (first === undefined) return [];
    return [
      {
        params: { passes: passers.map(({ race, measure }) => ({ race, measure })) },
        where: { ...atStation(station, 'races'), course: first.course, race: first.race, measure: first.measure },
      },
    ];
  },
);

/** The first pass by the tables of each race that is not served, then other passes the way of the served ones. */
function passersOf({ station, passes, directions }: StationLayout): StationPass[] {
  const lead = leadOf({ directions });
  if (lead === undefined || tableEnds(lead) === null) return [];
  const led = passes[leadPass(station, passes)]!;
  const near = passes.filter((pass) => pass.end === undefined && !pass.served && isOnRoad(pass, led));
  const others = near.filter(({ race }) => !servesRace(station, race) && typeof station.passes === 'string');
  const alike = near.filter((pass) => servesRace(station, pass.race) && lead.passes.includes(passes.indexOf(pass)));
  return [...others.filter((pass, k) => others.findIndex(({ race }) => race === pass.race) === k), ...alike];
}

/** Whether a pass runs on the lead's road, either way: both offsets are of one pin, each left of its own way. */
function isOnRoad(pass: StationPass, lead: StationPass): boolean {
  if (runsAgainst(pass.azimuthDeg, lead.azimuthDeg)) return Math.abs(lead.offset + pass.offset) <= ONE_ROAD;
  return (
    azimuthDifference(pass.azimuthDeg, lead.azimuthDeg) < TOGETHER && Math.abs(lead.offset - pass.offset) <= ONE_ROAD
  );
}
