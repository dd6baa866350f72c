/**
 * What a GPX file holds, as columns of numbers: tracks, routes and waypoints (GPX 1.0 and 1.1).
 * Positions are degrees WGS 84; elevations metres, NaN inside a column where a point has none.
 */

import type { Latitude, Longitude, Metres } from '../units.ts';

/** One run of points as three columns of equal length. */
export interface GpxSegment {
  /** Degrees. */
  readonly lon: Float64Array;
  /** Degrees. */
  readonly lat: Float64Array;
  /** Metres; NaN where the point has no elevation. */
  readonly ele: Float64Array;
}

/** A track or a route. */
export interface GpxLine {
  readonly kind: 'track' | 'route';
  /** `null` where the file gives none. */
  readonly name: string | null;
  /** Empty segments are left out; a route is one segment. */
  readonly segments: readonly GpxSegment[];
  /** Of the file, from 1, on which its opening tag stands. */
  readonly line: number;
  /** Of that line, from 1. */
  readonly column: number;
}

/** A waypoint; a text is `null` where the file has none. */
export interface GpxWaypoint {
  readonly lon: Longitude;
  readonly lat: Latitude;
  readonly ele: Metres | null;
  readonly name: string | null;
  readonly comment: string | null;
  readonly description: string | null;
  readonly symbol: string | null;
  readonly type: string | null;
  /** Horizontal dilution of precision as the file gives it. */
  readonly hdop: number | null;
  /** Of the file, from 1, on which its opening tag stands. */
  readonly line: number;
  /** Of that line, from 1. */
  readonly column: number;
}

/** What one GPX file holds. */
export interface GpxDocument {
  /** As the caller named it. */
  readonly file: string;
  /** The `version` attribute, `null` where it is missing. */
  readonly version: string | null;
  readonly creator: string | null;
  readonly name: string | null;
  readonly tracks: readonly GpxLine[];
  readonly routes: readonly GpxLine[];
  readonly waypoints: readonly GpxWaypoint[];
}
