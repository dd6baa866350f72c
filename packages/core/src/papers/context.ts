/**
 * A plan's background drawing, taken as far as it can be drawn: features of GeoJSON (RFC 7946) whose positions are
 * finite numbers within the degrees there are. What is anything else is left out, for a drawing in grey decides nothing.
 */
import type { Feature, FeatureCollection, Geometry, Position } from 'geojson';
import { type Finding, type Result, bad, good } from '../finding.ts';
import { passedIn } from '../jsonExtent.ts';
import { LIMITS } from '../limits.ts';
import { limitFinding } from '../text/limitFinding.ts';
import { aText, want } from '../wants.ts';

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

/** Why a drawing is too much to be read; none where it is not. */
function tooLarge(text: string, file: string): readonly Finding[] {
  const { bytes, values, points, depth } = LIMITS.drawing;
  if (text.length > bytes) return [limitFinding('drawing', 'bytes', { file }, text.length)];
  const past = passedIn(text, { values, points, depth });
  return past === null ? [] : [limitFinding('drawing', past.what, { file })];
}

/**
 * The JSON of a background drawing's text; `null` where it is no JSON. Not ok where it holds more than a drawing may: such a
 * text is not parsed. What can be drawn of it is what `contextOf` gives.
 * @example
 * ```ts
 * import { drawingJson } from '@halfcup/core/papers';
 * const read = drawingJson('{ "type": "FeatureCollection", "features": [] }', 'context.geojson');
 * read.ok && read.value; // → { type: 'FeatureCollection', features: [] }
 * drawingJson('['.repeat(100), 'context.geojson').findings[0]?.message; // → 'The background drawing has more than 64 levels of nesting. It should have at most 64. It may be damaged: export it again.'
 * ```
 */
export function drawingJson(text: string, file: string): Result<unknown> {
  want('drawingJson', 'text', aText, text);
  want('drawingJson', 'file', aText, file);
  const large = tooLarge(text, file);
  if (large.length > 0) return bad(large);
  try {
    const value: unknown = JSON.parse(text.replace(/^\uFEFF/u, ''));
    const features = isRecord(value) && Array.isArray(value['features']) ? value['features'].length : 0;
    return features > LIMITS.drawing.features
      ? bad([limitFinding('drawing', 'features', { file }, features)])
      : good(value);
  } catch {
    return good(null);
  }
}
