/** Stations of a plan, as zod schemas. */
import * as z from 'zod';
import { carriedValue } from './carried.ts';
import { MOST_BOXES, MOST_TABLES } from './consistency.ts';
import { amount, count, date, id, length, pair, text, words } from './fields.ts';
import { ITEM_KINDS } from '../kinds.ts';
import type { DeclaredSide, PlanStation } from './plan.ts';
import { ALONG, WIDE } from './ranges.ts';
import { crewOverrides, practiceOverrides, suppliesOverrides } from './schemaRules.ts';

/** A station as its file has it: the offset of `on` may still be missing, until the plan's practice fills it. */
export interface StationDraft extends Omit<PlanStation, 'on'> {
  readonly on?: {
    readonly course: string;
    readonly measure: number;
    readonly side: DeclaredSide;
    readonly offset?: number;
  };
}

const side = z.enum(['left', 'right']);
const passChoice = z.strictObject({ race: words, pass: count(0, 10_000) });
const placed = z.strictObject({ at: pair });
const point = z.strictObject({
  kind: z.enum(['drop', 'access', 'medical', 'toilets', 'radio', 'other']),
  at: pair,
  name: text.exactOptional(),
  street: text.exactOptional(),
  note: text.exactOptional(),
});

const perKind = (value: z.ZodType<number>): z.ZodType<PlanStation['tables']> =>
  z.strictObject({ gel: value.exactOptional(), sportsDrink: value.exactOptional(), water: value.exactOptional() });

const items: z.ZodType<PlanStation['items']> = z.strictObject(
  Object.fromEntries(ITEM_KINDS.map((kind) => [kind, placed.exactOptional()])),
);

export const stationSchema: z.ZodType<StationDraft> = z
  .strictObject({
    id,
    name: text.exactOptional(),
    at: pair.exactOptional(),
    on: z
      .strictObject({ course: words, measure: length(...ALONG), side, offset: length(0, 10_000).exactOptional() })
      .exactOptional(),
    side: side.exactOptional(),
    lead: passChoice.exactOptional(),
    races: z.array(words).min(1).exactOptional(),
    passes: z
      .union([z.enum(['lead', 'all']), z.array(passChoice).min(1)], {
        error: (issue) => carriedValue(issue.input, { kind: 'passes' }),
      })
      .default('lead'),
    serves: z
      .array(z.enum(['gel', 'sportsDrink', 'water']))
      .min(1)
      .default(['sportsDrink', 'water']),
    tables: perKind(count(0, MOST_TABLES)).default({}),
    boxes: count(0, MOST_BOXES).exactOptional(),
    width: length(...WIDE).exactOptional(),
    street: text.exactOptional(),
    fixed: z.boolean().default(false),
    why: text.exactOptional(),
    walked: z.strictObject({ by: words, date: date.exactOptional() }).exactOptional(),
    practice: practiceOverrides.default({}),
    supplies: suppliesOverrides.default({}),
    crew: crewOverrides.default({}),
    items: items.default({}),
    points: z.array(point).default([]),
    people: z
      .strictObject({ captain: text.exactOptional(), radio: text.exactOptional(), phone: text.exactOptional() })
      .default({}),
    note: text.exactOptional(),
    used: perKind(amount(0, 10_000_000)).exactOptional(),
  })
  .meta({ oneOf: [{ required: ['at'] }, { required: ['on'] }] })
  .transform((station) => ({ ...station, name: station.name ?? station.id }));
