/**
 * One reading of a GPX file: the parser (saxes 6), what its events do, and the refusal of what is no GPX.
 * The parser is without namespaces, which makes it faster; namespaces.ts looks after them.
 */

import { SaxesParser } from 'saxes';
import { closeElement, createElements, openElement, type Elements } from './elements.ts';
import { LIMITS, type LimitTable } from '../limits.ts';
import { DOCTYPE, malformed, notXml, otherRoot } from './malformed.ts';
import { createNamespaces, type Namespaces } from './namespaces.ts';
import { here, justRead, placeInHead, placeOfLast, placeOfTag, type Cursor, type Reached } from './places.ts';
import { createTrouble, excerpt, type Place, type Refusal, type Trouble } from './trouble.ts';
import { createUnheard, type Heard } from './unheard.ts';

/** Thrown to make the parser stop, and caught again by who feeds it: the reason is in the findings by then. */
export const STOP: Error = new Error('stop');

export interface Run extends Cursor {
  readonly parser: SaxesParser;
  readonly elements: Elements;
  readonly namespaces: Namespaces;
  readonly trouble: Trouble;
  /** The name of the tag that opened last, as written. */
  name: string;
  /** Given out by the caller, not yet by us: what follows the last `>`, so that no tag is cut in two. */
  held: string;
  lat: string | undefined;
  lon: string | undefined;
  stopped: boolean;
  /** Counts what the parser keeps without an event. */
  readonly unheard: ReturnType<typeof createUnheard>;
  /** Where what was open at the end of a piece begins. */
  openedAt: Place;
  depth: number;
  /** Attributes of the tag that is opening, so far. */
  attributes: number;
  rootName: string;
  lastClosed: string;
}

/** The parser with its handlers, and all that one reading keeps. */
export function createRun(file: string): Run {
  const trouble = createTrouble(file);
  const namespaces = createNamespaces();
  const run: Run = {
    parser: new SaxesParser({ position: false }),
    elements: createElements(
      trouble,
      tagPlaces(() => run),
      (what) => pastLimit(run, what, placeOfTag(run, run.name)),
    ),
    namespaces,
    trouble,
    name: '',
    held: '',
    piece: '',
    pieceStart: 0,
    columnBefore: 0,
    head: '',
    lat: undefined,
    lon: undefined,
    stopped: false,
    unheard: createUnheard(LIMITS.gpx.characters),
    openedAt: { line: 1, column: 1 },
    depth: 0,
    attributes: 0,
    rootName: '',
    lastClosed: '',
  };
  listen(run);
  return run;
}

/** A cursor kept as it stood, together with the name of the tag that was read there. */
interface Mark extends Cursor {
  readonly parser: { -readonly [key in keyof Reached]: Reached[key] };
  name: string;
}

/** Where tags stand. A mark copies numbers only: most of them are never asked for a place. */
function tagPlaces(current: () => Run): Pick<Elements, 'where' | 'mark' | 'marked'> {
  const kept: Mark = {
    parser: { line: 1, column: 0, position: 0 },
    piece: '',
    pieceStart: 0,
    columnBefore: 0,
    head: '',
    name: '',
  };
  return {
    where: () => placeOfTag(current(), current().name),
    mark: () => {
      const { parser, piece, pieceStart, columnBefore, name } = current();
      kept.parser.line = parser.line;
      kept.parser.column = parser.column;
      kept.parser.position = parser.position;
      kept.piece = piece;
      kept.pieceStart = pieceStart;
      kept.columnBefore = columnBefore;
      kept.name = name;
    },
    marked: () => placeOfTag(kept, kept.name),
  };
}

