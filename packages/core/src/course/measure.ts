/**
 * Raw measure: the running sum of WGS 84 geodesic lengths, slope ignored.
 * Accuracy: 0.1 mm on 42 km against Karney on every segment.
 */
import { lengthBetween } from '../geodesy/segment.ts';
import { column, want } from '../wants.ts';

/**
 * Raw measure at each of n vertices in degrees: the running sum of segment lengths in metres, from 0.
 * Columns of equal length; empty ones give an empty one.
 * @example
 * ```ts
 * import { measureLine } from '@halfcup/core/geometry';
 *
 * measureLine(Float64Array.of(-30.1, -30.099, -30.099), Float64Array.of(12.2, 12.2, 12.201)); // → [0, 108.822, 219.446]
 * ```
 */
export function measureLine(lon: Float64Array, lat: Float64Array): Float64Array {
  want('measureLine', 'lon', column, lon);
  want('measureLine', 'lat', column, lat);
  if (lat.length !== lon.length)
    throw new RangeError(`measureLine wants columns of equal length; found ${lon.length} and ${lat.length}`);
  const raw = new Float64Array(lon.length);
  let sum = 0;
  for (let i = 1; i < lon.length; i++) {
    sum += lengthBetween(lon[i - 1]!, lat[i - 1]!, lon[i]!, lat[i]!);
    raw[i] = sum;
  }
  if (Number.isNaN(sum))
    throw new RangeError(
      `measureLine wants positions in degrees; vertex ${raw.findIndex(Number.isNaN)} is none, or the one before it`,
    );
  return raw;
}
