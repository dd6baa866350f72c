/**
 * Strict JSON (RFC 8259) with positions: no comments, no trailing commas, no key twice. A byte order
 * mark is let pass and kept. Lines and columns count from 1, columns in UTF-16 units.
 */
import {
  createScanner,
  findNodeAtLocation,
  parseTree,
  printParseErrorCode,
  type Node,
  type ParseError,
} from 'jsonc-parser';
import { foundOf, shortText } from '../text/found.ts';
import type { JsonExpected, JsonProblem, PlanParams } from '../text/params/plan.ts';
import { pointerOf, pointerParts } from './fault.ts';
import type { Place } from './plan.ts';

export type JsonFault = { readonly offset: number; readonly path?: string } & (
  | { readonly code: 'plan-not-json'; readonly problem: JsonProblem }
  | { readonly code: 'plan-duplicate-key'; readonly problem: PlanParams['plan-duplicate-key'] }
);

export interface JsonText {
  readonly root: Node;
  readonly value: unknown;
}

/** Deeper than any plan; keeps hostile nesting from exhausting the stack. */
const DEEPEST = 64;
const BOM = '\uFEFF';

/** Length of a byte order mark at the beginning: 0 or 1. */
export const bomLength = (text: string): number => (text.startsWith(BOM) ? 1 : 0);

/** Finds line and column of offsets into a text; builds its table of lines once. */
export function placer(text: string): (offset: number) => Place {
  const starts = [bomLength(text)];
  for (const match of text.matchAll(/\r\n|\n|\r/gu)) starts.push(match.index + match[0].length);
  return (offset) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: Math.max(0, offset - starts[low]!) + 1 };
  };
}

// Token kinds of jsonc-parser's scanner (its enum cannot be imported as a value).
const OPEN: ReadonlySet<number> = new Set([1, 3]);
const CLOSE: ReadonlySet<number> = new Set([2, 4]);
const END = 17;

function tooDeep(json: string): JsonFault | undefined {
  const scanner = createScanner(json);
  let depth = 0;
  for (let token: number = scanner.scan(); token !== END; token = scanner.scan()) {
    if (OPEN.has(token)) depth++;
    else if (CLOSE.has(token)) depth--;
    if (depth > DEEPEST)
      return {
        code: 'plan-not-json',
        offset: scanner.getTokenOffset(),
        problem: { problem: 'deep', most: DEEPEST },
      };
  }
  return undefined;
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

/** Reads strict JSON; offsets of nodes and faults count from the text's beginning, mark included. */
export function readJson(
  text: string,
): { readonly ok: true; readonly value: JsonText } | { readonly ok: false; readonly faults: readonly JsonFault[] } {
  // A space in place of the mark keeps every offset.
  const json = bomLength(text) === 1 ? ` ${text.slice(1)}` : text;
  const deep = tooDeep(json);
  if (deep !== undefined) return { ok: false, faults: [deep] };
  const errors: ParseError[] = [];
  // Where there is no tree there is an error; without errors every property has its value.
  const root = parseTree(json, errors, { disallowComments: true, allowTrailingComma: false })!;
  const [first] = errors.toSorted((a, b) => a.offset - b.offset);
  if (first !== undefined) return { ok: false, faults: [syntaxFault(json, first)] };
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
