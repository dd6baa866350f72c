/** Where vehicles and the sweep are at a time, against their runs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Run } from './day.ts';
import { onTheMove, runSpan, sweepMeasure } from './onTheMove.ts';
import { tries } from '../testing/tries.ts';

const stop = (station: string, measure: number, arrive: number, leave: number): Run['stops'][number] => ({
  station,
  measure,
  arrive,
  leave,
  side: 'right',
  load: [],
});
const run: Run = {
  vehicle: 'v',
  kind: 'drop',
  kg: 0,
  stops: [stop('a', 1000, 600, 900), stop('b', 3000, 1100, 1400)],
};

describe('A vehicle on its run', () => {
  it('leaves the start so as to be at its first stop in time, drives evenly, and stands at stops', () => {
    expect(runSpan(run, 10)).toEqual([500, 1400]);
    expect(onTheMove(run, 10, 499)).toBeNull();
    expect(onTheMove(run, 10, 550)).toEqual({ measure: 500, at: null, next: 'a' });
    expect(onTheMove(run, 10, 700)).toEqual({ measure: 1000, at: 'a', next: 'a' });
    expect(onTheMove(run, 10, 1000)).toEqual({ measure: 2000, at: null, next: 'b' });
    expect(onTheMove(run, 10, 1400)).toEqual({ measure: 3000, at: 'b', next: 'b' });
    expect(onTheMove(run, 10, 1401)).toBeNull();
  });

  it('never jumps: in a second it goes no farther than its speed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 1399 }), (time) => {
        const [here, next] = [onTheMove(run, 10, time)!, onTheMove(run, 10, time + 1)!];
        expect(next.measure - here.measure).toBeGreaterThanOrEqual(0);
        expect(next.measure - here.measure).toBeLessThanOrEqual(10 + 1e-9);
      }),
      { numRuns: tries(1000) },
    );
  });
});

describe('The sweep', () => {
  it('is on the road from its first known time to its last', () => {
    const sweep = { measures: [0, 1000, 4000], times: [100, 200, 500] };
    expect([99, 100, 150, 200, 350, 500, 501].map((time) => sweepMeasure(sweep, time))).toEqual([
      null,
      0,
      500,
      1000,
      2500,
      4000,
      null,
    ]);
  });
});
