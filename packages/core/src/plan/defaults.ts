/**
 * What a plan gets that says nothing: the house's practice, supplies and crew. Distances of sign,
 * gel, tables and trash are common practice without a source, as is `minSpacing`; `maxSpacing` is of Western Province
 * Athletics' station guide of 2019 (read); the rest are common practice or assumptions, as the papers say of each.
 * All SI: metres, litres, seconds, kilograms.
 */
import { litres, metres } from '../units.ts';
import type { Crew, Heat, Practice, Supplies } from './plan.ts';

export const DEFAULT_PRACTICE: Practice = {
  signAhead: metres(100, 'yd'),
  signTolerance: metres(10, 'yd'),
  gelAhead: metres(25, 'ft'),
  tableGap: metres(10, 'ft'),
  tableLength: metres(6, 'ft'),
  trashFrom: metres(50, 'yd'),
  trashTo: metres(100, 'yd'),
  boxEvery: 20,
  kerb: 4,
  setback: 0.5,
  clearWidth: 3,
  snapRadius: 60,
  pinR95: 5,
  courseR95: 3,
  sideConfidence: 0.95,
  maxSpacing: 5000,
  minSpacing: 1600,
  maxGrade: 0.04,
  bendClear: 30,
  firstAfter: 1200,
  lastBefore: 800,
  tablesRoom: 60,
  placedWithin: 20,
};

export const DEFAULT_SUPPLIES: Supplies = {
  gelOrder: 0.8,
  handOut: 'cups',
  waterShare: 2 / 3,
  take: {},
  waste: 0.15,
  reserve: 0.15,
  cup: litres(7, 'fl oz'),
  fill: 0.5,
  cupsPerLayer: 200,
  layers: 3,
  packs: {
    cups: 100,
    waterJug: litres(1, 'gal'),
    sportsDrinkJug: litres(1, 'gal'),
    gels: 24,
    gloves: 100,
    bags: 50,
    towels: 1,
    stackingSheets: 1,
  },
  weights: { cups: 0.5, waterJug: 3.9, sportsDrinkJug: 3.9, gels: 1, table: 9, sign: 5, box: 1 },
  cupsPerBag: 300,
  cupsPerBox: 300,
  prePourFloor: [0.75, 0.4],
  prePourSafety: 1.25,
};

export const DEFAULT_CREW: Crew = {
  pourRate: 15,
  handRate: 25,
  fromTables: 0.3,
  handSpacing: metres(6, 'ft'),
  gelRate: 12,
  tapTime: 15,
  tableCost: 0.25,
  cleanPer: 2000,
  ready: 30 * 60,
  setUp: 60 * 60,
  pourWithin: 60 * 60,
  breakDown: 45 * 60,
  breakDownTable: 60,
  minimum: 2,
  longest: 6 * 3600,
};

/** What a vehicle is taken to be that says nothing of itself. */
export const DEFAULT_VEHICLE: {
  readonly kg: number;
  readonly places: number;
  readonly kmh: number;
  readonly unload: number;
  readonly from: number;
} = {
  kg: 1500,
  places: 6,
  kmh: 25,
  unload: 30,
  from: 0,
};

/**
 * Litres that a runner drinks in an hour, by heat: the range of 0.4 to 0.8 l/h is of the American College of Sports
 * Medicine's position stand of 2007, cited second-hand; that its ends go with cool and hot is an assumption.
 */
export const DRINK_RATE: Readonly<Record<Heat, number>> = { cool: 0.4, warm: 0.6, hot: 0.8 };

/** Gels a runner takes at a station that has some: common practice, no source. */
export const GEL_TAKE = 0.6;
