/**
 * What vehicles carry: a station's packs on the way out, what is left of them on the way back, cut into what one
 * vehicle takes. Every stop takes one of the vehicle's places; a load over the kilograms is split by pieces.
 */
import type { Supply, SupplyKind } from '../kinds.ts';
import { byId } from '../plan/lookups.ts';
import type { Plan, Supplies } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import type { StationDay } from './day.ts';
import { packKg, supplyOf } from './packs.ts';

/** Rounding of a mass, kilograms. */
const SLACK = 1e-9;

/** So many of a supply, each of `each` kilograms. */
export interface Piece extends Supply {
  readonly count: number;
  readonly each: number;
}

/** What goes to or comes from one station. */
export interface Load {
  readonly station: string;
  readonly pieces: readonly Piece[];
}

/** A litre of drink, kilograms: water's density, rounded. */
const KG_PER_LITRE = 1;

const suppliesAt = (plan: Plan, day: Pick<StationDay, 'id'>): Supplies => suppliesOf(plan, byId(plan.stations, day.id));

/** The packs of a station's day with their weights; packs that weigh nothing in the plan ride for nothing. */
export function dropLoad(plan: Plan, day: Pick<StationDay, 'id' | 'packs'>): Load {
  const supplies = suppliesAt(plan, day);
  return {
    station: day.id,
    pieces: day.packs.map((pack) => ({ ...supplyOf(pack), count: pack.count, each: packKg(supplies, pack) })),
  };
}

const KEPT: ReadonlySet<SupplyKind> = new Set(['table', 'box', 'sign']);

/** Tables, boxes and signs again, the jugs empty, and the cups as bags of trash. */
export function collectLoad(plan: Plan, day: Pick<StationDay, 'id' | 'packs'>): Load {
  const supplies = suppliesAt(plan, day);
  const pieces = day.packs.flatMap((pack): Piece[] => {
    const { kind, count, need } = pack;
    const full = packKg(supplies, pack);
    if (KEPT.has(kind)) return [{ ...supplyOf(pack), count, each: full }];
    if (kind === 'bags') {
      const each = (supplies.cupsPerBag / supplies.packs.cups) * packKg(supplies, { kind: 'cups' });
      return [{ kind: 'trashBags', count: need, each }];
    }
    if (kind !== 'waterJug' && kind !== 'sportsDrinkJug') return [];
    return [{ kind, empty: true, count, each: Math.max(0, full - supplies.packs[kind] * KG_PER_LITRE) }];
  });
  return { station: day.id, pieces };
}

export const kgOf = (pieces: readonly Piece[]): number =>
  pieces.reduce((sum, { count, each }) => sum + count * each, 0);

/** As many pieces, in order, as `kg` holds, and those that stay; the first that does not fit ends it. */
function cut(pieces: readonly Piece[], kg: number): { readonly on: Piece[]; readonly off: Piece[] } {
  const on: Piece[] = [];
  const off: Piece[] = [];
  let left = kg;
  for (const piece of pieces) {
    const fits =
      off.length > 0 ? 0 : piece.each === 0 ? piece.count : Math.min(piece.count, Math.floor(left / piece.each + 1e-9));
    if (fits > 0) on.push({ ...piece, count: fits });
    if (fits < piece.count) off.push({ ...piece, count: piece.count - fits });
    left = Math.max(0, left - fits * piece.each);
  }
  return { on, off };
}

/**
 * Loads of the queue that go on the vehicle, in the queue's order, and what is left of it. Stations go whole: the vehicle
 * is filled with later ones that fit before a station is split, which is done only where it is heavier than the vehicle.
 */
export function fillVehicle(
  queue: readonly Load[],
  { kg, places }: { readonly kg: number; readonly places: number },
): { readonly taken: Load[]; readonly rest: Load[] } {
  const taken: Load[] = [];
  const rest: Load[] = [];
  let left = kg;
  for (const load of queue) {
    const whole = kgOf(load.pieces);
    if (taken.length >= places) rest.push(load);
    else if (whole <= left + SLACK) {
      taken.push(load);
      left -= whole;
    } else if (whole > kg + SLACK) {
      const { on, off } = cut(load.pieces, left);
      if (on.length > 0) taken.push({ station: load.station, pieces: on });
      if (off.length > 0) rest.push({ station: load.station, pieces: off });
      left -= kgOf(on);
    } else rest.push(load);
  }
  return { taken, rest };
}
