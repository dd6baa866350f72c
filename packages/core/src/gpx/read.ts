/**
 * Reads GPX 1.0 and 1.1 in one streaming pass with saxes. No DOCTYPE, so no entity but the five of XML.
 * Sources: GPX 1.1 schema documentation; XML 1.0 (5th ed.); Namespaces in XML 1.0 (3rd ed.).
 */

import { bad, good, type Result } from '../finding.ts';
import { createByteDecoder } from './decode.ts';
import type { GpxDocument } from './document.ts';
import { documentOf, innermost } from './elements.ts';
import { LIMITS } from '../limits.ts';
import { limitFinding } from '../text/limitFinding.ts';
import { createRun, keepToLength, STOP, stop, type Run } from './events.ts';
import { DOCTYPE, notXml, NUL } from './malformed.ts';
import { here, justRead, placeInHead } from './places.ts';
import type { Refusal } from './trouble.ts';
import { cutOpening } from './unheard.ts';
import { aText, want } from '../wants.ts';

/** Takes a file piece by piece. */
export interface GpxReader {
  /** Takes the next bytes, or the next text; the pieces may be cut anywhere. Throws where neither is given, and after `close`. */
  readonly write: (chunk: Uint8Array | string) => void;
  /** Ends the input. An error in the file gives its findings and no document. */
  readonly close: () => Result<GpxDocument>;
}

const PIECE = 65_536;

/**
 * A reader that is fed piece by piece, so that the caller can show progress or stop.
 * Bytes may be UTF-8, UTF-16, US-ASCII, ISO-8859 or windows-125x; `file` is for the findings only.
 * @example
 * ```ts
 * import { createGpxReader } from '@halfcup/core/gpx';
 *
 * const reader = createGpxReader('run.gpx');
 * reader.write('<gpx version="1.1" creator="me"><trk><trkseg><trkpt lat="12.2" lon="-30.1"/>');
 * reader.write('<trkpt lat="12.2" lon="-30.09"/></trkseg></trk></gpx>');
 * const read = reader.close();
 * read.ok && read.value.tracks[0]?.segments[0]?.lon; // → [-30.1, -30.09]
 * ```
 */
