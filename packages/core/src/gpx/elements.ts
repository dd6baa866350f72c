/**
 * Builds a GpxDocument from the opening and closing of elements (GPX 1.0 and 1.1 schemas).
 * What a course does not need, `<extensions>` above all, is passed over with everything in it.
 */

import { LIMITS } from '../limits.ts';
import { createColumns, pushPoint, takeSegment, type Columns } from './columns.ts';
import type { GpxDocument, GpxLine, GpxSegment, GpxWaypoint } from './document.ts';
import { badNumber, readNumber, reportPosition } from './numbers.ts';
import type { Place, Trouble } from './trouble.ts';

type Field = 'name' | 'comment' | 'description' | 'symbol' | 'type' | 'ele' | 'hdop';
type Kind = 'file' | 'gpx' | 'metadata' | 'track' | 'segment' | 'route' | 'point' | 'waypoint' | Field;
interface Shape {
  readonly tag: string;
  readonly kind: Kind;
  readonly isText: boolean;
  /** The element around it; itself where it is the whole file. */
  readonly parent: Shape;
  readonly children: ReadonlyMap<string, Shape>;
  /** The child that comes most often, compared first: a look-up in the map has to hash the name. */
  readonly usual: Shape | undefined;
}

type Make = (parent: Shape) => Shape;

const shape =
  (tag: string, kind: Kind, isText: boolean, ...children: readonly Make[]): Make =>
  (parent) => {
    const made = {
      tag,
      kind,
      isText,
      parent,
      children: new Map<string, Shape>(),
      usual: undefined as Shape | undefined,
    };
    for (const make of children) {
      const child = make(made);
      made.children.set(child.tag, child);
      made.usual = child;
    }
    return made;
  };
const text = (tag: string, kind: Field): Make => shape(tag, kind, true);

const NAME = text('name', 'name');
const ELE = text('ele', 'ele');
const WAYPOINT_TEXTS = [
  NAME,
  ELE,
  text('cmt', 'comment'),
  text('desc', 'description'),
  text('sym', 'symbol'),
  text('type', 'type'),
  text('hdop', 'hdop'),
];
const GPX = shape(
  'gpx',
  'gpx',
  false,
  NAME,
  shape('metadata', 'metadata', false, NAME),
  shape('trk', 'track', false, NAME, shape('trkseg', 'segment', false, shape('trkpt', 'point', false, ELE))),
  shape('rte', 'route', false, NAME, shape('rtept', 'point', false, ELE)),
  shape('wpt', 'waypoint', false, ...WAYPOINT_TEXTS),
);
/** The whole file: its own parent, so that leaving it is no special case. */
const FILE: Shape = wholeFile();

function wholeFile(): Shape {
  const file = {
    tag: '',
    kind: 'file' as const,
    isText: false,
    children: new Map<string, Shape>(),
    usual: undefined as Shape | undefined,
  };
  const whole: Shape = Object.assign(file, { parent: file as unknown as Shape });
  file.usual = GPX(whole);
  file.children.set('gpx', file.usual);
  return whole;
}

/** Where each element that holds points belongs. */
const HOME: ReadonlyMap<string, string> = new Map([
  ['trk', 'gpx'],
  ['rte', 'gpx'],
  ['wpt', 'gpx'],
  ['trkseg', 'trk'],
  ['trkpt', 'trkseg'],
  ['rtept', 'rte'],
]);

/** Places in `values`. */
const LAT = 0;
const LON = 1;
const ELEVATION = 2;
const HDOP = 3;

/** What there may only be so many of. */
export type CountedElement = 'points' | 'waypoints' | 'lines' | 'segments';

type Texts = Partial<Record<Exclude<Field, 'ele'>, string>>;

export interface Elements {
  readonly trouble: Trouble;
  readonly columns: Columns;
  readonly tracks: GpxLine[];
  readonly routes: GpxLine[];
  readonly waypoints: GpxWaypoint[];
  /** The innermost element that is open and read. */
  inside: Shape;
  /** Where the tag that is just opening stands. */
  readonly where: () => Place;
  /** Keeps what tells where the tag of a text stands, and works it out where it is asked for. */
  readonly mark: () => void;
  readonly marked: () => Place;
  /** Ends the reading. */
  readonly pastLimit: (what: CountedElement) => never;
  readonly counts: Record<CountedElement, number>;
  /** Where the innermost line or waypoint was opened. */
  place: Place;
  /** How many elements are open within the one that is passed over. */
  ignored: number;
  text: string;
  /** Latitude, longitude, elevation and hdop of the point that is open; NaN where it has none. In a list, so that none is put on the heap. */
  readonly values: Float64Array;
  version: string | null;
  creator: string | null;
  name: string | null;
  lineName: string | null;
  segments: GpxSegment[];
  texts: Texts;
}

export const createElements = (
  trouble: Trouble,
  { where, mark, marked }: Pick<Elements, 'where' | 'mark' | 'marked'>,
  pastLimit: Elements['pastLimit'],
): Elements => ({
  trouble,
  columns: createColumns(),
  tracks: [],
  routes: [],
  waypoints: [],
  inside: FILE,
  where,
  mark,
  marked,
  pastLimit,
  counts: { points: 0, waypoints: 0, lines: 0, segments: 0 },
  place: { line: 1, column: 1 },
  ignored: 0,
  text: '',
  values: new Float64Array(4).fill(NaN),
  version: null,
  creator: null,
  name: null,
  lineName: null,
  segments: [],
  texts: {},
});

