/**
 * The plan, version 1, as the rest of the code sees it: every quantity in SI units
 * (metres, litres, seconds, kilograms), every default filled in. The file's own shape
 * (texts such as "100 yd") is read by `schema.ts`.
 */
import type { Drawn, GapRule } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import type { Crew, Division, Practice, Supplies, SuppliesOverride } from './rules.ts';

export type { Crew, Division, Heat, Packs, Practice, Supplies, SuppliesOverride, TakeRates } from './rules.ts';

export type Units = 'metric' | 'imperial';
export type DeclaredSide = 'left' | 'right';
export type Served = 'gel' | 'sportsDrink' | 'water';
export type PointKind = 'drop' | 'access' | 'medical' | 'toilets' | 'radio' | 'other';

/**
 * Without `at`, the waypoint of that name in the course's GPX file; without `measure`, the distance that the
 * name says ("10 km").
 */
export interface PlanMark {
  readonly at?: LonLat;
  readonly measure?: number;
  readonly name?: string;
}

export interface PlanPart {
  readonly of: string;
  readonly from: number;
  /** Absent: to the end of the course it is taken from. */
  readonly to?: number;
}

/** Exactly one of `gpx`, `line` and `parts` is there. */
export interface PlanCourse {
  readonly id: string;
  readonly name: string;
  readonly gpx?: string;
  readonly line?: readonly (readonly number[])[];
  readonly parts?: readonly PlanPart[];
  /** Name or index over tracks, then routes. */
  readonly track?: string | number;
  readonly gaps: GapRule;
  readonly reverse: boolean;
  readonly drawn: Drawn;
  readonly length?: number;
  readonly marks: readonly PlanMark[];
  readonly certificate?: string;
}

/** Finish times in seconds, in one of four forms. */
export type FinishTimes =
  | { readonly median: number; readonly spread: number }
  | { readonly quantiles: readonly (readonly [share: number, seconds: number])[] }
  | { readonly times: readonly number[] }
  | { readonly csv: string; readonly column: string };

export interface PlanWave {
  /** Seconds after midnight. */
  readonly time: number;
  readonly entrants: number;
  readonly finish?: FinishTimes;
}

export interface PlanRace {
  readonly id: string;
  readonly name: string;
  readonly course: string;
  readonly division: Division;
  readonly waves: readonly PlanWave[];
  readonly finish?: FinishTimes;
  readonly slow?: readonly [number, number];
  readonly show: number;
  /** Persons a minute. */
  readonly startFlow?: number;
  readonly startWidth?: number;
  /** Seconds after midnight. */
  readonly cutoff?: number;
  readonly late: 'out' | 'served';
  readonly gradient: boolean;
}

export interface PlanPoint {
  readonly kind: PointKind;
  readonly at: LonLat;
  readonly name?: string;
  readonly street?: string;
  readonly note?: string;
}

export interface PassChoice {
  readonly race: string;
  /** Index among that race's passes, from 0. */
  readonly pass: number;
}

/** A station has `at` or `on`, never both. */
export interface PlanStation {
  readonly id: string;
  readonly name: string;
  readonly at?: LonLat;
  readonly on?: { readonly course: string; readonly measure: number; readonly side: DeclaredSide; readonly offset: number };
  /** Declared, as the lead direction's runners see it. */
  readonly side?: DeclaredSide;
  readonly lead?: PassChoice;
  /** Absent: every race of the plan. */
  readonly races?: readonly string[];
  readonly passes: 'lead' | 'all' | readonly PassChoice[];
  readonly serves: readonly Served[];
  readonly tables: { readonly [kind in Served]?: number };
  readonly boxes?: number;
  readonly width?: number;
  readonly fixed: boolean;
  readonly why?: string;
  readonly walked?: { readonly by: string; readonly date?: string };
  readonly practice: Partial<Practice>;
  /** Overrides of the plan's own, as read. */
  readonly supplies: SuppliesOverride;
  readonly crew: Partial<Crew>;
  readonly items: { readonly [kind in ItemKind]?: { readonly at: LonLat } };
  readonly points: readonly PlanPoint[];
  readonly people: { readonly captain?: string; readonly radio?: string; readonly phone?: string };
  readonly note?: string;
  readonly used?: { readonly [kind in Served]?: number };
}

export type ItemKind = 'sign' | 'gel' | 'sportsDrink' | 'water' | 'handOut' | 'trash';

export interface PlanZone {
  readonly name: string;
  readonly rule: 'keep-clear' | 'allowed';
  readonly polygon: readonly LonLat[];
}

export interface PlanVehicle {
  readonly id: string;
  readonly name: string;
  readonly kg: number;
  readonly places: number;
  readonly kmh: number;
  readonly stop: number;
  /** Seconds after midnight. */
  readonly from: number;
}

/** Times in seconds after midnight. */
export interface PlanClock {
  readonly course: string;
  readonly measure: number;
  readonly accessOpens?: number;
  readonly closes?: number;
  readonly sweep?: number;
  readonly reopens?: number;
}

export interface PlanWaiver {
  readonly code: string;
  readonly station?: string;
  readonly by: string;
  readonly reason: string;
  readonly date?: string;
}

/** Keys of a station that differ, in the file's own shape, by station id. */
export interface PlanVariant {
  readonly name: string;
  readonly stations: { readonly [station: string]: { readonly [key: string]: unknown } };
}

export interface Plan {
  readonly format: 'halfcup-plan';
  readonly version: 1;
  readonly name: string;
  readonly revision?: string;
  /** ISO 8601 calendar date. */
  readonly date?: string;
  readonly timeZone?: string;
  readonly units: Units;
  readonly language: string;
  readonly courses: readonly PlanCourse[];
  readonly races: readonly PlanRace[];
  readonly stations: readonly PlanStation[];
  readonly zones: readonly PlanZone[];
  readonly practice: Practice;
  readonly supplies: Supplies;
  readonly crew: Crew;
  readonly vehicles: readonly PlanVehicle[];
  readonly clock: readonly PlanClock[];
  readonly contacts: { readonly emergency?: string; readonly raceControl?: string; readonly radioChannel?: string };
  readonly waivers: readonly PlanWaiver[];
  readonly variants: readonly PlanVariant[];
  readonly context?: string;
}

/** Where a value of the plan's text stands, counted from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** A plan together with the very text it was read from. */
export interface PlanDocument {
  readonly file: string;
  readonly text: string;
  readonly plan: Plan;
  /** The place of the value at a JSON pointer, or of the nearest parent that exists. */
  readonly placeOf: (pointer: string) => Place;
}
