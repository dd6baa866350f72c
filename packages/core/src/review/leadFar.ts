/** A lead pass that is not the one the pin stands by: signs would go to another road than meant. */
import { servesRace } from '../station/directions.ts';
import { leadOf } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

/** Metres by which another direction may be nearer than the lead. */
const NEARER = 10;

export const leadFar: Check = check(
  {
    code: 'lead-far',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const lead = leadOf(station);
      const own = station.passes.filter((pass) => servesRace(station.station, pass.race));
      // Where no race that it serves passes it, that has a finding of its own.
      if (lead === undefined || station.station.lead !== undefined || own.length === 0) return [];
      const led = Math.min(...lead.passes.map((k) => station.passes[k]!.distance));
      const nearest = own.reduce((near, pass) => (pass.distance < near.distance ? pass : near), own[0]!);
      if (led - nearest.distance <= NEARER) return [];
      return [
        {
          params: {
            led,
            near: nearest.distance,
            pass: { race: nearest.race, measure: nearest.measure },
            time: nearest.pass + 1,
          },
          where: { ...atStation(station), course: nearest.course, race: nearest.race, measure: nearest.measure },
          measured: led - nearest.distance,
          limit: NEARER,
          unit: 'm',
        },
      ];
    }),
);
