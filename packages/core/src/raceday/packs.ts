/**
 * What a station is sent, in whole packs: drinks by the jug, cups, gels, gloves, bags, boxes, towels, stacking
 * sheets, tables, signs by their wording, and the sheet of instructions; drinks, cups and bags with the reserve. Pieces
 * a person or a table are common practice, no source.
 */
import type { Supply } from '../kinds.ts';
import type { PlanStation, Served, Supplies } from '../plan/plan.ts';
import { signWording } from '../station/wording.ts';
import { whole, type Needs } from './cups.ts';
import type { DayCrew, Pack, StationDay } from './day.ts';

/** Gloves that one person of one shift wears: a pair. */
export const GLOVES_EACH = 2;

/** Towels for each drink table. */
export const TOWELS_EACH = 1;

/** What a station's packs are worked out from. */
export interface PacksCase {
  readonly needs: Pick<Needs, 'gels' | 'ordered'>;
  readonly tables: { readonly [kind in Served]: number };
  /** Layers of cups on the fullest tables. */
  readonly layers: number;
  readonly crew: Pick<DayCrew, 'total' | 'shifts'>;
  /** Trash boxes of each direction. */
  readonly boxes: number;
  /** Served directions: each has a sign and a trash stretch of its own. */
  readonly directions: number;
  /** Of the plan, BCP 47: signs are written in it. */
  readonly language: string;
}

/** Fewest packs of a size that hold a need: `count` × `pack` ≥ `need`, and one less is not enough. */
export const packOf = (supply: Supply, need: number, pack: number = 1): Pack => ({
  ...supply,
  need,
  pack,
  count: whole(need / pack),
});

/** Sheets between the layers of cups on the drink tables. */
const sheets = (tables: PacksCase['tables'], layers: number): number =>
  (tables.water + tables.sportsDrink) * Math.max(0, layers - 1);

/** The packs of one station, only those of which some is needed; litres for jugs, pieces for the rest. */
export function packsOf(
  supplies: Supplies,
  station: PlanStation,
  { needs, tables, layers, crew, boxes, directions, language }: PacksCase,
): Pack[] {
  const { packs } = supplies;
  const { cups: each, volume } = needs.ordered;
  const cups = each.water + each.sportsDrink;
  return [
    packOf({ kind: 'waterJug' }, volume.water, packs.waterJug),
    packOf({ kind: 'sportsDrinkJug' }, volume.sportsDrink, packs.sportsDrinkJug),
    packOf({ kind: 'cups' }, cups, packs.cups),
    packOf({ kind: 'gels' }, needs.gels, packs.gels),
    packOf({ kind: 'gloves' }, crew.total * crew.shifts * GLOVES_EACH, packs.gloves),
    packOf({ kind: 'bags' }, whole(cups / supplies.cupsPerBag), packs.bags),
    packOf({ kind: 'towels' }, (tables.water + tables.sportsDrink) * TOWELS_EACH, packs.towels),
    packOf({ kind: 'stackingSheets' }, sheets(tables, layers), packs.stackingSheets),
    packOf({ kind: 'table' }, tables.gel + tables.sportsDrink + tables.water),
    packOf({ kind: 'box' }, boxes * directions),
    packOf({ kind: 'sign', wording: signWording(station.serves, language) }, directions),
    packOf({ kind: 'instructions' }, 1),
  ].filter(({ need }) => need > 0);
}

/** Kilograms of one full pack; what has no weight in the plan counts as nothing. */
export const packKg = ({ weights }: Supplies, { kind }: Pick<Supply, 'kind'>): number => weights[kind] ?? 0;

/** The supply alone, of a pack or a load of it. */
export const supplyOf = ({ kind, wording, empty }: Supply): Supply => ({
  kind,
  ...(wording === undefined ? {} : { wording }),
  ...(empty === undefined ? {} : { empty }),
});

/** The name of a supply in JSON and in the place of a finding: `waterJug`, `waterJug (empty)`, `sign: Water ahead`, `trash bags`. */
export function supplyKey({ kind, wording, empty }: Supply): string {
  if (kind === 'trashBags') return 'trash bags';
  const key = wording === undefined ? kind : `${kind}: ${wording}`;
  return empty === true ? `${key} (empty)` : key;
}

/** Packs of several stations, each station's whole; a supply whose pack size differs stands once for each size. */
export function totalPacks(days: readonly Pick<StationDay, 'packs'>[]): Pack[] {
  const totals = new Map<string, Pack>();
  for (const one of days.flatMap(({ packs }) => packs)) {
    const key = JSON.stringify([supplyKey(one), one.pack]);
    const sum = totals.get(key);
    totals.set(key, sum === undefined ? one : { ...sum, need: sum.need + one.need, count: sum.count + one.count });
  }
  return [...totals.values()];
}

/** The totals of a race day: packs, and volunteers at a time. */
export const totalsOf = (days: readonly StationDay[]): { readonly packs: Pack[]; readonly crew: number } => ({
  packs: totalPacks(days),
  crew: days.reduce((sum, { crew }) => sum + crew.total, 0),
});
