/**
 * What a map draws of the ground, by tags: which streets are wide and which are paths, what is water, what is a house.
 * Whatever is not listed is not drawn: a map with everything on it shows nothing.
 * Source of the tags: OpenStreetMap wiki, "Map features", from memory; the choice among them is our own.
 */
import type { Tags } from './ground.ts';
import { type Shape, aText, remembered, tableOf, want } from '../wants.ts';
import { isStreet, says, streetName } from './streetTags.ts';

const isTags: Shape = remembered(tableOf(aText));

/** Lines by how they are drawn: streets from wide to narrow, paths, steps, rails, brooks, the shore of the sea. */
export type DrawnLine = 'main' | 'street' | 'lane' | 'path' | 'steps' | 'rail' | 'stream' | 'shore';
/** Areas by how they are drawn; `paved`: squares and piers. */
export type DrawnArea = 'park' | 'water' | 'paved' | 'building';

const STREETS: Readonly<Record<string, DrawnLine>> = {
  motorway: 'main',
  trunk: 'main',
  primary: 'main',
  secondary: 'main',
  tertiary: 'main',
  unclassified: 'street',
  residential: 'street',
  living_street: 'street',
  road: 'street',
  pedestrian: 'street',
  service: 'lane',
  track: 'path',
  footway: 'path',
  path: 'path',
  cycleway: 'path',
  bridleway: 'path',
  steps: 'steps',
};
const RAILS = new Set(['rail', 'light_rail', 'narrow_gauge', 'tram', 'funicular', 'monorail', 'preserved']);
const STREAMS = new Set(['river', 'stream', 'canal', 'drain', 'ditch']);

/**
 * How a way is drawn, by its tags; `null`: not at all. Rails and brooks under ground are not.
 * @example
 * ```ts
 * import { drawnLine } from '@halfcup/core/ground';
 * drawnLine({ highway: 'residential' }); // → 'street'
 * ```
 */
export function drawnLine(tags: Tags): DrawnLine | null {
  want('drawnLine', 'tags', isTags, tags);
  const { highway, railway, waterway } = tags;
  if (isStreet(tags)) return STREETS[highway!.replace(/_link$/u, '')] ?? null;
  if (says(tags, 'tunnel')) return null;
  if (railway !== undefined) return RAILS.has(railway) ? 'rail' : null;
  if (tags['natural'] === 'coastline') return 'shore';
  return STREAMS.has(waterway ?? '') ? 'stream' : null;
}

const PARKS: Readonly<Record<string, ReadonlySet<string>>> = {
  leisure: new Set(['park', 'garden', 'pitch', 'golf_course', 'nature_reserve', 'playground', 'recreation_ground']),
  landuse: new Set([
    'grass',
    'forest',
    'meadow',
    'village_green',
    'recreation_ground',
    'cemetery',
    'orchard',
    'vineyard',
  ]),
  natural: new Set(['wood', 'scrub', 'heath', 'grassland']),
};

const isWater = ({ natural, landuse, waterway, leisure }: Tags): boolean =>
  natural === 'water' ||
  natural === 'bay' ||
  landuse === 'reservoir' ||
  landuse === 'basin' ||
  waterway === 'riverbank' ||
  waterway === 'dock' ||
  leisure === 'swimming_pool';

/**
 * How an area is drawn, by its tags; `null`: not at all.
 * @example
 * ```ts
 * import { drawnArea } from '@halfcup/core/ground';
 * drawnArea({ building: 'yes' }); // → 'building'
 * ```
 */
export function drawnArea(tags: Tags): DrawnArea | null {
  want('drawnArea', 'tags', isTags, tags);
  if (says(tags, 'building') || says(tags, 'building:part')) return 'building';
  if (isWater(tags)) return 'water';
  if (Object.entries(PARKS).some(([key, values]) => values.has(tags[key] ?? ''))) return 'park';
  return says(tags, 'highway') || tags['man_made'] === 'pier' ? 'paved' : null;
}

/**
 * Whether a street runs below ground, where no map shows its surface; a passage through a house does not.
 * @example
 * ```ts
 * import { isBelow } from '@halfcup/core/ground';
 * isBelow({ highway: 'primary', tunnel: 'yes' }); // → true
 * ```
 */
export function isBelow(tags: Tags): boolean {
  want('isBelow', 'tags', isTags, tags);
  return says(tags, 'tunnel') && tags['tunnel'] !== 'building_passage';
}

/**
 * What a map writes along a way or on an area, by its tags: a name, else the number of a road; `null`: nothing. Houses go without.
 * @example
 * ```ts
 * import { drawnName } from '@halfcup/core/ground';
 * drawnName({ highway: 'primary', ref: 'A 1' }); // → 'A 1'
 * ```
 */
export function drawnName(tags: Tags): string | null {
  want('drawnName', 'tags', isTags, tags);
  if (says(tags, 'building')) return null;
  const name = streetName(tags)?.trim();
  return name === undefined || name === '' ? null : name;
}
