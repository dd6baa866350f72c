/**
 * The plan, version 1, as the rest of the code sees it: every quantity in SI units
 * (metres, litres, seconds, kilograms), every default filled in. The file's own shape
 * (texts such as "100 yd") is read by `schema.ts`.
 */
import type { Drawn, GapRule } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import type { UnitSystem } from '../units.ts';
import type { PlanStation } from './planStation.ts';
import type { Crew, Division, Practice, Supplies } from './rules.ts';
import type { PlanWeather } from './weather.ts';
import type { PlanPerson, PlanPrices } from './year.ts';

export type { ItemForm, ItemKind } from '../kinds.ts';
export type { PassChoice, PlanPoint, PlanStation } from './planStation.ts';
export type { DeclaredSide, PointKind, Served } from '../kinds.ts';
export type { PlanWeather } from './weather.ts';
export type { PlanPerson, PlanPrice, PlanPrices, PricedKind } from './year.ts';
export type { Crew, Division, Heat, Packs, Practice, Supplies, SuppliesOverride, TakeRates } from './rules.ts';

/** Units in which a plan is shown and printed; they change no quantity and no default. */
export type Units = UnitSystem;

/**
 * A point whose course distance (metres) is known. Without `at`, the waypoint of that name in the course's GPX file;
 * without `measure`, the distance that the name says ("10 km").
 */
export interface PlanMark {
  readonly at?: LonLat;
  readonly measure?: number;
  readonly name?: string;
}

/** A stretch of another course. */
export interface PlanPart {
  /** Id of the course it is taken from. */
  readonly of: string;
  /** Course distance there, metres. */
  readonly from: number;
  /** Course distance there, metres. Absent: to the end of the course it is taken from. */
  readonly to?: number;
  /** Run from `to` back to `from`. */
  readonly reverse?: boolean;
}

/** One directed line on the ground, start to finish. Exactly one of `gpx`, `line` and `parts` is there. */
export interface PlanCourse {
  readonly id: string;
  /** The id where the file gives none. */
  readonly name: string;
  /** A file in the plan's own folder or below. */
  readonly gpx?: string;
  /** Longitude, latitude (degrees) and perhaps elevation (metres) of each point. */
  readonly line?: readonly (readonly number[])[];
  readonly parts?: readonly PlanPart[];
  /** Name or index over tracks, then routes. */
  readonly track?: string | number;
  readonly gaps: GapRule;
  /** Run from the last point to the first. */
  readonly reverse: boolean;
  readonly drawn: Drawn;
  /** Known length, metres: the course is calibrated to it. */
  readonly length?: number;
  /** The course is calibrated to them. */
  readonly marks: readonly PlanMark[];
  /** Of measurement; printed only. */
  readonly certificate?: string;
}

/** Finish times in seconds: log-normal (`spread` is the standard deviation of ln time), quantiles (a smooth curve between), a list, or a column of a file, whose columns named by distances are splits. */
export type FinishTimes =
  | { readonly median: number; readonly spread: number }
  | { readonly quantiles: readonly (readonly [share: number, seconds: number])[] }
  | { readonly times: readonly number[] }
  | { readonly csv: string; readonly column: string };

/** Entrants who start together. */
export interface PlanWave {
  /** Seconds after midnight. */
  readonly time: number;
  readonly entrants: number;
  /** Absent: the race's own, seeded over its waves, fastest first. */
  readonly finish?: FinishTimes;
}

/** One event on one course. */
export interface PlanRace {
  readonly id: string;
  /** The id where the file gives none. */
  readonly name: string;
  /** Id of its course. */
  readonly course: string;
  readonly division: Division;
  /** None: nothing of race day is reckoned for it. */
  readonly waves: readonly PlanWave[];
  readonly finish?: FinishTimes;
  /** By how much the first and the last slow over the second half, shares, by place between. Absent: as splits of past results tell, else by pace, 0.06 to 0.40, half of it under 30 km. */
  readonly slow?: readonly [number, number];
  /** Share of the entrants who start. */
  readonly show: number;
  /** Persons a minute over the start line. */
  readonly startFlow?: number;
  /** Metres, from which the flow is taken where none is given. */
  readonly startWidth?: number;
  /** At the finish, seconds after midnight. */
  readonly cutoff?: number;
  /** Whether runners behind the sweep are out, or still served. */
  readonly late: 'out' | 'served';
  /** Whether the pace follows the gradient. */
  readonly gradient: boolean;
}

