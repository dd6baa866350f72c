/**
 * Every export called with wrong values of the right look: texts for numbers, pairs turned round, NaN, empty lists, a
 * course for its index, keys that are missing. What comes back has no NaN; what is thrown is a sentence of ours; the
 * input, frozen, stays as it was; no call takes long.
 */
import { describe, expect, it } from 'vitest';
import { tries } from '../packages/core/src/testing/tries.ts';
import { generator } from '../packages/core/src/testing/courses.ts';
import { CALLS, COLUMNS, EXPORTED, type GoodCall } from './support/calls.ts';

/** In all, over every export: 20,000 and more in continuous integration. */
const TRIES = tries(1000) * 24;
const EACH = Math.ceil(TRIES / CALLS.size);
/** Milliseconds, where the machine has other work; the slowest good call, a whole `improve`, takes a fifth. */
const LONGEST = 20_000;

/** Words of the engine, not ours. */
const ENGINE =
  /Cannot (?:read|set|destructure|convert|assign|add|delete|mix|access)|is not (?:a function|iterable|defined|a constructor|an object|extensible)|of undefined|Invalid (?:array length|time value|typed array|count|string|Date)|Maximum call|Reduce of empty|must (?:be between|not be|be a)|out of (?:range|bounds)|offset is|Unexpected|Incorrect locale|read only/u;

type Random = () => number;
const pick = <T>(list: readonly T[], random: Random): T => list[Math.floor(random() * list.length)]!;

const isPlainRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !ArrayBuffer.isView(value) && !(value instanceof Map);

const WRONG: readonly unknown[] = [
  undefined,
  null,
  NaN,
  Infinity,
  -1,
  0,
  1.5,
  1e9,
  '',
  'x',
  '60',
  '-17.4',
  true,
  [],
  {},
  [NaN, NaN],
  ['-17.4', '-33.2'],
  [-33.2, -17.4],
  new Map(),
  new Float64Array(0),
  () => undefined,
];

/** What may stand in a value's place: a slip of the pen or of the mind. */
function wrongFor(value: unknown, others: readonly unknown[], random: Random): unknown {
  if (typeof value === 'number' && random() < 0.3) return pick([String(value), NaN, -value, value * 1e3], random);
  if (Array.isArray(value) && random() < 0.4)
    return pick<unknown>([[], value.toReversed(), value.slice(1), [...value, null], value[0]], random);
  if (isPlainRecord(value) && random() < 0.3) return pick([Object.values(value)[0], [value], others[0]], random);
  return random() < 0.2 ? pick(others, random) : pick(WRONG, random);
}

/** A copy with one thing in it wrong, at most `deep` steps down. */
function turned(value: unknown, deep: number, others: readonly unknown[], random: Random): unknown {
  const keys = isPlainRecord(value) ? Object.keys(value) : [];
  if (deep === 0 || keys.length === 0 || Object.getPrototypeOf(value) === null || random() < 0.3)
    return wrongFor(value, others, random);
  const key = pick(keys, random);
  if (Array.isArray(value)) return value.with(Number(key), turned(value[Number(key)], deep - 1, others, random));
  const record = value as Readonly<Record<string, unknown>>;
  const prototype = Object.getPrototypeOf(value) as object | null;
  // What is of a class, such as the index, is taken whole.
  if (prototype !== Object.prototype) return wrongFor(value, others, random);
  if (random() < 0.25) return Object.fromEntries(Object.entries(record).filter(([other]) => other !== key));
  return { ...record, [key]: turned(record[key], deep - 1, others, random) };
}

/** Where in a result there is a NaN: elevations apart, which are NaN where there is none. */
function nanIn(value: unknown, path: string, budget: { left: number }): string | null {
  if (budget.left-- < 0) return null;
  if (typeof value === 'number') return Number.isNaN(value) ? path : null;
  if (typeof value === 'string') return /\bNaN\b|\bundefined\b|\[object/u.test(value) ? `${path}: ${value}` : null;
  if (typeof value !== 'object' || value === null) return null;
  const entries: readonly (readonly [unknown, unknown])[] =
    value instanceof Map
      ? [...(value as ReadonlyMap<unknown, unknown>)]
      : Object.entries(ArrayBuffer.isView(value) ? { ...value } : value);
  for (const [key, one] of entries) {
    if (key === 'ele') continue;
    const found = nanIn(one, `${path}.${String(key)}`, budget);
    if (found !== null) return found;
  }
  return null;
}

/** What is wrong with how a call was answered; `null` where nothing is. */
async function complaint({ call }: GoodCall, args: readonly unknown[]): Promise<string | null> {
  const began = performance.now();
  try {
    // A promise is waited for: what it rejects with is an answer too.
    const result: unknown = await call(...args);
    const nan = nanIn(result, 'result', { left: 20_000 });
    if (nan !== null) return `gives ${nan.slice(0, 200)}`;
  } catch (error) {
    if (!(error instanceof TypeError || error instanceof RangeError)) return `throws ${String(error)}`;
    if (ENGINE.test(error.message)) return `throws from inside: ${error.stack?.split('\n').slice(0, 4).join(' ')}`;
  }
  const took = performance.now() - began;
  return took > LONGEST ? `takes ${Math.round(took)} ms` : null;
}

const shownArgs = (args: readonly unknown[]): string =>
  JSON.stringify(args, (_, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value)
      ? String(value)
      : value === undefined
        ? 'nothing'
        : ArrayBuffer.isView(value)
          ? 'column'
          : value,
  ).slice(0, 300);

const sums = (): number[] => COLUMNS.map((column) => column.reduce((sum, value, k) => sum + value * (k + 1), 0));

describe('wrong values of the right look', () => {
  it('are tried on every function that a face exports', () => {
    expect([...EXPORTED.keys()].filter((name) => !CALLS.has(name))).toEqual([]);
    expect([...CALLS.keys()].filter((name) => !EXPORTED.has(name))).toEqual([]);
  });

  it.each([...CALLS])('leave a good call of %s as it is', async (_, good) => {
    expect(await complaint(good, good.args)).toBeNull();
  });

  const others = [...CALLS.values()].flatMap(({ args }) => args.filter(isPlainRecord));
  it.each([...CALLS])('are refused by %s in words, or do no harm', async (name, good) => {
    const random = generator(Array.from(name).reduce((sum, sign) => (sum * 31 + sign.charCodeAt(0)) >>> 0, 7));
    const before = sums();
    const found = new Map<string, string>();
    for (let k = 0; k < EACH && good.args.length > 0; k++) {
      const index = Math.floor(random() * good.args.length);
      const args = good.args.with(index, turned(good.args[index], good.deep, others, random));
      const wrong = await complaint(good, random() < 0.05 ? good.args.slice(0, index) : args);
      if (wrong !== null) found.set(wrong, shownArgs([args[index]]));
    }
    expect([...found].slice(0, 5)).toEqual([]);
    expect(sums()).toEqual(before);
  });
});
