/**
 * Junctions: nodes of the course's streets at which other streets leave. Streets meet at a shared node, unless both run through it
 * at different layers. No junction: where a way only goes on as another; where the carriageways of one street part; pavements
 * and crossings of a street. Driveways, parking aisles and private service roads are told as `access`, with no 5 m to their mouth.
 */
import type { Course } from '../course/course.ts';
import { toMeasure } from '../course/scale.ts';
import { startMeasure, courseLength } from '../course/course.ts';
import type { Junction } from './along.ts';
import type { Tags } from './ground.ts';
import { type Leg, goesOn } from './legs.ts';
import { type Network, otherEnd } from './network.ts';
import { carriesVehicles, isPartOfStreet, layerOf, leadsToPremises, rankOf, streetName } from './streetTags.ts';
import { streetWidth } from './width.ts';

/** Metres of the course kept clear on each side of the other street's own width. */
const BESIDE = 5;
/** Metres from a node over which a street's direction is taken. */
const AHEAD = 12;
/** Degrees within which the other carriageway of a street leaves along the course. */
const ALONGSIDE = 60;

/** A street that leaves a node by a segment. */
interface Arm {
  readonly segment: number;
  readonly tags: Tags;
  readonly id: string;
  /** Radians counterclockwise from east. */
  readonly angle: number;
}

export function junctionsOf(course: Course, network: Network, legs: readonly Leg[]): Junction[] {
  const found: Junction[] = [];
  for (let k = 1; k < legs.length; k++) {
    const [before, after] = [legs[k - 1]!, legs[k]!];
    if (!goesOn(before, after) || before.segment === after.segment) continue;
    const junction = junctionAt(course, network, before, after);
    if (junction !== null) found.push(junction);
  }
  return found;
}

function junctionAt(course: Course, network: Network, before: Leg, after: Leg): Junction | null {
  const node = after.enter;
  const [back, on] = [armAt(network, node, before.segment), armAt(network, node, after.segment)];
  const others = network.meeting[node]!.filter((segment) => segment !== before.segment && segment !== after.segment)
    .filter((segment) => meets(network, node, segment, [before.segment, after.segment]))
    .map((segment) => armAt(network, node, segment))
    .filter((arm) => !isPartOfStreet(arm.tags) && !isOtherCarriageway(arm, back, on))
    .sort((a, b) => prominence(a.tags) - prominence(b.tags));
  if (others.length === 0) return null;
  const measure = toMeasure(course, after.from);
  const own = new Set([null, streetName(back.tags), streetName(on.tags)]);
  const names = others.map(({ tags }) => streetName(tags)).filter((name) => !own.has(name));
  const half = Math.max(
    ...others.map(({ tags }) => streetWidth(tags).width / 2 + (leadsToPremises(tags) ? 0 : BESIDE)),
  );
  const lefts = others.filter(({ angle }) => isLeft(angle, back.angle, on.angle)).length;
  const start = startMeasure(course);
  return {
    measure,
    node: network.nodes[node]!,
    names: Array.from(new Set(names as string[])),
    ways: Array.from(new Set(others.map(({ id }) => id))),
    sides: [...(lefts > 0 ? (['left'] as const) : []), ...(lefts < others.length ? (['right'] as const) : [])],
    mouth: {
      from: Math.max(measure - half, start),
      to: Math.min(measure + half, courseLength(course)),
    },
    vehicles: others.some(({ tags }) => carriesVehicles(tags)),
    access: others.every(({ tags }) => leadsToPremises(tags)),
  };
}

/** The streets by which people name a corner first: on the ground before bridges and tunnels, then by class. */
const prominence = (tags: Tags): number => rankOf(tags) + (layerOf(tags) === 0 ? 0 : 100);

/** A street's segment at a node, with the direction that the street takes over some metres. */
function armAt(network: Network, node: number, segment: number): Arm {
  const { x, y, way, at, from } = network;
  const number = way[segment]!;
  const { id, tags, nodes } = network.ways[number]!;
  const step = from[segment] === node ? 1 : -1;
  let [end, length, last] = [otherEnd(network, segment, node), network.length[segment]!, segment];
  while (length < AHEAD) {
    const next = last + step;
    if (way[next] !== number || at[next]! < 0 || at[next]! >= nodes.length - 1) break;
    end = otherEnd(network, next, end);
    length += network.length[next]!;
    last = next;
  }
  return { segment, tags, id, angle: Math.atan2(y[end]! - y[node]!, x[end]! - x[node]!) };
}

const WHOLE = 2 * Math.PI;
const turned = (angle: number): number => ((angle % WHOLE) + WHOLE) % WHOLE;

/** Whether an arm lies left of the course that comes by one arm and goes by another. */
const isLeft = (angle: number, back: number, on: number): boolean => turned(angle - on) < turned(back - on);

/** The other carriageway of the course's own street, where they part or join: of its name, one way, and along the course. */
function isOtherCarriageway(arm: Arm, back: Arm, on: Arm): boolean {
  const name = streetName(arm.tags);
  if (name === null || (arm.tags['oneway'] ?? 'no') === 'no') return false;
  return [back, on].some((own) => {
    const apart = turned(arm.angle - own.angle);
    return streetName(own.tags) === name && (Math.min(apart, WHOLE - apart) * 180) / Math.PI < ALONGSIDE;
  });
}

/** Whether a segment's street meets the course at a node: not where both run through it, at different layers. */
function meets(network: Network, node: number, segment: number, own: readonly number[]): boolean {
  const tagsOf = (each: number): Tags => network.ways[network.way[each]!]!.tags;
  const layer = layerOf(tagsOf(segment));
  const courseRunsThrough = layerOf(tagsOf(own[0]!)) === layerOf(tagsOf(own[1]!));
  if (!courseRunsThrough || layerOf(tagsOf(own[0]!)) === layer) return true;
  return !runsThrough(network, node, segment);
}

/** Whether a segment's way goes on at a node. */
function runsThrough(network: Network, node: number, segment: number): boolean {
  const { way, nodes } = { way: network.way[segment]!, nodes: network.ways[network.way[segment]!]!.nodes };
  return network.meeting[node]!.some((other) => other !== segment && network.way[other] === way) && nodes.length > 2;
}
