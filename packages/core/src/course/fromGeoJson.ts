/**
 * Courses, places and polygons out of GeoJSON (RFC 7946) that another tool has made: any of its objects, geometries nested or not.
 * Positions are degrees WGS 84, longitude first, a third number is metres of elevation.
 */
import { type Finding, type LonLat, type Result, bad, good } from '../finding.ts';
import { LIMITS } from '../limits.ts';
import { foundOf } from '../text/found.ts';
import { limitFinding } from '../text/limitFinding.ts';
import type { CourseParams } from '../text/params/course.ts';
import type { Course } from './course.ts';
import { courseFinding } from './courseFinding.ts';
import {
  type ForeignLine,
  type ForeignOptions,
  type ForeignPoint,
  columnsOf,
  courseOfLines,
  positionOf,
  isForeignOptions,
} from './foreign.ts';
import { type Shape, aText, listOf as eachOf, orNull, position, recordOf, want } from '../wants.ts';

/** A named point. */
export interface NamedPlace {
  /** The feature's property `name`; `null` without one. */
  readonly name: string | null;
  readonly at: LonLat;
}

/** A named polygon, its outer ring without the closing point; it may be a zone of a plan. */
export interface Outline {
  readonly name: string | null;
  readonly polygon: readonly LonLat[];
}

export const isNamedPlace: Shape = recordOf<NamedPlace>('a place { name, at }', { name: orNull(aText), at: position });
export const isOutline: Shape = recordOf<Outline>('an outline { name, polygon }', {
  name: orNull(aText),
  polygon: eachOf(position, 3),
});

/** A geometry with the name of its feature, and where it stands in the document (JSON pointer). */
interface Found {
  readonly type: string;
  readonly coordinates: unknown;
  readonly name: string | null;
  readonly path: string;
}

type Json = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? (value as readonly unknown[]) : []);

/**
 * The one line of a document as a course: a LineString, or the parts of a MultiLineString as its segments, alone or in a feature, a
 * collection of features or of geometries. Errors: no line, no such line, a position that is none, fewer than two different points, a
 * gap over 50 m between parts where nobody says what to do with it.
 * @example
 * ```ts
 * import { courseFromGeoJson } from '@halfcup/core/geojson';
 * import { courseLength } from '@halfcup/core/geometry';
 * const result = courseFromGeoJson({ type: 'LineString', coordinates: [[-17.4, -33.2], [-17.39, -33.2]] });
 * result.ok && courseLength(result.value); // → 932.418
 * ```
 */
export function courseFromGeoJson(geoJson: unknown, options: ForeignOptions = {}): Result<Course> {
  want('courseFromGeoJson', 'options', isForeignOptions, options);
  const found = boundedGeometries(geoJson);
  if (!found.ok) return found;
  const lines = found.value.filter(({ type }) => type === 'LineString' || type === 'MultiLineString');
  return courseOfLines({ file: 'GeoJSON', tracks: lines.map(lineOf), routes: [] }, options);
}

function lineOf({ type, coordinates, name, path }: Found): ForeignLine {
  const parts =
    type === 'LineString'
      ? [pointsOf(coordinates, path)]
      : listOf(coordinates).map((part, k) => pointsOf(part, `${path}/${k}`));
  const columns = parts.map(columnsOf);
  return {
    kind: 'track',
    name,
    segments: columns.map(({ segment }) => segment),
    faults: columns.flatMap(({ faults }) => faults),
  };
}

/**
 * Every Point and MultiPoint of a document with the name of its feature, in its order. Errors: a position that is none.
 * @example
 * ```ts
 * import { placesFromGeoJson } from '@halfcup/core/geojson';
 * const pier = { type: 'Feature', properties: { name: 'Pier' }, geometry: { type: 'Point', coordinates: [-17.4, -33.2] } };
 * const result = placesFromGeoJson(pier);
 * result.ok && result.value; // → [{ name: 'Pier', at: [-17.4, -33.2] }]
 * ```
 */
export function placesFromGeoJson(geoJson: unknown): Result<readonly NamedPlace[]> {
  const found = boundedGeometries(geoJson);
  if (!found.ok) return found;
  const places = found.value.flatMap(({ type, coordinates, name, path }): Result<NamedPlace>[] => {
    if (type === 'Point') return [placeOf(pointOf(coordinates, path), name)];
    return type === 'MultiPoint' ? pointsOf(coordinates, path).map((point) => placeOf(point, name)) : [];
  });
  return allOf(places);
}

function placeOf(point: ForeignPoint, name: string | null): Result<NamedPlace> {
  const at = positionOf(point);
  return at.ok ? good({ name, at: at.value }) : at;
}

/** All values, or all reasons why there is one missing. */
function allOf<T>(results: readonly Result<T>[]): Result<readonly T[]> {
  const values = results.flatMap((result) => (result.ok ? [result.value] : []));
  return values.length === results.length ? good(values) : bad(results.flatMap(({ findings }) => findings));
}

