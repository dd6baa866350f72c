import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editPlan } from './edit.ts';
import { pointerOf, pointerParts } from './fault.ts';
import { readPlan } from './read.ts';

const contract = readFileSync(new URL('contract.plan.json', import.meta.url), 'utf8');
const seed = { seed: 20_270_912, numRuns: 200 };

/** Every pointer of a value with the value there, the root left out. */
function leaves(value: unknown, path: readonly (string | number)[] = []): [pointer: string, value: unknown][] {
  const own: [string, unknown][] = path.length === 0 ? [] : [[pointerOf(path), value]];
  if (typeof value !== 'object' || value === null) return own;
  const entries: (readonly [string | number, unknown])[] = Array.isArray(value)
    ? value.map((one: unknown, index) => [index, one] as const)
    : Object.entries(value);
  return [...own, ...entries.flatMap(([key, one]) => leaves(one, [...path, key]))];
}

const at = (text: string, pointer: string): unknown =>
  pointerParts(pointer).reduce<unknown>(
    (value, part) => (value as { readonly [key: string]: unknown } | undefined)?.[part],
    JSON.parse(text.replace(/^\uFEFF/u, '')),
  );

/** The contract's plan as other editors would write it. */
const spellings = [
  contract,
  contract.replaceAll('\n', '\r\n'),
  contract.replace(/^ +/gmu, (spaces) => '\t'.repeat(spaces.length / 2)),
  `\uFEFF${contract}`,
  JSON.stringify(JSON.parse(contract)),
  JSON.stringify(JSON.parse(contract), null, 4),
].map((text) =>
  text
    .replaceAll('0.40', '0.4')
    .replaceAll('-150.0,', '-150,')
    .replaceAll('-48.0,', '-48,')
    .replaceAll('-48.0]', '-48]'),
);

describe('an edit', () => {
  test('changes only its own bytes', () => {
    expect(editPlan(contract, '/stations/0/at', [-150.06, -48.02])).toBe(
      contract.replace('"at": [-150.05, -48.02],\n      "side"', '"at": [-150.06, -48.02],\n      "side"'),
    );
    expect(editPlan(contract, '/name', 'Round "Ember"')).toBe(
      contract.replace('"Round Ember Island"', '"Round \\"Ember\\""'),
    );
  });

  test('of a value to what it already is changes nothing, however it is spelled', () => {
    for (const [pointer, value] of leaves(JSON.parse(contract)))
      expect(editPlan(contract, pointer, value), pointer).toBe(contract);
  });

  test('adds a key in the manner of its neighbours', () => {
    const text = '{\r\n\t"a": {\r\n\t\t"b": 1\r\n\t},\r\n\t"c": { "d": 2 },\r\n\t"e": [],\r\n\t"f": {}\r\n}\r\n';
    expect(editPlan(text, '/a/at', [1, 2])).toBe(text.replace('"b": 1', '"b": 1,\r\n\t\t"at": [1, 2]'));
    expect(editPlan(text, '/c/at', [1, 2])).toBe(text.replace('"d": 2', '"d": 2, "at": [1, 2]'));
    expect(editPlan(text, '/e/0', { id: 's' })).toBe(
      text.replace('[]', '[\r\n\t\t{\r\n\t\t\t"id": "s"\r\n\t\t}\r\n\t]'),
    );
    expect(editPlan(text, '/f/x/y', true)).toBe(
      text.replace('{}', '{\r\n\t\t"x": {\r\n\t\t\t"y": true\r\n\t\t}\r\n\t}'),
    );
    expect(editPlan('{"a":[1],"b":{}}', '/b/c', 1)).toBe('{"a":[1],"b":{ "c": 1 }}');
    expect(editPlan('{"a":[1]}', '/a/-', 2)).toBe('{"a":[1, 2]}');
  });

  test('removes a key with its comma and nothing else', () => {
    expect(editPlan('{\n  "a": 1,\n  "b": 2,\n  "c": 3\n}', '/b', undefined)).toBe('{\n  "a": 1,\n  "c": 3\n}');
    expect(editPlan('{ "a": 1, "b": 2 }', '/a', undefined)).toBe('{ "b": 2 }');
    expect(editPlan('{ "a": 1, "b": 2 }', '/b', undefined)).toBe('{ "a": 1 }');
    expect(editPlan('{ "a": [ { "b": 1 } ] }', '/a/0', undefined)).toBe('{ "a": [] }');
    expect(editPlan('{ "a": 1 }', '/nothing', undefined)).toBe('{ "a": 1 }');
  });

  test('reads pointers as RFC 6901 has them', () => {
    // RFC 6901, section 5: "/a~1b" is the key "a/b", "/m~0n" the key "m~n", "/" the empty key.
    expect(editPlan('{"a/b": 1, "m~n": 8, "": 0}', '/a~1b', 2)).toBe('{"a/b": 2, "m~n": 8, "": 0}');
    expect(editPlan('{"a/b": 1, "m~n": 8, "": 0}', '/m~0n', 9)).toBe('{"a/b": 1, "m~n": 9, "": 0}');
    expect(editPlan('{"a/b": 1, "m~n": 8, "": 0}', '/', 5)).toBe('{"a/b": 1, "m~n": 8, "": 5}');
  });

  test.each([
    ['{"a":[]}', '/a/3'],
    ['{"a":[]}', '/a/x'],
    ['{"a":1}', '/a/b'],
  ])('of %s at %s, which has no place, is an error of the program', (text, pointer) => {
    expect(() => editPlan(text, pointer, 1)).toThrow(RangeError);
  });

  test('needs strict JSON', () => {
    expect(() => editPlan('{ "a": 1, }', '/a', 2)).toThrow('strict JSON');
  });
});

