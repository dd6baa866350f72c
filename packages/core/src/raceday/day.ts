/**
 * Race day as records: who arrives where and when, what that needs, and how it gets there. Made from
 * passes and practice alone; the tables and the hand-out crew feed the layout. Times are seconds after
 * midnight (hours may pass 24), volumes litres, masses kilograms.
 */
import type { Side } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { Supply } from '../kinds.ts';
import type { Division, PlanRace, Served } from '../plan/plan.ts';
import type { Kilograms, Litres, Metres, Seconds } from '../units.ts';

/** Past results whose splits tell how runners of a race slow. */
export interface FittedField {
  readonly race: string;
  /** The file, as the plan names it. */
  readonly csv: string;
  /** Names of its columns. */
  readonly splits: readonly string[];
  /** Past finishers whose splits were used. */
  readonly runners: number;
}

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
  /** Absent where no past results tell it by splits. */
  readonly fitted?: readonly FittedField[];
}

/** One race's arrivals at one station, over all its served passes. */
export interface RaceArrivals {
  readonly race: string;
  readonly division: Division;
  /** Ascending, seconds after midnight; a runner counts once for each served pass. */
  readonly times: Float64Array;
  /** The same arrivals by served pass, in running order. Absent: the take is that of a leg of 20 minutes. */
  readonly byPass?: readonly PassArrivals[];
  /** Starters who are out before a served pass, summed over passes. */
  readonly out: number;
}

/** A race's arrivals at one served pass. */
export interface PassArrivals {
  /** Ascending, seconds after midnight. */
  readonly times: Float64Array;
  /** Mean time since their last drink, or since they crossed the start line, seconds. */
  readonly leg: Seconds;
}

/** Who arrives at one station. */
export interface StationArrivals {
  readonly station: string;
  readonly races: readonly RaceArrivals[];
  /** When the sweep passes the last time, of the races served, seconds after midnight; `null` without a cutoff. */
  readonly sweep: Seconds | null;
}

/** When arrivals come, seconds after midnight: the first, a tenth of them, half, nine tenths, the last. */
export interface Quantiles {
  readonly first: Seconds;
  readonly p10: Seconds;
  readonly p50: Seconds;
  readonly p90: Seconds;
  readonly last: Seconds;
}

/** Cups that stand poured before the first runner, for one drink. */
export interface PrePour {
  readonly cups: number;
  /** Of the day's cups, 0 to 1. */
  readonly share: number;
  /** Fewest cups with which the tables never run dry, with those who go on pouring. */
  readonly massCurve: number;
  /** Fewest cups by the house's rule. */
  readonly floor: number;
  /** What the tables hold; `null` where tables are made to hold it. */
  readonly room: number | null;
  readonly tables: number;
  /** Of cups on each table, the last perhaps not full. */
  readonly layers: number;
  /** Cups in a full layer of one table. */
  readonly cupsPerLayer?: number;
  /** Pourers of the station, who go on pouring both drinks. */
  readonly pourers: number;
}

/** What is sent of one thing, in whole packs. */
export interface Pack extends Supply {
  /** Pieces needed. */
  readonly need: number;
  /** Pieces in a pack. */
  readonly pack: number;
  /** Packs sent. */
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
  /** From the crew's arrival until the station is packed. */
  readonly hours: number;
  /** Crews of `total` one after another, none for longer than the plan's rule. */
  readonly shifts: number;
}

/** Full jugs that should be left at a clock time, seconds after midnight, of the drinks that come in jugs. */
export interface JugsLeft {
  readonly at: Seconds;
  readonly water?: number;
  readonly sportsDrink?: number;
}

/** If runners drank half as much again: the drink that runs out first, when, and when its captain would see it coming. */
export interface Shortage {
  readonly drink: 'water' | 'sportsDrink';
  /** After midnight. */
  readonly at: Seconds;
  /** The half hour at which fewer jugs are left than there should be; `null`: it runs out before one. */
  readonly seen: Seconds | null;
}

