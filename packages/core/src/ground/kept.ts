/**
 * Which tags of OpenStreetMap the ground keeps, and what kind of thing they make of an element.
 * Source of the keys: OpenStreetMap wiki, "Map features" and "Key:area"; the choice among them is our own.
 */
import type { Tags } from './ground.ts';

const words = (text: string): ReadonlySet<string> => new Set(text.trim().split(/\s+/u));

/** Keys that the product uses; all others are left out of a clip. */
const KEPT: ReadonlySet<string> = words(`
  access addr:housenumber addr:street amenity area area:highway barrier bicycle bridge building
  building:part bus covered crossing crossing:island cycleway electrified embankment emergency entrance
  est_width fire_hydrant:position fire_hydrant:type foot footway ford gauge healthcare height highway horse
  incline indoor intermittent junction kerb landuse lanes lanes:backward lanes:forward layer leisure level
  min_height path psv lit loc_name location locked man_made maxwidth motor_vehicle name natural oneway place public_transport
  railway ramp ref route service sidewalk smoothness step_count subway surface tidal tracktype
  traffic_calming traffic_signals train tram tunnel vehicle water waterway wheelchair width building:levels
  construction
`);

/** Keys one of which makes a line worth keeping. */
const LINES = [
  'highway',
  'railway',
  'barrier',
  'waterway',
  'natural',
  'man_made',
  'public_transport',
  'leisure',
  'route',
] as const;

/** Keys one of which makes a closed line a surface. */
const SURFACES = [
  'building',
  'building:part',
  'natural',
  'water',
  'landuse',
  'leisure',
  'amenity',
  'area:highway',
  'man_made',
  'place',
  'public_transport',
  'healthcare',
  'emergency',
] as const;

const POINTS = [
  'highway',
  'railway',
  'public_transport',
  'barrier',
  'emergency',
  'crossing',
  'traffic_calming',
  'healthcare',
] as const;

/** Places that crews and runners look for; benches and letter boxes are none. */
const AMENITIES: ReadonlySet<string> = words(`
  ambulance_station clinic doctors drinking_water fire_station hospital police toilets
`);

/** Values of these keys that stay lines where they are closed. */
const LINEAR: ReadonlySet<string> = words(`
  natural=coastline natural=cliff natural=tree_row natural=ridge natural=earth_bank leisure=track
  man_made=embankment man_made=pipeline man_made=cutline man_made=groyne leisure=slipway
`);

/** Longest key and value that are kept, characters: OpenStreetMap allows 255. */
const LONGEST = 255;

/** Whether a tag is one that the product uses. */
export const isKept = (key: string, value: string): boolean =>
  KEPT.has(key) && value.length > 0 && value.length <= LONGEST;

const isTrue = (value: string | undefined): boolean => value !== undefined && value !== 'no';

/** Whether a closed line with these tags bounds a surface; a roundabout and a fence do not. */
export function isSurface(tags: Tags): boolean {
  const { area } = tags;
  if (area === 'no') return false;
  if (isTrue(tags['building'])) return true;
  if (area === 'yes') return isWantedArea(tags);
  if (isTrue(tags['highway']) || isTrue(tags['railway'])) return false;
  if (tags['waterway'] === 'riverbank' || tags['waterway'] === 'dock') return true;
  return SURFACES.some((key) => isTrue(tags[key]) && !LINEAR.has(`${key}=${tags[key]}`));
}

/** Whether an area with these tags is one that the ground knows. */
export const isWantedArea = (tags: Tags): boolean =>
  SURFACES.some((key) => isTrue(tags[key])) ||
  isTrue(tags['highway']) ||
  isTrue(tags['railway']) ||
  isTrue(tags['waterway']);

/** Whether a line with these tags is one that the ground knows: one that is open and should bound a surface is not. */
export const isWantedLine = (tags: Tags): boolean =>
  LINES.some((key) => isTrue(tags[key]) && (key !== 'route' || tags[key] === 'ferry') && isLineOf(key, tags));

const isLineOf = (key: (typeof LINES)[number], tags: Tags): boolean => {
  if (key !== 'natural' && key !== 'leisure' && key !== 'man_made') return true;
  return LINEAR.has(`${key}=${tags[key]}`) || tags[key] === 'pier' || tags[key] === 'breakwater';
};

/** Whether a point with these tags is one that the ground knows. */
export const isWantedPoint = (tags: Tags): boolean =>
  POINTS.some((key) => isTrue(tags[key])) || AMENITIES.has(tags['amenity'] ?? '');
