/**
 * The plan as a person writes it: quantities as numbers (SI) or texts with their unit, most keys left out. `readPlan` turns it
 * into a `Plan`. The keys are those of `schema.ts`, which `input.test.ts` holds.
 */
import type { Drawn, GapRule } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import type { DeclaredSide, ItemKind, Served } from '../kinds.ts';
import type { Division, PassChoice, PlanPoint, PlanWaiver, Units } from './plan.ts';
import type { PlanPrice } from './year.ts';
import type { Crew, Heat, Packs, Practice, Supplies, TakeRates } from './rules.ts';

/** Metres, seconds, litres or kilograms as a number, or a text with its unit: `"100 yd"`, `"4:25:00"`, `"7 fl oz"`, `"8.3 lb"`. */
export type Quantity = number | string;

/** A mark: `at` and `measure`, or the name of a waypoint that says its distance or comes with one. */
export interface MarkInput {
  readonly at?: LonLat;
  readonly measure?: Quantity;
  readonly name?: string;
}

/** A course: exactly one of `gpx`, `line` and `parts`. */
export interface CourseInput {
  readonly id: string;
  readonly name?: string;
  readonly gpx?: string;
  /** `[longitude, latitude]` or `[longitude, latitude, elevation]` of each point. */
  readonly line?: readonly (readonly number[])[];
  readonly parts?: readonly {
    readonly of: string;
    readonly from?: Quantity;
    readonly to?: Quantity;
    /** Run from `to` back to `from`. */
    readonly reverse?: boolean;
  }[];
  readonly track?: string | number;
  readonly gaps?: GapRule;
  readonly reverse?: boolean;
  readonly drawn?: Drawn;
  readonly length?: Quantity;
  readonly marks?: readonly MarkInput[];
  readonly certificate?: string;
}

/** Finish times: a median with its spread, quantiles, a list, or a column of a file. */
export type FinishInput =
  | { readonly median: Quantity; readonly spread: number }
  | { readonly quantiles: readonly (readonly [share: number, time: Quantity])[] }
  | { readonly times: readonly Quantity[] }
  | { readonly csv: string; readonly column: string };

/** Entrants who start together; `time` is a clock time, `"08:00"`. */
export interface WaveInput {
  readonly time: string;
  readonly entrants: number;
  readonly finish?: FinishInput;
}

/** A race on one course. */
export interface RaceInput {
  readonly id: string;
  readonly name?: string;
  readonly course: string;
  readonly division?: Division;
  readonly waves?: readonly WaveInput[];
  readonly finish?: FinishInput;
  readonly slow?: readonly [number, number];
  readonly show?: number;
  readonly startFlow?: number;
  readonly startWidth?: Quantity;
  /** A clock time, as are all below that are texts alone. */
  readonly cutoff?: string;
  readonly late?: 'out' | 'served';
  readonly gradient?: boolean;
}

/** Distances of signs, tables and trash, and what the checks hold them to. */
export type PracticeInput = {
  readonly [key in keyof Practice]?: key extends 'sideConfidence' | 'maxGrade' ? number : Quantity;
};

/** Cups, drinks, gels and what they come in. */
export interface SuppliesInput {
  readonly heat?: Heat;
  readonly wbgtC?: number;
  readonly heatSteps?: readonly [number, number];
  readonly gelOrder?: number;
  readonly handOut?: 'cups' | 'bottles';
  readonly flavours?: Supplies['flavours'];
  readonly drinkRate?: number;
  readonly waterShare?: number;
  readonly take?: { readonly [division in Division]?: TakeRates };
  readonly waste?: number;
  readonly reserve?: number;
  readonly cup?: Quantity;
  readonly fill?: number;
  readonly cupsPerLayer?: number;
  readonly layers?: number;
  readonly packs?: { readonly [pack in keyof Packs]?: pack extends 'waterJug' | 'sportsDrinkJug' ? Quantity : number };
  readonly weights?: { readonly [item in keyof Packs | 'table' | 'sign' | 'box']?: Quantity };
  readonly cupsPerBag?: number;
  readonly cupsPerBox?: number;
  readonly resupply?: { readonly at: number; readonly takes: Quantity };
  readonly prePourFloor?: Supplies['prePourFloor'];
  readonly prePourSafety?: number;
}

