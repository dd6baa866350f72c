import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import type { Course } from '../course/course.ts';
import { ORIGIN, courseThrough, segmentThrough, turtlePoints, valueOf } from '../testing/courses.ts';
import { costOfGrade, hillsOf } from './hills.ts';
import { workTo } from './pace.ts';

const points = turtlePoints(ORIGIN, [[80, 2000]], 20);
const withHeights = (height: (k: number) => number): Course =>
  valueOf(
    buildCourse({
      id: 'c',
      name: 'c',
      segments: [
        segmentThrough(
          points,
          points.map((_, k) => height(k)),
        ),
      ],
      gaps: 'refuse',
    }),
  );

describe('the cost of a grade', () => {
  // Minetti et al. 2002, J Appl Physiol 93:1039, abstract (from memory): running on the level 3.40 J/(kg m) measured, 1.73 at -20 %,
  // 18.93 at +45 %; walking 1.64 on the level, 0.81 at -10 %, 17.33 at +45 %. The polynomials are a fit to those, good to about 0.9.
  it('comes near the values measured at the minimum and at the steepest climb', () => {
    expect(Math.abs(costOfGrade(-0.2, 'run') - 1.73)).toBeLessThan(0.2);
    expect(Math.abs(costOfGrade(0.45, 'run') - 18.93)).toBeLessThan(0.9);
    expect(Math.abs(costOfGrade(0, 'run') - 3.4)).toBeLessThan(0.25);
    expect(Math.abs(costOfGrade(0.45, 'walk') - 17.33)).toBeLessThan(0.9);
  });

  it('of running is least near 20 % down, of walking near 10 % down, as measured', () => {
    const least = (way: 'run' | 'walk'): number =>
      Array.from({ length: 91 }, (_, k) => (k - 45) / 100).reduce((best, grade) =>
        costOfGrade(grade, way) < costOfGrade(best, way) ? grade : best,
      );
    expect(Math.abs(least('run') + 0.2)).toBeLessThanOrEqual(0.03);
    expect(Math.abs(least('walk') + 0.1)).toBeLessThanOrEqual(0.06);
  });
});

describe('the hills of a course', () => {
  it('are stretches of about 100 m, level road costing 1', () => {
    const { hills, findings } = hillsOf(
      withHeights(() => 50),
      'run',
      'm',
    );
    expect(findings).toEqual([]);
    expect(hills!.cost).toHaveLength(20);
    expect([...hills!.cost]).toEqual(Array.from({ length: 20 }, () => 1));
  });

  it('let a climb of 5 % in the first half take as much longer as it costs', () => {
    const { hills } = hillsOf(
      withHeights((k) => Math.min(k, 50)),
      'run',
      'm',
    );
    const ratio = costOfGrade(0.05, 'run') / costOfGrade(0, 'run');
    const half = workTo(0.5, hills).even / workTo(1, hills).even;
    expect(ratio).toBeGreaterThan(1.2);
    expect(half).toBeCloseTo(ratio / (1 + ratio), 6);
  });

  it('are none for wheels, and none with a note where there are no elevations', () => {
    expect(
      hillsOf(
        withHeights((k) => k),
        'wheels',
        'w',
      ),
    ).toEqual({ hills: null, findings: [] });
    const { hills, findings } = hillsOf(courseThrough(points), 'run', 'm');
    expect(hills).toBeNull();
    expect(findings).toMatchObject([{ code: 'gradient-unknown', severity: 'note', where: { race: 'm', course: 'c' } }]);
  });

  it('are none with a warning where a stretch is steeper than the curve reaches', () => {
    const { hills, findings } = hillsOf(
      withHeights((k) => (k < 30 ? 0 : 80)),
      'run',
      'm',
    );
    expect(hills).toBeNull();
    expect(findings).toMatchObject([{ code: 'gradient-too-steep', severity: 'warning', limit: 0.45 }]);
    expect(Math.abs(findings[0]!.where.measure! - 500)).toBeLessThan(1);
  });
});
