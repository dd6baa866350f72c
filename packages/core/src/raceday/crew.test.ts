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
    const busy = dayCrew(DEFAULT_CREW, { cupsPeak: 100, gelsPeak: 36, cupsHour: 3999, duration: 4 * 3600 });
    expect(busy).toEqual({ handOut: 15, pour: 2, gel: 4, clean: 10, captain: 1, total: 32, hours: 4, shifts: 1 });
    expect(dayCrew(DEFAULT_CREW, { cupsPeak: 1, gelsPeak: 0, cupsHour: 1, duration: 3600 }).total).toBe(6);
  });

  it('takes another shift when the day is longer than one may be', () => {
    const shifts = (hours: number): number =>
      dayCrew(DEFAULT_CREW, { cupsPeak: 1, gelsPeak: 0, cupsHour: 1, duration: hours * 3600 }).shifts;
    expect([0.5, 6, 6.01, 12, 13].map(shifts)).toEqual([1, 1, 2, 2, 3]);
  });

  it('needs no pourer where no cups are taken', () => {
    expect(dayCrew(DEFAULT_CREW, { cupsPeak: 0, gelsPeak: 16, cupsHour: 0, duration: 3600 })).toMatchObject({
      pour: 0,
      handOut: 0,
      gel: 2,
    });
  });
});
