/**
 * Reads OpenStreetMap XML 0.6 in one streaming pass with saxes, without namespaces, which the format has none of.
 * Source: OpenStreetMap wiki, "OSM XML"; XML 1.0 (5th ed.).
 */
import { SaxesParser } from 'saxes';
import { createByteDecoder } from '../gpx/decode.ts';
import { DOCTYPE, malformed, notXml } from '../gpx/malformed.ts';
import { type Cursor, here, justRead, placeInHead, placeOfLast } from '../gpx/places.ts';
import { excerpt } from '../gpx/trouble.ts';
import { foundOf } from '../text/found.ts';
import type { GroundParams } from '../text/params/ground.ts';
import { takeMultipolygon, takeNode, takeWay } from './assemble.ts';
import { dayOf } from './day.ts';
import { isKept } from './kept.ts';
import { MOST } from './limits.ts';
import {
  type BytesReader,
  NO_ELEMENT,
  type Place,
  type Reading,
  holdToLimits,
  isId,
  refuse,
  wrongId,
} from './reading.ts';

type Attributes = Readonly<Record<string, string>>;
type Kind = 'node' | 'way' | 'relation';

/** Thrown to make the parser stop, and caught by who feeds it: the reason is in the reading by then. */
const STOP: Error = new Error('stop');

/** The element at work. */
interface Open {
  kind: Kind | null;
  id: number;
  lon: number;
  lat: number;
  tags: Record<string, string> | null;
  refs: number[];
  outer: number[];
  inner: number[];
  multipolygon: boolean;
}

interface Run extends Cursor {
  readonly parser: SaxesParser;
  readonly reading: Reading;
  readonly open: Open;
  depth: number;
  rootName: string;
  lastClosed: string;
  attributes: number;
  /** Where the parser stood at the last tag. */
  tagAt: number;
}

/** A reader of XML that puts what it reads into `reading`. */
export function createXmlReader(reading: Reading): BytesReader {
  const run: Run = {
    parser: new SaxesParser({ position: false }),
    reading,
    open: { kind: null, id: 0, lon: 0, lat: 0, tags: null, refs: [], outer: [], inner: [], multipolygon: false },
    piece: '',
    pieceStart: 0,
    columnBefore: 0,
    head: '',
    depth: 0,
    rootName: '',
    lastClosed: '',
    attributes: 0,
    tagAt: 0,
  };
  listen(run);
  const decoder = createByteDecoder();
  const bytes = (chunk: Uint8Array, last: boolean): void => {
    parse(run, decoder.decode(chunk, last));
    const problem = decoder.problem();
    if (problem === null || reading.fault !== null) return;
    if (problem.code === 'gpx-encoding') refuse(reading, 'ground-encoding', problem.params, here(run));
    else refuse(reading, 'ground-foreign', { kind: 'binary' }, here(run));
  };
  return {
    write: (chunk) => {
      bytes(chunk, false);
      holdToLimits(reading, () => here(run));
      if (run.parser.position - run.tagAt > MOST.tagLength && reading.fault === null)
        refuse(reading, 'ground-limit', { bound: 'tagLength', most: MOST.tagLength }, here(run));
    },
    close: () => {
      bytes(new Uint8Array(0), true);
      if (reading.fault === null) finish(run);
    },
  };
}

function parse(run: Run, text: string): void {
  if (text === '' || run.reading.fault !== null) return;
  const nul = text.indexOf('\0');
  const piece = nul === -1 ? text : text.slice(0, nul);
  if (run.rootName === '' && run.head.length < 65_536) run.head += piece;
  run.piece = piece;
  run.columnBefore = run.parser.column;
  try {
    run.parser.write(piece);
  } catch (error) {
    if (error !== STOP) throw error;
  }
  run.pieceStart += piece.length;
  if (nul !== -1) refuse(run.reading, 'ground-foreign', { kind: 'nul' }, here(run));
}

function finish(run: Run): void {
  if (run.head.trim() === '') return refuse(run.reading, 'ground-empty', {}, { line: 1, column: 1 });
  if (run.rootName === '' || run.depth > 0) return refuse(run.reading, 'ground-cut-off', { format: 'xml' }, here(run));
  try {
    run.parser.close();
  } catch (error) {
    if (error !== STOP) throw error;
  }
}

function halt<C extends keyof GroundParams>(run: Run, code: C, params: GroundParams[C], place: Place): never {
  refuse(run.reading, code, params, place);
  throw STOP;
}

