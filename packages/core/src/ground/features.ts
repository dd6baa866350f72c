/**
 * Things on the course itself: bridges, tunnels and steps by the tags of its ways; level crossings, stops, gates, crossings and
 * signals by the tags of the nodes that it passes. Stops stand at the kerb, so that those within 15 m of the course count.
 */
import type { Course } from '../course/course.ts';
import { toMeasure } from '../course/scale.ts';
import type { Feature, FeatureKind, GroundStretch, StreetStretch } from './along.ts';
import type { Ground, GroundPoint, GroundWay, Tags } from './ground.ts';
import { type Leg, goesOn } from './legs.ts';
import type { Network } from './network.ts';
import { says, streetName } from './tags.ts';

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
  if (railway === 'level_crossing' || railway === 'crossing' || railway === 'tram_level_crossing') kinds.push('levelCrossing');
  if (railway === 'tram_crossing') kinds.push('levelCrossing');
  if (barrier !== undefined && GATES.has(barrier)) kinds.push('gate');
  if (highway === 'crossing') kinds.push('crossing');
  if (highway === 'traffic_signals') kinds.push('signals');
  return kinds;
}

/** A node that the course passes. Raw measure. */
interface Passed {
  readonly node: string;
  readonly raw: number;
}

function passedNodes(network: Network, legs: readonly Leg[]): Passed[] {
  return legs.flatMap((leg, k) =>
    goesOn(legs[k - 1], leg) && legs[k - 1]!.segment !== leg.segment ? [{ node: network.nodes[leg.enter]!, raw: leg.from }] : [],
  );
}

/** Rails on which trains or trams run; sidings and disused ones too, where they are still rails. */
const RAILS = new Set(['rail', 'light_rail', 'tram', 'narrow_gauge', 'preserved', 'subway', 'miniature', 'funicular']);

/** Nodes of rails. */
function railNodes(ways: readonly GroundWay[]): Map<string, GroundWay> {
  const found = new Map<string, GroundWay>();
  for (const way of ways)
    if (RAILS.has(way.tags['railway'] ?? '')) for (const node of way.nodes) if (!found.has(node)) found.set(node, way);
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

export function featuresOf(
  course: Course,
  ground: Ground,
  network: Network,
  legs: readonly Leg[],
  streets: readonly StreetStretch[],
): Feature[] {
  const byNode = new Map<string, GroundPoint>(ground.points.map((point) => [point.id, point]));
  const rails = railNodes(ground.ways);
  const found = streets.flatMap((street) => wayKinds(street.tags).map((kind) => feature(kind, street.way, street.tags, street)));
  for (const { node, raw } of passedNodes(network, legs)) {
    const at = toMeasure(course, raw);
    const point = byNode.get(node);
    const kinds = point === undefined ? [] : nodeKinds(point.tags);
    for (const kind of kinds) found.push(feature(kind, node, point!.tags, { from: at, to: at }));
    const rail = rails.get(node);
    if (rail !== undefined && !kinds.includes('levelCrossing'))
      found.push(feature('levelCrossing', node, rail.tags, { from: at, to: at }));
  }
  return found.sort((a, b) => a.from - b.from || a.to - b.to);
}
