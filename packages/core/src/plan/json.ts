/**
 * Strict JSON (RFC 8259) with positions: no comments, no trailing commas, no key twice. A byte order
 * mark is let pass and kept. Lines and columns count from 1, columns in UTF-16 units.
 */
import { findNodeAtLocation, parseTree, printParseErrorCode, visit, type Node, type ParseError } from 'jsonc-parser';
import { passedIn } from '../jsonExtent.ts';
import { LIMITS } from '../limits.ts';
import { foundOf, shortText } from '../text/found.ts';
import type { JsonExpected, JsonProblem, PlanParams } from '../text/params/plan.ts';
import { pointerOf, pointerParts } from './fault.ts';
import type { Place } from './plan.ts';
import { placeBack, withoutLongRuns } from './spaces.ts';

export type JsonFault = { readonly offset: number; readonly path?: string } & (
  | { readonly code: 'plan-not-json'; readonly problem: JsonProblem }
  | { readonly code: 'plan-duplicate-key'; readonly problem: PlanParams['plan-duplicate-key'] }
);

/** What a text holds. */
export interface JsonText {
  readonly value: unknown;
  /** With the place of everything, found when it is first asked for. */
  readonly root: Node;
}

/** Keeps hostile nesting from exhausting the stack. */
export const DEEPEST: number = LIMITS.plan.depth;
const BOM = '\uFEFF';

/** Length of a byte order mark at the beginning: 0 or 1. */
export const bomLength = (text: string): number => (text.startsWith(BOM) ? 1 : 0);

/** Finds line and column of offsets into a text; builds its table of lines once, when it is first asked. */
export function placer(text: string): (offset: number) => Place {
  let known: Uint32Array | undefined;
  return (offset) => {
    const starts = (known ??= startsOf(text));
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: Math.max(0, offset - starts[low]!) + 1 };
  };
}

const LF = 10;
const CR = 13;

/** Offsets at which lines begin: there may be as many as signs, so that they are no list. */
function startsOf(text: string): Uint32Array {
  const breakBehind = (at: number): boolean => {
    const sign = text.charCodeAt(at);
    return sign === LF || (sign === CR && text.charCodeAt(at + 1) !== LF);
  };
  let count = 1;
  for (let at = 0; at < text.length; at++) if (breakBehind(at)) count++;
  const starts = new Uint32Array(count);
  starts[0] = bomLength(text);
  count = 1;
  for (let at = 0; at < text.length; at++) if (breakBehind(at)) starts[count++] = at + 1;
  return starts;
}

function tooDeep(json: string): JsonFault | undefined {
  const past = passedIn(json, { depth: DEEPEST });
  return past === null ? undefined : deepFault(past.offset);
}

/** Brackets are nested too deeply at an offset. */
export const deepFault = (offset: number): JsonFault => ({
  code: 'plan-not-json',
  offset,
  problem: { problem: 'deep', most: DEEPEST },
});

/** Escapes, of which those of one surrogate alone are half of a character (RFC 8259, section 8.2). */
const ESCAPES =
  /\\u[dD][89abAB][\dA-Fa-f]{2}\\u[dD][c-fC-F][\dA-Fa-f]{2}|(?<half>\\u[dD][89a-fA-F][\dA-Fa-f]{2})|\\./gsu;

function halfEscape(json: string): RegExpExecArray | undefined {
  for (const match of json.matchAll(ESCAPES)) if (match.groups?.['half'] !== undefined) return match;
  return undefined;
}

/** The first half of a character, which no text that is written could hold. */
function halfCharacter(json: string): JsonFault | undefined {
  const at = json.search(/\p{Surrogate}/u);
  const escaped = /\\u[dD]/u.test(json) ? halfEscape(json) : undefined;
  const fault = (offset: number, found: string): JsonFault => ({
    code: 'plan-not-json',
    offset,
    problem: { problem: 'half', found },
  });
  if (at >= 0) return fault(at, `\\u${json.charCodeAt(at).toString(16)}`);
  return escaped === undefined ? undefined : fault(escaped.index, escaped[0]);
}

type SyntaxErrorName = Exclude<ReturnType<typeof printParseErrorCode>, '<unknown ParseErrorCode>'>;

const EXPECTED: Readonly<Record<SyntaxErrorName, JsonExpected>> = {
  InvalidSymbol: 'value',
  InvalidNumberFormat: 'number',
  PropertyNameExpected: 'key',
  ValueExpected: 'value',
  ColonExpected: 'colon',
  CommaExpected: 'comma',
  CloseBraceExpected: 'brace',
  CloseBracketExpected: 'bracket',
  EndOfFileExpected: 'end',
  InvalidCommentToken: 'noComment',
  UnexpectedEndOfComment: 'noComment',
  UnexpectedEndOfString: 'quote',
  UnexpectedEndOfNumber: 'digits',
  InvalidUnicode: 'unicode',
  InvalidEscapeCharacter: 'escape',
  InvalidCharacter: 'noControl',
};

function syntaxFault(json: string, { error, offset, length }: ParseError): JsonFault {
  const fault = (problem: JsonProblem): JsonFault => ({ code: 'plan-not-json', offset, problem });
  if (json.trim() === '') return { ...fault({ problem: 'empty' }), offset: 0 };
  if (json.trimStart().startsWith('<')) return fault({ problem: 'markup' });
  const expected = EXPECTED[printParseErrorCode(error) as SyntaxErrorName];
  if (json.slice(offset).trim() === '') return fault({ problem: 'cutOff', expected });
  const found = foundOf(json.slice(offset, offset + Math.max(1, length)));
  const afterComma = json.slice(0, offset).trimEnd().endsWith(',') && /[}\]]/u.test(json[offset]!);
  return fault({ problem: 'found', found, expected: afterComma ? 'noComma' : expected });
}

