/** What a plan holds of the year around race day, as zod schemas. */
import * as z from 'zod';
import { amount, clock, positiveCount, share, text, words } from './fields.ts';
import type { PlanWeather } from './weather.ts';
import { MOST_DAYS, PRICED, type PlanPerson, type PlanPrices } from './year.ts';

/** Degrees Celsius that a thermometer in the open can show. */
const celsius = z.number().min(-50).max(60);

export const weatherSchema: z.ZodType<readonly PlanWeather[]> = z.array(
  z.strictObject({
    at: clock,
    wbgtC: celsius.exactOptional(),
    airC: celsius.exactOptional(),
    humidity: share.exactOptional(),
    windKmh: z.number().min(0).max(400).exactOptional(),
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
        price: amount,
        sold: positiveCount.default(1),
        leadDays: z.int().min(0).max(MOST_DAYS).exactOptional(),
      }),
    )
    .default([]),
});
