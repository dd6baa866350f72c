/**
 * The box around places on the ground as RFC 7946, section 5 has it: west, south, east, north;
 * west is larger than east where the box crosses the antimeridian.
 */
import { wrapDegrees } from '../geodesy/ellipsoid.ts';

/** The box around places, degrees (RFC 7946, section 5): west is larger than east where it crosses the antimeridian. */
export type Bounds = readonly [west: number, south: number, east: number, north: number];

/** Box of columns of degrees whose longitudes are continuous (they may pass ±180); at least one point. */
export function boundsOf(lon: ArrayLike<number>, lat: ArrayLike<number>): Bounds {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < lon.length; i++) {
    west = Math.min(west, lon[i]!);
    east = Math.max(east, lon[i]!);
    south = Math.min(south, lat[i]!);
    north = Math.max(north, lat[i]!);
  }
  if (east - west >= 360) return [-180, south, 180, north];
  return [inside(west), south, inside(east), north];
}

/** Keeps −180 and 180 as they are: a box may begin or end there. */
const inside = (lon: number): number => (lon >= -180 && lon <= 180 ? lon : wrapDegrees(lon));
