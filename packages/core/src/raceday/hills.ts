/**
 * What hills do to the pace along a course, for races whose plan says `gradient`.
 * Model: at equal effort pace goes with the energy cost of a metre of road; polynomials of A. E. Minetti et al.,
 * "Energy cost of walking and running at extreme uphill and downhill slopes", J Appl Physiol 93:1039 (2002),
 * doi:10.1152/japplphysiol.01177.2001 (coefficients from memory); measured between -45 and +45 % of grade.
 * On steep descents the curve flatters: few run twice as fast down 20 % as on the flat. Wheels are taken as level.
 */
import { type Course, courseLength, startMeasure } from '../course/course.ts';
import { elevationAt } from '../course/locate.ts';
import type { Finding } from '../finding.ts';
import type { Division } from '../plan/plan.ts';
import { racedayFinding } from './racedayFinding.ts';

/** Stretches of a course: n + 1 ends as shares of its length from 0 to 1, and the n costs between, 1 on level road. */
export interface Hills {
  readonly shares: Float64Array;
  readonly cost: Float64Array;
}

/** Stretches over which elevations are compared, metres: an assumption, long enough for the errors of a recording. */
const STRETCH = 100;
/** Steepest grade that the curve was measured at. */
const STEEPEST = 0.45;

/** Falling powers of the grade, joule per kilogram and metre. */
const COST: Readonly<Record<'run' | 'walk', readonly number[]>> = {
  run: [155.4, -30.4, -43.3, 46.3, 19.5, 3.6],
  walk: [280.5, -58.7, -76.8, 51.9, 19.6, 2.5],
};

/** Energy cost of running or walking at a grade (rise over run, -0.45 to 0.45), joule per kilogram and metre. */
export const costOfGrade = (grade: number, way: 'run' | 'walk'): number =>
  COST[way].reduce((sum, coefficient) => sum * grade + coefficient, 0);

/**
 * The hills of a course for a division; `null` and a note where it has no elevations, `null` and a warning where a
 * stretch is steeper than the curve reaches, `null` for wheels.
 */
export function hillsOf(
  course: Course,
  division: Division,
  race: string,
): { readonly hills: Hills | null; readonly findings: readonly Finding[] } {
  if (division === 'wheels') return { hills: null, findings: [] };
  const where = { race, course: course.id };
  if (course.ele === null) {
    const unknown = racedayFinding('gradient-unknown', { course: course.id }, { severity: 'note', where });
    return { hills: null, findings: [unknown] };
  }
  const start = startMeasure(course);
  const length = courseLength(course) - start;
  const count = Math.max(1, Math.round(length / STRETCH));
  const shares = Float64Array.from({ length: count + 1 }, (_, k) => k / count);
  const grades = gradesOf(course, start, length, count);
  const steep = grades.findIndex((grade) => Math.abs(grade) > STEEPEST);
  if (steep >= 0) {
    const measure = start + (length * steep) / count;
    const grade = grades[steep]!;
    return {
      hills: null,
      findings: [
        racedayFinding(
          'gradient-too-steep',
          { course: course.id, grade, most: STEEPEST },
          { severity: 'warning', where: { ...where, measure }, measured: grade, limit: STEEPEST },
        ),
      ],
    };
  }
  const level = costOfGrade(0, division);
  return { hills: { shares, cost: grades.map((grade) => costOfGrade(grade, division) / level) }, findings: [] };
}

/** Grade of each stretch; level where a skipped gap hides an end. */
function gradesOf(course: Course, start: number, length: number, count: number): Float64Array {
  const heights = Array.from({ length: count + 1 }, (_, k) => elevationAt(course, start + (length * k) / count));
  return Float64Array.from({ length: count }, (_, k) => {
    const [from, to] = [heights[k]!, heights[k + 1]!];
    return from === null || to === null ? 0 : ((to - from) * count) / length;
  });
}