/** Hands at a station, and how fast they are. */
export type CrewInput = {
  readonly [key in keyof Crew]?: key extends
    | 'handSpacing'
    | 'tapTime'
    | 'pourWithin'
    | 'ready'
    | 'setUp'
    | 'breakDown'
    | 'breakDownTable'
    | 'longest'
    ? Quantity
    : number;
};

/** All keys of a station but its id: what a variant may change. */
export interface StationChanges {
  readonly name?: string;
  readonly at?: LonLat;
  readonly on?: {
    readonly course: string;
    readonly measure: Quantity;
    readonly side: DeclaredSide;
    readonly offset?: Quantity;
  };
  readonly side?: DeclaredSide;
  readonly lead?: PassChoice;
  readonly races?: readonly string[];
  readonly passes?: 'lead' | 'all' | readonly PassChoice[];
  readonly serves?: readonly Served[];
  readonly tables?: { readonly [kind in Served]?: number };
  readonly boxes?: number;
  readonly width?: Quantity;
  readonly street?: string;
  readonly fixed?: boolean;
  readonly why?: string;
  readonly walked?: { readonly by: string; readonly date?: string };
  readonly practice?: PracticeInput;
  readonly supplies?: SuppliesInput;
  readonly crew?: CrewInput;
  readonly items?: { readonly [kind in ItemKind]?: { readonly at: LonLat } };
  readonly points?: readonly PlanPoint[];
  readonly people?: { readonly captain?: string; readonly radio?: string; readonly phone?: string };
  readonly note?: string;
  readonly used?: { readonly [kind in Served]?: number };
}

/** A station: exactly one of `at` and `on`. */
export interface StationInput extends StationChanges {
  readonly id: string;
}

/** A vehicle that drops and collects. */
export interface VehicleInput {
  readonly id: string;
  readonly name?: string;
  readonly kg?: number;
  readonly places?: number;
  readonly kmh?: number;
  readonly stop?: Quantity;
  readonly unload?: number;
  readonly standBy?: boolean;
  readonly from?: string;
}

/** When a course is open to vehicles at one course distance. */
export interface ClockInput {
  readonly course: string;
  readonly measure: Quantity;
  readonly accessOpens?: string;
  readonly closes?: string;
  readonly sweep?: string;
  readonly reopens?: string;
}

/** What is expected from a clock time until the next: wet-bulb globe temperature and air in °C, humidity 0 to 1, wind in km/h. */
export interface WeatherInput {
  readonly at: string;
  readonly wbgtC?: number;
  readonly airC?: number;
  readonly humidity?: number;
  readonly windKmh?: number;
}

/** One person of the roster; clock times. */
export interface PersonInput {
  readonly name: string;
  readonly station: string;
  readonly role?: string;
  readonly from?: string;
  readonly until?: string;
  readonly phone?: string;
}

/** What one pack of a supply costs, how many are sold together, and days until it comes. */
export interface PriceInput {
  readonly kind: PlanPrice['kind'];
  readonly price: number;
  readonly sold?: number;
  readonly leadDays?: number;
}

/** A plan, version 1, as a person or a program writes it: what `readPlan` takes. Positions are `[longitude, latitude]`. */
export interface PlanInput {
  readonly format: 'halfcup-plan';
  readonly version: 1;
  readonly name?: string;
  readonly revision?: string;
  readonly date?: string;
  readonly timeZone?: string;
  readonly units?: Units;
  readonly language?: string;
  readonly courses: readonly CourseInput[];
  readonly races: readonly RaceInput[];
  readonly stations: readonly StationInput[];
  readonly zones?: readonly {
    readonly name?: string;
    readonly rule: 'keep-clear' | 'allowed';
    readonly polygon: readonly LonLat[];
  }[];
  readonly practice?: PracticeInput;
  readonly supplies?: SuppliesInput;
  readonly crew?: CrewInput;
  readonly vehicles?: readonly VehicleInput[];
  readonly clock?: readonly ClockInput[];
  readonly contacts?: { readonly emergency?: string; readonly raceControl?: string; readonly radioChannel?: string };
  readonly waivers?: readonly PlanWaiver[];
  readonly variants?: readonly {
    readonly name: string;
    readonly stations?: { readonly [station: string]: StationChanges };
  }[];
  readonly context?: string;
  readonly ground?: string;
  readonly weather?: readonly WeatherInput[];
  readonly people?: { readonly crew?: readonly PersonInput[] };
  readonly prices?: { readonly currency?: string; readonly items?: readonly PriceInput[] };
  readonly numbers?: { readonly [station: string]: number };
}