/** A polygon in which nothing may stand, or outside of which nothing may. */
export interface PlanZone {
  readonly name: string;
  readonly rule: 'keep-clear' | 'allowed';
  /** Three corners or more; it closes by itself. */
  readonly polygon: readonly LonLat[];
}

/** A vehicle that drops and collects supplies. */
export interface PlanVehicle {
  readonly id: string;
  readonly name: string;
  /** What it carries, kilograms. */
  readonly kg: number;
  /** Stations' loads that it holds. */
  readonly places: number;
  /** Along the course, km/h. */
  readonly kmh: number;
  /** At each station, seconds. Absent: by the kilograms. */
  readonly stop?: number;
  /** Kilograms that its people load or unload in a minute. Absent: 30. */
  readonly unload?: number;
  /** Kept loaded at the start for second deliveries: no run is planned with it. */
  readonly standBy?: boolean;
  /** When it is loaded at the start of the course, seconds after midnight. */
  readonly from: number;
}

/** When a course is open to vehicles at one course distance (metres); times in seconds after midnight. */
export interface PlanClock {
  /** Id of the course. */
  readonly course: string;
  readonly measure: number;
  /** Vehicles of the race may come. */
  readonly accessOpens?: number;
  /** No vehicle may be there any more. */
  readonly closes?: number;
  /** The sweep comes by. */
  readonly sweep?: number;
  /** Vehicles may come again. */
  readonly reopens?: number;
}

/** What a finding shows, by `seenOf`: things by name, and `measured` in the finding's own unit. */
export type Seen = { readonly [thing: string]: string | number };

/** A finding that somebody answers for: it stays in the review, marked as waived. */
export interface PlanWaiver {
  /** Of the finding. */
  readonly code: string;
  /** Id of the station that the finding is about; absent: only where it is about none. */
  readonly station?: string;
  readonly by: string;
  readonly reason: string;
  /** ISO 8601 calendar date on which it was given; without one it does not hold. */
  readonly date?: string;
  /** What was seen when it was given; it holds for that, and for no other thing and nothing worse. */
  readonly seen?: Seen;
}

/** Keys of a station that differ, in the file's own shape, by station id. */
export interface PlanVariant {
  readonly name: string;
  readonly stations: { readonly [station: string]: { readonly [key: string]: unknown } };
}

/** A plan, version 1, as `readPlan` gives it: quantities in metres, seconds, litres and kilograms, defaults filled in. */
export interface Plan {
  readonly format: 'halfcup-plan';
  readonly version: 1;
  /** Empty where the file gives none. */
  readonly name: string;
  /** Of the plan, as the papers print it. */
  readonly revision?: string;
  /** ISO 8601 calendar date. */
  readonly date?: string;
  /** IANA name. */
  readonly timeZone?: string;
  readonly units: Units;
  /** BCP 47 tag of the papers. */
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
  /** File of a background drawing (GeoJSON). */
  readonly context?: string;
  /** File of the ground beside the courses: streets, houses, hydrants of a map, clipped along the courses. */
  readonly ground?: string;
  /** Expected on the day; it gives the heat of the supplies, where they say none. */
  readonly weather?: readonly PlanWeather[];
  /** Who comes to which station; never in exports for others. */
  readonly people?: { readonly crew: readonly PlanPerson[] };
  /** What supplies cost, and how long they take to come. */
  readonly prices?: PlanPrices;
  /** Numbers of stations that are kept, by station id. The others follow them along the course; with none kept, all do. */
  readonly numbers?: { readonly [station: string]: number };
}

/** Where a value of the plan's text stands, counted from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** A plan together with the very text it was read from. */
export interface PlanDocument {
  /** The file's name as it was given. */
  readonly file: string;
  readonly text: string;
  readonly plan: Plan;
  /** The place of the value at a JSON pointer (RFC 6901), or of the nearest parent that exists. */
  readonly placeOf: (pointer: string) => Place;
}
