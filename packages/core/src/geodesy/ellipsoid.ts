/**
 * WGS 84, and angles in degrees.
 * Source: NGA.STND.0036 (WGS 84 defining parameters a and 1/f).
 */

/** Equatorial radius, metres. */
export const EQUATORIAL_RADIUS = 6378137;
export const FLATTENING: number = 1 / 298.257223563;
/** First eccentricity squared. */
export const ECCENTRICITY_2: number = FLATTENING * (2 - FLATTENING);

export const RADIANS: number = Math.PI / 180;
export const DEGREES: number = 180 / Math.PI;

/** A difference of longitudes in degrees, brought to −180 (excluded) … 180. */
export function wrapDegrees(difference: number): number {
  if (difference > -180 && difference <= 180) return difference;
  const turned = difference - 360 * Math.floor((difference + 180) / 360);
  return turned === -180 ? 180 : turned;
}

/** An azimuth in degrees, brought to 0 … 360 (excluded). */
export function normalAzimuth(azimuthDeg: number): number {
  const turned = azimuthDeg % 360;
  const positive = turned < 0 ? turned + 360 : turned;
  return positive === 360 ? 0 : positive + 0;
}

/** The smaller angle between two azimuths, 0 to 180 degrees. */
export const azimuthDifference = (a: number, b: number): number => Math.abs(wrapDegrees(a - b));
