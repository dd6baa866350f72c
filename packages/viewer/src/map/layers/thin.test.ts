import { buildCourse, indexCourse, nearestOn, sliceLine, type Course } from '@halfcup/core/geometry';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnCourse, keptVertices } from './thin.ts';

const courseOf = (points: readonly (readonly [number, number])[]): Course => {
  const column = (k: 0 | 1): Float64Array => Float64Array.from(points, (point) => point[k]);
  const built = buildCourse({
    id: 'c',
    name: 'C',
    drawn: 'recorded',
    segments: [{ lon: column(0), lat: column(1), ele: new Float64Array(points.length).fill(Number.NaN) }],
    gaps: 'join',
    where: {},
  });
  if (!built.ok) throw new Error(built.findings[0]?.message ?? 'no course');
  return built.value;
};

/** A walk of steps of up to 30 m near 40° south, turning as it likes. */
const walk = fc
  .array(
    fc.tuple(fc.double({ min: 0.5, max: 30, noNaN: true }), fc.double({ min: -Math.PI, max: Math.PI, noNaN: true })),
    { minLength: 3, maxLength: 300 },
  )
  .map((steps) => {
    let at: [number, number] = [-18, -40];
    return [
      at,
      ...steps.map(
        ([length, angle]): [number, number] =>
          (at = [at[0] + (length * Math.cos(angle)) / 85_300, at[1] + (length * Math.sin(angle)) / 111_100]),
      ),
    ];
  });

describe('keptVertices', () => {
  it('leaves out no vertex that lies further than twice the tolerance from the line that is left', () => {
    fc.assert(
      fc.property(walk, fc.constantFrom(0.02, 0.5, 5), (points, tolerance) => {
        const [lon, lat] = [Float64Array.from(points, ([x]) => x), Float64Array.from(points, ([, y]) => y)];
        const kept = keptVertices(lon, lat, tolerance, new Set());
        expect([kept[0], kept.at(-1)]).toEqual([0, points.length - 1]);
        const left = courseOf(kept.map((index) => points[index]!));
        const index = indexCourse(left);
        for (const point of points)
          expect(nearestOn(index, point)?.distance ?? Infinity).toBeLessThan(2 * tolerance + 0.01);
      }),
      { seed: 20_261_125, numRuns: 100 },
    );
  });

  it('keeps the tip of a way out and back, and the vertices that it must', () => {
    const lon = Float64Array.from([0, 0.001, 0.002, 0.003, 0.002, 0.001, 0]);
    expect(keptVertices(lon, new Float64Array(7), 1, new Set())).toEqual([0, 3, 6]);
    expect(keptVertices(lon, new Float64Array(7), 1, new Set([1]))).toEqual([0, 1, 3, 6]);
  });
});

describe('drawnCourse', () => {
  const arc = (count: number): [number, number][] =>
    Array.from({ length: count }, (_, k) => [
      -18 + 0.01 * Math.cos((3 * k) / count),
      -40 + 0.01 * Math.sin((3 * k) / count),
    ]);

  it('is the very course where it has few vertices', () => {
    const course = courseOf(arc(500));
    expect(drawnCourse(course)).toBe(course);
  });

  it('has a hundredth of the vertices of a dense one, and the same places at the same measures to 4 cm', () => {
    const course = courseOf(arc(100_000));
    const drawn = drawnCourse(course);
    expect(drawn.lon.length).toBeLessThan(course.lon.length / 100);
    expect(drawn.raw.at(-1)).toBe(course.raw.at(-1));
    const index = indexCourse(drawn);
    for (const measure of [0, 100.5, 777, 1500])
      expect(nearestOn(index, sliceLine(course, measure, measure + 1)[0]!)?.distance ?? Infinity).toBeLessThan(0.04);
  });
});
