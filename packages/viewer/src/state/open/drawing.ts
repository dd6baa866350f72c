/**
 * A drawing for the background (GeoJSON, RFC 7946). A feature that cannot be drawn is left out and noted: nothing that is
 * computed depends on a drawing, and the map takes a broken one amiss.
 */
import type { Finding } from '@halfcup/core';
import { drawingJson } from '@halfcup/core/papers';
import type { Feature, FeatureCollection } from 'geojson';

/** How deep the positions of each kind of geometry are nested, and how many the innermost list holds at least. */
const KINDS: Readonly<Record<string, readonly [depth: number, least: number]>> = {
  Point: [0, 1],
  MultiPoint: [1, 1],
  LineString: [1, 2],
  MultiLineString: [2, 2],
  Polygon: [2, 4],
  MultiPolygon: [3, 4],
};

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** What is wrong with positions of that depth; `null` where nothing is. */
function positionsTrouble(value: unknown, depth: number, least: number): string | null {
  if (!Array.isArray(value)) return 'it has no coordinates';
  if (depth > 0) {
    if (value.length < (depth === 1 ? least : 1)) return 'it has too few points';
    return value.map((one) => positionsTrouble(one, depth - 1, least)).find((one) => one !== null) ?? null;
  }
  const [lon, lat] = value as readonly unknown[];
  if (!value.every(isNumber) || !isNumber(lon) || !isNumber(lat)) return 'a coordinate is not a number';
  return Math.abs(lon) > 180 || Math.abs(lat) > 90 ? 'its coordinates are not longitude and latitude' : null;
}

/** Why a feature cannot be drawn, as a clause; `null` where it can. */
function featureTrouble(value: unknown): string | null {
  if (!isRecord(value) || value['type'] !== 'Feature') return 'it is not a GeoJSON feature';
  const { geometry } = value;
  if (!isRecord(geometry)) return 'it has no geometry';
  const { type, coordinates } = geometry;
  const kind = typeof type === 'string' && Object.hasOwn(KINDS, type) ? KINDS[type] : undefined;
  if (kind === undefined) return `its geometry ${typeof type === 'string' ? `is a “${type}”` : 'has no type'}`;
  return positionsTrouble(coordinates, ...kind);
}

const note = (code: string, file: string, message: string): Finding => ({
  code,
  severity: 'note',
  message,
  where: { file },
});

/** One note for all features of a file that are left out, with the first as an example. */
function leftOut(troubles: readonly (string | null)[], file: string): Finding[] {
  const count = troubles.filter((trouble) => trouble !== null).length;
  const first = troubles.findIndex((trouble) => trouble !== null);
  if (count === 0) return [];
  const which =
    count === 1
      ? `Feature ${first + 1} of the background drawing is left out: ${troubles[first]}.`
      : `${count} features of the background drawing are left out. The first is feature ${first + 1}: ${troubles[first]}.`;
  return [note('context-feature-unreadable', file, `${which} Fix the drawing and open it again.`)];
}

export interface Drawing {
  readonly context: FeatureCollection | null;
  readonly findings: readonly Finding[];
}

const soundProperties = (feature: Feature): Feature =>
  isRecord(feature.properties) ? feature : { ...feature, properties: {} };

/** What of a text can be drawn; what cannot is noted, and so is one that holds more than a drawing may. */
export function readDrawing(text: string, file: string): Drawing {
  const read = drawingJson(text, file);
  if (!read.ok)
    return { context: null, findings: read.findings.map((finding): Finding => ({ ...finding, severity: 'note' })) };
  const { value } = read;
  if (isRecord(value) && value['type'] === 'FeatureCollection' && Array.isArray(value['features'])) {
    const features: readonly unknown[] = value['features'];
    const troubles = features.map(featureTrouble);
    const sound = features.filter((_, index) => troubles[index] === null) as Feature[];
    return {
      context: { type: 'FeatureCollection', features: sound.map(soundProperties) },
      findings: leftOut(troubles, file),
    };
  }
  const message =
    'The background drawing could not be read. It should be a GeoJSON FeatureCollection. The plan opens without it.';
  return { context: null, findings: [note('context-unreadable', file, message)] };
}
