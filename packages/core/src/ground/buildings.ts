/** Buildings that stand in the way of eyes, with an index over their boxes, in degrees. */
import Flatbush from 'flatbush';
import type { Ground, GroundArea, Tags } from './ground.ts';
import { layerOf, says } from './streetTags.ts';
import { widthOf } from './width.ts';

/** Metres: what begins above, or ends below, eyes look under or over. */
const EYES = 1.6;

export interface Buildings {
  readonly areas: readonly GroundArea[];
  /** `null` where there are none. */
  readonly index: Flatbush | null;
}

/** Roofs on posts and what lies under ground hide nothing, nor what begins above the eyes or is lower than they are. */
function hides(tags: Tags): boolean {
  if (!says(tags, 'building') || tags['building'] === 'roof' || tags['building'] === 'carport') return false;
  if (tags['location'] === 'underground' || layerOf(tags) < 0) return false;
  const [from, to] = [widthOf(tags['min_height']), widthOf(tags['height'])];
  return (from === null || from < EYES) && (to === null || to > EYES);
}

/**
 * The buildings of a map that hide what is behind them, ready for {@link sightBlocked}: make them once for a map.
 */
export function indexBuildings(ground: Ground): Buildings {
  const areas = ground.areas.filter(({ tags }) => hides(tags));
  if (areas.length === 0) return { areas, index: null };
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
  return { areas, index };
}
