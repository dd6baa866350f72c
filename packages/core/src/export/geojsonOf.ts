/**
 * Single geometries as GeoJSON (RFC 7946) for other tools: a course, its passes by a point, places, polygons.
 * Lengths in metres, positions to 1e-8 of a degree (1 mm); lines are cut at the antimeridian. Loads Turf.
 */
import { bboxClip } from '@turf/bbox-clip';
import { featureCollection, lineString, multiLineString, multiPolygon, point, polygon } from '@turf/helpers';
import { rewind } from '@turf/rewind';
import { truncate } from '@turf/truncate';
import type {
  Feature,
  FeatureCollection,
  LineString,
  MultiLineString,
  MultiPolygon,
  Point,
  Polygon,
  Position,
} from 'geojson';
import { type Course, type Pass, courseLength, wantCourse, isPass } from '../course/course.ts';
import type { Outline, NamedPlace } from '../course/fromGeoJson.ts';
import type { LonLat } from '../finding.ts';
import { courseRuns, cutAtAntimeridian } from './lines.ts';
import { toMicro } from './rounding.ts';
import { listOf, want } from '../wants.ts';
import { isNamedPlace, isOutline } from '../course/fromGeoJson.ts';

const position = ([lon, lat]: LonLat): Position => [lon, lat];
const shortened = <One extends Feature>(one: One): One => truncate(one, { precision: 8, coordinates: 2 });

/** Properties of a course as a feature: `length` in metres. */
export interface CourseProperties {
  readonly course: string;
  readonly name: string;
  readonly length: number;
}

/**
 * A course as one line, or as several where it has skipped gaps or crosses the antimeridian; its vertices as they are, without elevations (`elevationAt` of `./geometry` has them).
 * @example
 * ```ts
 * import { courseFromGeoJson, courseToGeoJson } from '@halfcup/core/geojson';
 * const course = courseFromGeoJson({ type: 'LineString', coordinates: [[-17.4, -33.2], [-17.399, -33.2]] });
 * course.ok && courseToGeoJson(course.value).geometry.coordinates; // → [[-17.4, -33.2], [-17.399, -33.2]]
 * ```
 */
export function courseToGeoJson(course: Course): Feature<LineString | MultiLineString, CourseProperties> {
  wantCourse('courseToGeoJson', course);
  const lines = courseRuns(course)
    .flatMap(cutAtAntimeridian)
    .map((line) => line.map(position));
  const properties = { course: course.id, name: course.name, length: toMicro(courseLength(course)) };
  return shortened(lines.length === 1 ? lineString(lines[0]!, properties) : multiLineString(lines, properties));
}

/** Properties of a pass as a feature: all of it but the foot, which is the geometry. */
export type PassProperties = Omit<Pass, 'foot'>;

/**
 * Passes as points, each at its foot on the course, in their order.
 * @example
 * ```ts
 * import { courseFromGeoJson, passesToGeoJson } from '@halfcup/core/geojson';
 * import { indexCourse, passesOf } from '@halfcup/core/geometry';
 * const course = courseFromGeoJson({ type: 'LineString', coordinates: [[-17.4, -33.2], [-17.398, -33.2]] });
 * const passes = course.ok ? passesOf(indexCourse(course.value), [-17.399, -33.1999]) : [];
 * passesToGeoJson(passes).features.map(({ properties }) => properties.side); // → ['left']
 * ```
 */
export function passesToGeoJson(passes: readonly Pass[]): FeatureCollection<Point, PassProperties> {
  want('passesToGeoJson', 'passes', listOf(isPass), passes);
  return featureCollection(passes.map(({ foot, ...properties }) => shortened(point(position(foot), properties))));
}

/**
 * Named places as points.
 * @example
 * ```ts
 * import { placesToGeoJson } from '@halfcup/core/geojson';
 * placesToGeoJson([{ name: 'Pier', at: [-17.4, -33.2] }]).features[0]?.geometry.coordinates; // → [-17.4, -33.2]
 * ```
 */
export function placesToGeoJson(places: readonly NamedPlace[]): FeatureCollection<Point, NameProperties> {
  want('placesToGeoJson', 'places', listOf(isNamedPlace), places);
  return featureCollection(places.map(({ name, at }) => shortened(point(position(at), { name }))));
}

/** Properties of a place or a polygon as a feature; `null` without a name. */
export interface NameProperties {
  readonly name: string | null;
}

/**
 * Named polygons: each ring closed and turned counterclockwise; one that crosses the antimeridian is cut there, as the standard asks.
 * @example
 * ```ts
 * import { polygonsToGeoJson } from '@halfcup/core/geojson';
 * const yard = { name: 'School yard', polygon: [[-17.4, -33.2], [-17.4, -33.19], [-17.39, -33.19]] as const };
 * polygonsToGeoJson([yard]).features[0]?.geometry.coordinates; // → [[[-17.4, -33.2], [-17.39, -33.19], [-17.4, -33.19], [-17.4, -33.2]]]
 * ```
 */
export function polygonsToGeoJson(
  outlines: readonly Outline[],
): FeatureCollection<Polygon | MultiPolygon, NameProperties> {
  want('polygonsToGeoJson', 'outlines', listOf(isOutline), outlines);
  return featureCollection(outlines.map(({ name, polygon: corners }) => shortened(outlineFeature(corners, { name }))));
}

function outlineFeature(
  corners: readonly LonLat[],
  properties: NameProperties,
): Feature<Polygon | MultiPolygon, NameProperties> {
  const ring = continuous(corners);
  const whole = turned(polygon([[...ring, ring[0]!]], properties));
  const beyond = ring.map(([lon]) => (lon! > 180 ? 360 : lon! < -180 ? -360 : 0)).find((turn) => turn !== 0);
  if (beyond === undefined) return whole;
  const here = bboxClip(whole, [-180, -90, 180, 90]).geometry.coordinates as Position[][];
  const there = bboxClip(whole, [beyond - 180, -90, beyond + 180, 90]).geometry.coordinates as Position[][];
  return multiPolygon([here, there.map((one) => one.map(([lon, lat]) => [lon! - beyond, lat!]))], properties);
}

const turned = (one: Feature<Polygon, NameProperties>): Feature<Polygon, NameProperties> =>
  rewind(one) as Feature<Polygon, NameProperties>;

/** Longitudes that run on beyond ±180 rather than jump to the other side of the map. */
function continuous(corners: readonly LonLat[]): Position[] {
  const ring: Position[] = [];
  for (const [lon, lat] of corners) {
    const before = ring.at(-1)?.[0] ?? lon;
    ring.push([lon - 360 * Math.round((lon - before) / 360), lat]);
  }
  return ring;
}
