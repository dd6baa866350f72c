/** Points recorded on the ground, for tests. Not part of the package. */
import type { LonLat } from '../finding.ts';
import type { GpxDocument, GpxWaypoint } from '../gpx/document.ts';
import { ORIGIN, from, generator } from './courses.ts';

/** A recorded point as a test names it. */
export interface Recorded extends Partial<Pick<GpxWaypoint, 'hdop' | 'comment' | 'description'>> {
  readonly name: string | null;
  readonly at: LonLat;
}

/** The waypoints of a file `placed.gpx`, one on each line from line 2. */
export const placedDocument = (points: readonly Recorded[]): GpxDocument => ({
  file: 'placed.gpx',
  version: '1.1',
  creator: null,
  name: null,
  tracks: [],
  routes: [],
  waypoints: points.map(({ name, at: [lon, lat], hdop = null, comment = null, description = null }, k) => ({
    lon,
    lat,
    ele: null,
    name,
    comment,
    description,
    symbol: null,
    type: null,
    hdop,
    line: k + 2,
    column: 3,
  })),
});

/** The point at a measure of a course that runs due east from ORIGIN, so many metres to the right of it. */
export const eastward = (measure: number, right: number = 5): LonLat => from(from(ORIGIN, 90, measure), 180, right);

/** Draws from the standard normal distribution, repeatable (G. E. P. Box, M. E. Muller, 1958). */
export function gaussian(seed: number): () => number {
  const uniform = generator(seed);
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** A point displaced by a circular normal error whose 95 % radius is `r95` metres (−2·ln 0.05 = 2.4477²). */
export function disturbed(at: LonLat, r95: number, normal: () => number): LonLat {
  const sigma = r95 / Math.sqrt(-2 * Math.log(0.05));
  return from(from(at, 90, normal() * sigma), 0, normal() * sigma);
}
