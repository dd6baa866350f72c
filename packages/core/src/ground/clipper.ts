/**
 * Tells what a street file is by its first bytes, unpacks it, and leads its bytes to the reader of its format.
 * Sources: RFC 1952 (gzip); those of the readers.
 */
import { Gunzip } from 'fflate';
import { type Course, isCourse } from '../course/course.ts';
import { type Finding, type Result, bad, good } from '../finding.ts';
import { createByteDecoder } from '../gpx/decode.ts';
import type { GroundFormat } from '../text/params/ground.ts';
import { type ElementCounts, type SkippedCounts, createAssembly, finishAssembly } from './assemble.ts';
import { clippedParts } from './clip.ts';
import { createLeftOut } from './collect.ts';
import { type Corridor, corridorOf } from './corridor.ts';
import { type FirstBytes, formatOf, isBytes } from './format.ts';
import type { Ground, GroundSource } from './ground.ts';
import { groundFinding } from './groundFinding.ts';
import { MOST } from './limits.ts';
import { dayOf } from './day.ts';
import { createPbfReader } from './osmPbf.ts';
import { createXmlReader } from './osmXml.ts';
import { type GeoJsonReader, OSM_CREDIT, OSM_LICENCE, createGeoJsonReader } from './readGround.ts';
import { type BytesReader, type Reading, refuse } from './reading.ts';
import { type Shape, aText, count, describeValue, listOf, oneOf, positive, recordOf, want } from '../wants.ts';
import { isGround } from './groundText.ts';

/** What of a street file lies beside the courses, and what the file holds. */
export interface ClippedGround {
  readonly ground: Ground;
  readonly format: Exclude<GroundFormat, 'gzip'>;
  /** Of GeoJSON, `features` alone; of the other formats, the rest. */
  readonly read: Readonly<ElementCounts> & { readonly features: number };
  /** `broken`: elements or features left out for what is wrong with them; the first have a warning each. */
  readonly skipped: Readonly<SkippedCounts> & { readonly broken: number };
}

/** What `clipGround` gives. */
export const isClipped: Shape = recordOf<ClippedGround>('what clipGround gives', {
  ground: isGround,
  format: oneOf('xml', 'pbf', 'geojson'),
  read: recordOf('counts', { nodes: count, ways: count, relations: count, buildings: count, features: count }),
  skipped: recordOf('counts', { relations: count, cutWays: count, openAreas: count, broken: count }),
});

/** Takes a street file piece by piece. */
export interface GroundClipper {
  /** Takes the next bytes, cut anywhere. Gives whether more of them are of use. */
  readonly write: (chunk: Uint8Array) => boolean;
  /** Ends the file: what lies beside the courses, or why it cannot be had. */
  readonly close: () => Result<ClippedGround>;
}

interface Clipping {
  readonly reading: Reading;
  readonly corridor: Corridor;
  /** First bytes, held until they tell what the file is. */
  first: Uint8Array;
  format: GroundFormat | null;
  bytes: BytesReader | null;
  json: GeoJsonReader | null;
  gunzip: Gunzip | null;
  packed: number;
  unpacked: number;
}

const PIECE = 65_536;
/** Of packed bytes, which may grow a thousandfold. */
const PACKED_PIECE = 8192;

/**
 * A clipper for code that has its own loop, such as a worker; what {@link clipGround} does with a stream. `within`: metres from a course, of
 * which there is one at least.
 * @example
 * ```ts
 * import { courseFromGeoJson } from '@halfcup/core/geojson';
 * import { createGroundClipper } from '@halfcup/core/ground';
 * const course = courseFromGeoJson({ type: 'LineString', coordinates: [[-17.4, -33.2], [-17.39, -33.2]] });
 * if (!course.ok) throw new Error(course.findings[0]?.message);
 * const clipper = createGroundClipper('town.osm', [course.value], 300);
 * const bytesOf = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));
 * clipper.write(bytesOf('<osm version="0.6"><node id="1" lat="-33.2" lon="-17.4"><tag k="barrier" '));
 * clipper.write(bytesOf('v="gate"/></node></osm>'));
 * const read = clipper.close();
 * read.ok && read.value.ground.points.map(({ id }) => id); // → ['node/1']
 * ```
 */
