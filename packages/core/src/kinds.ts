/**
 * The kinds of items, points, sides and what is served: the words that plans, layouts, papers and messages share.
 * Each kind of item has a form on the ground, on paper and on a map; what draws or counts items asks for the form.
 */
import { oneOf, want } from './wants.ts';

/** Kinds of items in the order in which the lead's runners usually meet them. */
export const ITEM_KINDS = ['sign', 'gel', 'sportsDrink', 'water', 'handOut', 'trash'] as const;

/** One thing laid out on the ground; `handOut` is the line where cups change hands, `trash` a stretch with boxes. */
export type ItemKind = (typeof ITEM_KINDS)[number];

/**
 * What an item looks like: a `board` stands at one place; a `table` is as long as its tables; the `line` is where cups change hands;
 * `boxes` stand along a stretch. Tables and the line are one thing for all directions, boards and boxes are each direction's own.
 */
export type ItemForm = 'board' | 'table' | 'line' | 'boxes';

const FORMS: Readonly<Record<ItemKind, ItemForm>> = {
  sign: 'board',
  gel: 'table',
  sportsDrink: 'table',
  water: 'table',
  handOut: 'line',
  trash: 'boxes',
};

/**
 * The form of a kind of item.
 * @example
 * ```ts
 * import { formOf } from '@halfcup/core/plan';
 * formOf('sportsDrink'); // → 'table'
 * ```
 */
export function formOf(kind: ItemKind): ItemForm {
  want('formOf', 'kind', oneOf(...ITEM_KINDS), kind);
  return FORMS[kind];
}

/** A side of the road, as the runners see it, that somebody has decided on. */
export type DeclaredSide = 'left' | 'right';
/** What a station hands out. */
export type Served = 'gel' | 'sportsDrink' | 'water';
/** What a point near a station is for: `drop` where supplies are unloaded, `access` where vehicles come in. */
export type PointKind = 'drop' | 'access' | 'medical' | 'toilets' | 'radio' | 'other';

/**
 * What is brought to a station, by the pack or by the piece: `bags` are rolls of trash bags, `box` a trash box; `trashBags` are the
 * full ones that are taken away.
 */
export type SupplyKind =
  | 'waterJug'
  | 'sportsDrinkJug'
  | 'cups'
  | 'gels'
  | 'gloves'
  | 'bags'
  | 'towels'
  | 'stackingSheets'
  | 'table'
  | 'box'
  | 'sign'
  | 'instructions'
  | 'trashBags';

/** One thing that is brought to a station or taken away from it. */
export interface Supply {
  readonly kind: SupplyKind;
  /** On a sign. */
  readonly wording?: string;
  /** Present, and true, of jugs that are taken back. */
  readonly empty?: true;
}

/** Levels of heat for road races, from the coldest to the hottest. */
export const WEATHER_LEVELS = ['white', 'green', 'yellow', 'red', 'black'] as const;
/** A level of heat for road races. */
export type WeatherLevel = (typeof WEATHER_LEVELS)[number];
/** How a temperature is known: as WBGT, worked out from air and humidity, or of the air alone. */
export type WeatherBy = 'wbgt' | 'humidity' | 'air';

/** What is counted at a station after the day: full and empty jugs, closed packs and loose pieces that are left. */
export const LEFT_KEYS = [
  'waterFull',
  'waterEmpty',
  'sportsDrinkFull',
  'sportsDrinkEmpty',
  'cupPacks',
  'cupsLoose',
  'gelBoxes',
  'gelsLoose',
] as const;
/** One count of what is left. */
export type LeftKey = (typeof LEFT_KEYS)[number];
