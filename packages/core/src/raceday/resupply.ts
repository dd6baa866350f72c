/**
 * The second delivery: which stations it can save. A stand-by vehicle waits loaded at the start of the course and takes the
 * plan's `resupply.takes`, else the course distance at its speed and its stop; it leaves when the captain calls.
 */
import type { Plan, PlanVehicle } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import { byId } from '../plan/lookups.ts';
import type { Resupply, StationDay } from './day.ts';
import { type RunSite, stopTime } from './runs.ts';

/** Kilograms of one delivery on a vehicle that carries more: twenty full jugs or so, an assumption. */
const DELIVERY = 80;

/** How long one takes to a station, seconds; `null` where the plan says nothing of it. */
function takesTo(plan: Plan, id: string, vehicle: PlanVehicle | undefined, site: RunSite | undefined): number | null {
  const { resupply } = suppliesOf(plan, byId(plan.stations, id));
  if (resupply !== undefined) return resupply.takes;
  if (vehicle === undefined || site === undefined) return null;
  return site.measure / (vehicle.kmh / 3.6) + stopTime(vehicle, Math.min(vehicle.kg, DELIVERY));
}

/** One row for each station that would run out; none where the plan has neither a stand-by vehicle nor a time. */
export function resupplyOf(plan: Plan, days: readonly StationDay[], sites: readonly RunSite[]): Resupply[] {
  const vehicle = plan.vehicles.find(({ standBy }) => standBy === true);
  return days.flatMap(({ id, shortage }): Resupply[] => {
    if (shortage === null || shortage === undefined) return [];
    const site = sites.find(({ station }) => station === id);
    const takes = takesTo(plan, id, vehicle, site);
    if (takes === null) return [];
    const { seen, at, drink } = shortage;
    const arrives = seen === null ? null : seen + takes;
    return [
      {
        station: id,
        ...(vehicle === undefined ? {} : { vehicle: vehicle.id }),
        drink,
        takes,
        called: seen,
        arrives,
        runsOut: at,
        inTime: arrives !== null && arrives <= at,
      },
    ];
  });
}