/** A second delivery to a station that would run out. */
export interface Resupply {
  readonly station: string;
  /** The stand-by vehicle, where the plan has one. */
  readonly vehicle?: string;
  readonly drink: 'water' | 'sportsDrink';
  /** From the call to the station, seconds. */
  readonly takes: Seconds;
  /** When the captain calls, and when it comes; `null` where nothing is seen in time to call. */
  readonly called: Seconds | null;
  readonly arrives: Seconds | null;
  readonly runsOut: Seconds;
  readonly inTime: boolean;
}

/** One station's day. */
export interface StationDay {
  readonly id: string;
  /** A runner counts once for each served pass. */
  readonly arrivals: number;
  readonly races: readonly (Quantiles & {
    readonly race: string;
    readonly arrivals: number;
    /** Mean time since their last drink, or since they crossed the start line, seconds. */
    readonly sinceDrink?: Seconds;
    /** What one arrival takes: cups of each drink (without waste), gels; and litres of both drinks. */
    readonly take?: {
      readonly water: number;
      readonly sportsDrink: number;
      readonly gel: number;
      readonly litres: Litres;
    };
  })[];
  /** `null` where nobody arrives. */
  readonly quantiles: Quantiles | null;
  /** Start of each clock minute, seconds after midnight, and arrivals in it by race. */
  readonly perMinute: readonly (readonly [minute: Seconds, counts: Readonly<Record<string, number>>])[];
  /** Arrivals in the busiest sliding 60 s, and when it begins, seconds after midnight. */
  readonly peak: { readonly count: number; readonly at: Seconds } | null;
  /** When the crew is there, after midnight; `null` where nobody arrives, as are the next two. */
  readonly crewAt: Seconds | null;
  /** When the station serves from, after midnight. */
  readonly openFrom: Seconds | null;
  /** Last arrival or sweep, the later, after midnight; race control releases it. */
  readonly openUntil: Seconds | null;
  /** When all is packed and the load stands ready to be collected, after midnight. */
  readonly packedAt?: Seconds | null;
  /** How drinks reach runners. */
  readonly handOut?: 'cups' | 'bottles';
  /** Needed on the day, waste included; none where bottles are filled. */
  readonly cups: { readonly water: number; readonly sportsDrink: number };
  /** Cups ordered: the reserve on top. */
  readonly ordered?: { readonly water: number; readonly sportsDrink: number };
  /** Ordered. */
  readonly gels: number;
  readonly prePour: { readonly [drink in 'water' | 'sportsDrink']?: PrePour };
  readonly volume: { readonly water: Litres; readonly sportsDrink: Litres };
  readonly tables: { readonly [kind in Served]: number };
  /** Trash boxes of each served direction. */
  readonly boxes?: number;
  /** Full jugs that should be left at a time; with fewer the captain calls for more. */
  readonly jugsLeft?: readonly JugsLeft[];
  /** If runners drank half as much again; `null` where it would last. */
  readonly shortage?: Shortage | null;
  readonly packs: readonly Pack[];
  readonly crew: DayCrew;
}

/** One stop of a run. */
export interface Stop {
  readonly station: string;
  /** After midnight. */
  readonly arrive: Seconds;
  /** After midnight. */
  readonly leave: Seconds;
  /** Course distance of the station, metres. */
  readonly measure: Metres;
  readonly side: Side;
  /** What is put down or taken up: pieces or packs, and their mass. */
  readonly load: readonly (Supply & { readonly count: number; readonly kg: Kilograms })[];
}

/** One way of a vehicle along the stations, to drop or to collect. */
export interface Run {
  readonly vehicle: string;
  readonly kind: 'drop' | 'collect';
  /** In course order. */
  readonly stops: readonly Stop[];
  /** Of the whole load. */
  readonly kg: Kilograms;
}

/** The day of all stations. */
export interface RaceDay {
  readonly stations: readonly StationDay[];
  readonly totals: { readonly packs: readonly Pack[]; readonly crew: number };
  readonly runs: readonly Run[];
  /** Second deliveries to the stations that would run out if runners drank half as much again. */
  readonly resupply?: readonly Resupply[];
  /** Races whose runners slow as splits of past results tell; absent where there are none. */
  readonly fitted?: readonly FittedField[];
  readonly findings: readonly Finding[];
}
