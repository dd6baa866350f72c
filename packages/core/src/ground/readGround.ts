/**
 * Reads `ground.geojson`, and any other GeoJSON whose properties are OpenStreetMap's tags: a feature at a time, with the line
 * and column of what cannot be read.
 * Source: RFC 7946; OpenStreetMap wiki, "Map features".
 */
import { parseTree, type ParseError } from 'jsonc-parser';
import { type Finding, type Result, bad, good } from '../finding.ts';
import { excerpt } from '../gpx/trouble.ts';
import { LIMITS } from '../limits.ts';
import { foundOf } from '../text/found.ts';
import { limitFinding } from '../text/limitFinding.ts';
import type { GroundParams } from '../text/params/ground.ts';
import { aText, want } from '../wants.ts';
import { type Collection, createCollection, createLeftOut } from './collect.ts';
import { dayOf } from './day.ts';
import { type FeatureFault, type FeatureParts, isRecord, partsOf } from './feature.ts';
import type { Ground, GroundSource } from './ground.ts';
import { groundFinding } from './groundFinding.ts';
import { MOST } from './limits.ts';
import { type Piece, splitFeatures } from './split.ts';

/** What a map is credited with, where the file does not say. */
export const OSM_CREDIT = '© OpenStreetMap contributors';
export const OSM_LICENCE = 'ODbL 1.0';

/** Takes the text of a GeoJSON file as it comes. */
export interface GeoJsonReader {
  readonly write: (text: string) => void;
  /** Reading has ended before the text has. */
  readonly stopped: () => boolean;
  readonly close: () => Result<Ground>;
  /** Features so far, and how many of them are left out. */
  readonly read: () => number;
  readonly leftOut: () => number;
  /** The place of the next character. */
  readonly here: () => { readonly line: number; readonly column: number };
}

/** What of each feature's parts is kept. */
export type Sieve = (parts: FeatureParts) => FeatureParts;

/** A reader that keeps what `sieve` lets through. */
export function createGeoJsonReader(file: string, sieve: Sieve = (parts) => parts): GeoJsonReader {
  const collection = createCollection();
  const leftOut = createLeftOut(file);
  let fault: Finding | null = null;
  let read = 0;

  const refuse = <C extends keyof GroundParams>(code: C, params: GroundParams[C], place: Place): void => {
    fault ??= groundFinding(code, params, { severity: 'error', where: { file, ...place } });
  };
  const feature = (piece: Piece): void => {
    if (fault !== null) return;
    read++;
    if (read > MOST.features) return refuse('ground-limit', { bound: 'features', most: MOST.features }, startOf(piece));
    const value = parsed(piece.text);
    if (value === BROKEN) {
      const { found, place } = brokenAt(piece);
      return refuse('ground-json', { found }, place);
    }
    const parts = partsOf(value, `feature/${read}`);
    if ('problem' in parts) return leftOut.report(parts satisfies FeatureFault, startOf(piece));
    collection.add(sieve(parts));
    if (collection.size() > MOST.kept) refuse('ground-limit', { bound: 'kept', most: MOST.kept }, startOf(piece));
  };
  const splitter = splitFeatures(feature);

  const close = (): Result<Ground> => {
    const { frame, open, end } = splitter.close();
    if (fault === null) fault = frameFault(file, frame, open > 0 ? end : null);
    if (fault !== null) return bad([...leftOut.findings(), fault]);
    const source = sourceOf(JSON.parse(frame.map(({ text }) => text).join('')) as Readonly<Record<string, unknown>>);
    return good(groundOf(collection, source), leftOut.findings());
  };

  let begun = false;
  const write = (text: string): void => {
    if (fault !== null) return;
    splitter.write(!begun && text.startsWith('\u{FEFF}') ? text.slice(1) : text);
    begun ||= text !== '';
  };
  return { write, stopped: () => fault !== null, close, read: () => read, leftOut: leftOut.count, here: splitter.here };
}

const groundOf = (collection: Collection, source: GroundSource): Ground => collection.ground(source);

interface Place {
  readonly line: number;
  readonly column: number;
}

const BROKEN = Symbol('no JSON');

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return BROKEN;
  }
}

/** The place of a character of a piece. */
function placeIn({ text, line, column }: Piece, offset: number): Place {
  const before = text.slice(0, offset).split('\n');
  const last = before.at(-1)!.length;
  return { line: line + before.length - 1, column: before.length === 1 ? column + last : last + 1 };
}

