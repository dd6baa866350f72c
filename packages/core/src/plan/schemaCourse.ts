/** Courses and races of a plan, as zod schemas. */
import * as z from 'zod';
import { measureOfName } from '../course/markNames.ts';
import type { ValueProblem } from '../text/params/plan.ts';
import { carried, carriedValue } from './carried.ts';
import { amount, clock, count, duration, id, length, pair, path, position, share, text, words } from './fields.ts';
import type { FinishTimes, PlanCourse, PlanRace } from './plan.ts';
import { MOST_ENTRANTS } from './consistency.ts';
import { ALONG, COURSE_LENGTH, FINISH, WIDE } from './ranges.ts';

const mark = z
  .strictObject({ at: pair.exactOptional(), measure: length(...ALONG).exactOptional(), name: text.exactOptional() })
  .meta({ anyOf: [{ required: ['at', 'measure'] }, { required: ['name'] }] })
  .check((context) => {
    const { at, measure, name } = context.value;
    if (name !== undefined && (measure !== undefined || measureOfName(name) !== null)) return;
    if (at !== undefined && measure !== undefined) return;
    const problem = { problem: at === undefined ? 'markUnplaced' : 'markUnmeasured' } as const;
    context.issues.push({ code: 'custom', message: carried({ code: 'plan-value', problem }), input: context.value });
  });
const part = z.strictObject({
  of: words,
  from: length(...ALONG).default(0),
  to: length(0.01, ALONG[1]).exactOptional(),
  reverse: z.boolean().exactOptional(),
});

export const courseSchema: z.ZodType<PlanCourse> = z
  .strictObject({
    id,
    name: text.exactOptional(),
    gpx: path.exactOptional(),
    line: z.array(position).min(2).exactOptional(),
    parts: z.array(part).min(1).exactOptional(),
    track: z
      .union([z.string(), count(0, 1_000_000)], {
        error: (issue) => carriedValue(issue.input, { kind: 'track' }),
      })
      .exactOptional(),
    gaps: z.enum(['refuse', 'join', 'skip']).default('refuse'),
    reverse: z.boolean().default(false),
    drawn: z.enum(['centre', 'shortest', 'recorded']).default('recorded'),
    length: length(...COURSE_LENGTH).exactOptional(),
    marks: z.array(mark).default([]),
    certificate: text.exactOptional(),
  })
  .meta({ oneOf: [{ required: ['gpx'] }, { required: ['line'] }, { required: ['parts'] }] })
  .transform((course) => ({ ...course, name: course.name ?? course.id }));

const quantiles = z
  .array(z.tuple([share, duration(...FINISH)]))
  .min(2)
  .check((context) => {
    const pairs = context.value;
    const fault = (problem: ValueProblem, index: number): void => {
      const message = carried({ code: 'plan-value', problem });
      context.issues.push({ code: 'custom', message, path: [index], input: pairs[index] });
    };
    const [[first], [last]] = [pairs[0]!, pairs.at(-1)!];
    if (first !== 0) fault({ problem: 'firstShare', found: first }, 0);
    if (last !== 1) fault({ problem: 'lastShare', found: last }, pairs.length - 1);
    for (let i = 1; i < pairs.length; i++) {
      const [before, here] = [pairs[i - 1]!, pairs[i]!];
      if (here[0] <= before[0]) fault({ problem: 'shareFalls', found: here[0], before: before[0] }, i);
      if (here[1] < before[1]) fault({ problem: 'timeFalls' }, i);
    }
  });

const forms: readonly [z.ZodType<FinishTimes>, ...z.ZodType<FinishTimes>[]] = [
  z.strictObject({ median: duration(...FINISH), spread: amount(0, 5) }),
  z.strictObject({ quantiles }),
  z.strictObject({ times: z.array(duration(...FINISH)).min(1) }),
  z.strictObject({ csv: path, column: words }),
];
const finish: z.ZodType<FinishTimes> = z.union(forms, {
  error: (issue) => carriedValue(issue.input, { kind: 'finish' }),
});

const wave = z.strictObject({ time: clock, entrants: count(0, MOST_ENTRANTS), finish: finish.exactOptional() });
const slowing = amount(0, 5);

export const raceSchema: z.ZodType<PlanRace> = z
  .strictObject({
    id,
    name: text.exactOptional(),
    course: words,
    division: z.enum(['run', 'walk', 'wheels']).default('run'),
    waves: z.array(wave).default([]),
    finish: finish.exactOptional(),
    slow: z.tuple([slowing, slowing]).exactOptional(),
    show: share.default(0.9),
    startFlow: amount(1, 1_000_000).exactOptional(),
    startWidth: length(...WIDE).exactOptional(),
    cutoff: clock.exactOptional(),
    late: z.enum(['out', 'served']).default('out'),
    gradient: z.boolean().default(false),
  })
  .transform((race) => ({ ...race, name: race.name ?? race.id }));
