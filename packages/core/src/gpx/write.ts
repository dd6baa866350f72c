/**
 * Writes GPX 1.1 documents: elements in the schema's order, positions to 7 decimals (1 cm), lengths to
 * 1 mm. Source: the GPX 1.1 schema (topografix.com/GPX/1/1); XML 1.0, 2.2 (characters) and 2.4 (escaping).
 * Text is kept whole, but what XML cannot hold becomes U+FFFD. Numbers that are none throw a RangeError.
 */
import type { Latitude, Longitude, Metres } from '../units.ts';
import type { GpxSegment } from './document.ts';
import { type Shape, aNumber, aText, column, listOf, maybe, recordOf, want, describeValue } from '../wants.ts';
import { isSegment } from './shapes.ts';

/** A point with what is said of it. Degrees WGS 84. */
export interface GpxPointToWrite {
  readonly lon: Longitude;
  readonly lat: Latitude;
  readonly ele?: Metres;
  /** Milliseconds since 1970 UTC. */
  readonly time?: number;
  readonly name?: string;
  readonly comment?: string;
  readonly description?: string;
  readonly symbol?: string;
  readonly type?: string;
  /** Horizontal dilution of precision, 0 or more. */
  readonly hdop?: number;
}

/** Columns of equal length; an elevation or a time that is NaN is left out. */
export interface GpxSegmentToWrite extends GpxSegment {
  /** Milliseconds since 1970 UTC. */
  readonly time?: Float64Array;
}

/** A track as it is to be written; segments in running order. */
export interface GpxTrackToWrite {
  readonly name?: string;
  readonly comment?: string;
  readonly description?: string;
  readonly type?: string;
  readonly segments: readonly GpxSegmentToWrite[];
}

/** A route as it is to be written. */
export interface GpxRouteToWrite extends Omit<GpxTrackToWrite, 'segments'> {
  readonly points: readonly GpxPointToWrite[];
}

/** A GPX file as it is to be written. */
export interface GpxToWrite {
  /** The program that made it. */
  readonly creator: string;
  readonly name?: string;
  readonly description?: string;
  /** Milliseconds since 1970 UTC. */
  readonly time?: number;
  readonly waypoints?: readonly GpxPointToWrite[];
  readonly routes?: readonly GpxRouteToWrite[];
  readonly tracks?: readonly GpxTrackToWrite[];
}

const text: Shape = maybe(aText);
const number: Shape = maybe(aNumber);
const isPoint: Shape = recordOf<GpxPointToWrite>('a point { lon, lat }', {
  lon: aNumber,
  lat: aNumber,
  ele: number,
  time: number,
  name: text,
  comment: text,
  description: text,
  symbol: text,
  type: text,
  hdop: number,
});
const LINE = { name: text, comment: text, description: text, type: text };
const isTimes: Shape = recordOf('a segment', { time: maybe(column) });
const isGpx: Shape = recordOf<GpxToWrite>('what is to be written, such as { creator, tracks }', {
  creator: aText,
  name: text,
  description: text,
  time: number,
  waypoints: maybe(listOf(isPoint)),
  routes: maybe(listOf(recordOf('a route { points }', { ...LINE, points: listOf(isPoint) }))),
  tracks: maybe(
    listOf(
      recordOf('a track { segments }', {
        ...LINE,
        segments: listOf((value) => isSegment(value) ?? isTimes(value)),
      }),
    ),
  ),
});

/** What stands for something else in XML, and controls, which are written by number: some programs do what they say. */
const WRITTEN = /[&<>"'\r\n\t\u{7F}-\u{9F}]/gu;
const NOT_XML = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
  '\r': '&#13;',
  '\n': '&#10;',
  '\t': '&#9;',
};

/** A text as XML holds it, in content and in attributes alike: white space survives a parser that evens it out. */
const escaped = (text: string): string =>
  text
    .replaceAll(NOT_XML, '\uFFFD')
    .replaceAll(WRITTEN, (sign) => ENTITIES[sign] ?? `&#x${sign.codePointAt(0)!.toString(16)};`);

const element = (tag: string, content: string | undefined): string =>
  content === undefined ? '' : `<${tag}>${content}</${tag}>`;

const textElement = (tag: string, text: string | undefined): string =>
  element(tag, text === undefined ? undefined : escaped(text));

/** A decimal of XML Schema: never an exponent, never "-0". */
function decimal(value: number, decimals: number, what: string): string {
  if (!(Math.abs(value) < 1e9)) throw new RangeError(`expected a ${what} for a GPX file, got ${value}`);
  const fixed = value.toFixed(decimals);
  return /[1-9]/u.test(fixed) ? fixed : fixed.replace('-', '');
}

const metresText = (value: number): string => String(Number(decimal(value, 3, 'number of metres')));

