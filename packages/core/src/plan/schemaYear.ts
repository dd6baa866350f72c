/** What a plan holds of the year around race day, as zod schemas. */
import * as z from 'zod';
import { amount, clock, count, share, text, words } from './fields.ts';
import type { PlanWeather } from './weather.ts';
import { MOST_DAYS, PRICED, type PlanPerson, type PlanPrices } from './year.ts';

/** Degrees Celsius that a thermometer in the open can show. */
const celsius = amount(-50, 60);

export const weatherSchema: z.ZodType<readonly PlanWeather[]> = z.array(
  z.strictObject({
    at: clock,
    wbgtC: celsius.exactOptional(),
    airC: celsius.exactOptional(),
    humidity: share.exactOptional(),
    windKmh: amount(0, 400).exactOptional(),
  }),
);

const person: z.ZodType<PlanPerson> = z.strictObject({
  name: words,
  station: words,
  role: text.exactOptional(),
  from: clock.exactOptional(),
  until: clock.exactOptional(),
  phone: text.exactOptional(),
});

export const peopleSchema: z.ZodType<{ readonly crew: readonly PlanPerson[] }> = z.strictObject({
  crew: z.array(person).default([]),
});

export const pricesSchema: z.ZodType<PlanPrices> = z.strictObject({
  currency: text.default(''),
  items: z
    .array(
      z.strictObject({
        kind: z.enum(PRICED),
        price: amount(0, 1_000_000_000),
        sold: count(1, 100_000).default(1),
        leadDays: count(0, MOST_DAYS).exactOptional(),
      }),
    )
    .default([]),
});
