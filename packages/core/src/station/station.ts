/**
 * What is known of a station before anything is laid out: its passes by every race,
 * the directions in which runners come, and the legs between stations.
 */
import type { Pass, Side } from '../course/course.ts';
import type { Degrees, Metres } from '../units.ts';

/** A pass of a station by one race. */
export interface StationPass extends Pass {
  readonly race: string;
  readonly course: string;
  /** Index among that race's passes of this station, from 0. */
  readonly pass: number;
  /** Served, or merely seen. */
  readonly served: boolean;
}

/** Passes that run the same way over the same ground. */
export interface Direction {
  readonly lead: boolean;
  readonly course: string;
  readonly race: string;
  /** Course distance of the pin's foot on the pass along which the items are placed. */
  readonly measure: Metres;
  readonly azimuthDeg: Degrees;
  readonly side: Side;
  /** Indices into the station's passes. */
  readonly passes: readonly number[];
}

export interface Leg {
  /** `start`, or a station's id. */
  readonly from: string;
  /** `finish`, or a station's id. */
  readonly to: string;
  readonly length: Metres;
  /** Course distance at which the leg ends. */
  readonly end: Metres;
}

export interface RaceSpacing {
  readonly race: string;
  readonly course: string;
  readonly legs: readonly Leg[];
  readonly longest: Metres;
  readonly shortest: Metres;
  readonly mean: Metres;
}
