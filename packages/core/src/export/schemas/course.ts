/** JSON Schema of what `halfcup course --json` prints. */
import { findings } from './finding.ts';
import { DRAFT, type JsonSchema, bounds, count, length, listOf, number, orNull, record, text } from './shared.ts';

/** JSON Schema (draft 2020-12) of what `halfcup course --json` prints: `CourseDocument`. Objects may gain keys in later versions. */
export const courseSchema: JsonSchema = {
  $schema: DRAFT,
  title: 'The facts of a course',
  ...record(
    {
      name: text,
      points: count,
      duplicates: count,
      length,
      raw: length,
      bounds,
      gaps: listOf(record({ after: count, length })),
      ascent: orNull(length),
      factors: {
        ...listOf(record({ from: number, to: number, factor: { type: 'number', exclusiveMinimum: 0 } })),
        minItems: 1,
      },
      findings,
    },
    {
      marks: {
        ...listOf(record({ name: orNull(text), measure: length })),
        description: 'Marks that the course is calibrated by.',
      },
    },
  ),
};
