/**
 * One flat frame for a course and the map beside it: metres east and north of the course's middle.
 * Model: azimuthal equidistant. Lengths are true to 0.01 % within 150 km of the middle, far better than a map's own metres.
 */
import type { Course } from '../course/course.ts';
import { wrapDegrees } from '../geodesy/ellipsoid.ts';
import { placeAfar } from '../geodesy/farFrame.ts';
import { type Frame, type Spot, frameAt, fromFrame, placeByGeodesic } from '../geodesy/frame.ts';
import type { LonLat } from '../finding.ts';
import type { GroundLine } from './ground.ts';

export interface Plane {
  readonly frame: Frame;
  /** The series hold over the whole of it. */
  readonly near: boolean;
}

/** A line in the plane: metres east and north, both of the same length. */
export interface PlaneLine {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Beyond so many degrees from the middle, and towards the poles, places are taken from geodesics one by one. */
const NEAR = 1;
const TEMPERATE = 79;

/** The plane around the middle of a course. */
export function planeOf({ lon, lat }: Course): Plane {
  const [west, east] = rangeOf(lon);
  const [south, north] = rangeOf(lat);
  const near = east - west < NEAR && north - south < NEAR && Math.max(-south, north) < TEMPERATE;
  return { frame: frameAt(wrapDegrees((west + east) / 2), (south + north) / 2), near };
}

function rangeOf(values: Float64Array): [number, number] {
  let least = Infinity;
  let most = -Infinity;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return [least, most];
}

/** Writes where a point in degrees lies. */
export function placeOn({ frame, near }: Plane, lon: number, lat: number, into: Spot): void {
  const dLon = wrapDegrees(lon - frame.lon);
  const dLat = lat - frame.lat;
  if (near && Math.abs(dLon) < 2 * NEAR && Math.abs(dLat) < 2 * NEAR) placeAfar(frame, dLon, dLat, into);
  else placeByGeodesic(frame, lon, lat, into);
}

export function drawnOn(plane: Plane, { lon, lat }: GroundLine): PlaneLine {
  const x = new Float64Array(lon.length);
  const y = new Float64Array(lon.length);
  const spot: Spot = { east: 0, north: 0 };
  for (let i = 0; i < lon.length; i++) {
    placeOn(plane, lon[i]!, lat[i]!, spot);
    x[i] = spot.east;
    y[i] = spot.north;
  }
  return { x, y };
}

/** The point in degrees at a place of the plane. */
export const fromPlane = ({ frame }: Plane, x: number, y: number): LonLat => fromFrame(frame, x, y);

/** Where on the segment from (x0, y0) to (x1, y1) the place nearest to (x, y) lies, 0 to 1; 0 on a segment without length. */
export function shareNearest(x: number, y: number, x0: number, y0: number, x1: number, y1: number): number {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const squared = dx * dx + dy * dy;
  if (squared === 0) return 0;
  const share = ((x - x0) * dx + (y - y0) * dy) / squared;
  return share < 0 ? 0 : share > 1 ? 1 : share;
}
