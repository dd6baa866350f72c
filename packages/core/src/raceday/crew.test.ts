import { describe, expect, it } from 'vitest';
import { DEFAULT_CREW } from '../plan/defaults.ts';
import { dayCrew, handsFor } from './crew.ts';

describe('Crew', () => {
  it('hands out the peak and two roots of it, by hand', () => {
    // (100 + 2·10) ÷ 8 = 15; (64 + 16) ÷ 8 = 10; (1 + 2) ÷ 8.
    expect([0, 1, 64, 100].map((peak) => handsFor(peak, 8))).toEqual([0, 1, 10, 15]);
  });

  it('is enough in more than 19 minutes of 20 where arrivals are a Poisson count', () => {
    for (const mean of [4, 25, 100, 400]) {
      let term = Math.exp(-mean);
      let held = term;
      for (let k = 1; k <= Math.floor(mean + 2 * Math.sqrt(mean)); k++) held += term *= mean / k;
      expect(held).toBeGreaterThan(0.95);
      expect(held).toBeLessThan(0.99);
    }
  });

  it('adds up, and opens with the minimum', () => {
    const parts = { handOut: 15, pour: 2, gel: 4, clean: 10 };
    expect(dayCrew(DEFAULT_CREW, parts, 4 * 3600)).toEqual({ ...parts, captain: 1, total: 32, hours: 4, shifts: 1 });
    const nobody = { handOut: 0, pour: 0, gel: 0, clean: 0 };
    expect(dayCrew({ ...DEFAULT_CREW, minimum: 6 }, nobody, 3600).total).toBe(6);
    expect(dayCrew(DEFAULT_CREW, nobody, 3600).total).toBe(2);
  });

  it('takes another shift when the day is longer than one may be', () => {
    const parts = { handOut: 1, pour: 1, gel: 0, clean: 1 };
    const shifts = (hours: number): number => dayCrew(DEFAULT_CREW, parts, hours * 3600).shifts;
    expect([0.5, 6, 6.01, 12, 13].map(shifts)).toEqual([1, 1, 2, 2, 3]);
  });
});
