/** JSON Schema of what `halfcup ground --json` prints. */
import { DRAFT, type JsonSchema, count, orNull, record, text } from './shared.ts';

const day: JsonSchema = { type: 'string', format: 'date' };

/** JSON Schema (draft 2020-12) of what `halfcup ground --json` prints: `GroundDocument`. Objects may gain keys in later versions. */
export const groundSchema: JsonSchema = {
  $schema: DRAFT,
  title: 'What a street file holds, and what of it lies beside the courses',
  ...record({
    format: { enum: ['xml', 'pbf', 'geojson'] },
    date: orNull(day),
    credit: text,
    licence: orNull(text),
    read: record({ nodes: count, ways: count, relations: count, buildings: count, features: count }),
    kept: record({ ways: count, areas: count, points: count }),
    skipped: record({ relations: count, cutWays: count, openAreas: count, broken: count }),
  }),
};
