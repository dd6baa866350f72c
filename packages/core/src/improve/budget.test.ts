import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import { ORIGIN, from } from '../testing/courses.ts';
import { stepWithin } from './budget.ts';

/** So many stations, so many metres apart, on the leg of one race each. */
const layoutOf = (count: number, apart: number): Layout => {
  const at = (k: number): LonLat => from(ORIGIN, 90, k * apart);
  return {
    stations: Array.from({ length: count }, (_, k) => ({ at: at(k) })),
    spacing: [{ legs: Array.from({ length: count + 1 }, () => ({})) }],
  } as unknown as Layout;
};
const step = (count: number, apart: number, movable = true): number =>
  stepWithin(
    layoutOf(count, apart),
    Array.from({ length: count }, () => movable),
    500,
    25,
  );

describe('metres between the places that are tried', () => {
  it('are as usual for the stations of a race', () => {
    expect(step(30, 1400)).toBe(25);
    expect(step(160, 260)).toBe(25);
  });

  it('grow where many stations can meet, so that the combinations of neighbours stay under the limit', () => {
    expect(step(320, 130)).toBe(50);
    expect(step(320, 1)).toBeGreaterThan(100);
    expect(step(320, 1, false)).toBe(25);
    const wide = step(600, 1);
    expect(((600 * 599) / 2 + 601) * (2 * Math.floor(500 / wide) + 1) ** 2).toBeLessThanOrEqual(4_000_000);
  });
});
