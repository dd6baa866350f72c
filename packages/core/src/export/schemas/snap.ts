/** JSON Schema of what `halfcup snap --json` prints. */
import { passSchema } from './pass.ts';
import { DRAFT, type JsonSchema, length, listOf, number, orNull, position, record, text } from './shared.ts';

/** JSON Schema (draft 2020-12) of what `halfcup snap --json` prints: `SnapDocument`. Objects may gain keys in later versions. */
export const snapSchema: JsonSchema = {
  $schema: DRAFT,
  title: 'Points held against a course',
  ...record({
    points: listOf(
      record({
        at: position,
        name: orNull(text),
        passes: listOf(passSchema),
        nearest: record({ measure: number, distance: length, offset: number }),
      }),
    ),
  }),
};
