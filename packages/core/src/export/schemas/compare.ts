/** JSON Schema of what `halfcup compare --json` prints. */
import { ITEM_KINDS } from '../../kinds.ts';
import { findings } from './finding.ts';
import { DRAFT, type JsonSchema, length, listOf, number, orNull, position, record, side, text } from './shared.ts';

/** A value before and after. */
const change = (of: JsonSchema): JsonSchema => ({ type: 'array', prefixItems: [of, of], minItems: 2, maxItems: 2 });

const place: JsonSchema = {
  ...change(orNull(number)),
  description: "Before and after, metres from the pin's foot, negative upstream; null where there is none.",
};

/** JSON Schema (draft 2020-12) of what `halfcup compare --json` prints: `Comparison`. Objects may gain keys in later versions. */
export const compareSchema: JsonSchema = {
  $schema: DRAFT,
  title: 'What changes between two versions of a plan',
  ...record({
    variants: change(text),
    stations: listOf(record({ id: text, moved: length, from: position, to: position }, { name: text })),
    spacing: listOf(
      record({
        race: text,
        legs: listOf(record({ from: text, to: text, length: change(orNull(length)) })),
        longest: change(length),
        shortest: change(length),
        mean: change(length),
      }),
    ),
    items: listOf(
      record(
        { station: text, item: { enum: ITEM_KINDS }, along: place, wheel: place },
        { lead: { type: 'boolean' }, race: text, alongEnd: place, wheelEnd: place, side: change(orNull(side)) },
      ),
    ),
    findings: record({ gained: findings, lost: findings }),
  }),
};
