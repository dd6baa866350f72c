/** How much a JSON text holds, counted without reading it: a text that is past a limit never becomes values. */

/** The most that there may be; what is left out has no limit. */
export interface JsonLimits {
  /** Numbers, texts, lists, objects; a key and its value are one, and a position in a list is a point and nothing else. */
  readonly values?: number;
  /** Lists of two or three numbers. */
  readonly points?: number;
  readonly depth?: number;
}

/** The first limit that is passed, and where, as an offset into the text. */
export interface PassedLimit {
  readonly what: keyof JsonLimits;
  readonly offset: number;
}

const SPACE = 32;
const QUOTE = 34;
const COMMA = 44;
const BACKSLASH = 92;
const LIST = 91;
const POSITION = /\[\s*[\d.eE+-]+\s*,\s*[\d.eE+-]+\s*(?:,\s*[\d.eE+-]+\s*)?\]/y;

/**
 * Where a JSON text passes the limits; null where it does not. Of a text that is no JSON it counts the same signs. One pass,
 * nothing kept.
 */
export function passedIn(json: string, most: JsonLimits): PassedLimit | null {
  const { values: mostValues = Infinity, points: mostPoints = Infinity, depth: deepest = Infinity } = most;
  let depth = 0;
  let values = 0;
  let points = 0;
  // Whether an entry may begin: at the beginning, behind an opening, behind a comma. A key and its value are one entry.
  let begins = true;
  for (let at = 0; at < json.length; at++) {
    const sign = json.charCodeAt(at);
    if (sign <= SPACE) continue;
    if (sign === LIST && isPosition(json, at)) {
      points += 1;
      begins = false;
      at = POSITION.lastIndex - 1;
      if (points > mostPoints) return { what: 'points', offset: at };
      continue;
    }
    if (begins && !closes(sign) && (values += 1) > mostValues) return { what: 'values', offset: at };
    begins = sign === COMMA || opens(sign);
    if (sign === QUOTE) at = endOfText(json, at);
    else if (opens(sign) && (depth += 1) > deepest) return { what: 'depth', offset: at };
    else if (closes(sign)) depth -= 1;
  }
  return null;
}

const opens = (sign: number): boolean => sign === LIST || sign === 123;
const closes = (sign: number): boolean => sign === 93 || sign === 125;

function isPosition(json: string, at: number): boolean {
  POSITION.lastIndex = at;
  return POSITION.test(json);
}

/** The offset of the quote that closes a text, or of the end. */
export function endOfText(json: string, open: number): number {
  let at = open + 1;
  while (at < json.length && json.charCodeAt(at) !== QUOTE) at += json.charCodeAt(at) === BACKSLASH ? 2 : 1;
  return at;
}
