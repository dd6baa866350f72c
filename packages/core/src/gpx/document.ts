/**
 * What a GPX file holds, as columns of numbers: tracks, routes and waypoints (GPX 1.0 and 1.1).
 * Positions are degrees WGS 84; elevations metres, NaN inside a column where a point has none.
 */

import type { Latitude, Longitude, Metres } from '../units.ts';

/** One run of points. The three columns have equal length. */
export interface GpxSegment {
  readonly lon: Float64Array;
  readonly lat: Float64Array;
  /** NaN where the point has no elevation. */
  readonly ele: Float64Array;
}

export interface GpxLine {
  readonly kind: 'track' | 'route';
  /** `null` where the file gives none. */
  readonly name: string | null;
  /** Empty segments are left out; a route is one segment. */
  readonly segments: readonly GpxSegment[];
  /** Where its opening tag stands, counted from 1. */
  readonly line: number;
  readonly column: number;
}

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
  readonly line: number;
  readonly column: number;
}

export interface GpxDocument {
  readonly file: string;
  /** The `version` attribute, `null` where it is missing. */
  readonly version: string | null;
  readonly creator: string | null;
  readonly name: string | null;
  readonly tracks: readonly GpxLine[];
  readonly routes: readonly GpxLine[];
  readonly waypoints: readonly GpxWaypoint[];
}
