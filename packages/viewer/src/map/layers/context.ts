/** The plan's own drawing of the ground, sorted into what the map can draw; anything unknown is drawn by its geometry. */
import { drawnName, type Ground as GroundMap } from '@halfcup/core/ground';
import type { Feature, FeatureCollection, Geometry } from 'geojson';

export type Ground =
  | 'land'
  | 'beach'
  | 'shallow'
  | 'water'
  | 'park'
  | 'paved'
  | 'building'
  | 'area'
  | 'contour'
  | 'road'
  | 'street'
  | 'path'
  | 'line'
  | 'place'
  | 'name';

export interface GroundProps {
  readonly ground: Ground;
  readonly name: string;
}

const AREAS: Readonly<Record<string, Ground>> = {
  land: 'land',
  island: 'land',
  coast: 'land',
  beach: 'beach',
  shallow: 'shallow',
  sea: 'water',
  water: 'water',
  lake: 'water',
  harbour: 'water',
  park: 'park',
  green: 'park',
  wood: 'park',
  forest: 'park',
  grass: 'park',
  pier: 'paved',
  bridge: 'paved',
  building: 'building',
  town: 'building',
};

const wordOf = (feature: Feature, key: 'kind' | 'class'): string => {
  const word: unknown = feature.properties?.[key];
  return typeof word === 'string' ? word.toLowerCase() : '';
};

/** Settlements, written larger than the names of bays, heads and hills. */
const PLACES: ReadonlySet<string> = new Set(['town', 'village', 'island', 'city']);
const STREETS: ReadonlySet<string> = new Set(['street', 'lane', 'pier', 'minor']);

function groundOf(feature: Feature): Ground {
  const kind = wordOf(feature, 'kind');
  const finer = wordOf(feature, 'class');
  const { type } = feature.geometry;
  if (type === 'Polygon' || type === 'MultiPolygon') return AREAS[kind] ?? 'area';
  if (type === 'Point' || type === 'MultiPoint') return PLACES.has(kind) || PLACES.has(finer) ? 'place' : 'name';
  if (kind === 'path' || kind === 'track') return 'path';
  if (kind === 'road' || kind === 'street') return kind === 'street' || STREETS.has(finer) ? 'street' : 'road';
  if (kind === 'contour') return 'contour';
  return kind === 'stream' || kind === 'river' ? 'water' : 'line';
}

/** Of these the plan's map of the ground has names too, and better places for them. */
const NAMED_BY_MAP: ReadonlySet<Ground> = new Set(['road', 'street', 'path', 'park', 'water']);

/** Features without a geometry are left out; `null` gives an empty drawing. What the plan's map of the ground names is not named twice. */
export function background(
  context: FeatureCollection | null,
  map: GroundMap | null = null,
): FeatureCollection<Geometry, GroundProps> {
  const known = new Set([...(map?.ways ?? []), ...(map?.areas ?? [])].map(({ tags }) => drawnName(tags)));
  const nameOf = (name: unknown, ground: Ground): string =>
    typeof name !== 'string' || (NAMED_BY_MAP.has(ground) && known.has(name)) ? '' : name;
  const features = (context?.features ?? [])
    .filter((feature) => (feature.geometry as Geometry | null) !== null)
    .map((feature): Feature<Geometry, GroundProps> => {
      const kind = groundOf(feature);
      return {
        type: 'Feature',
        geometry: feature.geometry,
        properties: { ground: kind, name: nameOf(feature.properties?.['name'], kind) },
      };
    });
  return { type: 'FeatureCollection', features };
}

/** Where the drawing shows land, what is around it is water; without, all is paper. */
export const hasLand = (drawing: FeatureCollection): boolean =>
  drawing.features.some((feature) => feature.properties?.['ground'] === 'land');
