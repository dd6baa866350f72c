/** The plan's map of the ground, sorted into what the map draws: parks, water, houses, streets by how wide they are, rails. */
import {
  drawnArea,
  drawnLine,
  drawnName,
  isBelow,
  type Ground,
  type GroundAlong,
  type GroundLine,
} from '@halfcup/core/ground';
import type { Feature, FeatureCollection, Geometry, Position } from 'geojson';

/** What one thing of the map is drawn as. */
export interface StreetProps {
  readonly draw: NonNullable<ReturnType<typeof drawnArea> | ReturnType<typeof drawnLine>>;
  /** "" where nothing is written. */
  readonly name: string;
  /** In a tunnel. */
  readonly below: boolean;
  /** Wider streets are drawn over narrower ones, and their names come first. */
  readonly rank: number;
  /** A course runs along it, so that its line covers the middle of the street. */
  readonly run: boolean;
}

const RANKS: Readonly<Record<string, number>> = { main: 5, street: 4, lane: 3, path: 2, steps: 2, rail: 1 };

const positions = ({ lon, lat }: GroundLine): Position[] => Array.from(lon, (x, k) => [x, lat[k]!]);

const feature = (geometry: Geometry, props: StreetProps): Feature<Geometry, StreetProps> => ({
  type: 'Feature',
  geometry,
  properties: props,
});

/** What of a plan's map is drawn of. */
export interface DrawnGround {
  readonly ground: Ground;
  readonly along: ReadonlyMap<string, GroundAlong>;
}

/** `null` gives an empty map. */
export function groundShapes(drawn: DrawnGround | null): FeatureCollection<Geometry, StreetProps> {
  const ground = drawn?.ground;
  const run = new Set([...(drawn?.along.values() ?? [])].flatMap(({ streets }) => streets.map(({ way }) => way)));
  const { ways = [], areas = [] } = ground ?? {};
  const surfaces = areas.flatMap(({ tags, rings }) => {
    const draw = drawnArea(tags);
    if (draw === null) return [];
    const props = { draw, name: drawnName(tags) ?? '', below: false, rank: 0, run: false };
    return [feature({ type: 'Polygon', coordinates: rings.map(positions) }, props)];
  });
  const lines = ways.flatMap((way) => {
    const draw = drawnLine(way.tags);
    if (draw === null) return [];
    const name = drawnName(way.tags) ?? '';
    const props = { draw, name, below: isBelow(way.tags), rank: RANKS[draw] ?? 0, run: run.has(way.id) };
    return [feature({ type: 'LineString', coordinates: positions(way) }, props)];
  });
  return { type: 'FeatureCollection', features: [...surfaces, ...lines] };
}
