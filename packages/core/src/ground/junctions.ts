/**
 * Junctions: nodes of the course's streets at which other streets leave. Streets meet at a shared node, unless both run through it
 * at different layers. No junction: where a way only goes on as another; where the carriageways of one street part; pavements
 * and crossings of a street. Driveways, parking aisles and private service roads are told as `access`, with no 5 m to their mouth.
 */
import { type Course, courseLength, startMeasure } from '../course/course.ts';
import { toMeasure } from '../course/scale.ts';
import type { Junction } from './along.ts';
import type { Tags } from './ground.ts';
import { type Leg, goesOn } from './legs.ts';
import { type Network, otherEnd } from './network.ts';
import { type PlaneCourse, nearestBetween } from './samples.ts';
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

/** How the course comes by a node: the segments by which it comes and goes, −1 where it begins or ends there. */
interface Passing {
  readonly node: number;
  readonly raw: number;
  readonly by: number;
  readonly on: number;
  /** Names of the street that it comes by and of the one that it takes. */
  readonly own: readonly (string | null)[];
}

/** Junctions in running order. `names`: the street's name of each leg. */
export function junctionsOf(
  on: PlaneCourse,
  network: Network,
  legs: readonly Leg[],
  names: readonly (string | null)[],
): Junction[] {
  const found: Junction[] = [];
  for (const [k, leg] of legs.entries()) {
    const own = [names[k - 1] ?? null, names[k]!];
    const before = legs[k - 1];
    const passing = goesOn(before, leg)
      ? [{ node: leg.enter, raw: leg.from, by: before!.segment, on: leg.segment, own }]
      : beginning(on, network, leg, own);
    const ending = goesOn(leg, legs[k + 1]) ? [] : endOf(on, network, leg, [names[k]!]);
    for (const one of [...passing, ...ending]) {
      const junction = one.by === one.on ? null : junctionAt(on.course, network, one);
      const last = found.at(-1);
      const again = last !== undefined && last.node === junction?.node && junction.measure - last.measure < AT_END;
      if (junction !== null && !again) found.push(junction);
    }
  }
  return found;
}

/** A corner within so many metres behind the place where the course begins on a street, or beyond that where it ends, is at its end. */
const AT_END = 10;

function beginning(on: PlaneCourse, network: Network, leg: Leg, own: Passing['own']): Passing[] {
  const node = nodeNear(on, network, leg, leg.leave, leg.from);
  return node === null ? [] : [{ node, raw: leg.from, by: -1, on: leg.segment, own }];
}

function endOf(on: PlaneCourse, network: Network, leg: Leg, own: Passing['own']): Passing[] {
  const node = nodeNear(on, network, leg, leg.enter, leg.to);
  return node === null ? [] : [{ node, raw: leg.to, by: leg.segment, on: -1, own }];
}

/** The node of a leg's segment, other than the one that the leg passes, to which the course is nearest at one end of the leg, and near. */
function nodeNear(on: PlaneCourse, { x, y, from, to }: Network, leg: Leg, other: number, end: number): number | null {
  const near = [from[leg.segment]!, to[leg.segment]!].find((node) => {
    if (node === other) return false;
    const { raw, distance } = nearestBetween(on, x[node]!, y[node]!, leg.from, leg.to);
    return distance < AT_END && Math.abs(raw - end) < 0.01;
  });
  return near ?? null;
}

function junctionAt(course: Course, network: Network, { node, raw, by, on, own }: Passing): Junction | null {
  const arms = network.meeting[node]!.map((segment) => armAt(network, node, segment));
  const comes = arms.find(({ segment }) => segment === by) ?? straightOn(arms, on);
  const goes = arms.find(({ segment }) => segment === on) ?? straightOn(arms, by);
  const others = arms
    .filter((arm) => arm !== comes && arm !== goes && !isPartOfStreet(arm.tags))
    .filter((arm) => meets(network, node, arm, [comes, goes]) && !isOtherCarriageway(arm, comes, goes))
    .sort((a, b) => prominence(a.tags) - prominence(b.tags));
  if (others.length === 0) return null;
  const measure = toMeasure(course, raw);
  const names = others.map(({ tags }) => streetName(tags)).filter((name) => name !== null && !own.includes(name));
  const half = Math.max(
    ...others.map(({ tags }) => streetWidth(tags).width / 2 + (leadsToPremises(tags) ? 0 : BESIDE)),
  );
  const lefts = others.filter(({ angle }) => isLeft(angle, comes.angle, goes.angle)).length;
  return {
    measure,
    node: network.nodes[node]!,
    names: Array.from(new Set(names as string[])),
    ways: Array.from(new Set(others.map(({ id }) => id))),
    sides: [...(lefts > 0 ? (['left'] as const) : []), ...(lefts < others.length ? (['right'] as const) : [])],
    mouth: {
      from: Math.max(measure - half, startMeasure(course)),
      to: Math.min(measure + half, courseLength(course)),
    },
    vehicles: others.some(({ tags }) => carriesVehicles(tags)),
    access: others.every(({ tags }) => leadsToPremises(tags)),
  };
}

/** Degrees from straight ahead within which a street goes on at the end of a course. */
const STRAIGHT = 45;

/** Where the course begins or ends at a node: the arm that goes on straight from the course's, else a direction straight on, with the tags of the course's. */
function straightOn(arms: readonly Arm[], segment: number): Arm {
  const own = arms.find((arm) => arm.segment === segment)!;
  const ahead = own.angle + Math.PI;
  const off = (arm: Arm): number => apartDeg(arm.angle, ahead);
  const [best] = arms.filter((arm) => arm !== own && off(arm) < STRAIGHT).sort((a, b) => off(a) - off(b));
  const goesOn = best !== undefined && streetName(best.tags) === streetName(own.tags);
  return goesOn ? best : { ...own, segment: -1, angle: ahead };
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

const apartDeg = (a: number, b: number): number => {
  const apart = turned(a - b);
  return (Math.min(apart, WHOLE - apart) * 180) / Math.PI;
};

/** The other carriageway of the course's own street, where they part or join: of its name, one way, and along the course. */
function isOtherCarriageway(arm: Arm, comes: Arm, goes: Arm): boolean {
  const name = streetName(arm.tags);
  if (name === null || (arm.tags['oneway'] ?? 'no') === 'no') return false;
  return [comes, goes].some((own) => streetName(own.tags) === name && apartDeg(arm.angle, own.angle) < ALONGSIDE);
}

/** Whether an arm's street meets the course at a node: not where both run through it, at different layers. */
function meets(network: Network, node: number, arm: Arm, [comes, goes]: readonly [Arm, Arm]): boolean {
  const layer = layerOf(comes.tags);
  if (layer !== layerOf(goes.tags) || layer === layerOf(arm.tags)) return true;
  return !network.meeting[node]!.some(
    (other) => other !== arm.segment && network.way[other] === network.way[arm.segment],
  );
}
