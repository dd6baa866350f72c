/**
 * A town for tests, the same for the same seed: bent streets and avenues about 110 m apart, cut into ways at random, with what leads a
 * matching astray: a boulevard of two carriageways, a pavement, an alley beside a street, an underpass below one, a viaduct
 * over all, a footpath through blocks. Not part of the package.
 */
import { segmentLength } from '../geodesy/segment.ts';
import type { LonLat } from '../finding.ts';
import type { Ground, GroundWay, Tags } from '../ground/ground.ts';
import { generator } from './courses.ts';
import { type Drawing, type Place, drawnGround } from './towns.ts';

const BLOCK = 110;

/** A town of `size` streets and as many avenues, 12 or more. */
export function gridTown(seed: number, size: number = 12): Ground {
  const random = generator(seed);
  const places: Record<string, Place> = {};
  const ways: Record<string, readonly [string, Tags]> = {};
  const put = (name: string, east: number, north: number): string => {
    places[name] = [east, north];
    return name;
  };
  const shift = (most: number): number => (random() * 2 - 1) * most;
  /** Cuts a street into ways of some blocks each, drawn either way. */
  const draw = (id: string, nodes: readonly string[], tags: Tags): void => {
    for (let first = 0, piece = 0; first < nodes.length - 1; piece++) {
      const last = Math.min(first + 2 + Math.floor(random() * 8), nodes.length - 1);
      const part = nodes.slice(first, last + 1);
      const oneway: Tags = random() < 0.3 ? { oneway: 'yes' } : {};
      ways[`${id}.${piece}`] = [(random() < 0.5 ? part : part.reverse()).join(' '), { ...oneway, ...tags }];
      first = last;
    }
  };
  const columns: string[][] = Array.from({ length: size }, () => []);
  const street = (id: string, row: number, off: number, tags: Tags, bend: number): void => {
    const nodes = columns.flatMap((column, c) => {
      const here = put(`${id}-${c}`, c * BLOCK + shift(6), row * BLOCK + off + shift(bend));
      column.push(here);
      return c === 0
        ? [here]
        : [put(`${id}-${c}m`, (c - 0.5) * BLOCK + shift(6), row * BLOCK + off + shift(bend)), here];
    });
    draw(id, nodes, tags);
  };
  for (let row = 0; row < size; row++) {
    const tags: Tags = { highway: 'residential', name: `Street ${row + 1}` };
    if (row === 4) {
      street('boulevard-s', row, -7, { highway: 'primary', name: 'Boulevard', oneway: 'yes', lanes: '2' }, 1);
      street('boulevard-n', row, 7, { highway: 'primary', name: 'Boulevard', oneway: 'yes', lanes: '2' }, 1);
    } else street(`street${row}`, row, 0, tags, row === 2 || row === 7 || row === 9 ? 1 : 9);
    if (row === 7) street('pavement', row, 8, { highway: 'footway', footway: 'sidewalk' }, 0);
    if (row === 9) street('alley', row, 22, { highway: 'service' }, 1);
  }
  for (const [c, column] of columns.entries())
    draw(`avenue${c}`, column, { highway: 'tertiary', name: `Avenue ${c + 1}` });
  const under = [2, 3, 4, 5, 6].map((c) =>
    c === 2 || c === 6 ? `street2-${c}` : put(`under-${c}`, c * BLOCK, 2 * BLOCK - 14),
  );
  ways['underpass'] = [under.join(' '), { highway: 'secondary', name: 'Underpass', tunnel: 'yes', layer: '-1' }];
  const over = Array.from({ length: 9 }, (_, k) => put(`over-${k}`, 60 + k * 120, 20 + k * 118));
  ways['viaduct'] = [
    ['street0-0', ...over, `street${size - 1}-${size - 1}`].join(' '),
    { highway: 'trunk', name: 'Viaduct', bridge: 'yes', layer: '1' },
  ];
  ways['path'] = [`street5-1 ${put('path', 1.6 * BLOCK, 5.5 * BLOCK)} street6-2`, { highway: 'footway' }];
  return drawnGround({ places, ways } satisfies Drawing);
}

/** A walk along ways: n + 1 points, and the way of each of the n steps between them. */
export interface Walk {
  readonly points: readonly LonLat[];
  readonly nodes: readonly string[];
  readonly ways: readonly GroundWay[];
}

const nameOf = ({ tags }: GroundWay): string | undefined => tags['name'];

/** A walk of about so many metres over the ways of a map, either way, mostly staying on its street, turning back only where it must. */
export function randomWalk({ ways }: Ground, length: number, random: () => number): Walk {
  const steps = new Map<string, { to: string; at: LonLat; way: GroundWay }[]>();
  for (const way of ways)
    for (const [i, node] of way.nodes.entries())
      for (const k of [i - 1, i + 1])
        if (way.nodes[k] !== undefined) {
          const step = { to: way.nodes[k], at: [way.lon[k]!, way.lat[k]!] as const, way };
          steps.set(node, [...(steps.get(node) ?? []), step]);
        }
  const any = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const start = any(ways);
  const walk = {
    points: [[start.lon[0]!, start.lat[0]!] as LonLat],
    nodes: [start.nodes[0]!],
    ways: [] as GroundWay[],
  };
  for (let gone = 0; gone < length;) {
    const here = walk.nodes.at(-1)!;
    const all = steps.get(here)!;
    const on = all.filter(({ to }) => to !== walk.nodes.at(-2));
    const same = on.filter(({ way }) => walk.ways.length > 0 && nameOf(way) === nameOf(walk.ways.at(-1)!));
    const { to, at, way } = any(same.length > 0 && random() < 0.7 ? same : on.length > 0 ? on : all);
    gone += segmentLength(...walk.points.at(-1)!, ...at);
    walk.points.push(at);
    walk.nodes.push(to);
    walk.ways.push(way);
  }
  return walk;
}
