/**
 * The examples in the doc comments of core: found, turned into modules that note what comes out, and type-checked.
 * A line that ends in `// → X` states that the statement before it, or the constant it declares, has the value X.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ESTree, parseSync } from 'vite';
import { CORE, ROOT } from './build.ts';
import { difference, literalOf } from './stated.ts';

export interface Example {
  /** From `packages/core/src`, with `/`. */
  readonly file: string;
  /** What the comment stands before, or '' for a comment of a file. */
  readonly name: string;
  /** Line of the file, from 1, on which the code begins. */
  readonly line: number;
  readonly code: string;
}

/** What a statement of an example came to: the line of the example from 1, the value, and what is stated of it. */
interface Said {
  readonly line: number;
  readonly value: unknown;
  readonly stated: string;
}

const SRC = join(CORE, 'src');
/** Not below `node_modules`, where vitest takes a module as plain JavaScript; one a process, as runs may stand side by side. */
export const MODULES: string = join(ROOT, `.halfcup-tmp/api-examples-${process.pid}`);

/** Every `@example` of a source, one that has no block of code as an example without code. */
export function examplesIn(text: string, file: string): Example[] {
  const comments = text.matchAll(
    /^\/\*\*(?:[^*]|\*(?!\/))*\*\/(?:\s*export (?:async )?(?:function\*?|const|interface|type) (?<name>\w+))?/gmu,
  );
  return [...comments].flatMap((comment) => {
    const [head = '', ...parts] = comment[0].split(/^ \* @example\b.*$/mu);
    let line = text.slice(0, comment.index).split('\n').length + head.split('\n').length;
    return parts.map((part) => {
      const start = line;
      line += part.split('\n').length - 1;
      const block = /^\n \* ```ts\n(?<lines>(?: \*.*\n)*?) \* ```$/mu.exec(part)?.groups?.['lines'] ?? '';
      return {
        file,
        name: comment.groups?.['name'] ?? '',
        line: start + 1,
        code: block.replaceAll(/^ \* ?/gmu, '').trimEnd(),
      };
    });
  });
}

/** Core's sources by their paths from `packages/core/src`. */
export function coreSources(): ReadonlyMap<string, string> {
  const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).map((file) => file.replaceAll('\\', '/'));
  return new Map(
    files
      .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
      .sort()
      .map((file) => [file, readFileSync(join(SRC, file), 'utf8')]),
  );
}

/** Values that a face re-exports by name, each with the file that it comes from. */
export function valuesOf(face: string): { readonly name: string; readonly file: string }[] {
  const { program } = parseSync(face, readFileSync(join(SRC, face), 'utf8'));
  return program.body.flatMap((statement) => {
    if (statement.type !== 'ExportNamedDeclaration' || statement.source === null || statement.exportKind === 'type')
      return [];
    const file = statement.source.value.replace('./', '');
    return statement.specifiers
      .filter(({ exportKind }) => exportKind !== 'type')
      .map(({ exported }) => ({ name: (exported as ESTree.IdentifierName).name, file }));
  });
}

/** A statement that a comment states something of: from the start of the program, where it ends, and what is stated. */
interface Stated {
  readonly statement: ESTree.Statement | ESTree.Directive;
  readonly line: number;
  readonly text: string;
}

/** What an example states; throws where it is no TypeScript or a comment states something of no statement. */
export function statedIn(code: string): Stated[] {
  const { program, comments, errors } = parseSync('example.ts', code);
  if (errors.length > 0) throw new Error(`the example is no TypeScript: ${errors[0]!.message}`);
  return comments
    .filter(({ type, value }) => type === 'Line' && value.startsWith(' → '))
    .map((comment) => {
      const statement = program.body.findLast(({ end }) => end <= comment.start);
      const text = comment.value.slice(3).trim();
      if (statement === undefined || code.slice(statement.end, comment.start).trim() !== '')
        throw new Error(`"→ ${text}" stands behind no statement`);
      literalOf(text);
      return { statement, line: code.slice(0, comment.start).split('\n').length, text };
    });
}

/** A module whose `said` holds what the statements came to. Each line of the example is the next line of the module. */
export function moduleOf(code: string): string {
  let module = code;
  for (const { statement, line, text } of statedIn(code).reverse()) {
    const noted = (value: string): string =>
      `said.push({ line: ${line}, value: ${value}, stated: ${JSON.stringify(text)} });`;
    const declared = statement.type === 'VariableDeclaration' ? statement.declarations.at(-1)!.id : null;
    if (declared?.type === 'Identifier')
      module = `${module.slice(0, statement.end)} ${noted(declared.name)}${module.slice(statement.end)}`;
    else if (statement.type === 'ExpressionStatement') {
      const { start, end } = statement.expression;
      module = `${module.slice(0, statement.start)}${noted(`(${code.slice(start, end)})`)}${module.slice(statement.end)}`;
    } else throw new Error(`"→ ${text}" stands behind a ${statement.type}; expected an expression or a constant`);
  }
  return `export const said: { line: number; value: unknown; stated: string }[] = [];\n${module}\nexport {};\n`;
}

/** Writes the modules of examples, each under the number it has in the list. */
export function writeModules(examples: readonly Example[]): void {
  mkdirSync(MODULES, { recursive: true });
  const compilerOptions = { types: [], lib: ['ES2023'] };
  writeFileSync(
    join(MODULES, 'tsconfig.json'),
    JSON.stringify({ extends: '../../tests/tsconfig.json', compilerOptions, include: ['*.ts'] }),
  );
  examples.forEach(({ code }, k) => writeFileSync(join(MODULES, `example${k}.ts`), moduleOf(code)));
}

/** What the compiler says of the modules written, told by file and line of the sources; empty where they compile. */
export function typeFaults(examples: readonly Example[]): string[] {
  const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
  const { status, stdout } = spawnSync(process.execPath, [tsc, '-p', MODULES, '--pretty', 'false'], {
    cwd: MODULES,
    encoding: 'utf8',
  });
  if (status === 0) return [];
  return stdout
    .trim()
    .split('\n')
    .map((text) =>
      text.replace(/^example(\d+)\.ts\((\d+),\d+\)/u, (_, k: string, line: string) =>
        placeIn(examples[Number(k)]!, Number(line) - 1),
      ),
    );
}

const placeIn = ({ file, line }: Example, own: number): string => `packages/core/src/${file}:${line + own - 1}`;

/** Runs a module that was written; a line for each statement that came to something else than is stated. */
export async function wrongIn(example: Example, k: number): Promise<string[]> {
  const { said } = (await import(join(MODULES, `example${k}.ts`))) as { readonly said: readonly Said[] };
  return said.flatMap(({ line, value, stated }) => {
    const differs = difference(literalOf(stated), value);
    return differs === null ? [] : [`${placeIn(example, line)}: stated is ${stated}; ${differs}`];
  });
}
