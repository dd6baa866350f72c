/** Vehicles that runs are planned with, and those whose payload or speed is a slip of the pen. */
import type { Finding } from '../finding.ts';
import type { PlanVehicle } from '../plan/plan.ts';
import { racedayFinding } from './racedayFinding.ts';

/** A vehicle that has to go to one station more often than this is not meant to supply it: an assumption. */
const MOST_TRIPS = 10;
/** Faster than this along a course, km/h, no vehicle is meant to go: an assumption. */
const FASTEST = 90;

/** Vehicles that hold a load at all. */
export const withRoom = (vehicles: readonly PlanVehicle[]): PlanVehicle[] =>
  vehicles.filter(({ places }) => places > 0);

/** Trips in which a vehicle brings what the heaviest station needs, `heaviest` kilograms. */
const tripsOf = ({ kg }: PlanVehicle, heaviest: number): number => Math.ceil(heaviest / kg - 1e-9);

/** Vehicles that carry enough to be sent; where none does, all that hold a load, as there are no others. */
export function strongEnough(vehicles: readonly PlanVehicle[], heaviest: number): PlanVehicle[] {
  const all = withRoom(vehicles);
  const strong = all.filter((one) => tripsOf(one, heaviest) <= MOST_TRIPS);
  return strong.length === 0 ? all : strong;
}

/** What is to be said of vehicles whose payload or speed cannot be meant. */
export function vehicleFindings(vehicles: readonly PlanVehicle[], heaviest: number): Finding[] {
  const used = new Set(strongEnough(vehicles, heaviest));
  return vehicles.flatMap((vehicle, k) => [
    ...lightFindings(vehicle, k, heaviest, used.has(vehicle)),
    ...fastFindings(vehicle, k),
  ]);
}

function lightFindings(vehicle: PlanVehicle, k: number, heaviest: number, used: boolean): Finding[] {
  const trips = tripsOf(vehicle, heaviest);
  if (vehicle.places === 0 || trips <= MOST_TRIPS) return [];
  const { name, kg } = vehicle;
  return [
    racedayFinding(
      'vehicle-doubtful',
      { problem: 'light', vehicle: name, kg, trips, used },
      {
        severity: 'warning',
        where: { path: `/vehicles/${k}/kg` },
        measured: kg,
        limit: heaviest / MOST_TRIPS,
        unit: 'kg',
      },
    ),
  ];
}

function fastFindings({ name, kmh }: PlanVehicle, k: number): Finding[] {
  if (kmh <= FASTEST) return [];
  return [
    racedayFinding(
      'vehicle-doubtful',
      { problem: 'fast', vehicle: name, kmh, most: FASTEST },
      { severity: 'warning', where: { path: `/vehicles/${k}/kmh` }, measured: kmh, limit: FASTEST, unit: 'km/h' },
    ),
  ];
}
