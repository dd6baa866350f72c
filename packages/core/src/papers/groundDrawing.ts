/**
 * The plan's map of the ground on paper, faint under the course: parks, water, houses, streets at their width, paths, rails,
 * and whom the map credits. True to metres, as maps are; nothing is measured on it.
 */
import type { LonLat } from '../finding.ts';
import { wrapDegrees } from '../geodesy/ellipsoid.ts';
import { type DrawnArea, type DrawnLine, drawnArea, drawnLine, drawnName, isBelow } from '../ground/drawn.ts';
import type { Ground, GroundLine, GroundSource } from '../ground/ground.ts';
import { streetWidth } from '../ground/width.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Place, thinned } from './backdrop.ts';
import { shortened } from './frame.ts';
import { type Html, html } from './html.ts';
import { mm, svgPath, svgText, through } from './svg.ts';
import { POINT, textWidth } from './textBox.ts';

/** The paper that the ground is drawn on. */
export interface GroundFrame {
  readonly on: (at: LonLat) => Place;
  /** Millimetres for a metre. */
  readonly scale: number;
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  /** What is farther from a place is not looked at, metres. */
  readonly about?: { readonly at: LonLat; readonly reach: number };
}

/** A street by name, as its pieces on paper. */
export interface NamedStreet {
  readonly name: string;
  readonly line: DrawnLine;
  readonly places: readonly Place[];
}

/** Smaller than this on paper nothing is drawn, millimetres. */
const SMALLEST = 0.9;
/** Narrower than this on paper a street is one line. */
const WIDE = 0.9;

type Class = DrawnLine | DrawnArea | 'below';

const AREA_LOOKS: Readonly<Record<DrawnArea, string>> = {
  park: 'fill="#f0f0f0"',
  water: 'fill="#fff" stroke="#a8a8a8" stroke-width="0.2"',
  paved: 'fill="#f7f7f7" stroke="#bdbdbd" stroke-width="0.2"',
  building: 'fill="#dedede"',
};
const LINE_WIDTHS: Readonly<Record<DrawnLine | 'below', number>> = {
  main: 0.45,
  street: 0.3,
  lane: 0.2,
  path: 0.2,
  steps: 0.5,
  rail: 0.25,
  stream: 0.2,
  shore: 0.3,
  below: 0.25,
};
const DASHES: Readonly<Partial<Record<Class, string>>> = {
  path: '0.8 0.6',
  steps: '0.25 0.35',
  rail: '1.4 0.5',
  below: '1.6 0.9',
};
/** From the lowest up. */
const LINES = ['shore', 'stream', 'below', 'rail', 'path', 'steps', 'lane', 'street', 'main'] as const;
const AREAS = ['park', 'water', 'paved', 'building'] as const;
const CASED: ReadonlySet<Class> = new Set(['lane', 'street', 'main']);

/** The middle of a feature and half its size, degrees. */
type Extent = readonly [lon: number, lat: number, halfLon: number, halfLat: number];

/** Ways and areas of a ground with their extents, made once for all maps of a paper. */
interface Sized {
  readonly ways: readonly Extent[];
  readonly areas: readonly Extent[];
}

const sizes = new WeakMap<Ground, Sized>();

function sizesOf(ground: Ground): Sized {
  const known = sizes.get(ground);
  if (known !== undefined) return known;
  const made = { ways: ground.ways.map(extentOf), areas: ground.areas.map(({ rings: [outer] }) => extentOf(outer!)) };
  sizes.set(ground, made);
  return made;
}

function extentOf({ lon, lat }: GroundLine): Extent {
  let [west, east, south, north] = [0, 0, Infinity, -Infinity];
  for (let k = 0; k < lon.length; k++) {
    // From the first position, so that the antimeridian parts nothing.
    const off = wrapDegrees(lon[k]! - lon[0]!);
    [west, east] = [Math.min(west, off), Math.max(east, off)];
    [south, north] = [Math.min(south, lat[k]!), Math.max(north, lat[k]!)];
  }
  return [wrapDegrees(lon[0]! + (west + east) / 2), (south + north) / 2, (east - west) / 2, (north - south) / 2];
}

const METRES = 110_000;

const isNear = ([lon, lat, halfLon, halfLat]: Extent, { about }: GroundFrame): boolean => {
  if (about === undefined) return true;
  const [x, y] = about.at;
  const up = about.reach / METRES;
  const across = up / Math.max(0.01, Math.cos((y * Math.PI) / 180));
  return Math.abs(lat - y) <= halfLat + up && Math.abs(wrapDegrees(lon - x)) <= halfLon + across;
};

/** A line on paper, thinned to what paper shows; empty where it is beside the paper or too small. */
function placesOf({ lon, lat }: GroundLine, { on, width, height }: GroundFrame): readonly Place[] {
  const places = thinned(Array.from(lon, (x, k) => on([x, lat[k]!])));
  let [left, right, top, foot] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of places) {
    [left, right] = [Math.min(left, x), Math.max(right, x)];
    [top, foot] = [Math.min(top, y), Math.max(foot, y)];
  }
  const beside = right < 0 || left > width || foot < 0 || top > height;
  return beside || Math.max(right - left, foot - top) < SMALLEST ? [] : places;
}