/** Longitudes of the schema are at least -180 and less than 180, so that 180 is written -180. */
function longitude(lon: Longitude): string {
  const turned = lon - 360 * Math.floor((lon + 180) / 360);
  const text = decimal(turned, 7, 'longitude');
  return Number(text) >= 180 ? '-180.0000000' : text;
}

function latitude(lat: Latitude): string {
  if (!(Math.abs(lat) <= 90)) throw new RangeError(`expected a latitude from -90 to 90 for a GPX file, got ${lat}`);
  return decimal(lat, 7, 'latitude');
}

/** Milliseconds either side of 1970 that a date can hold. */
const FARTHEST = 8.64e15;

function timeElement(time: number | undefined): string {
  if (time === undefined) return '';
  if (!(Math.abs(time) <= FARTHEST))
    throw new RangeError(`expected a time in milliseconds since 1970 for a GPX file, got ${describeValue(time)}`);
  return element('time', new Date(time).toISOString());
}

function hdopText(hdop: number): string {
  if (!(hdop >= 0)) throw new RangeError(`expected a dilution of precision of 0 or more for a GPX file, got ${hdop}`);
  return String(Number(decimal(hdop, 3, 'dilution of precision')));
}

function pointElement(tag: 'wpt' | 'rtept', point: GpxPointToWrite): string {
  const { lon, lat, ele, time, name, comment, description, symbol, type, hdop } = point;
  const said = [
    element('ele', ele === undefined ? undefined : metresText(ele)),
    timeElement(time),
    textElement('name', name),
    textElement('cmt', comment),
    textElement('desc', description),
    textElement('sym', symbol),
    textElement('type', type),
    element('hdop', hdop === undefined ? undefined : hdopText(hdop)),
  ].join('');
  return `<${tag} lat="${latitude(lat)}" lon="${longitude(lon)}">${said}</${tag}>`;
}

const head = ({ name, comment, description, type }: Omit<GpxTrackToWrite, 'segments'>): string =>
  [
    textElement('name', name),
    textElement('cmt', comment),
    textElement('desc', description),
    textElement('type', type),
  ].join('');

function segmentLines({ lon, lat, ele, time }: GpxSegmentToWrite): string[] {
  const points = Array.from(lon, (degrees, i) => {
    const height = ele[i] === undefined || Number.isNaN(ele[i]) ? '' : element('ele', metresText(ele[i]));
    const moment = time?.[i] === undefined || Number.isNaN(time[i]) ? '' : timeElement(time[i]);
    const place = `lat="${latitude(lat[i]!)}" lon="${longitude(degrees)}"`;
    return height === '' && moment === '' ? `<trkpt ${place}/>` : `<trkpt ${place}>${height}${moment}</trkpt>`;
  });
  return ['<trkseg>', ...points, '</trkseg>'];
}

const trackLines = (track: GpxTrackToWrite): string[] => [
  `<trk>${head(track)}`,
  ...track.segments.filter(({ lon }) => lon.length > 0).flatMap(segmentLines),
  '</trk>',
];

const routeLines = (route: GpxRouteToWrite): string[] => [
  `<rte>${head(route)}`,
  ...route.points.map((point) => pointElement('rtept', point)),
  '</rte>',
];

/**
 * The text of a GPX 1.1 file that the schema accepts. Degrees of longitude are taken modulo 360; empty segments are
 * left out. Throws a RangeError where a number is not finite, or a latitude lies beyond a pole.
 * Source: the GPX 1.1 schema (topografix.com/GPX/1/1).
 * @example
 * ```ts
 * import { readGpx, writeGpx } from '@halfcup/core/gpx';
 *
 * const text = writeGpx({ creator: 'me', waypoints: [{ lon: -30.1, lat: 12.2, name: 'Sign & tables' }] });
 * text.split('\n')[2]; // → '<wpt lat="12.2000000" lon="-30.1000000"><name>Sign &amp; tables</name></wpt>'
 * const read = readGpx(text, 'signs.gpx');
 * read.ok && read.value.waypoints[0]?.name; // → 'Sign & tables'
 * ```
 */
export function writeGpx(gpx: GpxToWrite): string {
  want('writeGpx', 'gpx', isGpx, gpx);
  const { creator, name, description, time, waypoints = [], routes = [], tracks = [] } = gpx;
  const metadata = [textElement('name', name), textElement('desc', description), timeElement(time)].join('');
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx version="1.1" creator="${escaped(creator)}" xmlns="http://www.topografix.com/GPX/1/1">`,
    ...(metadata === '' ? [] : [`<metadata>${metadata}</metadata>`]),
    ...waypoints.map((point) => pointElement('wpt', point)),
    ...routes.flatMap(routeLines),
    ...tracks.flatMap(trackLines),
    '</gpx>',
  ];
  return `${lines.join('\n')}\n`;
}
