/**
 * What OpenStreetMap's tags say of a way: whether runners can be on it, whether vehicles come out of it, at which level it lies.
 * Source: the pages on `highway`, `layer`, `service`, `footway` of the OpenStreetMap wiki, from memory.
 */
import type { Tags } from './ground.ts';

/** Values of `highway` that are no ground under a runner: not there yet or no more, indoors, or a place beside the road. */
const NOT_RUN = new Set([
  'construction',
  'proposed',
  'planned',
  'abandoned',
  'razed',
  'disused',
  'elevator',
  'corridor',
  'platform',
  'bus_stop',
  'bus_guideway',
  'rest_area',
  'services',
  'emergency_bay',
  'no',
]);

/** Values of `highway` without vehicles. */
const ON_FOOT = new Set(['footway', 'path', 'steps', 'pedestrian', 'cycleway', 'bridleway', 'via_ferrata', 'ladder']);

/** Services that lead to one property, not to a street. */
const TO_PREMISES = new Set(['driveway', 'parking_aisle', 'drive-through', 'emergency_access']);

/** Footways that belong to a street: beside it or across it. */
const OF_STREET = new Set(['sidewalk', 'crossing', 'traffic_island', 'link']);

const NO = new Set(['no', 'none', 'false', '0']);

/** A tag that is there and does not say no. */
export const says = (tags: Tags, key: string): boolean => tags[key] !== undefined && !NO.has(tags[key]);

/** Whether a runner can be on it. Access is not asked: on race day roads are closed to others. */
export const isStreet = ({ highway }: Tags): boolean => highway !== undefined && !NOT_RUN.has(highway);

/** Whether cars, buses or tractors come along it. */
export function carriesVehicles(tags: Tags): boolean {
  if (!isStreet(tags) || ON_FOOT.has(tags['highway']!)) return false;
  const banned = (tags['motor_vehicle'] ?? tags['vehicle']) === 'no';
  return !banned || says(tags, 'bus') || says(tags, 'psv');
}

/** Driveways, parking aisles and private service roads: they give access to premises and lead no traffic of the town. */
export const leadsToPremises = (tags: Tags): boolean =>
  TO_PREMISES.has(tags['service'] ?? '') ||
  (tags['highway'] === 'service' && (tags['access'] === 'private' || tags['access'] === 'no'));

/** Unnamed pavements and crossings: they are parts of the street that they run along or across. */
export const isPartOfStreet = (tags: Tags): boolean =>
  streetName(tags) === null &&
  (OF_STREET.has(tags['footway'] ?? '') || OF_STREET.has(tags['path'] ?? '') || OF_STREET.has(tags['cycleway'] ?? ''));

/** Its name, else its `ref`, else `null`. */
export const streetName = ({ name, ref }: Tags): string | null => name ?? ref ?? null;

/** `layer`, else what bridges and tunnels have without one; 0 for what lies on the ground. */
export function layerOf(tags: Tags): number {
  const given = Number(tags['layer']);
  if (tags['layer'] !== undefined && Number.isFinite(given)) return given;
  if (says(tags, 'bridge')) return 1;
  return says(tags, 'tunnel') && tags['tunnel'] !== 'building_passage' ? -1 : 0;
}

/** From the streets that matter most in a town to those that matter least. */
const RANKS = [
  'motorway',
  'trunk',
  'primary',
  'secondary',
  'tertiary',
  'unclassified',
  'residential',
  'living_street',
  'road',
  'pedestrian',
  'service',
  'track',
];

/** Place among {@link RANKS}; links count as the street that they lead to. */
export function rankOf({ highway = '' }: Tags): number {
  const rank = RANKS.indexOf(highway.replace(/_link$/u, ''));
  return rank < 0 ? RANKS.length : rank;
}
