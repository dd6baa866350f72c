/**
 * Reads GPX 1.0 and 1.1 in one streaming pass with saxes. No DOCTYPE, so no entity but the five of XML.
 * Sources: GPX 1.1 schema documentation; XML 1.0 (5th ed.); Namespaces in XML 1.0 (3rd ed.).
 */

import { SaxesParser } from 'saxes';
import { bad, good, type Result } from '../finding.ts';
import { createByteDecoder } from './decode.ts';
import type { GpxDocument } from './document.ts';
import { closeElement, createElements, documentOf, innermost, openElement, type Elements } from './elements.ts';
import { CUT_OFF, DOCTYPE, notXml, NUL, otherRoot, plainSentence, type Refusal } from './malformed.ts';
import { createNamespaces, type Namespaces } from './namespaces.ts';
import { createTrouble, type Place, type Trouble } from './trouble.ts';

export interface GpxReader {
  /** Takes the next bytes, or the next text; the pieces may be cut anywhere. */
  readonly write: (chunk: Uint8Array | string) => void;
  /** Ends the input. An error in the file gives its findings and no document. */
  readonly close: () => Result<GpxDocument>;
}

const PIECE = 65_536;

/** Thrown to make the parser stop, and caught again in `feed`: the reason is in the findings by then. */
const STOP = new Error('stop');

interface Run {
  readonly parser: SaxesParser;
  readonly elements: Elements;
  readonly namespaces: Namespaces;
  readonly trouble: Trouble;
  /** Given out by the caller, not yet by us: what follows the last `>`, so that no tag is cut in two. */
  held: string;
  /** The text in the parser, the number of characters before it, and the column before it. */
  piece: string;
  pieceStart: number;
  columnBefore: number;
  /** The text up to and with the piece in which the root element begins, at most about one piece. */
  head: string;
  stopped: boolean;
  depth: number;
  rootName: string;
  line: number;
  column: number;
  lat: string | undefined;
  lon: string | undefined;
  lastClosed: string;
}

/**
 * A reader that is fed piece by piece, so that the caller can show progress or stop.
 * Bytes may be UTF-8, UTF-16, US-ASCII, ISO-8859 or windows-125x; `file` is for the findings only.
 */
export function createGpxReader(file: string): GpxReader {
  const run = createRun(file);
  const decoder = createByteDecoder();
  let closed = false;
  let first = true;

  const bytes = (chunk: Uint8Array, last: boolean): void => {
    feed(run, decoder.decode(chunk, last), last);
    const problem = decoder.problem();
    if (problem === null || run.stopped) return;
    feed(run, '', true);
    if (!run.stopped) stop(run, problem, here(run));
  };

  const write = (chunk: Uint8Array | string): void => {
    if (closed) throw new Error('write after close');
    const step = PIECE;
    for (let at = 0; at < chunk.length && !run.stopped; at += step) {
      if (typeof chunk !== 'string') bytes(chunk.subarray(at, at + step), false);
      else feed(run, first && at === 0 && chunk.startsWith('\u{FEFF}') ? chunk.slice(1, step) : chunk.slice(at, at + step), false);
    }
    if (chunk.length > 0) first = false;
  };

  const close = (): Result<GpxDocument> => {
    if (closed) throw new Error('close after close');
    closed = true;
    if (!run.stopped) bytes(new Uint8Array(0), true);
    if (!run.stopped) finish(run);
    const findings = run.trouble.findings();
    return run.trouble.failed() ? bad(findings) : good(documentOf(run.elements, file), findings);
  };

  return { write, close };
}

/** Reads a whole file: all its findings, and the document where none of them is an error. */
export function readGpx(input: Uint8Array | string, file: string): Result<GpxDocument> {
  const reader = createGpxReader(file);
  reader.write(input);
  return reader.close();
}

function createRun(file: string): Run {
  const trouble = createTrouble(file);
  const run: Run = {
    parser: new SaxesParser({ position: false }),
    elements: createElements(trouble),
    namespaces: createNamespaces(),
    trouble,
    held: '',
    piece: '',
    pieceStart: 0,
    columnBefore: 0,
    head: '',
    stopped: false,
    depth: 0,
    rootName: '',
    line: 1,
    column: 1,
    lat: undefined,
    lon: undefined,
    lastClosed: '',
  };
  listen(run);
  return run;
}

function listen(run: Run): void {
  const { parser, elements, namespaces } = run;
  const addText = (text: string): void => {
    if (elements.ignored === 0) elements.text += text;
  };

  parser.on('opentagstart', ({ name }) => {
    run.depth += 1;
    run.lat = undefined;
    run.lon = undefined;
    run.line = parser.line;
    run.column = parser.column - name.length - 1;
    // The tag's name ended at a line break, so the parser is a line further.
    if (parser.column === 0) openedBefore(run);
  });
  parser.on('attribute', ({ name, value }) => {
    if (name === 'lat') run.lat = value;
    else if (name === 'lon') run.lon = value;
    else if (name.startsWith('xmlns') && (name.length === 5 || name[5] === ':')) namespaces.declare(name, value, run.depth);
  });
  parser.on('opentag', ({ name, attributes }) => {
    if (run.depth === 1) openRoot(run, name, attributes);
    if (openElement(elements, elements.ignored > 0 ? null : namespaces.gpxName(name), run.line, run.column, run.lat, run.lon)) {
      parser.on('text', addText);
      parser.on('cdata', addText);
    }
  });
  parser.on('closetag', ({ name }) => {
    run.lastClosed = name;
    namespaces.leave(run.depth);
    run.depth -= 1;
    if (closeElement(elements)) {
      parser.off('text');
      parser.off('cdata');
    }
  });
  parser.on('doctype', () => refuse(run, notXml(run.head) ?? DOCTYPE, placeInHead(run, run.head.lastIndexOf('<!DOCTYPE'))));
  parser.on('error', ({ message }) => onParserError(run, message));
}

