/**
 * A plan's background drawing, taken as far as it can be drawn: features of GeoJSON (RFC 7946) whose positions are
 * finite numbers within the degrees there are. What is anything else is left out, for a drawing in grey decides nothing.
 */
import type { Feature, FeatureCollection, Geometry, Position } from 'geojson';

/** How deep the positions of each kind of geometry are nested. */
const DEPTH: Readonly<Record<string, number>> = {
  Point: 0,
  MultiPoint: 1,
  LineString: 1,
  MultiLineString: 2,
  Polygon: 2,
  MultiPolygon: 3,
};

const isPosition = (value: unknown): value is Position =>
  Array.isArray(value) &&
  value.length >= 2 &&
  value.every((part) => typeof part === 'number' && Number.isFinite(part)) &&
  Math.abs(value[0] as number) <= 180 &&
  Math.abs(value[1] as number) <= 90;

const isNested = (value: unknown, depth: number): boolean =>
  depth === 0
    ? isPosition(value)
    : Array.isArray(value) && value.length > 0 && value.every((one) => isNested(one, depth - 1));

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function featureOf(value: unknown): Feature[] {
  if (!isRecord(value) || !isRecord(value['geometry'])) return [];
  const { type, coordinates } = value['geometry'];
  const depth = typeof type === 'string' && Object.hasOwn(DEPTH, type) ? DEPTH[type] : undefined;
  if (depth === undefined || !isNested(coordinates, depth)) return [];
  return [
    {
      type: 'Feature',
      properties: isRecord(value['properties']) ? value['properties'] : {},
      geometry: { type, coordinates } as Geometry,
    },
  ];
}

/**
 * The drawable features of a parsed GeoJSON file, for the maps on the papers; `null` where it is no feature collection.
 * Features without a usable geometry are left out.
 * @example
 * ```ts
 * import { contextOf } from '@halfcup/core/papers';
 * const geometry = { type: 'LineString', coordinates: [[-17.4, -33.2], [-17.36, -33.2]] };
 * const broken = { type: 'LineString', coordinates: [[-17.4, 'south']] };
 * const features = [geometry, broken].map((one) => ({ type: 'Feature', properties: {}, geometry: one }));
 * contextOf({ type: 'FeatureCollection', features })?.features.length; // → 1
 * contextOf({ type: 'Topology' }); // → null
 * ```
 */
export function contextOf(value: unknown): FeatureCollection | null {
  if (!isRecord(value) || value['type'] !== 'FeatureCollection' || !Array.isArray(value['features'])) return null;
  return { type: 'FeatureCollection', features: value['features'].flatMap(featureOf) };
}
