/** Courses and races of a plan, as zod schemas. */
import { z } from 'zod';
import { measureOfName } from '../course/markNames.ts';
import {
  clock,
  count,
  id,
  length,
  pair,
  path,
  position,
  positiveAmount,
  positiveDuration,
  positiveLength,
  share,
  text,
  words,
} from './fields.ts';
import type { FinishTimes, PlanCourse, PlanRace } from './plan.ts';
import { told } from './told.ts';

const mark = z
  .strictObject({ at: pair.exactOptional(), measure: length.exactOptional(), name: text.exactOptional() })
  .meta({ anyOf: [{ required: ['at', 'measure'] }, { required: ['name'] }] })
  .check((context) => {
    const { at, measure, name } = context.value;
    if (name !== undefined && (measure !== undefined || measureOfName(name) !== null)) return;
    if (at !== undefined && measure !== undefined) return;
    const accepted =
      '"at" and "measure", or the "name" of a waypoint of the course\'s GPX file that says a distance ("10 km") or comes with a "measure"';
    context.issues.push({
      code: 'custom',
      message: `found a mark whose ${at === undefined ? 'place' : 'distance'} nobody can tell; accepted: ${accepted}`,
      input: context.value,
    });
  });
const part = z.strictObject({ of: words, from: length.default(0), to: positiveLength.exactOptional() });

export const courseSchema: z.ZodType<PlanCourse> = z
  .strictObject({
    id,
    name: text.exactOptional(),
    gpx: path.exactOptional(),
    line: z.array(position).min(2).exactOptional(),
    parts: z.array(part).min(1).exactOptional(),
    track: z
      .union([z.string(), z.int().min(0)], {
        error: (issue) => told(issue.input, 'the name of a track, or its index from 0'),
      })
      .exactOptional(),
    gaps: z.enum(['refuse', 'join', 'skip']).default('refuse'),
    reverse: z.boolean().default(false),
    drawn: z.enum(['centre', 'shortest', 'recorded']).default('recorded'),
    length: positiveLength.exactOptional(),
    marks: z.array(mark).default([]),
    certificate: text.exactOptional(),
  })
  .meta({ oneOf: [{ required: ['gpx'] }, { required: ['line'] }, { required: ['parts'] }] })
  .transform((course) => ({ ...course, name: course.name ?? course.id }));

const quantiles = z
  .array(z.tuple([share, positiveDuration]))
  .min(2)
  .check((context) => {
    const pairs = context.value;
    const fault = (message: string, index: number): void => {
      context.issues.push({ code: 'custom', message, path: [index], input: pairs[index] });
    };
    if (pairs[0]?.[0] !== 0) fault(`found the first share ${pairs[0]?.[0]}; accepted: 0, the fastest finisher`, 0);
    if (pairs.at(-1)?.[0] !== 1)
      fault(`found the last share ${pairs.at(-1)?.[0]}; accepted: 1, the slowest finisher`, pairs.length - 1);
    for (let i = 1; i < pairs.length; i++) {
      const [before, here] = [pairs[i - 1]!, pairs[i]!];
      if (here[0] <= before[0]) fault(`found the share ${here[0]} after ${before[0]}; accepted: shares that rise`, i);
      if (here[1] < before[1]) fault('found a time shorter than the one before; accepted: times that do not fall', i);
    }
  });

const FORMS = '{ "median", "spread" }, { "quantiles" }, { "times" } or { "csv", "column" }';
const forms: readonly [z.ZodType<FinishTimes>, ...z.ZodType<FinishTimes>[]] = [
  z.strictObject({ median: positiveDuration, spread: z.number().min(0).max(5) }),
  z.strictObject({ quantiles }),
  z.strictObject({ times: z.array(positiveDuration).min(1) }),
  z.strictObject({ csv: path, column: words }),
];
const finish: z.ZodType<FinishTimes> = z.union(forms, { error: (issue) => told(issue.input, FORMS) });

const wave = z.strictObject({ time: clock, entrants: count, finish: finish.exactOptional() });
const slowing = z.number().min(0).max(5);

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
    startFlow: positiveAmount.exactOptional(),
    startWidth: positiveLength.exactOptional(),
    cutoff: clock.exactOptional(),
    late: z.enum(['out', 'served']).default('out'),
    gradient: z.boolean().default(false),
  })
  .transform((race) => ({ ...race, name: race.name ?? race.id }));
