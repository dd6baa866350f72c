/** Vehicles that runs are planned with, and those whose payload or speed is a slip of the pen. */
import type { Finding } from '../finding.ts';
import type { PlanVehicle } from '../plan/plan.ts';
import { racedayFinding } from './racedayFinding.ts';

/** A vehicle that has to go to one station more often than this is not meant to supply it: an assumption. */
const MOST_TRIPS = 10;
/** Faster than this along a course, km/h, no vehicle is meant to go: an assumption. */
const FASTEST = 90;

/** Vehicles that hold a load at all and are not kept for second deliveries. */
export const withRoom = (vehicles: readonly PlanVehicle[]): PlanVehicle[] =>
  vehicles.filter(({ places, standBy }) => places > 0 && standBy !== true);

/** Trips in which a vehicle brings what the heaviest station needs, `heaviest` kilograms. */
const tripsOf = ({ kg }: PlanVehicle, heaviest: number): number => Math.ceil(heaviest / kg - 1e-9);

/** Vehicles that carry enough to be sent; where none does, all that hold a load, as there are no others. */
export function strongEnough(vehicles: readonly PlanVehicle[], heaviest: number): PlanVehicle[] {
  const all = withRoom(vehicles);
  const strong = all.filter((one) => tripsOf(one, heaviest) <= MOST_TRIPS);
  return strong.length === 0 ? all : strong;
}

/** What is to be said of vehicles whose payload or speed cannot be meant: one finding for each. */
export function vehicleFindings(vehicles: readonly PlanVehicle[], heaviest: number): Finding[] {
  const light = withRoom(vehicles).filter((one) => tripsOf(one, heaviest) > MOST_TRIPS);
  return [
    ...lightFinding(light, vehicles, heaviest),
    ...fastFinding(
      vehicles.filter(({ kmh }) => kmh > FASTEST),
      vehicles,
    ),
  ];
}

const pathOf = (one: PlanVehicle, vehicles: readonly PlanVehicle[], key: 'kg' | 'kmh'): string =>
  `/vehicles/${vehicles.indexOf(one)}/${key}`;

function lightFinding(light: readonly PlanVehicle[], vehicles: readonly PlanVehicle[], heaviest: number): Finding[] {
  const [first] = [...light].sort((a, b) => a.kg - b.kg);
  if (first === undefined) return [];
  const { name, kg } = first;
  const used = strongEnough(vehicles, heaviest).includes(first);
  const trips = tripsOf(first, heaviest);
  return [
    racedayFinding(
      'vehicle-doubtful',
      { problem: 'light', vehicle: name, kg, trips, used, count: light.length },
      {
        severity: 'warning',
        where: { path: pathOf(first, vehicles, 'kg') },
        measured: kg,
        limit: heaviest / MOST_TRIPS,
        unit: 'kg',
      },
    ),
  ];
}

function fastFinding(fast: readonly PlanVehicle[], vehicles: readonly PlanVehicle[]): Finding[] {
  const [first] = [...fast].sort((a, b) => b.kmh - a.kmh);
  if (first === undefined) return [];
  const { name, kmh } = first;
  return [
    racedayFinding(
      'vehicle-doubtful',
      { problem: 'fast', vehicle: name, kmh, most: FASTEST, count: fast.length },
      {
        severity: 'warning',
        where: { path: pathOf(first, vehicles, 'kmh') },
        measured: kmh,
        limit: FASTEST,
        unit: 'km/h',
      },
    ),
  ];
}
