/** JSON Schema of what `halfcup layout --json` prints. */
import { ITEM_KINDS } from '../../kinds.ts';
import { findings } from './finding.ts';
import { stationPassSchema } from './pass.ts';
import {
  DRAFT,
  type JsonSchema,
  azimuth,
  count,
  length,
  listOf,
  number,
  orNull,
  position,
  record,
  side,
  text,
  twoNumbers,
  twoPlaces,
} from './shared.ts';

const STREET = { street: orNull(text), after: orNull(text), before: orNull(text) };

const item: JsonSchema = record(
  {
    kind: { enum: ITEM_KINDS },
    from: number,
    to: number,
    along: { ...twoNumbers, description: "From the pin's foot, metres, negative upstream." },
    wheel: {
      ...orNull(twoNumbers),
      description: 'The same by measuring wheel; null where the line at that offset folds.',
    },
    wheelMargin: length,
    side,
    at: twoPlaces,
  },
  {
    offset: number,
    wording: text,
    boxes: listOf(record({ measure: number, at: orNull(position) })),
    byHand: { type: 'boolean' },
    street: { ...record(STREET), description: 'Street and cross-streets at its upstream end, from the map.' },
  },
);

const direction: JsonSchema = record(
  {
    lead: { type: 'boolean' },
    course: text,
    measure: number,
    azimuthDeg: azimuth,
    side,
    passes: listOf(count),
    items: listOf(item),
  },
  { race: text },
);

const station: JsonSchema = record(
  { id: text, passes: listOf(stationPassSchema), directions: listOf(direction) },
  {
    name: text,
    at: position,
    street: {
      ...record({ ...STREET, by: { enum: ['plan', 'map'] } }),
      description: 'Street and cross-streets; the plan’s own words are all in `street`.',
    },
  },
);

/** JSON Schema (draft 2020-12) of what `halfcup layout --json` prints: `LayoutDocument`. Objects may gain keys in later versions. */
export const layoutSchema: JsonSchema = {
  $schema: DRAFT,
  title: 'A layout',
  ...record({
    courses: listOf(record({ id: text, length, raw: length })),
    stations: listOf(station),
    spacing: listOf(
      record(
        {
          race: text,
          legs: listOf(record({ from: text, to: text, length }, { end: number })),
          longest: length,
          shortest: length,
          mean: length,
        },
        { course: text },
      ),
    ),
    findings,
  }),
};
