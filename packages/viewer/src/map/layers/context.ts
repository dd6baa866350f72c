/** The plan's own drawing of the ground, sorted into what the map can draw; anything unknown is drawn by its geometry. */
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

/** Features without a geometry are left out; `null` gives an empty drawing. */
export function background(context: FeatureCollection | null): FeatureCollection<Geometry, GroundProps> {
  const features = (context?.features ?? [])
    .filter((feature) => (feature.geometry as Geometry | null) !== null)
    .map((feature): Feature<Geometry, GroundProps> => {
      const name: unknown = feature.properties?.['name'];
      return {
        type: 'Feature',
        geometry: feature.geometry,
        properties: { ground: groundOf(feature), name: typeof name === 'string' ? name : '' },
      };
    });
  return { type: 'FeatureCollection', features };
}

/** Where the drawing shows land, what is around it is water; without, all is paper. */
export const hasLand = (drawing: FeatureCollection): boolean =>
  drawing.features.some((feature) => feature.properties?.['ground'] === 'land');
