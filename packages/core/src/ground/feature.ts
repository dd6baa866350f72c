/**
 * One feature of GeoJSON (RFC 7946) whose properties are OpenStreetMap's tags as what it is on the ground: ways, areas, a point.
 * Positions are kept to 1e-7 of a degree (1 cm), as OpenStreetMap has them.
 */
import type { LonLat } from '../finding.ts';
import { type Found, foundOf } from '../text/found.ts';
import type { GroundArea, GroundLine, GroundPoint, Tags } from './ground.ts';
import { turnedRings } from './rings.ts';
import { isKept, isSurface, isWantedArea, isWantedLine, isWantedPoint } from './kept.ts';

/** A way whose nodes may not be known yet. */
export interface FeatureWay extends GroundLine {
  readonly id: string;
  readonly tags: Tags;
  readonly nodes: readonly string[] | null;
}

export interface FeatureParts {
  readonly ways: readonly FeatureWay[];
  readonly areas: readonly GroundArea[];
  readonly points: readonly (Omit<GroundPoint, 'id'> & { readonly id: string | null })[];
}

/** What keeps a feature from being read. */
export interface FeatureFault {
  readonly problem: 'position' | 'geometry' | 'feature' | 'nodes';
  readonly found: Found;
}

type Json = Readonly<Record<string, unknown>>;

export const isRecord = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const NONE: FeatureParts = { ways: [], areas: [], points: [] };
const toE7 = (degrees: number): number => Math.round(degrees * 1e7) / 1e7 + 0;

/** Thrown inside this file only, and caught where a feature begins. */
class Unusable {
  readonly fault: FeatureFault;
  constructor(problem: FeatureFault['problem'], found: unknown) {
    this.fault = { problem, found: foundOf(found) };
  }
}

/** A feature as parts of the ground, none where it has no tags that the ground knows; or what is the matter with it. `own`: its id where it has none. */
export function partsOf(feature: unknown, own: string): FeatureParts | FeatureFault {
  try {
    if (!isRecord(feature) || feature['type'] !== 'Feature') throw new Unusable('feature', feature);
    const geometry = feature['geometry'];
    if (geometry === null) return NONE;
    if (!isRecord(geometry)) throw new Unusable('geometry', geometry);
    const properties = isRecord(feature['properties']) ? feature['properties'] : {};
    return geometryParts(geometry, tagsOf(properties), idOf(feature, properties), feature['nodes'], own);
  } catch (error) {
    if (error instanceof Unusable) return error.fault;
    throw error;
  }
}

function tagsOf(properties: Json): Tags {
  const source = isRecord(properties['tags']) ? properties['tags'] : properties;
  const tags: Record<string, string> = {};
  for (const key of Object.keys(source)) {
    const value = source[key];
    const text = typeof value === 'number' || typeof value === 'boolean' ? String(value) : value;
    if (typeof text === 'string' && isKept(key, text)) tags[key] = text;
  }
  return tags;
}

/** `way/123`, `123` or `null`. */
function idOf(feature: Json, properties: Json): string | null {
  for (const id of [feature['id'], properties['@id'], properties['id']]) {
    if (typeof id === 'string' && id !== '') return id.slice(0, 64);
    if (typeof id === 'number' && Number.isSafeInteger(id)) return String(id);
  }
  return null;
}

const withKind = (kind: 'node' | 'way', id: string): string => (/^-?\d+$/u.test(id) ? `${kind}/${id}` : id);

function geometryParts(geometry: Json, tags: Tags, id: string | null, nodes: unknown, own: string): FeatureParts {
  const coordinates = geometry['coordinates'];
  const name = id === null ? own : withKind('way', id);
  switch (geometry['type']) {
    case 'Point':
      return pointParts(coordinates, tags, id === null ? null : withKind('node', id));
    case 'LineString':
      return lineParts(name, tags, [coordinates], nodes);
    case 'MultiLineString':
      return lineParts(name, tags, listOf(coordinates), undefined);
    case 'Polygon':
      return polygonParts(name, tags, [coordinates]);
    case 'MultiPolygon':
      return polygonParts(name, tags, listOf(coordinates));
    case 'MultiPoint':
    case 'GeometryCollection':
      return NONE;
    default:
      throw new Unusable('geometry', geometry['type']);
  }
}

