/**
 * Builds a GpxDocument from the opening and closing of elements (GPX 1.0 and 1.1 schemas).
 * What a course does not need, `<extensions>` above all, is passed over with everything in it.
 */

import { createColumns, type Columns } from './columns.ts';
import type { GpxDocument, GpxLine, GpxSegment, GpxWaypoint } from './document.ts';
import { parseNumber, numberAdvice, reportPosition } from './numbers.ts';
import { quoted, type Place, type Trouble } from './trouble.ts';

type Field = 'name' | 'comment' | 'description' | 'symbol' | 'type' | 'ele' | 'hdop';
type Kind = 'file' | 'gpx' | 'metadata' | 'track' | 'segment' | 'route' | 'point' | 'waypoint' | Field;
interface Shape {
  readonly tag: string;
  readonly kind: Kind;
  readonly isText: boolean;
  readonly children: ReadonlyMap<string, Shape>;
  /** The child that comes most often, compared first: a look-up in the map has to hash the name. */
  readonly usual: Shape | undefined;
}

const shape = (tag: string, kind: Kind, children: readonly Shape[]): Shape => ({ tag, kind, isText: false, children: new Map(children.map((child) => [child.tag, child])), usual: children.at(-1) });
const text = (tag: string, kind: Field): Shape => ({ tag, kind, isText: true, children: new Map(), usual: undefined });

const NAME = text('name', 'name');
const ELE = text('ele', 'ele');
const WAYPOINT_TEXTS = [NAME, ELE, text('cmt', 'comment'), text('desc', 'description'), text('sym', 'symbol'), text('type', 'type'), text('hdop', 'hdop')];
const FILE = shape('', 'file', [
  shape('gpx', 'gpx', [
    NAME,
    shape('metadata', 'metadata', [NAME]),
    shape('trk', 'track', [NAME, shape('trkseg', 'segment', [shape('trkpt', 'point', [ELE])])]),
    shape('rte', 'route', [NAME, shape('rtept', 'point', [ELE])]),
    shape('wpt', 'waypoint', WAYPOINT_TEXTS),
  ]),
]);

/** Where each element that holds points belongs. */
const HOME: ReadonlyMap<string, string> = new Map([
  ['trk', 'gpx'],
  ['rte', 'gpx'],
  ['wpt', 'gpx'],
  ['trkseg', 'trk'],
  ['trkpt', 'trkseg'],
  ['rtept', 'rte'],
]);

type Texts = Partial<Record<Exclude<Field, 'ele'>, string>>;

export interface Elements {
  readonly trouble: Trouble;
  readonly columns: Columns;
  readonly tracks: GpxLine[];
  readonly routes: GpxLine[];
  readonly waypoints: GpxWaypoint[];
  readonly stack: Shape[];
  /** Where the tag that is just opening stands. */
  readonly where: () => Place;
  /** Where the innermost text, and the innermost line or waypoint, was opened. */
  textPlace: Place;
  place: Place;
  /** How many elements are open within the one that is passed over. */
  ignored: number;
  text: string;
  lat: number;
  lon: number;
  ele: number;
  hdop: number;
  version: string | null;
  creator: string | null;
  name: string | null;
  lineName: string | null;
  segments: GpxSegment[];
  texts: Texts;
}

export const createElements = (trouble: Trouble, where: () => Place): Elements => ({
  trouble,
  columns: createColumns(),
  tracks: [],
  routes: [],
  waypoints: [],
  stack: [FILE],
  where,
  textPlace: { line: 1, column: 1 },
  place: { line: 1, column: 1 },
  ignored: 0,
  text: '',
  lat: NaN,
  lon: NaN,
  ele: NaN,
  hdop: NaN,
  version: null,
  creator: null,
  name: null,
  lineName: null,
  segments: [],
  texts: {},
});

/** Opens an element, `name` being `null` for a foreign one; true where its text is wanted. */
export function openElement(to: Elements, name: string | null, lat: string | undefined, lon: string | undefined): boolean {
  if (to.ignored > 0) {
    to.ignored += 1;
    return false;
  }
  const parent = to.stack.at(-1) ?? FILE;
  const found = childOf(parent, name);
  if (found === undefined) {
    to.ignored = 1;
    if (name !== null && HOME.has(name)) misplaced(to, name);
    return false;
  }
  to.stack.push(found);
  if (found.isText) {
    to.text = '';
    to.textPlace = to.where();
    return true;
  }
  if (found.kind === 'point' || found.kind === 'waypoint') openPoint(to, found.tag, lat, lon);
  if (found.kind === 'waypoint') {
    to.texts = {};
    to.place = to.where();
  }
  if (found.kind === 'track' || found.kind === 'route') {
    to.lineName = null;
    to.place = to.where();
    to.segments = [];
  }
  return false;
}

