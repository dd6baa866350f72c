/** Runners as bars on the strip, and all stations on one time axis. */
import { describe, expect, it } from 'vitest';
import { bars, heightOf } from './crowdBars.ts';
import { stripScale } from './geometry.ts';

const runners = Uint32Array.of(0, 10, 10, 0, 1000, 1);

describe('bars of runners', () => {
  it('stand where their runners are, one outline for neighbours, none where nobody is', () => {
    const scale = stripScale([0, 600], 600, 0);
    expect(bars({ from: 0, every: 100, runners }, scale, 50)).toBe('M100 50V38H300V50ZM400 50V14H500V48H600V50Z');
    expect(bars({ from: 0, every: 100, runners: new Uint32Array(6) }, scale, 50)).toBe('');
  });

  it('end at the ends of the view', () => {
    const scale = stripScale([150, 450], 300, 0);
    expect(bars({ from: 0, every: 100, runners }, scale, 50)).toBe('M0 50V38H150V50ZM250 50V14H300V50Z');
  });

  it('rise with every power of ten, show one runner, and never leave their band', () => {
    expect([0, 1, 10, 100].map(heightOf)).toEqual([0, 2, 12, 24]);
    expect(heightOf(1e9)).toBe(38);
  });
});
