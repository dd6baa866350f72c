import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { fromEastNorth } from '../geodesy/frame.ts';
import { inverseLength } from '../geodesy/karney.ts';
import { ORIGIN, generator } from '../testing/courses.ts';
import { acrossOf } from './across.ts';

/** By every pair. */
function byAll(polygon: readonly LonLat[]): ReturnType<typeof acrossOf> {
  const apart = polygon.map((a) => polygon.map((b) => inverseLength(...a, ...b)));
  const across = apart.flat().reduce((most, one) => Math.max(most, one), 0);
  const sums = apart.map((row) => row.reduce((sum, one) => sum + one, 0));
  const ends = polygon.map((_, k) => k).filter((k) => apart[k]!.includes(across));
  return { across, at: polygon[ends.sort((a, b) => sums[b]! - sums[a]!)[0]!]! };
}

const round = (count: number, radius: number, centre: LonLat): LonLat[] =>
  Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count;
    return fromEastNorth(centre, radius * Math.cos(angle), radius * Math.sin(angle));
  });

describe('how far an outline is across', () => {
  it('is what every pair tells, anywhere and at any size', () => {
    const random = generator(7);
    for (const centre of [ORIGIN, [179.9999, -17], [10, 89.99], [0, 0]] as LonLat[])
      for (const size of [30, 3000, 300_000])
        for (let tries = 0; tries < 5; tries++) {
          const polygon = Array.from({ length: 3 + Math.floor(random() * 20) }, () =>
            fromEastNorth(centre, (random() - 0.5) * size, (random() - 0.5) * size),
          );
          expect(acrossOf(polygon)).toEqual(byAll(polygon));
          expect(acrossOf([...polygon, polygon[0]!])).toEqual(byAll([...polygon, polygon[0]!]));
        }
  });

  it('is that within 0.02 % of more than 200 corners, and the corner that lies far off is told', () => {
    for (const centre of [ORIGIN, [179.9999, -17]] as LonLat[]) {
      const polygon = round(301, 8000, centre);
      expect(acrossOf(polygon).across).toBeGreaterThan(byAll(polygon).across * 0.9998);
      const far = fromEastNorth(centre, 21_000, 4000);
      for (const place of [0, 150, 301]) {
        const { across, at } = acrossOf(polygon.toSpliced(place, 0, far));
        expect(at).toEqual(far);
        expect(across / 29_377.3).toBeCloseTo(1, 3);
      }
    }
  });

  it('is told of 200,000 corners, and of one at the other end of the world', () => {
    const polygon = round(2000, 8000, ORIGIN).flatMap(([lon, lat]) =>
      Array.from({ length: 100 }, (_, k): LonLat => [lon + k * 1e-8, lat]),
    );
    expect(polygon).toHaveLength(200_000);
    expect(acrossOf(polygon).across / 16_000).toBeCloseTo(1, 3);
    const opposite: LonLat = [ORIGIN[0] + 179, -ORIGIN[1]];
    expect(acrossOf([...polygon, opposite]).at).toEqual(opposite);
    expect(acrossOf([opposite, ...polygon]).at).toEqual(opposite);
  });
});