/** Opens an element, `name` being `null` for a foreign one; true where its text is wanted. */
export function openElement(
  to: Elements,
  name: string | null,
  lat: string | undefined,
  lon: string | undefined,
): boolean {
  if (to.ignored > 0) {
    to.ignored += 1;
    return false;
  }
  const found = childOf(to.inside, name);
  if (found === undefined) {
    to.ignored = 1;
    // Most of what is passed over is <time>, whose name is too short and too long for any of these: no need to hash it.
    if (name !== null && name.length !== 4 && HOME.has(name)) misplaced(to, name);
    return false;
  }
  to.inside = found;
  if (found.isText) {
    to.text = '';
    to.mark();
    return true;
  }
  if (found.kind === 'point' || found.kind === 'waypoint') openPoint(to, found.tag, lat, lon);
  if (found.kind === 'point') count(to, 'points');
  else if (found.kind === 'segment') count(to, 'segments');
  if (found.kind === 'waypoint') {
    count(to, 'waypoints');
    to.texts = {};
    to.place = to.where();
  }
  if (found.kind === 'track' || found.kind === 'route') {
    count(to, 'lines');
    to.lineName = null;
    to.place = to.where();
    to.segments = [];
  }
  return false;
}

function count({ counts, pastLimit }: Elements, what: CountedElement): void {
  if ((counts[what] += 1) > LIMITS.gpx[what]) pastLimit(what);
}

function childOf({ usual, children }: Shape, name: string | null): Shape | undefined {
  if (name === null) return undefined;
  if (usual !== undefined && name === usual.tag) return usual;
  return children.size > 1 ? children.get(name) : undefined;
}

function misplaced(to: Elements, name: string): void {
  const home = HOME.get(name) ?? 'gpx';
  to.trouble.report('warning', 'gpx-misplaced', { element: name, home }, to.where());
}

function openPoint(to: Elements, name: string, latText: string | undefined, lonText: string | undefined): void {
  const { values } = to;
  values[ELEVATION] = NaN;
  values[HDOP] = NaN;
  const read =
    latText !== undefined &&
    lonText !== undefined &&
    readNumber(latText, values, LAT) &&
    readNumber(lonText, values, LON);
  if (read && Math.abs(values[LAT]!) <= 90 && Math.abs(values[LON]!) <= 180) return;
  reportPosition(to.trouble, name, latText, lonText, to.where());
  values[LAT] = NaN;
}

/** Closes the innermost element; true where it was one whose text was wanted. */
export function closeElement(to: Elements): boolean {
  if (to.ignored > 0) {
    to.ignored -= 1;
    return false;
  }
  const closed = to.inside;
  to.inside = closed.parent;
  if (closed.isText) closeText(to, closed.kind as Field);
  else if (closed.kind === 'point') {
    if (!Number.isNaN(to.values[LAT])) pushPoint(to.columns, to.values[LON]!, to.values[LAT]!, to.values[ELEVATION]!);
  } else if (closed.kind === 'segment') keepSegment(to);
  else if (closed.kind === 'waypoint') closeWaypoint(to);
  else if (closed.kind === 'track') closeLine(to.tracks, 'track', to);
  else if (closed.kind === 'route') {
    keepSegment(to);
    closeLine(to.routes, 'route', to);
  }
  return closed.isText;
}

function closeText(to: Elements, field: Field): void {
  if (field === 'ele') readOrWarn(to, ELEVATION, 'gpx-elevation');
  else if (field === 'hdop') readOrWarn(to, HDOP, 'gpx-hdop');
  else {
    const value = to.text.trim();
    if (value === '') return;
    const owner = to.inside.kind;
    if (owner === 'waypoint') to.texts[field] = value;
    else if (owner === 'track' || owner === 'route') to.lineName = value;
    else to.name = value;
  }
}

function readOrWarn(to: Elements, at: number, code: 'gpx-elevation' | 'gpx-hdop'): void {
  if (readNumber(to.text, to.values, at)) return;
  to.values[at] = NaN;
  to.trouble.report('warning', code, badNumber(to.text), to.marked());
}

function keepSegment(to: Elements): void {
  const segment = takeSegment(to.columns);
  if (segment !== null) to.segments.push(segment);
}

function closeLine(list: GpxLine[], kind: GpxLine['kind'], to: Elements): void {
  list.push({ kind, name: to.lineName, segments: to.segments, ...to.place });
}

const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);

function closeWaypoint(to: Elements): void {
  const [lat = NaN, lon = NaN, ele = NaN, hdop = NaN] = to.values;
  if (Number.isNaN(lat)) return;
  const { name = null, comment = null, description = null, symbol = null, type = null } = to.texts;
  to.waypoints.push({
    lon,
    lat,
    ele: orNull(ele),
    name,
    comment,
    description,
    symbol,
    type,
    hdop: orNull(hdop),
    ...to.place,
  });
}

/** The tag of the innermost element that is open and read, for a file that ends too early. */
export const innermost = (of: Elements): string => of.inside.tag;

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
