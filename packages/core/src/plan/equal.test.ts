import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { equal } from './equal.ts';
import { tries } from '../testing/tries.ts';

const TRIES = tries(500);
const seeded = { seed: 20_270_912, numRuns: TRIES };

it('finds what was read twice from one text equal', () => {
  fc.assert(
    fc.property(fc.json(), (text) => equal(JSON.parse(text), JSON.parse(text))),
    seeded,
  );
});

it('finds two values equal that are the same text as JSON, and no others', () => {
  let same = 0;
  const small = fc.jsonValue({ maxDepth: 2 });
  const pair = fc.oneof(
    fc.tuple(small, small),
    fc.tuple(fc.subarray([1, 2]), fc.subarray([1, 2])),
    fc.tuple(fc.dictionary(fc.constantFrom('a', 'b'), fc.nat(1)), fc.dictionary(fc.constantFrom('a', 'b'), fc.nat(1))),
  );
  // JSON has no −0.
  const read = (value: unknown): unknown => JSON.parse(JSON.stringify(value)) as unknown;
  fc.assert(
    fc.property(pair, ([one, other]) => {
      const expected = JSON.stringify(one) === JSON.stringify(other);
      same += Number(expected);
      expect(equal(read(one), read(other))).toBe(expected);
    }),
    seeded,
  );
  expect(same).toBeGreaterThan(TRIES / 10);
});

it.each([
  [[], {}],
  [{ a: undefined }, {}],
  [
    { a: 1, b: 2 },
    { b: 2, a: 1 },
  ],
  [
    [1, 2],
    [1, 2, 3],
  ],
  [null, {}],
  [0, -0],
  ['1', 1],
])('tells %j from %j', (one, other) => {
  expect(equal(one, other)).toBe(false);
  expect(equal(other, one)).toBe(false);
});

it('takes a number that is none for itself', () => {
  expect(equal([NaN], [NaN])).toBe(true);
});