function childOf({ usual, children }: Shape, name: string | null): Shape | undefined {
  if (name === null) return undefined;
  return usual !== undefined && name === usual.tag ? usual : children.get(name);
}

function misplaced(to: Elements, name: string): void {
  const home = HOME.get(name) ?? 'gpx';
  to.trouble.report('warning', 'gpx-misplaced', `This <${name}> does not stand directly inside <${home}>, where GPX expects it, and is left out with all it holds. Move it there.`, to.where());
}

function openPoint(to: Elements, name: string, latText: string | undefined, lonText: string | undefined): void {
  const lat = latText === undefined ? null : parseNumber(latText);
  const lon = lonText === undefined ? null : parseNumber(lonText);
  to.ele = NaN;
  to.hdop = NaN;
  if (lat === null || lon === null || Math.abs(lat) > 90 || Math.abs(lon) > 180) {
    reportPosition(to.trouble, name, latText, lonText, to.where());
    to.lat = NaN;
    return;
  }
  to.lat = lat;
  to.lon = lon;
}

/** Closes the innermost element; true where it was one whose text was wanted. */
export function closeElement(to: Elements): boolean {
  if (to.ignored > 0) {
    to.ignored -= 1;
    return false;
  }
  const closed = to.stack.pop() ?? FILE;
  if (closed.isText) closeText(to, closed.kind as Field);
  else if (closed.kind === 'point') {
    if (!Number.isNaN(to.lat)) to.columns.push(to.lon, to.lat, to.ele);
  } else if (closed.kind === 'segment') takeSegment(to);
  else if (closed.kind === 'waypoint') closeWaypoint(to);
  else if (closed.kind === 'track') closeLine(to.tracks, 'track', to);
  else if (closed.kind === 'route') {
    takeSegment(to);
    closeLine(to.routes, 'route', to);
  }
  return closed.isText;
}

function closeText(to: Elements, field: Field): void {
  if (field === 'ele') to.ele = numberOrWarn(to, 'ele', 'gpx-elevation', 'metres such as 123.4');
  else if (field === 'hdop') to.hdop = numberOrWarn(to, 'hdop', 'gpx-hdop', 'a number such as 1.5');
  else {
    const value = to.text.trim();
    if (value === '') return;
    const owner = to.stack.at(-1)?.kind;
    if (owner === 'waypoint') to.texts[field] = value;
    else if (owner === 'track' || owner === 'route') to.lineName = value;
    else to.name = value;
  }
}

function numberOrWarn(to: Elements, element: string, code: string, expected: string): number {
  const value = parseNumber(to.text);
  if (value !== null) return value;
  to.trouble.report('warning', code, `Found ${quoted(to.text)} in <${element}>: ${numberAdvice(to.text)}. Expected ${expected}; the point is kept without it.`, to.textPlace);
  return NaN;
}

function takeSegment(to: Elements): void {
  const segment = to.columns.take();
  if (segment !== null) to.segments.push(segment);
}

function closeLine(list: GpxLine[], kind: GpxLine['kind'], to: Elements): void {
  list.push({ kind, name: to.lineName, segments: to.segments, ...to.place });
}

const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);

function closeWaypoint(to: Elements): void {
  if (Number.isNaN(to.lat)) return;
  const { name = null, comment = null, description = null, symbol = null, type = null } = to.texts;
  to.waypoints.push({ lon: to.lon, lat: to.lat, ele: orNull(to.ele), name, comment, description, symbol, type, hdop: orNull(to.hdop), ...to.place });
}

/** The tag of the innermost element that is open and read, for a file that ends too early. */
export const innermost = (of: Elements): string => of.stack.at(-1)?.tag ?? '';

/** What has been read, once the root element is closed. */
export const documentOf = (from: Elements, file: string): GpxDocument => ({
  file,
  version: from.version,
  creator: from.creator,
  name: from.name,
  tracks: from.tracks,
  routes: from.routes,
  waypoints: from.waypoints,
});