function listen(run: Run): void {
  const { parser, elements, namespaces } = run;
  const addText = (text: string): void => {
    if (elements.ignored > 0) return;
    elements.text += text;
    if (elements.text.length > LIMITS.gpx.characters) pastLimit(run, 'characters', elements.marked());
  };

  // At most seven handlers: with an eighth, V8 turns the parser into a dictionary, six times slower.
  parser.on('attribute', ({ name, value }) => {
    if ((run.attributes += 1) > LIMITS.gpx.attributes) pastLimit(run, 'attributes', justRead(run));
    if (value.length > LIMITS.gpx.characters) pastLimit(run, 'characters', justRead(run));
    // Compared by length first: names are read from the text, and equal ones are other strings.
    if (name.length !== 3) {
      if (name.startsWith('xmlns') && (name.length === 5 || name[5] === ':')) {
        const inForce = namespaces.declare(name, value, run.depth + 1);
        if (inForce > LIMITS.gpx.namespaces) pastLimit(run, 'namespaces', justRead(run));
      }
    } else if (name === 'lat') run.lat = value;
    else if (name === 'lon') run.lon = value;
  });
  // Text is heard only where it is wanted. `on` and `off` store by a computed name, which costs a tenth of the whole time;
  // the tests of every name and elevation would fail if the parser called this field otherwise.
  parser.on('opentag', ({ name, attributes }) => {
    run.depth += 1;
    run.attributes = 0;
    run.name = name;
    if (run.depth > LIMITS.gpx.depth) pastLimit(run, 'depth', placeOfTag(run, name));
    if (run.depth === 1) openRoot(run, name, attributes);
    if (openElement(elements, elements.ignored > 0 ? null : namespaces.gpxName(name), run.lat, run.lon))
      parser['textHandler'] = addText;
    run.lat = undefined;
    run.lon = undefined;
  });
  parser.on('cdata', addText);
  parser.on('closetag', ({ name }) => {
    run.lastClosed = name;
    namespaces.leave(run.depth);
    run.depth -= 1;
    if (closeElement(elements)) parser['textHandler'] = undefined;
  });
  parser.on('doctype', () =>
    refuse(run, notXml(run.head) ?? DOCTYPE, placeInHead(run, run.head.lastIndexOf('<!DOCTYPE'))),
  );
  parser.on('error', ({ message }) => onParserError(run, message));
}

/** Ends the reading where a part is too long: one that `unheard` has counted, or the text or attribute that the parser has begun. */
export function keepToLength(run: Run, past: Heard['past']): void {
  if (past === 'doctype') refuse(run, notXml(run.head) ?? DOCTYPE, run.openedAt);
  if (past === 'text') pastLimit(run, 'characters', run.openedAt);
  const { parser, elements } = run;
  if (parser['text'].length > LIMITS.gpx.characters)
    pastLimit(run, 'characters', parser['textHandler'] === undefined ? here(run) : elements.marked());
}

/** More of something than is read. */
function pastLimit(run: Run, what: keyof LimitTable['gpx'], place: Place): never {
  refuse(run, { code: 'past-limit', params: { reader: 'gpx', what, most: LIMITS.gpx[what] } }, place);
}

function openRoot(run: Run, name: string, attributes: Readonly<Record<string, string>>): void {
  run.rootName = name;
  run.namespaces.setRoot(name);
  if (run.namespaces.gpxName(name) !== 'gpx') refuse(run, notXml(run.head) ?? otherRoot(name), placeOfLast(run, '<'));
  const { version, creator } = attributes;
  run.elements.version = version ?? null;
  run.elements.creator = creator ?? null;
}

function onParserError(run: Run, message: string): void {
  const other = run.rootName === '' ? notXml(run.head) : null;
  if (other !== null) refuse(run, other, placeInHead(run, run.head.search(/\S/)));
  if (message === 'unexpected end.') refuse(run, { code: 'gpx-truncated', params: { inside: 'tag' } }, here(run));
  if (message === 'unexpected close tag.') {
    const params = { fault: 'crossed', name: excerpt(run.lastClosed) } as const;
    refuse(run, { code: 'gpx-malformed', params }, placeOfLast(run, '</'));
  }
  refuse(run, malformed(message), justRead(run));
}

/** Reports why the reading ends here. */
export function stop(run: Run, refusal: Refusal, place: Place): void {
  run.stopped = true;
  run.trouble.refuse(refusal, place);
}

function refuse(run: Run, refusal: Refusal, place: Place): never {
  stop(run, refusal, place);
  throw STOP;
}
