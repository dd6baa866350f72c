/** The JSON document of what a street file holds and what of it lies beside the courses. */
import { type ClippedGround, isClipped } from '../ground/clipper.ts';
import { want } from '../wants.ts';

/** What `halfcup ground` prints. Counts of elements. */
export interface GroundDocument {
  readonly format: ClippedGround['format'];
  /** Day of the data; `null` where the file does not tell. */
  readonly date: string | null;
  readonly credit: string;
  readonly licence: string | null;
  /** What the file holds. */
  readonly read: ClippedGround['read'];
  /** What of it lies within 300 m of a course: parts of ways, surfaces, points. */
  readonly kept: { readonly ways: number; readonly areas: number; readonly points: number };
  /** What could not be used whole. */
  readonly skipped: ClippedGround['skipped'];
}

/**
 * The document of a clipped street file.
 * @example
 * ```ts
 * import { courseFromGeoJson } from '@halfcup/core/geojson';
 * import { clipGround, groundDocument } from '@halfcup/core/ground';
 * const course = courseFromGeoJson({ type: 'LineString', coordinates: [[-17.4, -33.2], [-17.39, -33.2]] });
 * const map = '<osm version="0.6"><node id="1" lat="-33.2" lon="-17.4"><tag k="emergency" v="fire_hydrant"/></node></osm>';
 * const bytes = Uint8Array.from(map, (character) => character.charCodeAt(0));
 * const read = course.ok ? await clipGround([bytes], { file: 'town.osm', courses: [course.value] }) : course;
 * read.ok && groundDocument(read.value).kept; // → { ways: 0, areas: 0, points: 1 }
 * ```
 */
export function groundDocument(clipped: ClippedGround): GroundDocument {
  want('groundDocument', 'clipped', isClipped, clipped);
  const { ground, format, read, skipped } = clipped;
  const { ways, areas, points, source } = ground;
  const kept = { ways: ways.length, areas: areas.length, points: points.length };
  return { format, ...source, read, kept, skipped };
}