function listen(run: Run): void {
  const { parser } = run;
  // At most seven handlers: with an eighth, V8 turns the parser into a dictionary, six times slower.
  parser.on('attribute', () => {
    run.attributes++;
    if (run.attributes > MOST.attributes)
      halt(run, 'ground-limit', { bound: 'attributes', most: MOST.attributes }, justRead(run));
  });
  parser.on('opentag', ({ name, attributes }) => {
    run.depth++;
    run.attributes = 0;
    run.tagAt = parser.position;
    if (run.depth === 1) openRoot(run, name, attributes);
    else if (run.depth > MOST.depth)
      halt(run, 'ground-limit', { bound: 'depth', most: MOST.depth }, placeOfLast(run, '<'));
    else if (run.depth === 2) openElement(run, name, attributes);
    else if (run.depth === 3 && run.open.kind !== null) openPart(run, name, attributes);
  });
  parser.on('closetag', ({ name }) => {
    run.tagAt = parser.position;
    run.lastClosed = name;
    if (run.depth === 2 && run.open.kind !== null) closeElement(run);
    run.depth--;
  });
  parser.on('doctype', () => {
    const fault = notXml(run.head)?.params.kind === 'html' ? 'html' : null;
    const place = placeInHead(run, run.head.lastIndexOf('<!DOCTYPE'));
    if (fault !== null) halt(run, 'ground-foreign', { kind: 'html' }, place);
    halt(run, 'ground-malformed', { fault: 'doctype', name: DOCTYPE.code }, place);
  });
  parser.on('error', ({ message }) => onError(run, message));
}

function openRoot(run: Run, name: string, attributes: Attributes): void {
  run.rootName = name;
  run.reading.headTime = attributes['timestamp'] ?? '';
  if (name === 'osm') return;
  const place = placeOfLast(run, '<');
  if (name.toLowerCase() === 'html') halt(run, 'ground-foreign', { kind: 'html' }, place);
  halt(run, 'ground-root', { root: excerpt(name) }, place);
}

/** A number as XML has it, NaN where it is none; an empty text is no 0. */
const numberOf = (text: string | undefined): number => (text === undefined || text.trim() === '' ? NaN : Number(text));

function openElement(run: Run, name: string, attributes: Attributes): void {
  const { open, reading } = run;
  open.kind = null;
  if (name === 'meta') reading.headTime = attributes['osm_base'] ?? reading.headTime;
  if (name !== 'node' && name !== 'way' && name !== 'relation') return;
  if (attributes['visible'] === 'false' || attributes['action'] === 'delete') return;
  open.id = numberOf(attributes['id']);
  if (!isId(open.id)) return run.reading.leftOut.report(wrongId(name, attributes['id']), placeOfLast(run, '<'));
  if (name === 'node') {
    open.lon = Math.round(numberOf(attributes['lon']) * 1e7);
    open.lat = Math.round(numberOf(attributes['lat']) * 1e7);
    if (!(Math.abs(open.lat) <= 90e7)) return leaveOut(run, 'latitude', name, attributes['lat']);
    if (!(Math.abs(open.lon) <= 180e7)) return leaveOut(run, 'longitude', name, attributes['lon']);
  }
  const { timestamp } = attributes;
  if (timestamp !== undefined && timestamp > reading.newestTime && dayOf(timestamp) !== null)
    reading.newestTime = timestamp;
  open.kind = name;
  open.tags = null;
  open.multipolygon = false;
  if (open.refs.length > 0) open.refs = [];
  if (open.outer.length > 0) open.outer = [];
  if (open.inner.length > 0) open.inner = [];
}

const leaveOut = (run: Run, problem: 'latitude' | 'longitude', element: string, found: string | undefined): void =>
  run.reading.leftOut.report({ problem, element, found: foundOf(found) }, placeOfLast(run, '<'));

function openPart({ open }: Run, name: string, attributes: Attributes): void {
  if (name === 'tag') {
    const { k, v } = attributes;
    if (k === undefined || v === undefined) return;
    if (isKept(k, v)) (open.tags ??= {})[k] = v;
    else if (k === 'type' && v === 'multipolygon') open.multipolygon = true;
  } else if (name === 'nd' && open.kind === 'way') {
    const ref = numberOf(attributes['ref']);
    // What is no id is no node of the file either.
    open.refs.push(isId(ref) ? ref : NO_ELEMENT);
  } else if (name === 'member' && open.kind === 'relation' && attributes['type'] === 'way') {
    const ref = numberOf(attributes['ref']);
    (attributes['role'] === 'inner' ? open.inner : open.outer).push(isId(ref) ? ref : NO_ELEMENT);
  }
}

function closeElement({ open, reading: { assembly } }: Run): void {
  const { kind, id, tags } = open;
  open.kind = null;
  if (kind === 'node') takeNode(assembly, id, open.lon, open.lat, tags);
  else if (kind === 'way') takeWay(assembly, id, open.refs, tags);
  else {
    assembly.counts.relations++;
    if (open.multipolygon) takeMultipolygon(assembly, { id, outer: open.outer, inner: open.inner, tags: tags ?? {} });
    else assembly.skipped.relations++;
  }
}

function onError(run: Run, message: string): void {
  const other = run.rootName === '' ? notXml(run.head) : null;
  if (other !== null) {
    const place = placeInHead(run, run.head.search(/\S/u));
    const { params } = other;
    halt(
      run,
      'ground-foreign',
      params.kind === 'html' ? { kind: 'html' } : { kind: 'text', found: params.found },
      place,
    );
  }
  if (message === 'unexpected end.') halt(run, 'ground-cut-off', { format: 'xml' }, here(run));
  if (message === 'unexpected close tag.')
    halt(run, 'ground-malformed', { fault: 'crossed', name: excerpt(run.lastClosed) }, placeOfLast(run, '</'));
  halt(run, 'ground-malformed', malformed(message).params, justRead(run));
}