const stroke = (colour: string, width: number, dash: string | undefined): string =>
  `fill="none" stroke="${colour}" stroke-width="${mm(width)}" stroke-linejoin="round"${dash === undefined ? ' stroke-linecap="round"' : ` stroke-dasharray="${dash}"`}`;

/** Areas, then lines from the least up: one path for each look, so that papers stay small. */
export function groundDrawing(ground: Ground, frame: GroundFrame): Html[] {
  return [...areasOf(ground, frame), ...linesOf(ground, frame)];
}

function areasOf(ground: Ground, frame: GroundFrame): Html[] {
  const extents = sizesOf(ground).areas;
  const paths = new Map<DrawnArea, string>();
  for (const [k, { tags, rings }] of ground.areas.entries()) {
    const kind = drawnArea(tags);
    if (kind === null || !isNear(extents[k]!, frame)) continue;
    const outer = placesOf(rings[0]!, frame);
    if (outer.length === 0) continue;
    const all = [outer, ...rings.slice(1).map((ring) => placesOf(ring, frame))].filter((ring) => ring.length > 2);
    paths.set(kind, `${paths.get(kind) ?? ''}${all.map((ring) => `${through(ring)}Z`).join('')}`);
  }
  return AREAS.flatMap((kind) => {
    const d = paths.get(kind);
    return d === undefined ? [] : [svgPath(d, AREA_LOOKS[kind])];
  });
}

function linesOf(ground: Ground, frame: GroundFrame): Html[] {
  const extents = sizesOf(ground).ways;
  // By class and width on paper: streets are as wide as they are, where paper shows that.
  const paths = new Map<Class, Map<number, string>>();
  for (const [k, way] of ground.ways.entries()) {
    const line = drawnLine(way.tags);
    if (line === null || !isNear(extents[k]!, frame)) continue;
    const places = placesOf(way, frame);
    if (places.length < 2) continue;
    const kind = isBelow(way.tags) ? 'below' : line;
    const wide = Math.round(streetWidth(way.tags).width * frame.scale * 10) / 10;
    const width = CASED.has(kind) && wide >= WIDE ? wide : 0;
    const own = paths.get(kind) ?? new Map<number, string>();
    paths.set(kind, own.set(width, `${own.get(width) ?? ''}${through(places)}`));
  }
  const each = (of: (kind: (typeof LINES)[number], width: number, d: string) => Html[]): Html[] =>
    LINES.flatMap((kind) => [...(paths.get(kind) ?? [])].flatMap(([width, d]) => of(kind, width, d)));
  return [
    ...each((kind, width, d) =>
      width === 0
        ? [svgPath(d, stroke('#b4b4b4', LINE_WIDTHS[kind], DASHES[kind]))]
        : [svgPath(d, stroke('#b4b4b4', width + 0.3, undefined))],
    ),
    // White over all edges, so that streets run into one another.
    ...each((_, width, d) => (width === 0 ? [] : [svgPath(d, stroke('#fff', width, undefined))])),
  ];
}

/** Streets, paths and rails with names that come near the paper, each piece by itself; those that matter most first. */
export function namedStreets(ground: Ground, frame: GroundFrame): NamedStreet[] {
  const extents = sizesOf(ground).ways;
  const found = ground.ways.flatMap((way, k): NamedStreet[] => {
    const [line, name] = [drawnLine(way.tags), drawnName(way.tags)];
    if (line === null || name === null || line === 'stream' || line === 'shore' || !isNear(extents[k]!, frame))
      return [];
    const places = placesOf(way, frame);
    return places.length < 2 ? [] : [{ name, line, places }];
  });
  const rank = ({ line }: NamedStreet): number => -LINES.findIndex((one) => one === line);
  return found.toSorted((a, b) => rank(a) - rank(b));
}

/** Points of the credit under a map: to be found by who looks for it, not to be read at arm's length. */
const CREDIT = 6.5;
const LINE = CREDIT * POINT * 1.25;
const MOST = 120;

/** Whom the map credits, on as many lines as that takes; `height`: what is cut off the foot of the drawing for it. */
export interface Credit {
  readonly height: number;
  /** At the foot of a drawing so high, millimetres. */
  readonly at: (height: number) => Html[];
}

export function creditOf(source: GroundSource | undefined, width: number, { frame }: SheetText): Credit {
  if (source === undefined) return { height: 0, at: () => [] };
  const says = frame.street.credit(shortened(source.credit, MOST), source.licence, source.date);
  const lines: string[] = [];
  for (const word of says.split(' ')) {
    const longer = [...lines.slice(-1), word].join(' ');
    if (lines.length > 0 && textWidth(longer, CREDIT) > width - 1) lines.push(word);
    else lines.splice(-1, 1, longer);
  }
  return {
    height: lines.length * LINE + 0.6,
    at: (height) =>
      lines.map((line, k) =>
        svgText(0.5, height - (lines.length - 1 - k) * LINE - 0.7, line, {
          points: CREDIT,
          data: html` data-credit="1"`,
        }),
      ),
  };
}
