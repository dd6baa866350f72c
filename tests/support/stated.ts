/**
 * Holds a value against what a comment of an example states of it: `2414.016`, `['left', 'right']`, `{ at: [-30.1, 12], end: null }`.
 * Numbers agree within half a unit of the last digit written; typed arrays are lists; a key that holds `undefined` is not there.
 */
import { type ESTree, parseSync } from 'vite';

/** A literal of JavaScript as a tree; throws on what is none. */
export function literalOf(text: string): ESTree.Expression {
  const { program, errors } = parseSync('stated.js', `(${text})`);
  const [statement] = program.body;
  if (errors.length > 0 || program.body.length !== 1 || statement?.type !== 'ExpressionStatement')
    throw new Error(`"${text}" is not one JavaScript expression`);
  return bare(statement.expression);
}

const bare = (node: ESTree.Expression): ESTree.Expression =>
  node.type === 'ParenthesizedExpression' ? bare(node.expression) : node;

/** Where and how a value differs from a literal, or null where it agrees. */
export function difference(literal: ESTree.Expression, value: unknown, path = ''): string | null {
  if (literal.type === 'ArrayExpression') return listDifference(literal, value, path);
  if (literal.type === 'ObjectExpression') return recordDifference(literal, value, path);
  const stated = plain(literal);
  const agrees =
    typeof stated.value === 'number' && typeof value === 'number'
      ? Math.abs(stated.value - value) <= stated.slack || Object.is(stated.value, value)
      : stated.value === value;
  return agrees ? null : `${path === '' ? 'the result' : path} is ${shown(value)}`;
}

const shown = (value: unknown): string =>
  typeof value === 'number' || typeof value === 'function' || value === undefined
    ? String(value)
    : JSON.stringify(value);

function listDifference({ elements }: ESTree.ArrayExpression, value: unknown, path: string): string | null {
  const list = ArrayBuffer.isView(value) ? Array.from(value as unknown as ArrayLike<unknown>) : value;
  if (!Array.isArray(list) || list.length !== elements.length)
    return `${path === '' ? 'the result' : path} is ${shown(list)}`;
  return first(elements.map((element, k) => difference(expressionOf(element), list[k], `${path}[${k}]`)));
}

function recordDifference({ properties }: ESTree.ObjectExpression, value: unknown, path: string): string | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return `${path === '' ? 'the result' : path} is ${shown(value)}`;
  const record = value as Readonly<Record<string, unknown>>;
  const stated = new Map(properties.map((property) => [keyOf(property), property as ESTree.ObjectProperty]));
  const more = Object.keys(record).find((key) => record[key] !== undefined && !stated.has(key));
  if (more !== undefined) return `${path}.${more} is ${shown(record[more])} and is not stated`;
  return first(
    [...stated].map(([key, property]) => difference(expressionOf(property.value), record[key], `${path}.${key}`)),
  );
}

const first = (found: readonly (string | null)[]): string | null => found.find((one) => one !== null) ?? null;

function keyOf(property: ESTree.ObjectPropertyKind): string {
  if (property.type !== 'Property' || property.computed) throw new Error('a stated record has plain keys only');
  return property.key.type === 'Identifier' ? property.key.name : (property.key as ESTree.StringLiteral).value;
}

function expressionOf(node: ESTree.Node | null): ESTree.Expression {
  if (node === null || node.type === 'SpreadElement') throw new Error('a stated list has neither gaps nor spreads');
  return bare(node as ESTree.Expression);
}

/** A value without parts, and by how much a number may differ from it. */
function plain(node: ESTree.Expression): { readonly value: unknown; readonly slack: number } {
  if (node.type === 'Literal' && typeof node.value !== 'object')
    return { value: node.value, slack: typeof node.value === 'number' ? halfUnit(node.raw ?? '') : 0 };
  if (node.type === 'Literal' && node.raw === 'null') return { value: null, slack: 0 };
  if (node.type === 'UnaryExpression' && node.operator === '-') {
    const { value, slack } = plain(bare(node.argument));
    return { value: -(value as number), slack };
  }
  if (node.type === 'TemplateLiteral' && node.expressions.length === 0)
    return { value: node.quasis[0]!.value.cooked, slack: 0 };
  if (node.type === 'Identifier' && Object.hasOwn(NAMED, node.name)) return { value: NAMED[node.name], slack: 0 };
  throw new Error(`a stated result is a literal, not a ${node.type}`);
}

const NAMED: Readonly<Record<string, unknown>> = { undefined, NaN, Infinity };

/** Half a unit of the last digit of a number as it is written, with room for rounding. */
function halfUnit(raw: string): number {
  const [digits = '', exponent = '0'] = raw.toLowerCase().replaceAll('_', '').split('e');
  const decimals = digits.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - decimals) * (1 + 1e-9);
}
