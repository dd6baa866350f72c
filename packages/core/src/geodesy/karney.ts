/**
 * Exact geodesics on WGS 84, by Karney's own code.
 * Source: C. F. F. Karney, "Algorithms for geodesics", J. Geodesy 87 (2013), doi:10.1007/s00190-012-0578-z.
 * Accuracy: 15 nm.
 */
import geodesic from 'geographiclib-geodesic';
import type { LonLat } from '../finding.ts';
import { normalAzimuth, wrapDegrees } from './ellipsoid.ts';

const { Geodesic } = geodesic;
const wgs84 = Geodesic.WGS84;

/** Length in metres and azimuth at the first point (degrees, 0 to 360) of the geodesic between two points in degrees. */
export function inverse(
  lon1: number,
  lat1: number,
  lon2: number,
  lat2: number,
): { length: number; azimuthDeg: number } {
  const { s12, azi1 } = wgs84.Inverse(lat1, lon1, lat2, lon2, Geodesic.DISTANCE | Geodesic.AZIMUTH);
  return { length: s12!, azimuthDeg: normalAzimuth(azi1!) };
}

/** The length alone, metres. */
export const inverseLength = (lon1: number, lat1: number, lon2: number, lat2: number): number =>
  wgs84.Inverse(lat1, lon1, lat2, lon2, Geodesic.DISTANCE).s12!;

/** Where one comes to from a point in degrees by an azimuth in degrees and a length in metres; longitude within ±180. */
export function direct(lon: number, lat: number, azimuthDeg: number, length: number): LonLat {
  const { lon2, lat2 } = wgs84.Direct(lat, lon, azimuthDeg, length, Geodesic.LATITUDE | Geodesic.LONGITUDE);
  return [lon2!, lat2!];
}

/**
 * Points that cut the geodesic between two points into `pieces` equal ones, ends left out.
 * Longitudes are continuous from `lon1`.
 */
export function between(lon1: number, lat1: number, lon2: number, lat2: number, pieces: number): LonLat[] {
  const line = wgs84.InverseLine(
    lat1,
    lon1,
    lat2,
    lon2,
    Geodesic.DISTANCE | Geodesic.LATITUDE | Geodesic.LONGITUDE | Geodesic.DISTANCE_IN,
  );
  const points: LonLat[] = [];
  for (let piece = 1; piece < pieces; piece++) {
    const { lon2: lon, lat2: lat } = line.Position((line.s13 * piece) / pieces, Geodesic.LATITUDE | Geodesic.LONGITUDE);
    points.push([lon1 + wrapDegrees(lon! - lon1), lat!]);
  }
  return points;
}
