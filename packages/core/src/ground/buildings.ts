/** Buildings that stand in the way of eyes, with an index over their boxes, in degrees. */
import Flatbush from 'flatbush';
import type { Shape } from '../wants.ts';
import { wantGround } from './shapes.ts';
import type { Ground, GroundArea, Tags } from './ground.ts';
import { layerOf, says } from './streetTags.ts';
import { widthOf } from './width.ts';

/** Metres: what begins above, or ends below, eyes look under or over. */
const EYES = 1.6;

/** Buildings that are ready to be looked past; made by {@link indexBuildings}, once a map. */
export interface Buildings {
  readonly areas: readonly GroundArea[];
}

/** The index of each; `null` where there are no buildings. */
const indexes = new WeakMap<Buildings, Flatbush | null>();

/** What {@link indexBuildings} has returned itself: its index cannot be put together by hand. */
export const isBuildings: Shape = (value) =>
  indexes.has(value as Buildings) ? null : { path: '', expected: 'what indexBuildings returns', found: value };

/** The buildings whose boxes a box in degrees meets, in the map's order. */
export const buildingsIn = (buildings: Buildings, box: readonly [number, number, number, number]): GroundArea[] =>
  (indexes.get(buildings)?.search(...box) ?? []).sort((a, b) => a - b).map((k) => buildings.areas[k]!);

/** Roofs on posts and what lies under ground hide nothing, nor what begins above the eyes or is lower than they are. */
function hides(tags: Tags): boolean {
  if (!says(tags, 'building') || tags['building'] === 'roof' || tags['building'] === 'carport') return false;
  if (tags['location'] === 'underground' || layerOf(tags) < 0) return false;
  const [from, to] = [widthOf(tags['min_height']), widthOf(tags['height'])];
  return (from === null || from < EYES) && (to === null || to > EYES);
}

/**
 * The buildings of a map that hide what is behind them, ready for {@link sightBlocked}: make them once for a map. Roofs on posts, what lies under ground or
 * begins above the eyes (1.6 m), and what is lower than they are, are left out.
 * @example
 * ```ts
 * import { indexBuildings } from '@halfcup/core/ground';
 *
 * const walls = { lon: Float64Array.of(-30.099, -30.098, -30.098, -30.099), lat: Float64Array.of(12.199, 12.199, 12.201, 12.199) };
 * const house = { id: 'way/8', tags: { building: 'yes' }, rings: [walls] };
 * const source = { date: null, credit: 'own survey', licence: null };
 * const buildings = indexBuildings({ source, ways: [], areas: [house], points: [] });
 * buildings.areas.length; // → 1
 * ```
 */
export function indexBuildings(ground: Ground): Buildings {
  wantGround('indexBuildings', ground);
  const buildings: Buildings = { areas: ground.areas.filter(({ tags }) => hides(tags)) };
  indexes.set(buildings, boxesOf(buildings.areas));
  return buildings;
}

function boxesOf(areas: readonly GroundArea[]): Flatbush | null {
  if (areas.length === 0) return null;
  const index = new Flatbush(areas.length);
  for (const { rings } of areas) {
    const { lon, lat } = rings[0]!;
    let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 0; i < lon.length; i++) {
      west = Math.min(west, lon[i]!);
      east = Math.max(east, lon[i]!);
      south = Math.min(south, lat[i]!);
      north = Math.max(north, lat[i]!);
    }
    index.add(west, south, east, north);
  }
  index.finish();
  return index;
}