export function createGroundClipper(file: string, courses: readonly Course[], within: number): GroundClipper {
  want('createGroundClipper', 'file', aText, file);
  want('createGroundClipper', 'courses', listOf(isCourse, 1), courses);
  want('createGroundClipper', 'within', positive, within);
  const clipping = createClipping(file, courses, within);
  const { reading } = clipping;
  return {
    write: (chunk) => {
      if (!isBytes(chunk))
        throw new TypeError(`a street file is read from Uint8Arrays; this is ${describeValue(chunk)}`);
      clipping.packed += chunk.length;
      for (let at = 0; at < chunk.length && reading.fault === null; at += PIECE)
        takeFile(clipping, chunk.subarray(at, at + PIECE), false);
      if (clipping.packed > MOST.megabytes * 1e6) overLarge(reading);
      return reading.fault === null && clipping.json?.stopped() !== true;
    },
    close: () => {
      if (reading.fault === null) takeFile(clipping, new Uint8Array(0), true);
      return clipped(clipping, within);
    },
  };
}

function createClipping(file: string, courses: readonly Course[], within: number): Clipping {
  const corridor = corridorOf(courses, within);
  const reading: Reading = {
    file,
    assembly: createAssembly(corridor),
    leftOut: createLeftOut(file),
    headTime: '',
    newestTime: '',
    fault: null,
  };
  const first = new Uint8Array(0);
  return { reading, corridor, first, format: null, bytes: null, json: null, gunzip: null, packed: 0, unpacked: 0 };
}

const overLarge = (reading: Reading): void =>
  refuse(reading, 'ground-limit', { bound: 'megabytes', most: MOST.megabytes });

/** Bytes of the file as it is; `last`: none follow. */
function takeFile(clipping: Clipping, chunk: Uint8Array, last: boolean): void {
  const { reading } = clipping;
  if (clipping.gunzip !== null) return unpack(clipping, chunk, last);
  if (clipping.format !== null) return takeContent(clipping, chunk, last);
  clipping.first = joined(clipping.first, chunk);
  const found = formatOf(clipping.first, last);
  if (found === null) return;
  if (typeof found !== 'string') return foreign(reading, found);
  const all = clipping.first;
  clipping.first = new Uint8Array(0);
  if (found !== 'gzip') {
    begin(clipping, found);
    return takeContent(clipping, all, last);
  }
  clipping.gunzip = new Gunzip((bytes) => takeUnpacked(clipping, bytes));
  unpack(clipping, all, last);
}

const TOP = { line: 1, column: 1 } as const;

function foreign(reading: Reading, found: Exclude<FirstBytes, string | null>): void {
  if (found.kind === 'empty') refuse(reading, 'ground-empty', {}, TOP);
  else refuse(reading, 'ground-foreign', found.kind === 'text' ? found : { kind: found.kind }, TOP);
}

function joined(held: Uint8Array, more: Uint8Array): Uint8Array {
  const all = new Uint8Array(held.length + more.length);
  all.set(held);
  all.set(more, held.length);
  return all;
}

function unpack(clipping: Clipping, chunk: Uint8Array, last: boolean): void {
  const { gunzip, reading } = clipping;
  try {
    for (let at = 0; at < chunk.length && reading.fault === null; at += PACKED_PIECE)
      gunzip!.push(chunk.subarray(at, at + PACKED_PIECE), false);
    if (last && reading.fault === null) {
      gunzip!.push(new Uint8Array(0), true);
      takeUnpacked(clipping, new Uint8Array(0), true);
    }
  } catch (error) {
    // The library throws errors with a number; what is thrown without one is no fault of the file.
    if (!(error instanceof Error) || !('code' in error)) throw error;
    if (last) refuse(reading, 'ground-cut-off', { format: 'gzip' });
    else refuse(reading, 'ground-broken', { format: 'gzip' });
  }
}

