import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { findingLine } from '../finding.ts';
import { type JsonFault, readJson } from './json.ts';
import { readPlan } from './read.ts';
import { layVariant, validateBare, validatePlan } from './validate.ts';
import { withVariant } from './variant.ts';
import { tries } from '../testing/tries.ts';

const contract = readFileSync(new URL('contract.plan.json', import.meta.url), 'utf8');
const runs = { seed: 20_270_912, numRuns: tries(1000) };

const scraps = [
  '"',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '-',
  '1e999',
  '0',
  'null',
  'true',
  '\\',
  '//',
  '/*',
  '\uFEFF',
  '\u0000',
  '\uD800',
  'é',
  'NaN',
  '-1',
  '"at"',
  '[]',
  '{}',
  '""',
  '\n',
  '01',
  '+1',
  '.5',
  '"\\u12"',
  "'",
];
/** A cut, a scrap put in or in place, or a stretch said twice. */
const mutation = fc.record({
  at: fc.nat(contract.length),
  length: fc.nat(40),
  scrap: fc.oneof(fc.constantFrom(...scraps), fc.string({ maxLength: 6 })),
  how: fc.constantFrom('cut', 'insert', 'replace', 'twice', 'end'),
});
const mutate = (
  text: string,
  { at, length, scrap, how }: { at: number; length: number; scrap: string; how: string },
): string => {
  const [before, middle, after] = [text.slice(0, at), text.slice(at, at + length), text.slice(at + length)];
  if (how === 'end') return before;
  return (
    before +
    (how === 'cut' ? '' : how === 'insert' ? scrap + middle : how === 'replace' ? scrap : middle + middle) +
    after
  );
};

const values = fc.oneof(
  fc.constantFrom<unknown>(null, true, -1, 1e308, '', 'x', '5 km', '-5 km', 'NaN', [], {}, [[]], [1, 2, 3], [0, 100], {
    at: 1,
  }),
  fc.jsonValue(),
);

function answers(text: string): void {
  const read = readPlan(text, 'plan.json');
  const lines = text.split(/\r\n|\n|\r/u);
  if (read.ok) for (const { name } of read.value.plan.variants) expect(withVariant(read.value, name).ok).toBe(true);
  else expect(read.findings.length).toBeGreaterThan(0);
  for (const finding of read.findings) {
    const { line = 0, column = 0 } = finding.where;
    expect(line).toBeGreaterThan(0);
    expect(column).toBeGreaterThan(0);
    expect(line).toBeLessThanOrEqual(lines.length);
    expect(column).toBeLessThanOrEqual((lines[line - 1]?.length ?? 0) + 1);
    // A scrap that was put in may be quoted back; the program's own words are neither of these.
    expect(findingLine(finding).replaceAll(/"(?:[^"\\]|\\.)*"|“[^”]*”/gu, '')).not.toMatch(
      /\bNaN\b|undefined|\[object|Invalid input/u,
    );
  }
}

test('a thousand mutations of a plan text each give a plan or findings with a place in the text', () => {
  fc.assert(
    fc.property(fc.array(mutation, { minLength: 1, maxLength: 3 }), (mutations) =>
      answers(mutations.reduce(mutate, contract)),
    ),
    runs,
  );
});

test('any value in place of any other gives a plan or findings with a place in the text', () => {
  const replaced = (value: unknown, skip: { left: number }, next: unknown): unknown => {
    if (skip.left-- === 0) return next;
    if (Array.isArray(value)) return value.map((one: unknown) => replaced(one, skip, next));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, replaced(one, skip, next)]));
  };
  const size = contract.match(/[[{:,]/gu)?.length ?? 0;
  fc.assert(
    fc.property(fc.nat(size), values, (index, next) =>
      answers(JSON.stringify(replaced(JSON.parse(contract), { left: index }, next), null, 1)),
    ),
    runs,
  );
});

test("what counts as JSON is what the language's own parser takes, duplicate keys, depth and halves of characters aside", () => {
  fc.assert(
    fc.property(fc.array(mutation, { minLength: 1, maxLength: 2 }), (mutations) => {
      const text = mutations.reduce(mutate, contract);
      const read = readJson(text);
      const isOurs = (fault: JsonFault): boolean =>
        fault.code === 'plan-duplicate-key' || fault.problem.problem === 'half';
      if (!read.ok && read.faults.every(isOurs)) return;
      const strict = (): unknown => JSON.parse(text.replace(/^\uFEFF/u, ''));
      if (read.ok) expect(read.value.value).toEqual(strict());
      else expect(strict).toThrow(SyntaxError);
    }),
    runs,
  );
});

test('a key that a text has twice is found however it is written and wherever it stands', () => {
  const keys = fc.constantFrom('a', 'b', ':', '"', '\\', 'a":1,"b', '{', '__proto__');
  const escaped = (key: string): string =>
    `"${Array.from(key, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`).join('')}"`;
  const { object } = fc.letrec<{ object: { text: string; twice: boolean } }>((tie) => ({
    object: fc
      .array(fc.tuple(keys, fc.boolean(), fc.oneof({ withCrossShrink: true }, fc.constant(null), tie('object'))), {
        maxLength: 3,
      })
      .map((entries) => ({
        text: `{${entries
          .map(([key, plain, inside]) => `${plain ? JSON.stringify(key) : escaped(key)} : ${inside?.text ?? '": {"'}`)
          .join(',')}}`,
        twice:
          new Set(entries.map(([key]) => key)).size < entries.length ||
          entries.some(([key, , inside]) => key === '__proto__' || inside?.twice === true),
      })),
  }));
  fc.assert(
    fc.property(object, ({ text, twice }) => {
      const read = readJson(text);
      expect([read.ok, !read.ok && read.faults.every(({ code }) => code === 'plan-duplicate-key')]).toEqual([
        !twice,
        twice,
      ]);
      if (read.ok) expect(read.value.value).toEqual(JSON.parse(text));
    }),
    runs,
  );
});

test('a plan is refused for a variant just where the plan with it laid over is refused', () => {
  const plan = JSON.parse(contract) as { readonly [key: string]: unknown };
  const stations = (plan['stations'] as readonly { readonly id: string }[]).map(({ id }) => id);
  const patch = fc.constantFrom<object>(
    { side: 'left' },
    { side: 'up' },
    { at: [-150.06, -48.03] },
    { at: [-150.06, -148.03] },
    { on: { course: 'full', measure: '6 km', side: 'left' } },
    { on: { course: 'nowhere', measure: '6 km', side: 'left' } },
    { at: [-150.06, -48.03], on: { course: 'full', measure: '6 km', side: 'left' } },
    { races: ['nobody'] },
    { practice: { trashFrom: '300 m' } },
    { practice: { boxEvery: '1 mm' } },
    { passes: [{ race: 'marathon', pass: 0 }] },
    { colour: 'red' },
  );
  const variant = fc.dictionary(fc.constantFrom(...stations, 'nobody'), patch, { minKeys: 1, maxKeys: 3 });
  fc.assert(
    fc.property(variant, (changed) => {
      const value = { ...plan, variants: [{ name: 'v', stations: changed }] };
      const known = Object.keys(changed).every((id) => stations.includes(id));
      expect(validatePlan(value).ok).toBe(known && validateBare(layVariant(value, 0)).ok);
    }),
    runs,
  );
});
