/**
 * Measures functions by the syntax tree of their source: lines of code of the body, without comments and blank lines,
 * those of functions inside it included. Works on texts by path, so that it can be tried on invented ones.
 */
import { parseSync } from 'vite';
import type { Complaint, Tree } from './house.ts';

/** Where a function stands and how long it is. */
export interface Measured {
  readonly path: string;
  /** Its own name, or that of the variable, the property or the call that it is given to. */
  readonly name: string;
  /** Of its first line, from 1. */
  readonly line: number;
  readonly lines: number;
}

/** What is looked at of any node of the tree. */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Partial<Node>).type === 'string';

const childrenOf = (node: Node): Node[] => Object.values(node).flat().filter(isNode);

const isFunction = ({ type, body }: Node): boolean =>
  ['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression'].includes(type) && isNode(body);

const nameOf = (node: unknown): string | undefined => {
  if (!isNode(node)) return undefined;
  if (node.type === 'Identifier') return node['name'] as string;
  if (node.type === 'Literal') return String(node['value']);
  return node.type === 'MemberExpression' ? nameOf(node['property']) : undefined;
};

/** The name by which a reader finds a function. */
function calledBy(node: Node, parents: readonly Node[]): string {
  const own = nameOf(node['id']);
  if (own !== undefined) return own;
  for (const parent of parents.toReversed()) {
    const name = nameOf(parent['id']) ?? nameOf(parent['key']) ?? nameOf(parent['callee']);
    if (name !== undefined) return name;
  }
  return 'a function without a name';
}

/** The text with every comment made blank; lines stay where they are. */
const withoutComments = (text: string, comments: readonly { readonly start: number; readonly end: number }[]): string =>
  comments.reduce(
    (code, { start, end }) =>
      code.slice(0, start) + code.slice(start, end).replaceAll(/[^\n]/gu, ' ') + code.slice(end),
    text,
  );

const linesIn = (code: string): number => code.split('\n').filter((line) => line.trim() !== '').length;

const withoutParentheses = (node: Node): Node =>
  node.type === 'ParenthesizedExpression' ? withoutParentheses(node['expression'] as Node) : node;

/** Every function of a source. A source that cannot be parsed throws: it is none. */
export function functionsOf(path: string, text: string): Measured[] {
  const { program, comments, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path} cannot be parsed: ${errors[0]!.message}`);
  const code = withoutComments(text, comments);
  const found: Measured[] = [];
  const visit = (node: Node, parents: readonly Node[]): void => {
    if (isFunction(node)) {
      const body = withoutParentheses(node['body'] as Node);
      const inside =
        body.type === 'BlockStatement' ? code.slice(body.start + 1, body.end - 1) : code.slice(body.start, body.end);
      const line = text.slice(0, node.start).split('\n').length;
      found.push({ path, name: calledBy(node, parents), line, lines: linesIn(inside) });
    }
    for (const child of childrenOf(node)) visit(child, [...parents, node]);
  };
  visit(program as unknown as Node, []);
  return found;
}

/** Functions that have grown too long, but for those of `exceptions`, given as `path: name` with why; and exceptions that are none any more. */
export function longFunctions(
  tree: Tree,
  most: number,
  exceptions: Readonly<Record<string, string>> = {},
): Complaint[] {
  const long = [...tree]
    .filter(([path]) => !/\.test\.tsx?$/u.test(path))
    .flatMap(([path, text]) => functionsOf(path, text))
    .filter(({ lines }) => lines > most);
  const known = ({ path, name }: Measured): boolean => Object.hasOwn(exceptions, `${path}: ${name}`);
  return [
    ...long
      .filter((one) => !known(one))
      .map(({ path, name, line, lines }) => `${path}:${line} ${name} has ${lines} lines of code; at most ${most}`),
    ...Object.keys(exceptions)
      .filter((key) => !long.some(({ path, name }) => `${path}: ${name}` === key))
      .map((key) => `${key} is no longer an exception`),
  ];
}