function takeUnpacked(clipping: Clipping, bytes: Uint8Array, last: boolean = false): void {
  const { reading } = clipping;
  clipping.unpacked += bytes.length;
  if (clipping.unpacked > MOST.megabytes * 1e6) return overLarge(reading);
  if (clipping.format !== null) return takeContent(clipping, bytes, last);
  clipping.first = joined(clipping.first, bytes);
  const found = formatOf(clipping.first, last);
  if (found === null) return;
  if (found === 'gzip') return refuse(reading, 'ground-foreign', { kind: 'binary' }, TOP);
  if (typeof found !== 'string') return foreign(reading, found);
  begin(clipping, found);
  takeContent(clipping, clipping.first, last);
  clipping.first = new Uint8Array(0);
}

function begin(clipping: Clipping, format: Exclude<GroundFormat, 'gzip'>): void {
  const { reading, corridor } = clipping;
  clipping.format = format;
  if (format === 'geojson') clipping.json = createGeoJsonReader(reading.file, (parts) => clippedParts(parts, corridor));
  clipping.bytes =
    format === 'xml'
      ? createXmlReader(reading)
      : format === 'pbf'
        ? createPbfReader(reading)
        : jsonBytes(reading, clipping.json!);
}

/** GeoJSON as bytes of UTF-8 or UTF-16. */
function jsonBytes(reading: Reading, json: GeoJsonReader): BytesReader {
  const decoder = createByteDecoder();
  const take = (chunk: Uint8Array, last: boolean): void => {
    json.write(decoder.decode(chunk, last));
    const problem = decoder.problem();
    if (problem === null) return;
    if (problem.code === 'gpx-encoding') refuse(reading, 'ground-encoding', problem.params, json.here());
    else refuse(reading, 'ground-foreign', { kind: 'binary' }, json.here());
  };
  return { write: (chunk) => take(chunk, false), close: () => take(new Uint8Array(0), true) };
}

function takeContent({ bytes, reading, json }: Clipping, chunk: Uint8Array, last: boolean): void {
  for (let at = 0; at < chunk.length && reading.fault === null && json?.stopped() !== true; at += PIECE)
    bytes!.write(chunk.subarray(at, at + PIECE));
  if (last && reading.fault === null) bytes!.close();
}

/** What has been read, cut to what lies beside the courses. */
function clipped({ reading, json, format }: Clipping, within: number): Result<ClippedGround> {
  const { assembly, leftOut, fault, file } = reading;
  if (fault !== null) return bad([...leftOut.findings(), fault]);
  const features = json?.close();
  if (features !== undefined && !features.ok) return features;
  finishAssembly(assembly);
  const { ways, areas, points, counts, skipped } = assembly;
  const ground: Ground = features?.value ?? { source: sourceOf(reading), ways, areas, points };
  const read = { ...counts, features: json?.read() ?? 0 };
  const warnings = features?.findings ?? leftOut.findings();
  const kept = ground.ways.length + ground.areas.length + ground.points.length;
  const all = read.nodes + read.ways + read.relations + read.features;
  if (all === 0) return bad([...warnings, groundFinding('ground-empty', {}, { severity: 'error', where: { file } })]);
  // Elements that could not be used are then a reason for it, and no longer something beside.
  if (kept === 0)
    return bad([
      ...warnings.map((warning): Finding => ({ ...warning, severity: 'error' })),
      groundFinding('ground-nothing', { read: all, within }, { severity: 'error', where: { file } }),
    ]);
  const broken = json?.leftOut() ?? leftOut.count();
  return good({ ground, format: format as ClippedGround['format'], read, skipped: { ...skipped, broken } }, warnings);
}

const sourceOf = ({ headTime, newestTime }: Reading): GroundSource => ({
  date: dayOf(headTime) ?? dayOf(newestTime),
  credit: OSM_CREDIT,
  licence: OSM_LICENCE,
});
