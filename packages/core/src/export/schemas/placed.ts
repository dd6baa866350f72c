/** JSON Schema of the verdicts that `halfcup review --placed … --json` prints. */
import { type JsonSchema, length, listOf, number, position, record, side, text, twoNumbers } from './shared.ts';

export const placedSchema: JsonSchema = {
  title: 'Recorded points held against the plan',
  ...listOf(
    record(
      {
        station: text,
        item: { enum: ['sign', 'trash'] },
        course: text,
        verdict: { enum: ['holds', 'fails', 'cannot tell'] },
        measured: number,
        limit: twoNumbers,
        margin: length,
        move: { ...number, description: 'Metres along the course to the middle of the limits, downstream positive; 0 where it holds.' },
        at: position,
        by: { enum: ['position', 'wheel'] },
        reference: { enum: ['placed', 'planned'] },
        side,
        confidence: { type: 'number', minimum: 0.5, maximum: 1 },
      },
      { end: { enum: ['from', 'to'] } },
    ),
  ),
};
