/** JSON Schema of what `halfcup improve --json` prints. */
import { ITEM_KINDS } from '../../kinds.ts';
import { DRAFT, type JsonSchema, count, length, listOf, number, position, record, text } from './shared.ts';

const standing: JsonSchema = record(
  {
    error: count,
    warning: count,
    note: count,
    waived: count,
    longest: listOf(record({ race: text, from: text, to: text, length })),
  },
  { idle: { ...count, description: 'Waivers that match no finding; in no other count.' } },
);

const item: JsonSchema = { enum: ITEM_KINDS };

/** JSON Schema (draft 2020-12) of what `halfcup improve --json` prints: `ImproveDocument`. Objects may gain keys in later versions. */
export const improveSchema: JsonSchema = {
  $schema: DRAFT,
  title: 'Better places for stations',
  ...record(
    {
      before: standing,
      after: standing,
      moves: listOf(
        record(
          {
            station: text,
            from: position,
            to: position,
            measure: { ...number, description: 'Course distance of the lead pass after the move, metres.' },
          },
          {
            name: text,
            course: text,
            shift: number,
            moved: length,
            dropped: listOf(item),
            walked: { type: 'boolean' },
          },
        ),
      ),
      proof: {
        anyOf: [
          { const: 'optimal', description: 'No combination of the places tried is better.' },
          record({
            bound: {
              ...record({ error: count, warning: count, longest: length }),
              description: "No combination is better than this; longest: the sum of all races' longest legs.",
            },
          }),
        ],
      },
    },
    {
      tried: count,
      step: length,
      stepBeyond: length,
      stays: listOf(record({ station: text, why: text })),
      stopped: { const: true },
    },
  ),
};
