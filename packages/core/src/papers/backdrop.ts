/** The plan's background drawing on paper: in light grey, so that the course stands out, and nothing too small to see. */
import type { FeatureCollection, Position } from 'geojson';
import type { LonLat } from '../finding.ts';
import type { Html } from './html.ts';
import { mm, svgPath } from './svg.ts';

/** A place on paper, millimetres. */
export type Place = readonly [x: number, y: number];

/** Smaller than this on paper nothing is drawn; nearer than this to the last point nothing is added. */
const SMALLEST = 1.2;
const STEP = 0.15;

const WATER: ReadonlySet<string> = new Set(['water', 'sea', 'lake', 'harbour', 'river', 'stream', 'shallow']);
const GROUND: ReadonlySet<string> = new Set(['land', 'island', 'coast']);
const GREEN: ReadonlySet<string> = new Set(['park', 'green', 'wood', 'forest', 'grass']);
const PATHS: ReadonlySet<string> = new Set(['path', 'track']);

/** What a kind looks like, and what lies on what. */
function lookOf(kind: string, area: boolean): { readonly rank: number; readonly look: string } {
  if (area && kind === 'shallow') return { rank: 0, look: 'fill="none"' };
  if (area && GROUND.has(kind)) return { rank: 1, look: 'fill="#f5f5f5" stroke="#a0a0a0" stroke-width="0.25"' };
  if (area && GREEN.has(kind)) return { rank: 2, look: 'fill="#ececec"' };
  if (area && WATER.has(kind)) return { rank: 3, look: 'fill="#fff" stroke="#a0a0a0" stroke-width="0.2"' };
  if (area) return { rank: 4, look: 'fill="#e2e2e2"' };
  const line = (width: number, more: string = ''): string =>
    `fill="none" stroke="#bdbdbd" stroke-width="${width}"${more}`;
  return {
    rank: 5,
    look: PATHS.has(kind) ? line(0.25, ' stroke-dasharray="0.8 0.6"') : WATER.has(kind) ? line(0.2) : line(0.4),
  };
}

interface Drawn {
  readonly rank: number;
  readonly path: Html;
}

/** Areas and lines of a drawing, the lowest first; contour lines and points are left out. */
export function backdrop({ features }: FeatureCollection, on: (at: LonLat) => Place): Html[] {
  const drawn = features.flatMap(({ geometry, properties }): Drawn[] => {
    const kind = typeof properties?.['kind'] === 'string' ? properties['kind'].toLowerCase() : '';
    if (kind === 'contour') return [];
    const area = geometry.type === 'Polygon' || geometry.type === 'MultiPolygon';
    const lines: readonly (readonly Position[])[] =
      geometry.type === 'LineString'
        ? [geometry.coordinates]
        : geometry.type === 'MultiLineString' || geometry.type === 'Polygon'
          ? geometry.coordinates
          : geometry.type === 'MultiPolygon'
            ? geometry.coordinates.flat()
            : [];
    const d = lines
      .map((line) =>
        commands(
          line.map(([lon, lat]) => on([lon!, lat!])),
          area,
        ),
      )
      .join('');
    const { rank, look } = lookOf(kind, area);
    return d === '' ? [] : [{ rank, path: svgPath(d, `${look}${area ? ' fill-rule="evenodd"' : ''}`) }];
  });
  return drawn.sort((a, b) => a.rank - b.rank).map(({ path }) => path);
}

/** Path commands through places, thinned to what paper shows; "" for what is too small. */
function commands(places: readonly Place[], closed: boolean): string {
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const spread = (values: readonly number[]): number =>
    values.reduce((most, value) => Math.max(most, value), -Infinity) -
    values.reduce((least, value) => Math.min(least, value), Infinity);
  if (Math.max(spread(xs), spread(ys)) < SMALLEST) return '';
  return `${thinned(places)
    .map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${mm(x)} ${mm(y)}`)
    .join('')}${closed ? 'Z' : ''}`;
}

/** Places none nearer than `STEP` to the one before; the ends stay. */
export function thinned(places: readonly Place[]): Place[] {
  const kept: Place[] = [];
  for (const [k, place] of places.entries()) {
    const last = kept.at(-1);
    if (last === undefined || k === places.length - 1 || Math.hypot(place[0] - last[0], place[1] - last[1]) >= STEP)
      kept.push(place);
  }
  return kept;
}
