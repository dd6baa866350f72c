/** What a plan holds of the year around race day, as zod schemas. */
import * as z from 'zod';
import { clock, share } from './fields.ts';
import type { PlanWeather } from './weather.ts';

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