function openRoot(run: Run, name: string, attributes: Readonly<Record<string, unknown>>): void {
  run.rootName = name;
  run.namespaces.setRoot(name);
  const place = { line: run.line, column: run.column };
  if (run.namespaces.gpxName(name) !== 'gpx') refuse(run, notXml(run.head) ?? otherRoot(name), place);
  const { version, creator } = attributes;
  run.elements.version = typeof version === 'string' ? version : null;
  run.elements.creator = typeof creator === 'string' ? creator : null;
}

function onParserError(run: Run, message: string): void {
  const other = run.rootName === '' ? notXml(run.head) : null;
  if (other !== null) refuse(run, other, placeInHead(run, run.head.search(/\S/)));
  if (message === 'unexpected end.') refuse(run, { code: 'gpx-truncated', message: `The file ends within a tag or comment: ${CUT_OFF}` }, here(run));
  if (message === 'unexpected close tag.') {
    const opened = run.lastClosed.slice(0, 40);
    refuse(run, { code: 'gpx-malformed', message: `Found another closing tag where </${opened}> was expected: each element must be closed before the one around it. Add </${opened}> before it.` }, placeOfLast(run, '</'));
  }
  refuse(run, { code: 'gpx-malformed', message: plainSentence(message) }, { line: run.parser.line, column: Math.max(1, run.parser.column) });
}

function stop(run: Run, { code, message }: Refusal, place: Place): void {
  run.stopped = true;
  run.trouble.report('error', code, message, place);
}

function refuse(run: Run, refusal: Refusal, place: Place): never {
  stop(run, refusal, place);
  throw STOP;
}

const here = ({ parser }: Run): Place => ({ line: parser.line, column: parser.column + 1 });

function feed(run: Run, text: string, last: boolean): void {
  const cut = last ? text.length : text.lastIndexOf('>') + 1;
  if (cut === 0 && !last && run.held.length + text.length < PIECE) {
    run.held += text;
    return;
  }
  const end = cut === 0 ? text.length : cut;
  const all = run.held + text.slice(0, end);
  run.held = text.slice(end);
  const nul = all.indexOf('\0');
  parse(run, nul === -1 ? all : all.slice(0, nul));
  if (nul !== -1 && !run.stopped) stop(run, NUL, here(run));
}

function parse(run: Run, piece: string): void {
  if (piece === '' || run.stopped) return;
  if (run.rootName === '' && run.head.length < PIECE) run.head += piece;
  run.piece = piece;
  run.columnBefore = run.parser.column;
  try {
    run.parser.write(piece);
  } catch (error) {
    if (error !== STOP) throw error;
  }
  run.pieceStart += piece.length;
}

/** The place of the last `mark` before the parser's position, within the piece it is reading. */
function placeOfLast(run: Run, mark: string): Place {
  const { parser, piece } = run;
  const now = parser.position - run.pieceStart;
  const at = piece.lastIndexOf(mark, now - 1);
  if (at === -1) return { line: parser.line, column: Math.max(1, parser.column) };
  const breaks = piece.slice(at, now).match(/\r\n|\n|\r/g)?.length ?? 0;
  const lineStart = Math.max(piece.lastIndexOf('\n', at), piece.lastIndexOf('\r', at)) + 1;
  const column = Array.from(piece.slice(lineStart, at)).length + 1;
  return { line: parser.line - breaks, column: lineStart === 0 ? run.columnBefore + column : column };
}

function openedBefore(run: Run): void {
  ({ line: run.line, column: run.column } = placeOfLast(run, '<'));
}

function placeInHead({ head, parser }: Run, at: number): Place {
  if (at === -1) return { line: parser.line, column: Math.max(1, parser.column) };
  const lines = head.slice(0, at).split(/\r\n|\n|\r/);
  return { line: lines.length, column: Array.from(lines.at(-1) ?? '').length + 1 };
}

function finish(run: Run): void {
  const reason = unfinished(run);
  if (reason !== null) {
    stop(run, reason, here(run));
    return;
  }
  try {
    run.parser.close();
  } catch (error) {
    if (error !== STOP) throw error;
  }
}

function unfinished({ head, rootName, depth, elements }: Run): Refusal | null {
  if (head.trim() === '') return { code: 'gpx-empty', message: 'The file is empty. Expected a GPX file with a track, a route or waypoints; export it again.' };
  if (rootName === '') {
    if (head.includes('<!DOCTYPE')) return DOCTYPE;
    return notXml(head) ?? { code: 'gpx-truncated', message: `The file ends before its outermost element <gpx> begins: ${CUT_OFF}` };
  }
  if (depth === 0) return null;
  const { tag, line } = innermost(elements);
  return { code: 'gpx-truncated', message: `The file ends while <${tag}>, opened in line ${line}, is not closed: ${CUT_OFF}` };
}