export function createGpxReader(file: string): GpxReader {
  want('createGpxReader', 'file', aText, file);
  const run = createRun(file);
  const decoder = createByteDecoder();
  let closed = false;
  let first = true;
  let taken = 0;

  const bytes = (chunk: Uint8Array, last: boolean): void => {
    feed(run, decoder.decode(chunk, last), last);
    const problem = decoder.problem();
    if (problem === null || run.stopped) return;
    feed(run, '', true);
    if (!run.stopped) stop(run, problem, here(run));
  };

  const write = (chunk: Uint8Array | string): void => {
    if (closed) throw new Error('write after close');
    if (!readable(chunk))
      throw new TypeError(
        `GPX is read from a string or a Uint8Array, the content of the file ${file}; this is ${kindOf(chunk)}`,
      );
    if (run.stopped) return;
    taken += chunk.length;
    if (taken > LIMITS.gpx.bytes) {
      stop(run, { code: 'past-limit', params: { reader: 'gpx', what: 'bytes', most: LIMITS.gpx.bytes } }, here(run));
      return;
    }
    if (typeof chunk === 'string')
      for (const part of partsOf(first && chunk.startsWith('\u{FEFF}') ? chunk.slice(1) : chunk))
        feed(run, part, false);
    else for (let at = 0; at < chunk.length && !run.stopped; at += PIECE) bytes(chunk.subarray(at, at + PIECE), false);
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

/** Bytes of another window or thread are bytes too, so no `instanceof`. */
const readable = (chunk: unknown): boolean =>
  typeof chunk === 'string' ||
  (ArrayBuffer.isView(chunk) && 'subarray' in chunk && 'BYTES_PER_ELEMENT' in chunk && chunk.BYTES_PER_ELEMENT === 1);

const kindOf = (value: unknown): string =>
  value === null
    ? 'null'
    : typeof value === 'object'
      ? `an object (${Object.prototype.toString.call(value).slice(8, -1)})`
      : typeof value;

/**
 * Reads a whole GPX file, 1.0 or 1.1: all its findings, each with line and column, and the document where none of them is an error.
 * `file` is for the findings only. Throws a TypeError on what is neither text nor bytes.
 * Source: the GPX 1.1 schema (topografix.com/GPX/1/1).
 * @example
 * ```ts
 * import { findingLine, readGpx } from '@halfcup/core/gpx';
 *
 * const read = readGpx('<gpx version="1.1" creator="me"><wpt lat="12.2" lon="-30.1"><name>Pier</name></wpt></gpx>', 'run.gpx');
 * read.ok && read.value.waypoints.map(({ name, lon, lat }) => ({ name, lon, lat })); // → [{ name: 'Pier', lon: -30.1, lat: 12.2 }]
 *
 * readGpx('', 'empty.gpx').findings.map(findingLine); // → ['empty.gpx:1:1: The file is empty. It should be a GPX file with a track, a route or waypoints. Export it again.']
 * ```
 */
export function readGpx(input: Uint8Array | string, file: string): Result<GpxDocument> {
  want('readGpx', 'file', aText, file);
  const reader = createGpxReader(file);
  if (readable(input) && input.length > LIMITS.gpx.bytes)
    return bad([limitFinding('gpx', 'bytes', { file }, input.length)]);
  reader.write(input);
  return reader.close();
}

/**
 * A text goes in whole, since the characters of a slice of it take longer to reach; in pieces where there is no tag for
 * long, so that what the parser keeps until then can be counted.
 */
function partsOf(text: string): readonly string[] {
  for (let at = 0; at + PIECE < text.length; at += PIECE) {
    const next = text.indexOf('<', at);
    if (next !== -1 && next < at + PIECE) continue;
    return Array.from({ length: Math.ceil(text.length / PIECE) }, (_, k) => text.slice(k * PIECE, (k + 1) * PIECE));
  }
  return [text];
}

function feed(run: Run, text: string, last: boolean): void {
  const close = text.lastIndexOf('>') + 1;
  // Text behind the last tag need not be held back: nothing of it can be a tag cut in two.
  const cut = last || (close > 0 && !text.includes('<', close)) ? text.length : close;
  if (cut === 0 && !last && run.held.length + text.length < PIECE) {
    run.held += text;
    return;
  }
  const end = cut === 0 ? text.length : cut;
  const given = run.held + text.slice(0, end);
  const kept = cut === 0 && !last ? cutOpening(given) : 0;
  const all = given.slice(0, given.length - kept);
  run.held = given.slice(given.length - kept) + text.slice(end);
  const nul = all.indexOf('\0');
  parse(run, nul === -1 ? all : all.slice(0, nul));
  if (nul !== -1 && !run.stopped) stop(run, NUL, here(run));
}

function parse(run: Run, piece: string): void {
  if (piece === '' || run.stopped) return;
  const { opened, end, past } = run.unheard(piece);
  const read = piece.slice(0, end);
  if (run.rootName === '' && run.head.length < PIECE) run.head += read;
  run.piece = read;
  run.columnBefore = run.parser.column;
  try {
    // What is still open is told at its beginning, so its place is taken there.
    if (opened !== -1) run.parser.write(read.slice(0, opened + 1));
    if (opened !== -1) run.openedAt = justRead(run);
    run.parser.write(opened === -1 ? read : read.slice(opened + 1));
    keepToLength(run, past);
  } catch (error) {
    if (error !== STOP) throw error;
  }
  run.pieceStart += read.length;
}

function finish(run: Run): void {
  const reason = unfinished(run);
  if (reason !== null) {
    stop(run, reason, reason === DOCTYPE ? placeInHead(run, run.head.lastIndexOf('<!DOCTYPE')) : here(run));
    return;
  }
  try {
    run.parser.close();
  } catch (error) {
    if (error !== STOP) throw error;
  }
}

function unfinished({ head, rootName, depth, elements }: Run): Refusal | null {
  if (head.trim() === '') return { code: 'gpx-empty', params: {} };
  if (rootName === '') {
    if (head.includes('<!DOCTYPE')) return DOCTYPE;
    return notXml(head) ?? { code: 'gpx-truncated', params: { inside: 'start' } };
  }
  if (depth === 0) return null;
  return { code: 'gpx-truncated', params: { inside: 'element', element: innermost(elements) } };
}
