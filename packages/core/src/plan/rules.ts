/** The rules of a plan, each with a default: practice (distances, tolerances, limits), supplies, crew. All SI. */

/** How the entrants of a race move: it sets pace and take rates. */
export type Division = 'run' | 'walk' | 'wheels';
/** How hot the day is for runners, by which take rates differ. */
export type Heat = 'cool' | 'warm' | 'hot';

/** The house's distances, tolerances and limits; metres unless said otherwise. */
export interface Practice {
  /** From the sign to the first table. */
  readonly signAhead: number;
  /** By how much the sign, and the trash drop, may miss. */
  readonly signTolerance: number;
  /** From the gel tables' downstream end to the pin. */
  readonly gelAhead: number;
  /** Between sports drink and water. */
  readonly tableGap: number;
  /** Of one table along the road. */
  readonly tableLength: number;
  /** From the last table to the first trash box. */
  readonly trashFrom: number;
  /** From the last table to the last trash box. */
  readonly trashTo: number;
  /** Most between two trash boxes. */
  readonly boxEvery: number;
  /** Offset of items where neither the road's width nor the pin says one. */
  readonly kerb: number;
  /** Of items behind the road's edge. */
  readonly setback: number;
  /** Of road that stays free beside the tables. */
  readonly clearWidth: number;
  /** A course farther from a pin than this does not pass it. */
  readonly snapRadius: number;
  /** Radius that holds the true pin in 95 of 100 cases. */
  readonly pinR95: number;
  /** Radius that holds the true course in 95 of 100 cases. */
  readonly courseR95: number;
  /** Probability, 0.5 to 1, under which a side is `unclear`. */
  readonly sideConfidence: number;
  /** Longest leg between stations. */
  readonly maxSpacing: number;
  /** Shortest leg between stations. */
  readonly minSpacing: number;
  /** At the tables, rise over run. */
  readonly maxGrade: number;
  /** Of course between a bend and the tables. */
  readonly bendClear: number;
  /** Of course from the start to the first station, in a race longer than a leg may be. */
  readonly firstAfter: number;
  /** Of course from the last station to the finish, in a race longer than a leg may be. */
  readonly lastBefore: number;
  /** Of kerb that the tables of a station may take. */
  readonly tablesRoom: number;
  /** From a station's planned place to where its tables were recorded on the ground, at most. */
  readonly placedWithin: number;
}

/** Pieces that one entrant takes at a station: cups of a drink, gels. */
export interface TakeRates {
  readonly water?: number;
  readonly sportsDrink?: number;
  readonly gel?: number;
}

/** What one pack holds: pieces, and litres for the jugs. */
export interface Packs {
  readonly cups: number;
  /** Litres. */
  readonly waterJug: number;
  /** Litres. */
  readonly sportsDrinkJug: number;
  readonly gels: number;
  readonly gloves: number;
  readonly bags: number;
  readonly towels: number;
  readonly stackingSheets: number;
}

/** What is taken, bought and poured, by rates and pack sizes. */
export interface Supplies {
  readonly heat?: Heat;
  /** Wet-bulb globe temperature, °C. */
  readonly wbgtC?: number;
  /** °C from which it is warm, and from which it is hot. */
  readonly heatSteps?: readonly [number, number];
  /** Gels ordered for each arrival. */
  readonly gelOrder: number;
  /** How drinks reach runners: in cups from the tables, or from taps into the bottles that they carry. */
  readonly handOut: 'cups' | 'bottles';
  /** What each kind that is handed out is called, as hands call it out: flavours or names. */
  readonly flavours?: { readonly [kind in 'sportsDrink' | 'gel']?: readonly string[] };
  /** Litres that a runner drinks in an hour, instead of the rate that the heat gives. */
  readonly drinkRate?: number;
  /** Share of water in what is drunk where both drinks are served, 0 to 1. */
  readonly waterShare: number;
  /** Cups and gels an arrival, instead of what the time since the last drink gives. */
  readonly take: { readonly [division in Division]?: TakeRates };
  /** Share of cups spilt or left, on top. */
  readonly waste: number;
  /** Share of drinks and cups ordered on top of what is needed. */
  readonly reserve: number;
  /** Litres. */
  readonly cup: number;
  /** Share of a cup that is filled, over 0 to 1. */
  readonly fill: number;
  /** Cups that stand in one layer on a table. */
  readonly cupsPerLayer: number;
  /** Layers on a table. */
  readonly layers: number;
  readonly packs: Packs;
  /** Kilograms of one pack or piece, by item. */
  readonly weights: { readonly [item: string]: number };
  /** Used cups in a trash bag. */
  readonly cupsPerBag: number;
  /** Used cups in a trash box before it is emptied. */
  readonly cupsPerBox: number;
  /** Second delivery: called for at this share of what is there, and on its way for so many seconds. */
  readonly resupply?: { readonly at: number; readonly takes: number };
  /** Shares of the day's cups poured before the first runner: where arrivals are bunched, and where they are spread. */
  readonly prePourFloor: readonly [number, number];
  /** How many times slower than their rate pourers are taken to pour while runners come, 1 or more. */
  readonly prePourSafety: number;
}

/** Any key of the supplies; inside `packs`, `take`, `flavours` and `weights` any key of those. */
export type SuppliesOverride = Partial<Omit<Supplies, 'packs'>> & { readonly packs?: Partial<Packs> };

/** The people of a station. Rates are pieces a minute a person; durations seconds. */
export interface Crew {
  /** Pourers while runners come. Absent: the fewest with whom the cups last. */
  readonly pourers?: number;
  /** Cups poured. */
  readonly pourRate: number;
  /** Cups handed out. */
  readonly handRate: number;
  /** Share of cups that runners take from the tables themselves, 0 to 1. */
  readonly fromTables: number;
  /** Metres of the hand-out line for each person. */
  readonly handSpacing: number;
  /** Gels handed out. */
  readonly gelRate: number;
  /** For one bottle at a tap. */
  readonly tapTime: number;
  /** People whom one more table is worth, when tables are weighed against pourers. */
  readonly tableCost: number;
  /** Cups on the ground that one clean-up volunteer looks after in an hour. */
  readonly cleanPer: number;
  /** How long before the first arrival everything stands ready. */
  readonly ready: number;
  /** Without pouring. */
  readonly setUp: number;
  /** Longest time for the cups that stand poured before the first runner. */
  readonly pourWithin: number;
  /** From release until everything is packed, without the tables. */
  readonly breakDown: number;
  /** On top of it for each table. */
  readonly breakDownTable: number;
  /** Fewest persons to open a station. */
  readonly minimum: number;
  /** Of a shift. */
  readonly longest: number;
}
