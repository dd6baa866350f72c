/** JSON Schema of a finding, which all documents hold. */
import { type JsonSchema, count, listOf, number, position, record, text, twoNumbers } from './shared.ts';

const where: JsonSchema = record(
  {},
  {
    file: text,
    line: count,
    column: count,
    path: text,
    course: text,
    race: text,
    station: text,
    item: text,
    measure: number,
    at: position,
  },
);

/** JSON Schema (draft 2020-12) of a finding, which every document holds. Objects may gain keys in later versions. */
export const findingSchema: JsonSchema = {
  title: 'A finding',
  ...record(
    {
      code: { type: 'string', pattern: '^[a-z0-9]+(-[a-z0-9]+)*$' },
      severity: { enum: ['error', 'warning', 'note'] },
      message: { type: 'string', minLength: 1 },
      where,
    },
    {
      params: {
        type: 'object',
        description: 'What the message is made of, by name: lengths in metres, times in seconds, ids.',
      },
      measured: number,
      limit: { anyOf: [number, twoNumbers] },
      unit: text,
      source: text,
      cannotTell: { const: true, description: 'The position error does not allow an answer.' },
      built: { const: true, description: 'Of a station as it was recorded on the ground, not as the plan has it.' },
      waived: record({ by: text, reason: text }, { date: text }),
    },
  ),
};

export const findings: JsonSchema = listOf(findingSchema);