/** Duplicate keys (and `__proto__`, which no object can hold), each at its own place, added to `faults`. */
function addKeyFaults({ type, children = [] }: Node, path: readonly (string | number)[], faults: JsonFault[]): void {
  if (type === 'array') children.forEach((child, index) => addKeyFaults(child, [...path, index], faults));
  if (type !== 'object') return;
  const seen = new Set<string>();
  for (const property of children) {
    const [key, value] = property.children as [Node, Node];
    const name = String(key.value);
    const here = [...path, name];
    const fault = (problem: 'twice' | 'hidden'): number =>
      faults.push({
        code: 'plan-duplicate-key',
        offset: key.offset,
        path: pointerOf(here),
        problem: { key: shortText(name), problem },
      });
    if (seen.has(name)) fault('twice');
    if (name === '__proto__') fault('hidden');
    seen.add(name);
    addKeyFaults(value, here, faults);
  }
}

function valueOf({ type, children = [], value }: Node): unknown {
  if (type === 'array') return children.map(valueOf);
  if (type !== 'object') return value as unknown;
  return Object.fromEntries(
    children.map((property) => [String(property.children![0]!.value), valueOf(property.children![1]!)]),
  );
}

/** Keys of a value and of all that is in it; NaN where it is nested too deeply or has a key `__proto__`. */
function keysIn(value: unknown, depth: number): number {
  if (typeof value !== 'object' || value === null) return 0;
  if (depth >= DEEPEST) return NaN;
  if (Array.isArray(value)) return value.reduce((sum: number, one) => sum + keysIn(one, depth + 1), 0);
  const keys = Object.keys(value);
  let count = keys.length;
  for (const key of keys)
    count += key === '__proto__' ? NaN : keysIn((value as Readonly<Record<string, unknown>>)[key], depth + 1);
  return count;
}

/** Colons outside texts: one for each key that JSON which can be read gives. */
function colonsIn(json: string): number {
  let colons = 0;
  for (let at = 0; at < json.length; at++) {
    const sign = json.charCodeAt(at);
    if (sign === 58) colons++;
    else if (sign === 34) {
      at++;
      for (let inside = json.charCodeAt(at); inside !== 34; inside = json.charCodeAt(at)) at += inside === 92 ? 2 : 1;
    }
  }
  return colons;
}

/** The value of a text in which nothing is wrong, without the place of anything; `undefined` where something may be. */
function faultless(json: string): unknown {
  try {
    const value: unknown = JSON.parse(json);
    return keysIn(value, 0) === colonsIn(json) ? value : undefined;
  } catch {
    return undefined;
  }
}

/** Reads strict JSON; offsets of nodes and faults count from the text's beginning, mark included. */
export function readJson(
  text: string,
): { readonly ok: true; readonly value: JsonText } | { readonly ok: false; readonly faults: readonly JsonFault[] } {
  // A space in place of the mark keeps every offset.
  const json = bomLength(text) === 1 ? ` ${text.slice(1)}` : text;
  const half = halfCharacter(json);
  if (half !== undefined) return { ok: false, faults: [half] };
  const value = faultless(json);
  if (value === undefined) return readPlaced(json);
  let root: Node | undefined;
  return {
    ok: true,
    value: {
      value,
      get root() {
        return (root ??= treeOf(json));
      },
    },
  };
}

const STRICT = { disallowComments: true, allowTrailingComma: false } as const;

/** The tree of a text without faults, where every property has its value. */
function treeOf(json: string): Node {
  const shortened = withoutLongRuns(json);
  const root = parseTree(shortened.text, [], STRICT)!;
  if (shortened.text !== json) placeBack(root, shortened.whole);
  return root;
}

/** So many errors are looked at: the first to stand in a text is among the first that are told. */
const ERRORS = 100;
const ENOUGH: Error = new Error('enough');

function firstError(json: string): ParseError | undefined {
  const { text, whole } = withoutLongRuns(json);
  const errors: ParseError[] = [];
  try {
    visit(text, { onError: (error, offset, length) => keep({ error, offset, length }) }, STRICT);
  } catch (error) {
    if (error !== ENOUGH) throw error;
  }
  function keep(error: ParseError): void {
    if (errors.push(error) === ERRORS) throw ENOUGH;
  }
  const [first] = errors.toSorted((a, b) => a.offset - b.offset);
  return first && { ...first, offset: whole(first.offset) };
}

/** Reads it with the place of everything, to say where what is wrong stands. */
function readPlaced(json: string): ReturnType<typeof readJson> {
  const deep = tooDeep(json);
  if (deep !== undefined) return { ok: false, faults: [deep] };
  const first = firstError(json);
  if (first !== undefined) return { ok: false, faults: [syntaxFault(json, first)] };
  const root = treeOf(json);
  const faults: JsonFault[] = [];
  addKeyFaults(root, [], faults);
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: { root, value: valueOf(root) } };
}

/** The node at a JSON pointer, or `undefined`. */
export function nodeAt(root: Node, parts: readonly string[]): Node | undefined {
  let node: Node | undefined = root;
  for (const part of parts) {
    if (node === undefined || (node.type === 'array' && !/^(0|[1-9]\d*)$/u.test(part))) return undefined;
    node = findNodeAtLocation(node, [node.type === 'array' ? Number(part) : part]);
  }
  return node;
}

/** The node at a JSON pointer, or that of its nearest parent that exists. */
export function nearestNode(root: Node, pointer: string): Node {
  const parts = pointerParts(pointer);
  for (let end = parts.length; end > 0; end--) {
    const node = nodeAt(root, parts.slice(0, end));
    if (node !== undefined) return node;
  }
  return root;
}
