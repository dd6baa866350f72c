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
  /** When each crosses the start line. */
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
  /** Ascending clock times; a runner counts once for each served pass. */
  readonly times: Float64Array;
  /** Starters who are out before a served pass, summed over passes. */
  readonly out: number;
}

/** Who arrives at one station. */
export interface StationArrivals {
  readonly station: string;
  readonly races: readonly RaceArrivals[];
  /** When the sweep passes the last time, of the races served; `null` without a cutoff. */
  readonly sweep: number | null;
}

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
  readonly massCurve: number;
  readonly floor: number;
  /** What the tables hold; `null` where tables are made to hold it. */
  readonly room: number | null;
  readonly tables: number;
  readonly layers: number;
  /** Fewest pourers with whom the curve alone would do. */
  readonly pourers: number;
}

export interface Pack {
  readonly item: string;
  readonly need: number;
  readonly pack: number;
  readonly count: number;
}

export interface DayCrew {
  readonly handOut: number;
  readonly pour: number;
  readonly gel: number;
  readonly clean: number;
  readonly captain: number;
  readonly total: number;
  readonly hours: number;
  readonly shifts: number;
}

/** One station's day. */
export interface StationDay {
  readonly id: string;
  readonly arrivals: number;
  readonly races: readonly (Quantiles & { readonly race: string; readonly arrivals: number })[];
  /** `null` where nobody arrives. */
  readonly quantiles: Quantiles | null;
  /** Start of each clock minute (seconds), and arrivals in it by race. */
  readonly perMinute: readonly (readonly [minute: number, counts: Readonly<Record<string, number>>])[];
  /** Busiest sliding 60 s. */
  readonly peak: { readonly count: number; readonly at: number } | null;
  readonly crewAt: number | null;
  readonly openFrom: number | null;
  readonly openUntil: number | null;
  readonly cups: { readonly water: number; readonly sportsDrink: number };
  readonly gels: number;
  readonly prePour: { readonly [drink in 'water' | 'sportsDrink']?: PrePour };
  /** Litres. */
  readonly volume: { readonly water: number; readonly sportsDrink: number };
  readonly tables: { readonly [kind in Served]: number };
  readonly packs: readonly Pack[];
  readonly crew: DayCrew;
}

export interface Stop {
  readonly station: string;
  readonly arrive: number;
  readonly leave: number;
  readonly measure: number;
  readonly side: 'left' | 'right' | 'unclear';
  readonly load: readonly { readonly item: string; readonly count: number; readonly kg: number }[];
}

export interface Run {
  readonly vehicle: string;
  readonly kind: 'drop' | 'collect';
  readonly stops: readonly Stop[];
  readonly kg: number;
}

export interface RaceDay {
  readonly stations: readonly StationDay[];
  readonly totals: { readonly packs: readonly Pack[]; readonly crew: number };
  readonly runs: readonly Run[];
  readonly findings: readonly Finding[];
}