/**
 * Every Polygon and MultiPolygon of a document, each by its outer ring. Errors: a ring of fewer than three corners, a position that is
 * none, a polygon with a hole (a zone of a plan has none).
 * @example
 * ```ts
 * import { polygonsFromGeoJson } from '@halfcup/core/geojson';
 * const ring = [[-17.4, -33.2], [-17.39, -33.2], [-17.39, -33.19], [-17.4, -33.2]];
 * const result = polygonsFromGeoJson({ type: 'Polygon', coordinates: [ring] });
 * result.ok && result.value[0]?.polygon.length; // → 3
 * ```
 */
export function polygonsFromGeoJson(geoJson: unknown): Result<readonly Outline[]> {
  const found = boundedGeometries(geoJson);
  if (!found.ok) return found;
  const outlines = found.value.flatMap((one): Result<Outline>[] => {
    if (one.type === 'Polygon') return [outlineOf(one)];
    return one.type === 'MultiPolygon'
      ? listOf(one.coordinates).map((coordinates, k) => outlineOf({ ...one, coordinates, path: `${one.path}/${k}` }))
      : [];
  });
  return allOf(outlines);
}

function outlineOf({ coordinates, name, path }: Found): Result<Outline> {
  const rings = listOf(coordinates);
  if (rings.length > 1) return bad([fault({ problem: 'holes', holes: rings.length - 1 }, path)]);
  const { segment, faults } = columnsOf(pointsOf(rings[0], `${path}/0`));
  if (faults.length > 0) return bad(faults);
  const corners = Array.from(segment.lon, (lon, k): LonLat => [lon, segment.lat[k]!]);
  const last = corners.at(-1);
  const open =
    last !== undefined && corners[0]![0] === last[0] && corners[0]![1] === last[1] ? corners.slice(0, -1) : corners;
  return open.length < 3
    ? bad([fault({ problem: 'corners', corners: open.length }, path)])
    : good({ name, polygon: open });
}

const fault = (params: CourseParams['geojson'], path: string): Finding =>
  courseFinding('geojson', params, { severity: 'error', where: { path } });

function pointOf(coordinates: unknown, path: string): ForeignPoint {
  const [lon, lat, ele] = listOf(coordinates);
  return { lon, lat, ele, where: { path } };
}

const pointsOf = (coordinates: unknown, path: string): ForeignPoint[] =>
  listOf(coordinates).map((one, k) => pointOf(one, `${path}/${k}`));

/** Longest JSON pointer that is followed, characters. */
const DEEPEST = 1000;

const GEOMETRIES = new Set(['Point', 'MultiPoint', 'LineString', 'MultiLineString', 'Polygon', 'MultiPolygon']);

/** All geometries of any GeoJSON object, or why it is none. A feature without a place (`null`) has none. */
function geometriesIn(value: unknown, path: string = '', name: string | null = null): Result<readonly Found[]> {
  if (!isRecord(value)) return bad([fault({ problem: 'object', found: foundOf(value) }, path)]);
  const { type } = value;
  if (type === 'Feature')
    return value['geometry'] === null ? good([]) : geometriesIn(value['geometry'], `${path}/geometry`, nameOf(value));
  if (type === 'FeatureCollection') return gathered(value['features'], `${path}/features`, name);
  if (type === 'GeometryCollection') return gathered(value['geometries'], `${path}/geometries`, name);
  if (typeof type !== 'string' || !GEOMETRIES.has(type))
    return bad([fault({ problem: 'type', found: foundOf(type) }, path)]);
  if (!Array.isArray(value['coordinates']))
    return bad([fault({ problem: 'coordinates', found: foundOf(value['coordinates']) }, `${path}/coordinates`)]);
  return good([{ type, coordinates: value['coordinates'], name, path: `${path}/coordinates` }]);
}

function gathered(value: unknown, path: string, name: string | null): Result<readonly Found[]> {
  if (!Array.isArray(value)) return bad([fault({ problem: 'list', found: foundOf(value) }, path)]);
  if (value.length > LIMITS.geojson.features)
    return bad([limitFinding('geojson', 'features', { path: `${path}/${LIMITS.geojson.features}` }, value.length)]);
  // The standard advises against collections in collections; so deep a nest is no document of anybody.
  if (path.length > DEEPEST) return bad([fault({ problem: 'nested' }, path.slice(0, 40))]);
  const all = allOf(value.map((one: unknown, k) => geometriesIn(one, `${path}/${k}`, name)));
  return all.ok ? good(all.value.flat()) : all;
}

/** Positions in the coordinates of a geometry, which are nested at most so deep; what is no position counts as one. */
const positionsIn = (coordinates: unknown, depth: number = 3): number =>
  depth > 0 && Array.isArray(coordinates) && coordinates.some(Array.isArray)
    ? coordinates.reduce((sum: number, one) => sum + positionsIn(one, depth - 1), 0)
    : 1;

/** The same, where they have no more positions together than are read. */
function boundedGeometries(value: unknown): Result<readonly Found[]> {
  const found = geometriesIn(value);
  if (!found.ok) return found;
  let points = 0;
  for (const { coordinates, path } of found.value) {
    points += positionsIn(coordinates);
    if (points > LIMITS.geojson.points) return bad([limitFinding('geojson', 'points', { path })]);
  }
  return found;
}

function nameOf(feature: Json): string | null {
  const properties = feature['properties'];
  const name = isRecord(properties) ? properties['name'] : undefined;
  return typeof name === 'string' && name !== '' ? name : null;
}
