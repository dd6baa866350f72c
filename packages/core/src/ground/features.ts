/**
 * Things on the course itself: bridges, tunnels and steps by the tags of its ways; level crossings, stops, gates, crossings and
 * signals by the tags of the nodes that it passes. Stops stand at the kerb, so that those within 15 m of the course count.
 */
import type { Course } from '../course/course.ts';
import { passesOf } from '../course/passes.ts';
import { toMeasure } from '../course/scale.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { Feature, FeatureKind, GroundStretch, StreetStretch } from './along.ts';
import type { Ground, GroundPoint, GroundWay, Tags } from './ground.ts';
import { type Leg, goesOn } from './legs.ts';
import type { Network } from './network.ts';
import { says, streetName } from './streetTags.ts';

/** Values of `barrier` that one cannot run through abreast, or not at all. */
const GATES = new Set([
  'gate',
  'lift_gate',
  'swing_gate',
  'sliding_gate',
  'sliding_beam',
  'wicket_gate',
  'hampshire_gate',
  'bump_gate',
  'kissing_gate',
  'bollard',
  'planter',
  'block',
  'jersey_barrier',
  'log',
  'rope',
  'chain',
  'cycle_barrier',
  'motorcycle_barrier',
  'stile',
  'horse_stile',
  'turnstile',
  'full-height_turnstile',
  'bus_trap',
  'sump_buster',
  'cattle_grid',
  'toll_booth',
  'border_control',
  'spikes',
  'debris',
  'fence',
  'wall',
  'yes',
]);

const wayKinds = (tags: Tags): FeatureKind[] => [
  ...(says(tags, 'bridge') ? (['bridge'] as const) : []),
  ...(says(tags, 'tunnel') ? (['tunnel'] as const) : []),
  ...(tags['highway'] === 'steps' ? (['steps'] as const) : []),
];

function nodeKinds({ railway, highway, barrier }: Tags): FeatureKind[] {
  const kinds: FeatureKind[] = [];
  if (railway === 'level_crossing' || railway === 'crossing' || railway === 'tram_level_crossing')
    kinds.push('levelCrossing');
  if (railway === 'tram_crossing') kinds.push('levelCrossing');
  if (barrier !== undefined && GATES.has(barrier)) kinds.push('gate');
  if (highway === 'crossing') kinds.push('crossing');
  if (highway === 'traffic_signals') kinds.push('signals');
  return kinds;
}

/** Rails on which trains or trams run. */
const RAILS = new Set(['rail', 'light_rail', 'tram', 'narrow_gauge', 'preserved', 'subway', 'miniature', 'funicular']);

/** The first of the ways through each node that are of a kind. */
function nodesOf(ways: readonly GroundWay[], wanted: (tags: Tags) => boolean): Map<string, GroundWay> {
  const found = new Map<string, GroundWay>();
  for (const way of ways)
    if (wanted(way.tags)) for (const node of way.nodes) if (!found.has(node)) found.set(node, way);
  return found;
}

const feature = (kind: FeatureKind, id: string, tags: Tags, { from, to }: GroundStretch): Feature => ({
  kind,
  id,
  name: streetName(tags),
  tags,
  from,
  to,
});

/** Features of a course in running order. */
export function featuresOf(
  { indexed, ground, network }: { indexed: IndexedCourse; ground: Ground; network: Network },
  legs: readonly Leg[],
  streets: readonly StreetStretch[],
): Feature[] {
  const ofWays = streets.flatMap((street) =>
    wayKinds(street.tags).map((kind) => feature(kind, street.way, street.tags, street)),
  );
  const found = [
    ...ofWays,
    ...nodeFeatures(indexed.course, ground, network, legs),
    ...stopsOf(indexed, ground, streets),
  ];
  return found.sort((a, b) => a.from - b.from || a.to - b.to);
}

function nodeFeatures(course: Course, ground: Ground, network: Network, legs: readonly Leg[]): Feature[] {
  const byNode = new Map<string, GroundPoint>(ground.points.map((point) => [point.id, point]));
  const rails = nodesOf(ground.ways, ({ railway = '' }) => RAILS.has(railway));
  const crossings = nodesOf(ground.ways, ({ footway, path, cycleway }) =>
    [footway, path, cycleway].includes('crossing'),
  );
  return legs.flatMap((leg, k): Feature[] => {
    const before = legs[k - 1];
    if (!goesOn(before, leg) || before!.segment === leg.segment) return [];
    const node = network.nodes[leg.enter]!;
    const at = toMeasure(course, leg.from);
    const point = byNode.get(node);
    const kinds = point === undefined ? [] : nodeKinds(point.tags);
    const found = kinds.map((kind) => feature(kind, node, point!.tags, { from: at, to: at }));
    const rail = rails.get(node);
    if (rail !== undefined && !kinds.includes('levelCrossing'))
      found.push(feature('levelCrossing', node, rail.tags, { from: at, to: at }));
    const crossing = crossings.get(node);
    const own = [before!, leg].map(({ segment }) => network.ways[network.way[segment]!]);
    if (crossing !== undefined && !kinds.includes('crossing') && !own.some((way) => way?.id === crossing.id))
      found.push(feature('crossing', node, crossing.tags, { from: at, to: at }));
    return found;
  });
}

/** Metres from the course within which a stop is one on its street. */
const AT_KERB = 15;
/** Metres along the course: a place where buses stop and the post of the same stop are one. */
const SAME_STOP = 50;

function stopKind({ railway, highway, public_transport, bus, tram }: Tags): FeatureKind | null {
  if (railway === 'tram_stop' || (public_transport === 'stop_position' && tram === 'yes')) return 'tramStop';
  return highway === 'bus_stop' || (public_transport === 'stop_position' && bus === 'yes') ? 'busStop' : null;
}

/** Stops at their nearest places on the course, each time that the course passes; a post and the place in the road where buses halt for it as one. */
function stopsOf(indexed: IndexedCourse, { points }: Ground, streets: readonly StreetStretch[]): Feature[] {
  const onStreet = (at: number): boolean => streets.some(({ from, to }) => from <= at && at <= to);
  const found = points.flatMap(({ id, tags, lon, lat }): Feature[] => {
    const kind = stopKind(tags);
    if (kind === null) return [];
    return passesOf(indexed, [lon, lat], { snapRadius: AT_KERB })
      .filter(({ measure }) => onStreet(measure))
      .map(({ measure }) => feature(kind, id, tags, { from: measure, to: measure }));
  });
  const isPost = ({ tags }: Feature): boolean =>
    tags['public_transport'] !== 'stop_position' || tags['highway'] === 'bus_stop';
  return found.filter(
    (stop) =>
      isPost(stop) ||
      !found.some(
        (post) =>
          isPost(post) &&
          post.kind === stop.kind &&
          post.name === stop.name &&
          Math.abs(post.from - stop.from) <= SAME_STOP,
      ),
  );
}
