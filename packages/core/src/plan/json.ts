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
import { describeValue } from '../units.ts';
import { pointerOf, pointerParts } from './fault.ts';
import type { Place } from './plan.ts';

export interface JsonFault {
  readonly code: 'plan-not-json' | 'plan-duplicate-key';
  readonly offset: number;
  readonly path?: string;
  readonly message: string;
}

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
        message: `found brackets nested deeper than ${DEEPEST}; expected a plan`,
      };
  }
  return undefined;
}

type SyntaxErrorName = Exclude<ReturnType<typeof printParseErrorCode>, '<unknown ParseErrorCode>'>;

const EXPECTED: Readonly<Record<SyntaxErrorName, string>> = {
  InvalidSymbol: 'expected a value: text in double quotes, a number, true, false, a list or an object',
  InvalidNumberFormat: 'expected a number such as 12 or 0.5',
  PropertyNameExpected: 'expected a key in double quotes',
  ValueExpected: 'expected a value',
  ColonExpected: 'expected a colon after the key',
  CommaExpected: 'expected a comma between entries',
  CloseBraceExpected: 'expected "}"',
  CloseBracketExpected: 'expected "]"',
  EndOfFileExpected: 'expected nothing more after the end of the plan: delete it',
  InvalidCommentToken: 'a plan has no comments: delete it, or use the "note" of a station',
  UnexpectedEndOfComment: 'a plan has no comments: delete it',
  UnexpectedEndOfString: 'expected the text to end with a double quote on its own line',
  UnexpectedEndOfNumber: 'expected digits after it',
  InvalidUnicode: 'expected \\u with four hexadecimal digits',
  InvalidEscapeCharacter: 'expected one of \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u after a backslash',
  InvalidCharacter: 'expected no control character inside a text: write it as an escape such as \\n or \\t',
};

function syntaxFault(json: string, { error, offset, length }: ParseError): JsonFault {
  const fault = (message: string): JsonFault => ({ code: 'plan-not-json', offset, message });
  if (json.trim() === '') return { ...fault('found an empty file; expected a plan'), offset: 0 };
  if (json.trimStart().startsWith('<'))
    return fault('found markup such as GPX or HTML; expected a plan, which is JSON: name the plan, not the course');
  const expected = EXPECTED[printParseErrorCode(error) as SyntaxErrorName];
  if (json.slice(offset).trim() === '') return fault(`found the end of the file; ${expected}: the file may be cut off`);
  const found = describeValue(json.slice(offset, offset + Math.max(1, length)));
  const previous = json.slice(0, offset).trimEnd().at(-1);
  if (previous === ',' && /[}\]]/u.test(json[offset]!))
    return fault(`found a comma before ${found}; expected no comma after the last entry: delete it`);
  return fault(`found ${found}; ${expected}`);
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
    const fault = (message: string): number =>
      faults.push({ code: 'plan-duplicate-key', offset: key.offset, path: pointerOf(here), message });
    if (seen.has(name))
      fault(
        `found the key ${JSON.stringify(name)} a second time in one object; expected each key once: delete one of the two`,
      );
    if (name === '__proto__') fault('found the key "__proto__"; expected keys of the plan format: delete it');
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
