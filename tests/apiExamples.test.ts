/** Every exported function of a face has an example in its doc comment, and each comes to what it states. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type Example,
  MODULES,
  coreSources,
  examplesIn,
  moduleOf,
  statedIn,
  typeFaults,
  valuesOf,
  writeModules,
  wrongIn,
} from './support/apiExamples.ts';
import { CORE } from './support/build.ts';
import { FACES } from './support/house.ts';
import { difference, literalOf } from './support/stated.ts';

describe('the finder of examples', () => {
  const text = [
    '/** A file. */',
    "import './x.ts';",
    '',
    '/**',
    ' * Doubles.',
    ' * @example',
    ' * ```ts',
    " * import { a } from 'b';",
    ' * a(1); // → 2',
    ' * ```',
    ' *',
    ' * @example',
    ' * none',
    ' */',
    'export function a() {}',
  ].join('\n');

  it('tells the code, the line and the function of each, and one that has no code', () => {
    expect(examplesIn(text, 'a.ts')).toEqual([
      { file: 'a.ts', name: 'a', line: 8, code: "import { a } from 'b';\na(1); // → 2" },
      { file: 'a.ts', name: 'a', line: 14, code: '' },
    ]);
  });

  it('finds what is stated of an expression or a constant, over several lines too, and keeps lines in place', () => {
    const code = "const a = [\n  1,\n]; // → [1]\na.map(\n  String,\n); // → ['1']\na.length;\n";
    expect(statedIn(code).map(({ line, text: stated }) => [line, stated])).toEqual([
      [3, '[1]'],
      [6, "['1']"],
    ]);
    expect(moduleOf(code).split('\n').slice(1, 8)).toEqual([
      'const a = [',
      '  1,',
      ']; said.push({ line: 3, value: a, stated: "[1]" }); // → [1]',
      'said.push({ line: 6, value: (a.map(',
      '  String,',
      ")), stated: \"['1']\" }); // → ['1']",
      'a.length;',
    ]);
  });

  it.each([
    ['const = 1; // → 1', 'no TypeScript'],
    ['// → 1', 'behind no statement'],
    ['f(1); g( // → 1\n);', 'behind no statement'],
    ['f(1); // → about 3', 'not one JavaScript expression'],
    ['if (a) b(); // → 1', 'behind a IfStatement'],
  ])('refuses %j', (code, message) => expect(() => moduleOf(code)).toThrow(message));
});

describe('what is stated', () => {
  it.each<[string, unknown]>([
    ['2.50', 2.5049],
    ['-2.5', -2.549],
    ['3', 3],
    ['1e3', 1400],
    ['NaN', NaN],
    ['Infinity', Infinity],
    ['undefined', undefined],
    ['null', null],
    ["'a'", 'a'],
    ['`a`', 'a'],
    ['true', true],
    ['[1, 2.0]', new Float64Array([1, 2.04])],
    ['{ a: [1], "b": null }', { a: [1], b: null, c: undefined }],
    ['{ a: undefined }', {}],
    ['[]', []],
  ])('%s agrees with %o', (stated, value) => expect(difference(literalOf(stated), value)).toBeNull());

  it.each<[string, unknown, string]>([
    ['2.50', 2.506, 'the result is 2.506'],
    ['3', '3', 'the result is "3"'],
    ['1', NaN, 'the result is NaN'],
    ['null', undefined, 'the result is undefined'],
    ["'a'", 'b', 'the result is "b"'],
    ['[1, 2]', [1, 3], '[1] is 3'],
    ['[1]', [1, 2], 'the result is [1,2]'],
    ['[1]', { 0: 1 }, 'the result is {"0":1}'],
    ['{ a: { b: 1 } }', { a: { b: 2 } }, '.a.b is 2'],
    ['{ a: 1 }', { a: 1, b: 2 }, '.b is 2 and is not stated'],
    ['{ a: 1 }', {}, '.a is undefined'],
    ['{}', [], 'the result is []'],
    ['{}', null, 'the result is null'],
  ])('%s differs from %o', (stated, value, says) => expect(difference(literalOf(stated), value)).toBe(says));

  it('is a literal, nothing that is computed', () => {
    for (const text of ['1 + 1', 'a', '[...a]', '{ [a]: 1 }', '`${a}`'])
      expect(() => difference(literalOf(text), text.startsWith('[') ? [1] : {})).toThrow(/stated/u);
  });
});

describe('the examples of core', () => {
  const sources = coreSources();
  const examples = [...sources].flatMap(([file, text]) => examplesIn(text, file));
  const label = ({ file, name, line }: Example): string => `${file}:${line} ${name}`;
  beforeAll(() => writeModules(examples));
  afterAll(() => rmSync(MODULES, { recursive: true, force: true }));

  it('are there for every function of every face', async () => {
    const documented = new Set(examples.map(({ file, name }) => `${file} ${name}`));
    const lacking = await Promise.all(
      FACES.map(async (face) => {
        const module = (await import(join(CORE, 'src', face))) as Readonly<Record<string, unknown>>;
        const listed = valuesOf(face);
        expect(listed.map(({ name }) => name).sort()).toEqual(Object.keys(module).sort());
        return listed
          .filter(({ name, file }) => typeof module[name] === 'function' && !documented.has(`${file} ${name}`))
          .map(({ name, file }) => `${face}: ${name} (${file})`);
      }),
    );
    expect(lacking.flat()).toEqual([]);
  });

  it('are all found, wherever they stand', () => {
    const marks = [...sources.values()].reduce((sum, text) => sum + text.split('@example').length - 1, 0);
    expect(examples).toHaveLength(marks);
    expect(marks).toBeGreaterThan(100);
  });

  it('import from a face, and each states a result', () => {
    expect(
      examples.filter(({ code }) => !/^import .* from '@halfcup\/core(?:\/\w+)?';$/mu.test(code)).map(label),
    ).toEqual([]);
    expect(examples.filter(({ code }) => statedIn(code).length === 0).map(label)).toEqual([]);
  });

  it('type-check strictly', () => expect(typeFaults(examples)).toEqual([]));

  it.each(examples.map((example, k) => ({ title: label(example), example, k })))('$title', async ({ example, k }) =>
    expect(await wrongIn(example, k)).toEqual([]),
  );
});
