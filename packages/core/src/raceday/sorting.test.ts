import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import { mergeSorted, sortNearly } from './sorting.ts';
import { tries } from '../testing/tries.ts';

const anyTimes = fc.array(fc.double({ min: 0, max: 1e5, noNaN: true }), { maxLength: 300 });

describe('times nearly in order', () => {
  it('come out as the engine sorts them, whatever order they had', () => {
    fc.assert(
      fc.property(anyTimes, (times) => {
        expect([...sortNearly(Float64Array.from(times))]).toEqual([...Float64Array.from(times).sort()]);
      }),
      { seed: 5, numRuns: tries(1000) },
    );
  });

  it('come out right in waves with local disorder, in many waves, and in the reverse order', () => {
    const wave = (start: number): number[] =>
      Array.from({ length: 2000 }, (_, k) => start + k * 1.5 + ((k * 7919) % 13));
    const waves = (count: number): number[] => Array.from({ length: count }, (_, k) => wave(k * 600)).flat();
    for (const times of [waves(4), waves(60), wave(0).toReversed()]) {
      expect([...sortNearly(Float64Array.from(times))]).toEqual([...Float64Array.from(times).sort()]);
    }
  });

  it('merge to one ascending list, which is the very one where there is no other', () => {
    fc.assert(
      fc.property(fc.array(anyTimes, { maxLength: 5 }), (lists) => {
        const sorted = lists.map((list) => Float64Array.from(list).sort());
        expect([...mergeSorted(sorted)]).toEqual([...Float64Array.from(lists.flat()).sort()]);
      }),
      { seed: 6, numRuns: tries(500) },
    );
    const one = Float64Array.of(1, 2);
    expect(mergeSorted([new Float64Array(0), one])).toBe(one);
  });
});
