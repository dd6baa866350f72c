/** The house's rules in a plan, as zod schemas: practice, supplies, crew. A plan's own are filled with defaults, a station's are overrides. */
import * as z from 'zod';
import { DEFAULT_CREW, DEFAULT_PRACTICE, DEFAULT_SUPPLIES } from './defaults.ts';
import {
  amount,
  count,
  duration,
  length,
  mass,
  positiveAmount,
  positiveCount,
  positiveDuration,
  positiveLength,
  positiveVolume,
  share,
  words,
} from './fields.ts';
import type { Crew, Practice, Supplies, SuppliesOverride, TakeRates } from './plan.ts';
import { overCrew, overPractice, overSupplies } from './practice.ts';

export const practiceOverrides: z.ZodType<Partial<Practice>> = z.strictObject({
  signAhead: length.exactOptional(),
  signTolerance: length.exactOptional(),
  gelAhead: length.exactOptional(),
  tableGap: length.exactOptional(),
  tableLength: positiveLength.exactOptional(),
  trashFrom: length.exactOptional(),
  trashTo: length.exactOptional(),
  boxEvery: positiveLength.exactOptional(),
  kerb: length.exactOptional(),
  setback: length.exactOptional(),
  clearWidth: length.exactOptional(),
  snapRadius: positiveLength.exactOptional(),
  pinR95: positiveLength.exactOptional(),
  courseR95: positiveLength.exactOptional(),
  sideConfidence: z.number().min(0.5).max(1).exactOptional(),
  maxSpacing: positiveLength.exactOptional(),
  minSpacing: length.exactOptional(),
  maxGrade: amount.exactOptional(),
  bendClear: length.exactOptional(),
  firstAfter: length.exactOptional(),
  lastBefore: length.exactOptional(),
  tablesRoom: positiveLength.exactOptional(),
  placedWithin: length.exactOptional(),
});

const takeRates: z.ZodType<TakeRates> = z.strictObject({
  water: amount.exactOptional(),
  sportsDrink: amount.exactOptional(),
  gel: amount.exactOptional(),
});

const packs = z.strictObject({
  cups: positiveCount.exactOptional(),
  waterJug: positiveVolume.exactOptional(),
  sportsDrinkJug: positiveVolume.exactOptional(),
  gels: positiveCount.exactOptional(),
  gloves: positiveCount.exactOptional(),
  bags: positiveCount.exactOptional(),
  towels: positiveCount.exactOptional(),
  stackingSheets: positiveCount.exactOptional(),
});

const weights: z.ZodType<Supplies['weights']> = z.strictObject({
  cups: mass.exactOptional(),
  waterJug: mass.exactOptional(),
  sportsDrinkJug: mass.exactOptional(),
  gels: mass.exactOptional(),
  gloves: mass.exactOptional(),
  bags: mass.exactOptional(),
  towels: mass.exactOptional(),
  stackingSheets: mass.exactOptional(),
  table: mass.exactOptional(),
  sign: mass.exactOptional(),
  box: mass.exactOptional(),
});

const names: z.ZodType<readonly string[]> = z.array(words).min(1);

/** Degrees Celsius that a wet-bulb globe thermometer can show. */
const wbgt = z.number().min(-50).max(60);

export const suppliesOverrides: z.ZodType<SuppliesOverride> = z.strictObject({
  heat: z.enum(['cool', 'warm', 'hot']).exactOptional(),
  wbgtC: wbgt.exactOptional(),
  heatSteps: z.tuple([wbgt, wbgt]).exactOptional(),
  gelOrder: amount.exactOptional(),
  handOut: z.enum(['cups', 'bottles']).exactOptional(),
  flavours: z.strictObject({ sportsDrink: names.exactOptional(), gel: names.exactOptional() }).exactOptional(),
  drinkRate: positiveAmount.exactOptional(),
  waterShare: share.exactOptional(),
  take: z
    .strictObject({
      run: takeRates.exactOptional(),
      walk: takeRates.exactOptional(),
      wheels: takeRates.exactOptional(),
    })
    .exactOptional(),
  waste: amount.exactOptional(),
  reserve: amount.exactOptional(),
  cup: positiveVolume.exactOptional(),
  fill: z.number().gt(0).max(1).exactOptional(),
  cupsPerLayer: positiveCount.exactOptional(),
  layers: positiveCount.exactOptional(),
  packs: packs.exactOptional(),
  weights: weights.exactOptional(),
  cupsPerBag: positiveAmount.exactOptional(),
  cupsPerBox: positiveAmount.exactOptional(),
  resupply: z.strictObject({ at: share, takes: duration }).exactOptional(),
  prePourFloor: z.tuple([share, share]).exactOptional(),
  prePourSafety: z.number().min(1).exactOptional(),
});

export const crewOverrides: z.ZodType<Partial<Crew>> = z.strictObject({
  pourers: count.exactOptional(),
  pourRate: positiveAmount.exactOptional(),
  handRate: positiveAmount.exactOptional(),
  fromTables: share.exactOptional(),
  handSpacing: length.exactOptional(),
  gelRate: positiveAmount.exactOptional(),
  tapTime: positiveDuration.exactOptional(),
  tableCost: amount.exactOptional(),
  cleanPer: positiveAmount.exactOptional(),
  ready: duration.exactOptional(),
  setUp: duration.exactOptional(),
  pourWithin: positiveDuration.exactOptional(),
  breakDown: duration.exactOptional(),
  breakDownTable: duration.exactOptional(),
  minimum: count.exactOptional(),
  longest: positiveDuration.exactOptional(),
});

export const practiceSchema: z.ZodType<Practice> = practiceOverrides.transform((over) =>
  overPractice(DEFAULT_PRACTICE, over),
);
export const suppliesSchema: z.ZodType<Supplies> = suppliesOverrides.transform((over) =>
  overSupplies(DEFAULT_SUPPLIES, over),
);
export const crewSchema: z.ZodType<Crew> = crewOverrides.transform((over) => overCrew(DEFAULT_CREW, over));