describe('properties of edits', () => {
  const anyPlan = fc.constantFrom(...spellings);
  const value = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => x + 0),
    fc.string(),
    fc.boolean(),
    fc.constant(null),
  );
  const pointers = leaves(JSON.parse(contract));

  test('setting a plain value and setting it back gives the original bytes', () => {
    const plain = pointers.filter(([, old]) => typeof old !== 'object').map(([pointer]) => pointer);
    fc.assert(
      fc.property(anyPlan, fc.constantFrom(...plain), value, (text, pointer, next) => {
        const edited = editPlan(text, pointer, next);
        expect(at(edited, pointer)).toEqual(next);
        expect(editPlan(edited, pointer, at(text, pointer))).toBe(text);
      }),
      seed,
    );
  });

  test('moving a pin and moving it back gives the original bytes', () => {
    const pins = pointers
      .map(([pointer]) => pointer)
      .filter((pointer) => pointer.endsWith('/at') && pointer !== '/supplies/resupply/at');
    fc.assert(
      fc.property(
        anyPlan,
        fc.constantFrom(...pins),
        fc.tuple(fc.integer({ min: -180, max: 180 }), fc.integer({ min: -90, max: 90 })),
        (text, pointer, pin) => {
          const edited = editPlan(text, pointer, pin);
          expect(at(edited, pointer)).toEqual(pin);
          expect(readPlan(edited, 'p').ok).toBe(true);
          expect(editPlan(edited, pointer, at(text, pointer))).toBe(text);
        },
      ),
      seed,
    );
  });

  test('adding a key and removing it gives the original bytes', () => {
    const objects = pointers
      .filter(([, old]) => typeof old === 'object' && !Array.isArray(old))
      .map(([pointer]) => pointer);
    fc.assert(
      fc.property(anyPlan, fc.constantFrom(...objects), fc.jsonValue(), (text, pointer, next) => {
        const edited = editPlan(text, `${pointer}/added`, next);
        expect(at(edited, `${pointer}/added`)).toEqual(JSON.parse(JSON.stringify(next)));
        expect(editPlan(edited, `${pointer}/added`, undefined)).toBe(text);
      }),
      seed,
    );
  });

  test('whatever is set reads back, and all before and after it stays', () => {
    fc.assert(
      fc.property(
        anyPlan,
        fc.constantFrom(...pointers.map(([pointer]) => pointer)),
        fc.jsonValue(),
        (text, pointer, next) => {
          const expected = JSON.parse(JSON.stringify(next)) as unknown;
          const edited = editPlan(text, pointer, expected);
          expect(at(edited, pointer)).toEqual(expected);
          const others = pointers.filter(([other]) => !other.startsWith(pointer) && !pointer.startsWith(`${other}/`));
          for (const [other, old] of others) expect(at(edited, other)).toEqual(old);
        },
      ),
      { ...seed, numRuns: 40 },
    );
  });

  test('an edit never mixes line endings or kinds of indentation', () => {
    const edited = editPlan(spellings[1]!, '/stations/-', { id: 'new', at: [1, 2], practice: { kerb: 1 } });
    expect(edited.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
    const tabbed = editPlan(spellings[2]!, '/stations/-', { id: 'new', at: [1, 2], practice: { kerb: 1 } });
    expect(tabbed).toContain(
      '\n\t\t{\n\t\t\t"id": "new",\n\t\t\t"at": [1, 2],\n\t\t\t"practice": {\n\t\t\t\t"kerb": 1\n\t\t\t}\n\t\t}',
    );
  });

  test('taking the only entry away leaves an empty list or object, and what is not there changes nothing', () => {
    expect(editPlan('{ "a": { "b": 1 }, "c": [2] }', '/a/b', undefined)).toBe('{ "a": {}, "c": [2] }');
    expect(editPlan('{ "a": { "b": 1 }, "c": [2] }', '/c/0', undefined)).toBe('{ "a": { "b": 1 }, "c": [] }');
    for (const pointer of ['/d', '/d/e', '/c/1', '/a/b/c'])
      expect(editPlan('{ "a": { "b": 1 }, "c": [2] }', pointer, undefined)).toBe('{ "a": { "b": 1 }, "c": [2] }');
  });

  test('the whole plan may be replaced, but not removed', () => {
    expect(editPlan('{ "a": 1 }', '', { a: 2 })).toBe('{ "a": 2 }');
    expect(() => editPlan('{ "a": 1 }', '', undefined)).toThrow('the whole plan cannot be removed');
  });

  test('a value has no place inside a text, or past the end of a list', () => {
    expect(() => editPlan('{ "a": "b" }', '/a/c', 1)).toThrow('no place for c in string of 0');
    expect(() => editPlan('{ "a": [1] }', '/a/2', 1)).toThrow('no place for 2 in array of 1');
  });
});
