/**
 * What is known of a station before anything is laid out: its passes by every race,
 * the directions in which runners come, and the legs between stations.
 */
import type { Pass, Side } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import type { DeclaredSide, PlanStation, Practice } from '../plan/plan.ts';
import type { Degrees, Metres } from '../units.ts';

/** A pass of a station by one race. */
export interface StationPass extends Pass {
  /** Its id. */
  readonly race: string;
  /** Id of the race's course. */
  readonly course: string;
  /** Index among that race's passes of this station, from 0. */
  readonly pass: number;
  /** Served, or merely seen. */
  readonly served: boolean;
}

/** Passes that run the same way over the same ground: where runners come from. */
export interface Direction {
  /** The one that the tables are laid out for. */
  readonly lead: boolean;
  /** Id of the course along which the items are placed. */
  readonly course: string;
  /** Id of the race of that pass. */
  readonly race: string;
  /** Course distance of the pin's foot on the pass along which the items are placed. */
  readonly measure: Metres;
  /** Of running, at that foot. */
  readonly azimuthDeg: Degrees;
  /** Of the tables, as these runners see it. */
  readonly side: Side;
  /** Indices into the station's passes. */
  readonly passes: readonly number[];
}

/** Running from one served pass to the next, or from the start, or to the finish. Metres. */
export interface Leg {
  /** `start`, or a station's id. */
  readonly from: string;
  /** `finish`, or a station's id. */
  readonly to: string;
  readonly length: Metres;
  /** Course distance at which the leg ends. */
  readonly end: Metres;
}

/** How far apart stations are for the runners of one race. Metres. */
export interface RaceSpacing {
  /** Its id. */
  readonly race: string;
  /** Id of its course. */
  readonly course: string;
  /** In running order, over served passes. */
  readonly legs: readonly Leg[];
  readonly longest: Metres;
  readonly shortest: Metres;
  readonly mean: Metres;
}

/** A station before anything is laid out: where it stands, who passes it and from which directions. */
export interface SeenStation {
  readonly id: string;
  readonly name: string;
  /** Index in the plan's stations. */
  readonly index: number;
  readonly station: PlanStation;
  /** The plan's, with the station's own laid over. */
  readonly practice: Practice;
  /** The pin. */
  readonly at: LonLat;
  /** The declared side as the lead's runners see it; `null` where the plan declares none. */
  readonly declared: DeclaredSide | null;
  /** By race in the plan's order, then in running order. */
  readonly passes: readonly StationPass[];
  /** The lead first. */
  readonly directions: readonly Direction[];
  /** Nearest place on any course that the station's races run, when there is no pass. */
  readonly nearest: { readonly course: string; readonly measure: Metres; readonly distance: Metres } | null;
}
