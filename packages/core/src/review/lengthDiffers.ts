/**
 * A course whose stated length and whose drawn line disagree by more than the tolerance of course measurement, and
 * where the line is recorded by more than it wanders too: a receiver's errors make it longer, never shorter.
 * Source: IAAF rule 240 (2004–05, 2009) and USATF: uncertainty at most 0.1 %, 42 m of a marathon. What a line wanders
 * is the median share by which 100 m of it are longer than their chord: bends are fewer than straights, so it is the
 * line's noise (common practice, no source).
 */
import { median } from 'd3-array';
import { lengthBetween } from '../geodesy/segment.ts';
import { type Course, rawLength, startMeasure } from '../course/course.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { usesLength } from '../plan/courses.ts';
import type { PlanCourse } from '../plan/plan.ts';
import { courseById } from '../plan/lookups.ts';
import { type Case, type Check, check } from './check.ts';

const TOLERANCE = 0.001;
/** Line that is compared with its chord, metres. */
const WINDOW = 100;
/** Noise differs along a line: so many times its median share is taken, and no more than what marks may differ from a line. */
const MARGIN = 1.5;
const MOST = 0.03;
/** A line that is off by more than this share of the stated length is that of another course. */
const OTHER_LINE = 0.2;
/** Kilometres in a mile, and by how much, as a share, a length that is typed in the other unit may miss it. */
const MILE = 1.609344;
const NEAR = 0.01;

/** The unit in which the length was typed, where it seems to be the wrong one. */
function typedUnit(stated: number, raw: number): { readonly typed?: 'mi' | 'km' } {
  if (Math.abs(stated / raw / MILE - 1) <= NEAR) return { typed: 'mi' };
  return Math.abs(raw / stated / MILE - 1) <= NEAR ? { typed: 'km' } : {};
}

export const lengthDiffers: Check = check(
  {
    code: 'length-differs',
    lost: true,
    severity: 'warning',
    source:
      'World Athletics (IAAF) rule 240 and USATF course measurement: 0.1 %, 42 m of a marathon (read); the wander of a recorded line: common practice, no source',
    missing: ({ plan }) => (plan.courses.some(({ length }) => length !== undefined) ? null : 'no-length'),
  },
  ({ plan, courses }) => plan.courses.flatMap((course, index) => differing(course, index, courses)),
);

function differing(plan: PlanCourse, index: number, courses: readonly IndexedCourse[]): Case<'length-differs'>[] {
  const { id, length, drawn } = plan;
  if (length === undefined) return [];
  const { course } = courseById(courses, id);
  const stated = length - startMeasure(course);
  const raw = rawLength(course);
  const measuring = stated * TOLERANCE;
  const wander = drawn === 'recorded' ? stated * Math.min(MARGIN * wanderOf(course), MOST) : 0;
  if (raw >= stated - measuring && raw <= stated + measuring + wander) return [];
  const used = usesLength(plan, course);
  const waits = !used && Math.abs(raw - stated) > OTHER_LINE * stated;
  const extra = raw > stated ? wander : 0;
  const allowed = measuring + extra;
  return [
    {
      params: {
        stated,
        line: raw,
        allowed,
        recorded: drawn === 'recorded',
        wander: extra,
        used,
        ...(waits ? { waits } : {}),
        ...typedUnit(stated, raw),
      },
      where: { path: `/courses/${index}/length`, course: id },
      measured: raw,
      limit: [stated - measuring, stated + measuring + wander],
      unit: 'm',
      ...(used ? {} : { severity: 'error' as const }),
    },
  ];
}

/** The median share by which stretches of a line are longer than their chords. */
function wanderOf({ raw, lon, lat }: Course): number {
  const shares: number[] = [];
  for (let from = 0, to = 1; to < raw.length; to++) {
    const along = raw[to]! - raw[from]!;
    if (along < WINDOW) continue;
    const chord = lengthBetween(lon[from]!, lat[from]!, lon[to]!, lat[to]!);
    if (chord > 0) shares.push(along / chord - 1);
    from = to;
  }
  return median(shares) ?? 0;
}
