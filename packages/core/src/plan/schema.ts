/**
 * The one schema of a plan, version 1: the file's own shape in, `Plan` (SI units, defaults filled in) out.
 * What needs the files that a plan names (a measure beyond its course) cannot be known here.
 */
import * as z from 'zod';
import { carried } from './carried.ts';
import { consistencyFaults } from './consistency.ts';
import { DEFAULT_CREW, DEFAULT_PRACTICE, DEFAULT_SUPPLIES, DEFAULT_VEHICLE } from './defaults.ts';
import {
  amount,
  clock,
  count,
  date,
  duration,
  id,
  language,
  length,
  pair,
  path,
  text,
  timeZone,
  words,
} from './fields.ts';
import type { Plan, PlanStation, PlanVehicle, PlanWeather, Practice, Supplies } from './plan.ts';
import { ALONG, TASK } from './ranges.ts';
import { referenceFaults } from './references.ts';
import { courseSchema, raceSchema } from './schemaCourse.ts';
import { crewSchema, practiceSchema, suppliesSchema } from './schemaRules.ts';
import { stationSchema, type StationDraft } from './schemaStation.ts';
import { peopleSchema, pricesSchema, weatherSchema } from './schemaYear.ts';
import { heatOfWeather } from './weather.ts';

const zone = z.strictObject({
  name: text.default(''),
  rule: z.enum(['keep-clear', 'allowed']),
  polygon: z.array(pair).min(3),
});

const vehicle: z.ZodType<PlanVehicle> = z
  .strictObject({
    id,
    name: text.exactOptional(),
    kg: amount(0.1, 100_000).default(DEFAULT_VEHICLE.kg),
    places: count(0, 1000).default(DEFAULT_VEHICLE.places),
    kmh: amount(1, 500).default(DEFAULT_VEHICLE.kmh),
    stop: duration(...TASK).exactOptional(),
    unload: amount(0.1, 100_000).exactOptional(),
    standBy: z.boolean().exactOptional(),
    from: clock.default(DEFAULT_VEHICLE.from),
  })
  .transform((one) => ({ ...one, name: one.name ?? one.id }));

const clockTimes = z.strictObject({
  course: words,
  measure: length(...ALONG),
  accessOpens: clock.exactOptional(),
  closes: clock.exactOptional(),
  sweep: clock.exactOptional(),
  reopens: clock.exactOptional(),
});

const waiver = z.strictObject({
  code: words,
  station: words.exactOptional(),
  by: words,
  reason: words,
  date: date.exactOptional(),
  seen: z.record(z.string(), z.union([z.string(), amount(-1e12, 1e12)])).exactOptional(),
});
const contacts = z.strictObject({
  emergency: text.exactOptional(),
  raceControl: text.exactOptional(),
  radioChannel: text.exactOptional(),
});

/** Checked by laying it over its station: see `validate.ts`. */
const variant = z.strictObject({
  name: words,
  stations: z.record(z.string(), z.record(z.string(), z.unknown())).default({}),
});

/** A station given by course and measure stands at the kerb, unless it says how far off. */
function withOffset(station: StationDraft, practice: Practice): PlanStation {
  const { on, ...rest } = station;
  return on === undefined
    ? rest
    : { ...rest, on: { ...on, offset: on.offset ?? station.practice.kerb ?? practice.kerb } };
}

/** The heat of the expected weather, where the supplies say none, neither by name nor by a temperature with its steps. */
function withHeat(supplies: Supplies, weather: readonly PlanWeather[] | undefined): Supplies {
  const { heat, wbgtC, heatSteps } = supplies;
  const found = heatOfWeather(weather);
  const said = heat !== undefined || (wbgtC !== undefined && heatSteps !== undefined);
  return said || found === undefined ? supplies : { ...supplies, heat: found };
}

const planFields = z
  .strictObject({
    format: z.literal('halfcup-plan'),
    version: z.literal(1),
    name: text.default(''),
    revision: text.exactOptional(),
    date: date.exactOptional(),
    timeZone: timeZone.exactOptional(),
    units: z.enum(['metric', 'imperial']).default('metric'),
    language: language.default('en'),
    courses: z.array(courseSchema).min(1),
    races: z.array(raceSchema).min(1),
    stations: z.array(stationSchema),
    zones: z.array(zone).default([]),
    practice: practiceSchema.default(DEFAULT_PRACTICE),
    supplies: suppliesSchema.default(DEFAULT_SUPPLIES),
    crew: crewSchema.default(DEFAULT_CREW),
    vehicles: z.array(vehicle).default([]),
    clock: z.array(clockTimes).default([]),
    contacts: contacts.default({}),
    waivers: z.array(waiver).default([]),
    variants: z.array(variant).default([]),
    context: path.exactOptional(),
    ground: path.exactOptional(),
    weather: weatherSchema.exactOptional(),
    people: peopleSchema.exactOptional(),
    prices: pricesSchema.exactOptional(),
    numbers: z.record(z.string(), count(1, 1_000_000)).exactOptional(),
  })
  .transform((plan) => ({
    ...plan,
    supplies: withHeat(plan.supplies, plan.weather),
    stations: plan.stations.map((station) => withOffset(station, plan.practice)),
  }));

/** Reads a plan's JSON value; issues carry the path of what they are about. */
export const planSchema: z.ZodType<Plan> = planFields.check((context) => {
  for (const { path: place, ...wrong } of [...referenceFaults(context.value), ...consistencyFaults(context.value)])
    context.issues.push({ code: 'custom', message: carried(wrong), path: [...place], input: undefined });
});
