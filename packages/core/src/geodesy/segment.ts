/**
 * Length and azimuth of one segment of a line on WGS 84.
 * Up to 200 m and 80° of latitude by the mid-latitude formula (Gauss; any text on geodetic computing),
 * beyond by Karney. Accuracy against Karney: 0.3 µm in length, 1e-7° in azimuth.
 */
import { DEGREES, ECCENTRICITY_2, EQUATORIAL_RADIUS, RADIANS, normalAzimuth, wrapDegrees } from './ellipsoid.ts';
import type { Degrees, Latitude, Longitude, Metres } from '../units.ts';
import { inverse, inverseLength } from './karney.ts';
import { position, want } from '../wants.ts';

/** Longest segment, metres, that the mid-latitude formula takes. */
export const SHORT = 200;
/** Highest latitude, degrees, up to which it is taken. */
export const TEMPERATE = 80;

/** Degrees of latitude that are surely within 200 m, so that no length need be computed to decide. */
const NEAR_LAT = 0.0019;

function wantPositions(who: string, lon1: number, lat1: number, lon2: number, lat2: number): void {
  want(who, 'lon1, lat1', position, [lon1, lat1]);
  want(who, 'lon2, lat2', position, [lon2, lat2]);
}

/**
 * Length in metres of the segment between two points in degrees: the geodesic on WGS 84, across the antimeridian too; NaN where a number is none.
 * Source: C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87 (2013), doi:10.1007/s00190-012-0578-z; up to 200 m within 0.3 µm of it.
 * @example
 * ```ts
 * import { segmentLength } from '@halfcup/core/geometry';
 *
 * segmentLength(-30.1, 12.2, -30.099, 12.2); // → 108.8217
 * segmentLength(179.9995, 12.2, -179.9995, 12.2); // → 108.8217
 * ```
 */
export function segmentLength(lon1: Longitude, lat1: Latitude, lon2: Longitude, lat2: Latitude): Metres {
  wantPositions('segmentLength', lon1, lat1, lon2, lat2);
  return lengthBetween(lon1, lat1, lon2, lat2);
}

/** As `segmentLength`, unasked: NaN for what is no position. */
export function lengthBetween(lon1: Longitude, lat1: Latitude, lon2: Longitude, lat2: Latitude): Metres {
  const dLat = lat2 - lat1;
  if (!(dLat < NEAR_LAT && dLat > -NEAR_LAT && lat1 < TEMPERATE && lat1 > -TEMPERATE))
    return inverseLength(lon1, lat1, lon2, lat2);
  const dLon = wrapDegrees(lon2 - lon1);
  const mid = (lat1 + 0.5 * dLat) * RADIANS;
  const sin = Math.sin(mid);
  const w2 = 1 - ECCENTRICITY_2 * sin * sin;
  const prime = EQUATORIAL_RADIUS / Math.sqrt(w2);
  const east = prime * Math.cos(mid) * dLon * RADIANS;
  const north = ((prime * (1 - ECCENTRICITY_2)) / w2) * dLat * RADIANS;
  const squared = east * east + north * north;
  return squared <= SHORT * SHORT ? Math.sqrt(squared) : inverseLength(lon1, lat1, lon2, lat2);
}

/**
 * Azimuth at the first point of the segment between two points in degrees: degrees clockwise from north, from 0 to under 360; 0 for equal points.
 * Source: Karney (2013), doi:10.1007/s00190-012-0578-z; up to 200 m within 1e-7° of it.
 * @example
 * ```ts
 * import { segmentAzimuthDeg } from '@halfcup/core/geometry';
 *
 * segmentAzimuthDeg(-30.1, 12.2, -30.1, 12.201); // → 0
 * segmentAzimuthDeg(-30.1, 12.2, -30.101, 12.2); // → 270.0001
 * ```
 */
export function segmentAzimuthDeg(lon1: Longitude, lat1: Latitude, lon2: Longitude, lat2: Latitude): Degrees {
  wantPositions('segmentAzimuthDeg', lon1, lat1, lon2, lat2);
  const dLat = lat2 - lat1;
  const dLon = wrapDegrees(lon2 - lon1);
  if (dLat === 0 && dLon === 0) return 0;
  const mid = (lat1 + 0.5 * dLat) * RADIANS;
  const sin = Math.sin(mid);
  const w2 = 1 - ECCENTRICITY_2 * sin * sin;
  const prime = EQUATORIAL_RADIUS / Math.sqrt(w2);
  const east = prime * Math.cos(mid) * dLon * RADIANS;
  const north = ((prime * (1 - ECCENTRICITY_2)) / w2) * dLat * RADIANS;
  if (Math.abs(lat1) < TEMPERATE && east * east + north * north <= SHORT * SHORT) {
    return normalAzimuth(Math.atan2(east, north) * DEGREES - 0.5 * dLon * sin);
  }
  return inverse(lon1, lat1, lon2, lat2).azimuthDeg;
}
