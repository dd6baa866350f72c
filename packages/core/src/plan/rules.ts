/** The rules of a plan, each with a default: practice (distances, tolerances, limits), supplies, crew. All SI. */

export type Division = 'run' | 'walk' | 'wheels';
export type Heat = 'cool' | 'warm' | 'hot';

/** The house's distances, tolerances and limits; metres unless said otherwise. */
export interface Practice {
  readonly signAhead: number;
  readonly signTolerance: number;
  readonly gelAhead: number;
  readonly tableGap: number;
  readonly tableLength: number;
  readonly trashFrom: number;
  readonly trashTo: number;
  readonly boxEvery: number;
  readonly kerb: number;
  readonly setback: number;
  readonly clearWidth: number;
  readonly snapRadius: number;
  readonly pinR95: number;
  readonly courseR95: number;
  /** A probability. */
  readonly sideConfidence: number;
  readonly maxSpacing: number;
  readonly minSpacing: number;
  /** Rise over run. */
  readonly maxGrade: number;
  readonly bendClear: number;
}

export interface TakeRates {
  readonly water?: number;
  readonly sportsDrink?: number;
  readonly gel?: number;
}

/** Pack sizes: counts, and litres for the jugs. */
export interface Packs {
  readonly cups: number;
  readonly waterJug: number;
  readonly sportsDrinkJug: number;
  readonly gels: number;
  readonly gloves: number;
  readonly bags: number;
  readonly towels: number;
  readonly stackingSheets: number;
}

export interface Supplies {
  readonly heat?: Heat;
  readonly wbgtC?: number;
  readonly heatSteps?: readonly [number, number];
  readonly gelOrder: number;
  readonly take: { readonly [division in Division]?: TakeRates };
  readonly waste: number;
  /** Litres. */
  readonly cup: number;
  readonly fill: number;
  readonly cupsPerLayer: number;
  readonly layers: number;
  readonly packs: Packs;
  /** Kilograms of one pack or piece, by item. */
  readonly weights: { readonly [item: string]: number };
  readonly cupsPerBag: number;
  readonly resupply?: { readonly at: number; readonly takes: number };
  readonly prePourFloor: readonly [number, number];
  readonly prePourSafety: number;
}

/** Any key of the supplies; inside `packs`, `take` and `weights` any key of those. */
export type SuppliesOverride = Partial<Omit<Supplies, 'packs'>> & { readonly packs?: Partial<Packs> };

/** Rates are pieces a minute a person; durations seconds. */
export interface Crew {
  readonly pourers: number;
  readonly pourRate: number;
  readonly handRate: number;
  readonly handSpacing: number;
  readonly gelRate: number;
  /** Cups on the ground that one clean-up volunteer looks after in an hour. */
  readonly cleanPer: number;
  readonly ready: number;
  readonly setUp: number;
  readonly minimum: number;
  readonly longest: number;
}
