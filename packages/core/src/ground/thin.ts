/**
 * Streets without positions that show nothing: a drawing tool or a recorder can leave thousands within a metre, and a search
 * along the streets would go through each.
 */
import type { Ground, GroundWay } from './ground.ts';
import type { PlaneLine } from './plane.ts';

/** Metres from the position kept before within which one shows nothing. */
export const THIN = 0.1;

/** Nodes that are more than a place on one way: where ways meet or one comes back, and single things. A node twice running is one place. */
export function sharedNodes({ ways, points }: Pick<Ground, 'ways' | 'points'>): ReadonlySet<string> {
  const once = new Set<string>();
  const shared = new Set(points.map(({ id }) => id));
  for (const { nodes } of ways)
    for (const [k, node] of nodes.entries()) {
      if (node === nodes[k - 1]) continue;
      if (once.has(node)) shared.add(node);
      else once.add(node);
    }
  return shared;
}

/** A way and its line in the plane; both ends and shared nodes stay. The way itself where nothing goes. */
export function thinned(
  way: GroundWay,
  line: PlaneLine,
  shared: ReadonlySet<string>,
): { readonly way: GroundWay; readonly line: PlaneLine } {
  const { x, y } = line;
  const kept: number[] = [];
  for (let k = 0; k < x.length; k++) {
    const last = kept.at(-1);
    const node = way.nodes[k]!;
    const shows = last === undefined || k === x.length - 1 || (shared.has(node) && node !== way.nodes[last]);
    if (shows || Math.hypot(x[k]! - x[last]!, y[k]! - y[last]!) > THIN) kept.push(k);
  }
  if (kept.length === x.length) return { way, line };
  const of = (column: Float64Array): Float64Array => Float64Array.from(kept, (k) => column[k]!);
  return {
    way: { ...way, nodes: kept.map((k) => way.nodes[k]!), lon: of(way.lon), lat: of(way.lat) },
    line: { x: of(x), y: of(y) },
  };
}
