/**
 * Race day as records: who arrives where and when, what that needs, and how it gets there. Made from
 * passes and practice alone; the tables and the hand-out crew feed the layout. Times are seconds after
 * midnight (hours may pass 24), volumes litres, masses kilograms.
 */
import type { Finding } from '../finding.ts';
import type { Division, PlanRace, Served } from '../plan/plan.ts';

/** All starters of one race, fastest seed first within a wave. Columns of equal length. */
export interface Field {
  readonly race: PlanRace;
  readonly division: Division;
  /** When each crosses the start line, seconds after midnight. */
  readonly start: Float64Array;
  /** From crossing the line to the finish, seconds. */
  readonly finish: Float64Array;
  /** How much each slows over the second half: `slow` of the pace model. */
  readonly slow: Float64Array;
}

/** One race's arrivals at one station, over all its served passes. */
export interface RaceArrivals {
  readonly race: string;
  readonly division: Division;
  /** Ascending, seconds after midnight; a runner counts once for each served pass. */
  readonly times: Float64Array;
  /** Starters who are out before a served pass, summed over passes. */
  readonly out: number;
}

/** Who arrives at one station. */
export interface StationArrivals {
  readonly station: string;
  readonly races: readonly RaceArrivals[];
  /** When the sweep passes the last time, of the races served, seconds after midnight; `null` without a cutoff. */
  readonly sweep: number | null;
}

/** When arrivals come, seconds after midnight: the first, a tenth of them, half, nine tenths, the last. */
export interface Quantiles {
  readonly first: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly last: number;
}

/** Cups that stand poured before the first runner, for one drink. */
export interface PrePour {
  readonly cups: number;
  /** Of the day's cups, 0 to 1. */
  readonly share: number;
  /** Fewest cups with which the tables never run dry. */
  readonly massCurve: number;
  /** Fewest cups by the house's rule. */
  readonly floor: number;
  /** What the tables hold; `null` where tables are made to hold it. */
  readonly room: number | null;
  readonly tables: number;
  readonly layers: number;
  /** Fewest pourers with whom the curve alone would do. */
  readonly pourers: number;
}

/** What is sent of one thing, in whole packs. */
export interface Pack {
  readonly item: string;
  /** Pieces needed, pieces in a pack, and packs sent. */
  readonly need: number;
  readonly pack: number;
  readonly count: number;
}

/** Persons that one station has at a time, by what they do. */
export interface DayCrew {
  readonly handOut: number;
  readonly pour: number;
  readonly gel: number;
  readonly clean: number;
  readonly captain: number;
  /** Of all, and no fewer than it takes to open. */
  readonly total: number;
  /** From the crew's arrival until the station closes, and the shifts that it takes. */
  readonly hours: number;
  readonly shifts: number;
}

/** One station's day. */
export interface StationDay {
  readonly id: string;
  /** A runner counts once for each served pass. */
  readonly arrivals: number;
  readonly races: readonly (Quantiles & { readonly race: string; readonly arrivals: number })[];
  /** `null` where nobody arrives. */
  readonly quantiles: Quantiles | null;
  /** Start of each clock minute (seconds), and arrivals in it by race. */
  readonly perMinute: readonly (readonly [minute: number, counts: Readonly<Record<string, number>>])[];
  /** Arrivals in the busiest sliding 60 s, and when it begins, seconds after midnight. */
  readonly peak: { readonly count: number; readonly at: number } | null;
  /** When the crew is there, and from when to when the station serves, seconds after midnight. */
  readonly crewAt: number | null;
  readonly openFrom: number | null;
  readonly openUntil: number | null;
  readonly cups: { readonly water: number; readonly sportsDrink: number };
  /** Ordered. */
  readonly gels: number;
  readonly prePour: { readonly [drink in 'water' | 'sportsDrink']?: PrePour };
  /** Litres. */
  readonly volume: { readonly water: number; readonly sportsDrink: number };
  readonly tables: { readonly [kind in Served]: number };
  readonly packs: readonly Pack[];
  readonly crew: DayCrew;
}

/** One stop of a run. */
export interface Stop {
  readonly station: string;
  /** Seconds after midnight. */
  readonly arrive: number;
  readonly leave: number;
  /** Course distance of the station, metres. */
  readonly measure: number;
  readonly side: 'left' | 'right' | 'unclear';
  /** What is put down or taken up: pieces or packs, and their mass. */
  readonly load: readonly { readonly item: string; readonly count: number; readonly kg: number }[];
}

/** One way of a vehicle along the stations, to drop or to collect. */
export interface Run {
  readonly vehicle: string;
  readonly kind: 'drop' | 'collect';
  /** In course order. */
  readonly stops: readonly Stop[];
  /** Of the whole load. */
  readonly kg: number;
}

/** The day of all stations. */
export interface RaceDay {
  readonly stations: readonly StationDay[];
  readonly totals: { readonly packs: readonly Pack[]; readonly crew: number };
  readonly runs: readonly Run[];
  readonly findings: readonly Finding[];
}
