/** Road times that begin long after the start of a course or end long before its finish. A single time is taken for the whole course. */
import { courseLength, startMeasure } from '../course/course.ts';
import type { Layout } from '../layout/layout.ts';
import { type Timeline, timelineOf } from '../raceday/clockAlong.ts';
import { type Case, type Check, COMMON_PRACTICE, check } from './check.ts';
import { courseOf } from './standing.ts';

/** So far from the nearest time that is given, metres, a road time is anybody's guess: an assumption. */
export const UNKNOWN = 3000;
const KEYS = ['closes', 'reopens'] as const;

/** Whether a timeline says something of a measure: between its times or near them, or everywhere where it has but one. */
export const saysOf = ({ measures }: Timeline, measure: number): boolean =>
  measures.length === 1 || (measure >= measures[0]! - UNKNOWN && measure <= measures.at(-1)! + UNKNOWN);

function casesOf(id: string, layout: Layout): Case<'clock-short'>[] {
  const { course } = courseOf(layout, id);
  const [start, finish] = [startMeasure(course), courseLength(course)];
  const lines = KEYS.map((key) => ({ key, measures: timelineOf(layout.plan.clock, id, key).measures })).filter(
    ({ measures }) => measures.length > 1,
  );
  return (['start', 'finish'] as const).flatMap((end) => {
    const short = lines
      .map(({ key, measures }) => {
        const measure = end === 'start' ? measures[0]! : measures.at(-1)!;
        return { key, measure, left: end === 'start' ? measure - start : finish - measure };
      })
      .filter(({ left }) => left > UNKNOWN)
      .sort((a, b) => b.left - a.left);
    const [worst] = short;
    if (worst === undefined) return [];
    const { measure, left } = worst;
    return [
      {
        params: { course: id, end, keys: short.map(({ key }) => key), measure, left },
        where: { path: '/clock', course: id, measure },
        measured: left,
        limit: UNKNOWN,
        unit: 'm',
      },
    ];
  });
}

export const clockShort: Check = check(
  {
    code: 'clock-short',
    severity: 'warning',
    source: `${COMMON_PRACTICE}; the 3 km are an assumption`,
    missing: ({ plan }) => (plan.clock.length > 0 ? null : 'no-clock'),
  },
  (layout) => layout.plan.courses.flatMap(({ id }) => casesOf(id, layout)),
);
