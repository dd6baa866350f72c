/** The house's rules in a plan, as zod schemas: practice, supplies, crew. A plan's own are filled with defaults, a station's are overrides. */
import * as z from 'zod';
import { DEFAULT_CREW, DEFAULT_PRACTICE, DEFAULT_SUPPLIES } from './defaults.ts';
import { amount, count, duration, length, mass, share, volume, words } from './fields.ts';
import type { Crew, Practice, Supplies, SuppliesOverride, TakeRates } from './plan.ts';
import { ACROSS, LEG, NEAR, TASK } from './ranges.ts';
import { overCrew, overPractice, overSupplies } from './practice.ts';

export const practiceOverrides: z.ZodType<Partial<Practice>> = z.strictObject({
  signAhead: length(...NEAR).exactOptional(),
  signTolerance: length(...NEAR).exactOptional(),
  gelAhead: length(...NEAR).exactOptional(),
  tableGap: length(...NEAR).exactOptional(),
  tableLength: length(0.1, 100).exactOptional(),
  trashFrom: length(...NEAR).exactOptional(),
  trashTo: length(...NEAR).exactOptional(),
  boxEvery: length(0.01, 10_000).exactOptional(),
  kerb: length(...ACROSS).exactOptional(),
  setback: length(...ACROSS).exactOptional(),
  clearWidth: length(...ACROSS).exactOptional(),
  snapRadius: length(0.1, 10_000).exactOptional(),
  pinR95: length(0.01, 1000).exactOptional(),
  courseR95: length(0.01, 1000).exactOptional(),
  sideConfidence: amount(0.5, 1).exactOptional(),
  maxSpacing: length(1, LEG[1]).exactOptional(),
  minSpacing: length(...LEG).exactOptional(),
  maxGrade: amount(0, 10).exactOptional(),
  bendClear: length(...NEAR).exactOptional(),
  firstAfter: length(...LEG).exactOptional(),
  lastBefore: length(...LEG).exactOptional(),
  tablesRoom: length(0.1, 10_000).exactOptional(),
  placedWithin: length(...NEAR).exactOptional(),
});

const takeRates: z.ZodType<TakeRates> = z.strictObject({
  water: amount(0, 100).exactOptional(),
  sportsDrink: amount(0, 100).exactOptional(),
  gel: amount(0, 100).exactOptional(),
});

const packs = z.strictObject({
  cups: count(1, 100_000).exactOptional(),
  waterJug: volume(0.01, 10_000).exactOptional(),
  sportsDrinkJug: volume(0.01, 10_000).exactOptional(),
  gels: count(1, 100_000).exactOptional(),
  gloves: count(1, 100_000).exactOptional(),
  bags: count(1, 100_000).exactOptional(),
  towels: count(1, 100_000).exactOptional(),
  stackingSheets: count(1, 100_000).exactOptional(),
});

const weights: z.ZodType<Supplies['weights']> = z.strictObject({
  cups: mass(0, 10_000).exactOptional(),
  waterJug: mass(0, 10_000).exactOptional(),
  sportsDrinkJug: mass(0, 10_000).exactOptional(),
  gels: mass(0, 10_000).exactOptional(),
  gloves: mass(0, 10_000).exactOptional(),
  bags: mass(0, 10_000).exactOptional(),
  towels: mass(0, 10_000).exactOptional(),
  stackingSheets: mass(0, 10_000).exactOptional(),
  table: mass(0, 10_000).exactOptional(),
  sign: mass(0, 10_000).exactOptional(),
  box: mass(0, 10_000).exactOptional(),
});

const names: z.ZodType<readonly string[]> = z.array(words).min(1);

/** Degrees Celsius that a wet-bulb globe thermometer can show. */
const wbgt = amount(-50, 60);

export const suppliesOverrides: z.ZodType<SuppliesOverride> = z.strictObject({
  heat: z.enum(['cool', 'warm', 'hot']).exactOptional(),
  wbgtC: wbgt.exactOptional(),
  heatSteps: z.tuple([wbgt, wbgt]).exactOptional(),
  gelOrder: amount(0, 100).exactOptional(),
  handOut: z.enum(['cups', 'bottles']).exactOptional(),
  flavours: z.strictObject({ sportsDrink: names.exactOptional(), gel: names.exactOptional() }).exactOptional(),
  drinkRate: amount(0.001, 100).exactOptional(),
  waterShare: share.exactOptional(),
  take: z
    .strictObject({
      run: takeRates.exactOptional(),
      walk: takeRates.exactOptional(),
      wheels: takeRates.exactOptional(),
    })
    .exactOptional(),
  waste: amount(0, 10).exactOptional(),
  reserve: amount(0, 10).exactOptional(),
  cup: volume(0.001, 10).exactOptional(),
  fill: amount(0.01, 1).exactOptional(),
  cupsPerLayer: count(1, 10_000).exactOptional(),
  layers: count(1, 100).exactOptional(),
  packs: packs.exactOptional(),
  weights: weights.exactOptional(),
  cupsPerBag: amount(1, 1_000_000).exactOptional(),
  cupsPerBox: amount(1, 1_000_000).exactOptional(),
  resupply: z.strictObject({ at: share, takes: duration(...TASK) }).exactOptional(),
  prePourFloor: z.tuple([share, share]).exactOptional(),
  prePourSafety: amount(1, 100).exactOptional(),
});

export const crewOverrides: z.ZodType<Partial<Crew>> = z.strictObject({
  pourers: count(0, 10_000).exactOptional(),
  pourRate: amount(0.1, 10_000).exactOptional(),
  handRate: amount(0.1, 10_000).exactOptional(),
  fromTables: share.exactOptional(),
  handSpacing: length(0, 100).exactOptional(),
  gelRate: amount(0.1, 10_000).exactOptional(),
  tapTime: duration(1, 3600).exactOptional(),
  tableCost: amount(0, 1000).exactOptional(),
  cleanPer: amount(1, 1_000_000).exactOptional(),
  ready: duration(...TASK).exactOptional(),
  setUp: duration(...TASK).exactOptional(),
  pourWithin: duration(60, TASK[1]).exactOptional(),
  breakDown: duration(...TASK).exactOptional(),
  breakDownTable: duration(0, 3600).exactOptional(),
  minimum: count(0, 10_000).exactOptional(),
  longest: duration(600, TASK[1]).exactOptional(),
});

export const practiceSchema: z.ZodType<Practice> = practiceOverrides.transform((over) =>
  overPractice(DEFAULT_PRACTICE, over),
);
export const suppliesSchema: z.ZodType<Supplies> = suppliesOverrides.transform((over) =>
  overSupplies(DEFAULT_SUPPLIES, over),
);
export const crewSchema: z.ZodType<Crew> = crewOverrides.transform((over) => overCrew(DEFAULT_CREW, over));