function pointParts(coordinates: unknown, tags: Tags, id: string | null): FeatureParts {
  if (!isWantedPoint(tags)) return NONE;
  const [lon, lat] = positionOf(coordinates);
  return { ...NONE, points: [{ id, tags, lon, lat }] };
}

function lineParts(id: string, tags: Tags, lists: readonly unknown[], nodes: unknown): FeatureParts {
  const known = isSurface(tags) || isWantedLine(tags);
  if (!known) return NONE;
  const lines = lists.map((list) => lineOf(list, 2));
  const names = nodes === undefined ? null : nodesOf(nodes, lines[0]!.lon.length);
  const closed = lines.filter((line) => isSurface(tags) && isClosed(line));
  const open = lines.filter((line) => !closed.includes(line) && isWantedLine(tags));
  return {
    ...NONE,
    ways: open.map((line) => ({ id, tags, ...line, nodes: names })),
    areas: closed.map((line) => ({ id, tags, rings: turnedRings([line]) })),
  };
}

function polygonParts(id: string, tags: Tags, lists: readonly unknown[]): FeatureParts {
  const line = !isSurface(tags) && isWantedLine(tags);
  if (!line && !isWantedArea(tags)) return NONE;
  const polygons = lists.map((rings) => listOf(rings).map((ring) => closedRing(ring)));
  if (polygons.some((rings) => rings.length === 0)) throw new Unusable('geometry', []);
  // What encloses nothing, such as a roundabout, is a street all the same.
  return line
    ? { ...NONE, ways: polygons.flat().map((ring) => ({ id, tags, ...ring, nodes: null })) }
    : { ...NONE, areas: polygons.map((rings) => ({ id, tags, rings: turnedRings(rings) })) };
}

function closedRing(value: unknown): GroundLine {
  const ring = lineOf(value, 4);
  if (!isClosed(ring)) throw new Unusable('geometry', 'a ring that is not closed');
  return ring;
}

/** Four positions or more, the last of them the first. */
export const isClosed = ({ lon, lat }: GroundLine): boolean => {
  const last = lon.length - 1;
  return last >= 3 && lon[0] === lon[last] && lat[0] === lat[last];
};

function lineOf(value: unknown, least: number): GroundLine {
  const list = listOf(value);
  if (list.length < least) throw new Unusable('geometry', list);
  const lon = new Float64Array(list.length);
  const lat = new Float64Array(list.length);
  for (const [k, one] of list.entries()) [lon[k], lat[k]] = positionOf(one) as [number, number];
  return { lon, lat };
}

function listOf(value: unknown): readonly unknown[] {
  if (!Array.isArray(value)) throw new Unusable('geometry', value);
  return value;
}

function positionOf(value: unknown): LonLat {
  const [lon, lat] = Array.isArray(value) ? (value as unknown[]) : [];
  if (typeof lon === 'number' && typeof lat === 'number' && Math.abs(lon) <= 180 && Math.abs(lat) <= 90)
    return [toE7(lon), toE7(lat)];
  throw new Unusable('position', Array.isArray(value) ? `[${value.slice(0, 3).map(String).join(', ')}]` : value);
}

function nodesOf(value: unknown, length: number): readonly string[] {
  if (!Array.isArray(value) || value.length !== length) throw new Unusable('nodes', value);
  return value.map((one: unknown) => {
    if (Number.isSafeInteger(one)) return `node/${String(one)}`;
    if (typeof one === 'string' && one !== '' && one.length <= 64) return one;
    throw new Unusable('nodes', one);
  });
}
