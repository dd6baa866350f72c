/**
 * Edits of a plan's text that keep every byte they are not about, with the file's own indentation
 * and line endings. A new value inside a list or object of the same shape changes only its own leaves.
 */
import { applyEdits, type Edit, type Node } from 'jsonc-parser';
import { pointerParts } from './fault.ts';
import { bomLength, nodeAt, readJson } from './json.ts';
import { type Shape, aText, finite, listOf, maybe, tableOf, want } from '../wants.ts';

interface Style {
  /** Line ending, or '' where the text is one line. */
  readonly eol: string;
  /** One step of indentation. */
  readonly step: string;
}

function styleOf(text: string): Style {
  const eol = /\r\n|\n|\r/u.exec(text.slice(bomLength(text)).trim())?.[0] ?? '';
  return { eol, step: /[\r\n]([ \t]+)\S/u.exec(text)?.[1] ?? '  ' };
}

const isLeaf = (value: unknown): boolean => typeof value !== 'object' || value === null;

/** A value on one line, with the spaces that people put. */
function inline(value: unknown): string {
  if (isLeaf(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`;
  const entries = Object.entries(value as object).map(([key, one]) => `${JSON.stringify(key)}: ${inline(one)}`);
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
}

/** A value as text: lists of plain values (a coordinate pair) on one line, the rest as the file indents. */
function print(value: unknown, style: Style, indent: string): string {
  if (style.eol === '' || isLeaf(value)) return inline(value);
  const inner = indent + style.step;
  const block = (open: string, lines: readonly string[], close: string): string =>
    lines.length === 0
      ? open + close
      : `${open}${style.eol}${lines.map((line) => inner + line).join(`,${style.eol}`)}${style.eol}${indent}${close}`;
  if (Array.isArray(value)) {
    return value.every(isLeaf)
      ? inline(value)
      : block(
          '[',
          value.map((one: unknown) => print(one, style, inner)),
          ']',
        );
  }
  return block(
    '{',
    Object.entries(value as object).map(([key, one]) => `${JSON.stringify(key)}: ${print(one, style, inner)}`),
    '}',
  );
}

const indentAt = (text: string, offset: number): string => {
  const line = text
    .slice(0, offset)
    .split(/[\r\n]/u)
    .at(-1)!;
  return /^[ \t]*/u.exec(line)![0];
};

/** Edits that turn a node into a value, leaf by leaf where the shapes agree. */
function replacing(text: string, node: Node, value: unknown, style: Style): Edit[] {
  const children = node.children ?? [];
  if (node.type === 'array' && Array.isArray(value) && value.length === children.length) {
    return children.flatMap((child, index) => replacing(text, child, value[index], style));
  }
  if (node.type === 'object' && !isLeaf(value) && !Array.isArray(value)) {
    const entries = value as { readonly [key: string]: unknown };
    const same =
      Object.keys(entries).length === children.length &&
      children.every((child) => Object.hasOwn(entries, String(child.children?.[0]?.value)));
    if (same)
      return children.flatMap((child) =>
        replacing(text, child.children![1]!, entries[String(child.children![0]!.value)], style),
      );
  }
  if (isLeaf(value) && node.children === undefined && node.value === value) return [];
  return [{ offset: node.offset, length: node.length, content: print(value, style, indentAt(text, node.offset)) }];
}

/** The edit that adds an entry at the end of a list or object. */
function adding(text: string, parent: Node, key: string | undefined, value: unknown, style: Style): Edit {
  const last = parent.children?.at(-1);
  const name = key === undefined ? '' : `${JSON.stringify(key)}: `;
  if (last === undefined) {
    const outer = indentAt(text, parent.offset);
    const indent = outer + style.step;
    const [open, close] = parent.type === 'array' ? ['[', ']'] : ['{', '}'];
    const space = parent.type === 'array' ? '' : ' ';
    const content =
      style.eol === ''
        ? `${open}${space}${name}${inline(value)}${space}${close}`
        : `${open}${style.eol}${indent}${name}${print(value, style, indent)}${style.eol}${outer}${close}`;
    return { offset: parent.offset, length: parent.length, content };
  }
  const lead = /[ \t\r\n]*$/u.exec(text.slice(0, last.offset))![0];
  const ownLine = /[\r\n]/u.test(lead);
  const content = `,${ownLine ? lead : ' '}${name}${ownLine ? print(value, style, indentAt(text, last.offset)) : inline(value)}`;
  return { offset: last.offset + last.length, length: 0, content };
}

/** The edit that takes an entry away with the comma that parted it from its neighbour. */
function removing(root: Node, parts: readonly string[]): Edit[] {
  const [value, parent] = [nodeAt(root, parts), nodeAt(root, parts.slice(0, -1))];
  const entries = parent?.children ?? [];
  const index = entries.findIndex((entry) => entry === value || entry === value?.parent);
  const [entry, before, after] = [entries[index], entries[index - 1], entries[index + 1]];
  if (parent === undefined || entry === undefined) return [];
  if (before !== undefined)
    return [
      {
        offset: before.offset + before.length,
        length: entry.offset + entry.length - before.offset - before.length,
        content: '',
      },
    ];
  if (after !== undefined) return [{ offset: entry.offset, length: after.offset - entry.offset, content: '' }];
  return [{ offset: parent.offset, length: parent.length, content: parent.type === 'array' ? '[]' : '{}' }];
}

function setting(text: string, root: Node, parts: readonly string[], value: unknown): Edit[] {
  const style = styleOf(text);
  const node = nodeAt(root, parts);
  if (node !== undefined) return replacing(text, node, value, style);
  const parent = nodeAt(root, parts.slice(0, -1));
  // The root is always there, so that parts are left.
  const last = parts.at(-1)!;
  if (parent === undefined) return setting(text, root, parts.slice(0, -1), { [last]: value });
  if (parent.type === 'object') return [adding(text, parent, last, value, style)];
  const end = parent.children?.length ?? 0;
  if (parent.type !== 'array' || (last !== '-' && last !== String(end)))
    throw new RangeError(`no place for ${last} in ${parent.type} of ${end}`);
  return [adding(text, parent, undefined, value, style)];
}

/** What JSON can hold: nothing undefined inside, no function, no number that is none. */
const isJson: Shape = (value) => {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return null;
  if (typeof value === 'number') return finite(value);
  return Array.isArray(value) ? listOf(isJson)(value) : tableOf(isJson)(value);
};

/**
 * A plan's text with the value at a JSON pointer (RFC 6901) set, added (missing parents become objects; `-` is the end of
 * a list) or, with `undefined`, removed; every other byte stays. The value is one of the file's own: `"2 km"`, `[lon, lat]`.
 * Throws where the text is no strict JSON or the pointer has no place: a programmer's error.
 * @example
 * ```ts
 * import { editPlan } from '@halfcup/core';
 * editPlan('{ "name": "Tern Cay 10",  "units": "metric" }', '/units', 'imperial'); // → '{ "name": "Tern Cay 10",  "units": "imperial" }'
 * editPlan('{ "stations": [] }', '/stations/-', { id: 's1' }); // → '{ "stations": [{ "id": "s1" }] }'
 * editPlan('{ "name": "Tern Cay 10", "units": "metric" }', '/units', undefined); // → '{ "name": "Tern Cay 10" }'
 * ```
 */
export function editPlan(text: string, pointer: string, value: unknown): string {
  want('editPlan', 'text', aText, text);
  want('editPlan', 'pointer', aText, pointer);
  want('editPlan', 'value', maybe(isJson), value);
  const json = readJson(text);
  if (!json.ok)
    throw new RangeError(`editPlan needs strict JSON, which breaks off at character ${json.faults[0]?.offset}`);
  const parts = pointerParts(pointer);
  const { root } = json.value;
  if (value === undefined && parts.length === 0) throw new RangeError('the whole plan cannot be removed');
  // The parser sees a space in place of a byte order mark: offsets agree.
  const plain = ' '.repeat(bomLength(text)) + text.slice(bomLength(text));
  const edits = value === undefined ? removing(root, parts) : setting(plain, root, parts, value);
  return text.slice(0, bomLength(text)) + applyEdits(plain, edits).slice(bomLength(text));
}