const startOf = (piece: Piece): Place => placeIn(piece, piece.text.length - piece.text.trimStart().length);

/** Where a piece stops being JSON, and what stands there. */
function brokenAt(piece: Piece): { readonly found: string; readonly offset: number; readonly place: Place } {
  const errors: ParseError[] = [];
  parseTree(piece.text.slice(0, MOST.searched), errors, { disallowComments: true });
  const offset = errors[0]?.offset ?? piece.text.length;
  const found = excerpt(piece.text.slice(offset, offset + 80));
  // At its end a piece lacks what stands before the comma or bracket that ends it.
  return {
    found: found === '' ? excerpt(piece.text.trim().slice(-1)) || ',' : found,
    offset,
    place: placeIn(piece, offset),
  };
}

/** What is the matter with all that stands around the features. */
function frameFault(file: string, frame: readonly Piece[], cut: Piece | null): Finding | null {
  const say = <C extends keyof GroundParams>(code: C, params: GroundParams[C], place: Place): Finding =>
    groundFinding(code, params, { severity: 'error', where: { file, ...place } });
  const text = frame.map((piece) => piece.text).join('');
  if (text.trim() === '') return say('ground-empty', {}, { line: 1, column: 1 });
  if (cut !== null) return say('ground-cut-off', { format: 'geojson' }, placeIn(cut, cut.text.length));
  const value = parsed(text);
  if (value === BROKEN) {
    const broken = brokenAt({ text, line: 1, column: 1 });
    let { offset } = broken;
    let at = 0;
    while (at + 1 < frame.length && offset >= frame[at]!.text.length) offset -= frame[at++]!.text.length;
    return say('ground-json', { found: broken.found }, placeIn(frame[at]!, offset));
  }
  const type = isRecord(value) ? value['type'] : value;
  if (!isRecord(value) || type !== 'FeatureCollection')
    return say('ground-root', { type: foundOf(type) }, startOf(frame[0]!));
  return Array.isArray(value['features']) ? null : say('ground-root', { missing: 'features' }, startOf(frame[0]!));
}

const textOf = (value: unknown): string | null =>
  typeof value === 'string' && value.trim() !== '' ? value.trim().slice(0, 500) : null;

function sourceOf(document: Readonly<Record<string, unknown>>): GroundSource {
  const copyright = textOf(document['copyright']);
  const licence = textOf(document['licence']) ?? textOf(document['license']);
  return {
    date: dayOf(document['date']) ?? dayOf(document['timestamp']),
    credit: textOf(document['attribution']) ?? copyright ?? OSM_CREDIT,
    licence: licence ?? (copyright !== null && /\bODbL\b/u.test(copyright) ? OSM_LICENCE : null),
  };
}

/**
 * Reads the streets beside the courses from the text of `ground.geojson`, or of another GeoJSON collection whose properties are
 * OpenStreetMap's tags (also in `tags`; ids in `id` or `@id`). Nodes that the file does not name are those at the same place, to 1e-7 of a
 * degree. Features that cannot be used are left out with a warning each, features without tags that the ground knows without one;
 * a text that is no such collection is an error. At most 500,000 features.
 * Source: RFC 7946.
 * @example
 * ```ts
 * import { readGround } from '@halfcup/core/ground';
 * const quay = { type: 'Feature', id: 'way/7', properties: { highway: 'residential', name: 'Quay Street' },
 *   geometry: { type: 'LineString', coordinates: [[-17.4, -33.2], [-17.39, -33.2]] } };
 * const read = readGround(JSON.stringify({ type: 'FeatureCollection', date: '2027-05-01', features: [quay] }), 'ground.geojson');
 * read.ok && read.value.ways.map(({ id, nodes }) => [id, nodes.length]); // → [['way/7', 2]]
 * read.ok && read.value.source.date; // → '2027-05-01'
 * ```
 */
export function readGround(text: string, file: string): Result<Ground> {
  want('readGround', 'text', aText, text);
  want('readGround', 'file', aText, file);
  if (text.length > LIMITS.ground.bytes) return bad([limitFinding('ground', 'bytes', { file }, text.length)]);
  const reader = createGeoJsonReader(file);
  reader.write(text);
  return reader.close();
}
