/** A line on paper: what would not show is left out, and nothing else. */
import { describe, expect, it } from 'vitest';
import { through } from './svg.ts';

describe('a line through points', () => {
  it('keeps its ends, and each point that lies 0.05 mm from the last one kept', () => {
    expect(
      through([
        [0, 0],
        [0.04, 0.04],
        [0.05, 0],
        [0.09, 0],
        [0.1, 0],
        [0.1, 3],
        [0.1, 3.01],
      ]),
    ).toBe('M0 0L0.05 0L0.1 0L0.1 3L0.1 3.01');
  });

  it('is as long as its millimetres ask, however many points it has', () => {
    const points = Array.from({ length: 100_000 }, (_, k): [number, number] => [k / 1000, Math.sin(k / 20_000)]);
    const kept = through(points).split('L');
    expect(kept.length).toBeLessThan(2100);
    expect(kept.length).toBeGreaterThan(1900);
  });

  it('says nothing of no point, and one of one', () => {
    expect(through([])).toBe('');
    expect(through([[1, 2]])).toBe('M1 2');
  });
});
