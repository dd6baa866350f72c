/**
 * Tables laid out for a way that the plan does not name. Where the pin or the declared side tells which way is meant, it
 * is taken, and the plan is asked to say so; where the plan names one pass and the pin stands by another, signs would go
 * to another road than meant.
 */
import type { StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { leadingPass, servesRace } from '../station/directions.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

/** Metres by which another direction may be nearer than the lead. */
const NEARER = 10;

export const leadFar: Check = check(
  {
    code: 'lead-far',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) => stations.flatMap((station) => leadTaken(station) ?? leadNearer(station)),
);

/** The way that was taken without the plan's word; `null` where the plan, or the order of its races, tells. */
function leadTaken(station: StationLayout): Case<'lead-far'>[] | null {
  const { pass: k, by } = leadingPass(station.station, station.passes);
  const pass = station.passes[k];
  if (pass === undefined || by === 'plan' || by === 'order') return null;
  const first = station.passes.find((one) => servesRace(station.station, one.race) && one.end === undefined)!;
  return [
    {
      params: {
        led: first.distance,
        near: pass.distance,
        pass: { race: pass.race, measure: pass.measure },
        time: pass.pass + 1,
        taken: by,
      },
      where: { ...atStation(station, 'lead'), course: pass.course, race: pass.race, measure: pass.measure },
      measured: pass.distance,
      unit: 'm',
    },
  ];
}

function leadNearer(station: StationLayout): Case<'lead-far'>[] {
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
        taken: null,
      },
      where: { ...atStation(station), course: nearest.course, race: nearest.race, measure: nearest.measure },
      measured: led - nearest.distance,
      limit: NEARER,
      unit: 'm',
    },
  ];
}
