/**
 * Names of the streets that a course is on. An unnamed pavement, and a crossing that carries it on, has the name of the street
 * beside it: people name a place on the pavement by its street, and courses drawn for walkers follow pavements.
 */
import type { Leg } from './legs.ts';
import type { Network } from './network.ts';
import { shareNearest } from './plane.ts';
import { carriesVehicles, isPartOfStreet, streetName } from './streetTags.ts';

/** Metres from a pavement to the middle of its street, at most, and the cosine of the angle between them, at least: 30°. */
const BESIDE = 25;
const PARALLEL = Math.cos(Math.PI / 6);

/** Of each leg the name of its street, `null` without one. */
export function namesOf(network: Network, legs: readonly Leg[]): (string | null)[] {
  const known = new Map<number, string | null>();
  return legs.map(({ segment }) => {
    const { tags } = network.ways[network.way[segment]!]!;
    if (!isPartOfStreet(tags)) return streetName(tags);
    const lent = known.get(segment);
    if (lent !== undefined) return lent;
    const found = nameBeside(network, segment);
    known.set(segment, found);
    return found;
  });
}

/** The name of the nearest street that runs along the middle of a segment. */
function nameBeside(network: Network, segment: number): string | null {
  const { x, y, from, to, length, way, ways, index } = network;
  const [a, b] = [from[segment]!, to[segment]!];
  const [mx, my] = [(x[a]! + x[b]!) / 2, (y[a]! + y[b]!) / 2];
  const [dx, dy] = [x[b]! - x[a]!, y[b]! - y[a]!];
  let [least, name]: [number, string | null] = [BESIDE, null];
  for (const other of index?.search(mx - BESIDE, my - BESIDE, mx + BESIDE, my + BESIDE) ?? []) {
    const { tags } = ways[way[other]!]!;
    if (!carriesVehicles(tags) || streetName(tags) === null) continue;
    const [x0, y0, x1, y1] = [x[from[other]!]!, y[from[other]!]!, x[to[other]!]!, y[to[other]!]!];
    if (Math.abs(dx * (x1 - x0) + dy * (y1 - y0)) < PARALLEL * length[segment]! * length[other]!) continue;
    const share = shareNearest(mx, my, x0, y0, x1, y1);
    const distance = Math.hypot(x0 + share * (x1 - x0) - mx, y0 + share * (y1 - y0) - my);
    if (distance < least) [least, name] = [distance, streetName(tags)];
  }
  return name;
}
