/**
 * Every default of races, supplies, crew and vehicles, with its value, unit and kind of source, for the papers. Values are
 * the ones that the sums use, never copies.
 */
import { DEFAULT_CREW, DEFAULT_SUPPLIES, DEFAULT_VEHICLE, DRINK_RATE, GEL_TAKE } from '../plan/defaults.ts';
import type { Heat } from '../plan/plan.ts';
import { CLOSEST_BOXES, FEWEST_BOXES } from './boxes.ts';
import { ASSUMED_HEAT, ASSUMED_LEG, CUPS_LEAST, CUPS_MOST, WALK_FACTOR, WHEELS_TAKE } from './take.ts';
import { GLOVES_EACH, TOWELS_EACH } from './packs.ts';
import { BUNCHED, SPREAD } from './prePour.ts';
import { STOP_LEAST } from './runs.ts';

export interface DefaultRow {
  /** Where a plan says otherwise: a key of the plan, or `–` where it cannot. */
  readonly key: string;
  readonly what: string;
  /** SI; `null`: there is no default, the plan says it or it has no effect. */
  readonly value: number | string | null;
  readonly unit: string;
  /** The name of a source, or one of the two kinds that have none. */
  readonly source: string;
}

const PRACTICE = 'common practice';
const ASSUMED = 'assumption';

const row = (key: string, what: string, value: DefaultRow['value'], unit: string, source: string): DefaultRow => ({
  key,
  what,
  value,
  unit,
  source,
});

const ACSM = 'American College of Sports Medicine 2007, cited second-hand';

const takeRows: readonly DefaultRow[] = [
  ...(['cool', 'warm', 'hot'] as const satisfies readonly Heat[]).map((heat) =>
    row('supplies.drinkRate', `A runner drinks, ${heat}`, DRINK_RATE[heat], 'l an hour', ACSM),
  ),
  row('–', 'Since the last drink, where arrivals do not say', ASSUMED_LEG, 's', ASSUMED),
  row('–', 'Fewest cups a runner takes at a station', CUPS_LEAST, 'cups', ASSUMED),
  row('–', 'Most cups a runner takes at a station', CUPS_MOST, 'cups', ASSUMED),
  row('supplies.waterShare', 'Water in what is drunk, where both drinks are served', 2 / 3, 'share', PRACTICE),
  row(
    'supplies.take.run.water',
    'Cups of water a runner takes, whatever the time since the last drink',
    null,
    'a runner',
    PRACTICE,
  ),
  row(
    'supplies.take.run.sportsDrink',
    'Cups of sports drink a runner takes, whatever the time since the last drink',
    null,
    'a runner',
    PRACTICE,
  ),
  row('supplies.take.run.gel', 'Gels a runner takes', GEL_TAKE, 'a runner', PRACTICE),
  row('supplies.take.walk', "Walkers' drinks, times what runners take in the same time", WALK_FACTOR, '×', PRACTICE),
  row(
    'supplies.take.wheels',
    'Cups of each drink, and gels, that a wheelchair racer takes',
    WHEELS_TAKE,
    'a racer',
    PRACTICE,
  ),
  row('supplies.flavours', 'Names of what is handed out', null, '', PRACTICE),
  row('supplies.handOut', 'Drinks are handed out', DEFAULT_SUPPLIES.handOut, '', PRACTICE),
];

const { packs, weights, prePourFloor } = DEFAULT_SUPPLIES;

const PACKS: { readonly [key in keyof typeof packs]: readonly [what: string, unit: string] } = {
  cups: ['Cups in a pack', 'cups'],
  waterJug: ['Jug of water', 'l'],
  sportsDrinkJug: ['Jug of sports drink', 'l'],
  gels: ['Gels in a box', 'gels'],
  gloves: ['Gloves in a box', 'gloves'],
  bags: ['Trash bags in a roll', 'bags'],
  towels: ['Towels in a pack', 'towels'],
  stackingSheets: ['Stacking sheets in a pack', 'sheets'],
};

const WEIGHTS: Readonly<Record<string, string>> = {
  cups: 'Pack of cups',
  waterJug: 'Jug of water, full',
  sportsDrinkJug: 'Jug of sports drink, full',
  gels: 'Box of gels',
  table: 'Table',
  sign: 'Sign with its stand',
  box: 'Trash box',
};

const raceRows: readonly DefaultRow[] = [
  row(
    'races.slow',
    'Slowing over the second half, from the fastest pace to the slowest',
    '6 to 40 %, half of it under 30 km',
    'share',
    'open results of a marathon with 31,931 finishers',
  ),
];

const supplyRows: readonly DefaultRow[] = [
  row('supplies.heat', 'Heat level where none is given', ASSUMED_HEAT, '', ASSUMED),
  row('supplies.wbgtC', 'Wet-bulb globe temperature', null, '°C', ASSUMED),
  row('supplies.heatSteps', 'Temperatures from which it is warm, and hot', null, '°C', ASSUMED),
  ...takeRows,
  row('supplies.gelOrder', 'Gels ordered', DEFAULT_SUPPLIES.gelOrder, 'a runner', PRACTICE),
  row('supplies.waste', 'Cups spilt or left, on top', DEFAULT_SUPPLIES.waste, 'share', ASSUMED),
  row(
    'supplies.reserve',
    'Drinks and cups ordered on top of what is needed',
    DEFAULT_SUPPLIES.reserve,
    'share',
    ASSUMED,
  ),
  row('supplies.cup', 'Cup', DEFAULT_SUPPLIES.cup, 'l', PRACTICE),
  row('supplies.fill', 'Filled to', DEFAULT_SUPPLIES.fill, 'share', PRACTICE),
  row('supplies.cupsPerLayer', 'Cups in a layer on a table', DEFAULT_SUPPLIES.cupsPerLayer, 'cups', PRACTICE),
  row('supplies.layers', 'Layers on a table', DEFAULT_SUPPLIES.layers, 'layers', PRACTICE),
  ...Object.entries(PACKS).map(([key, [what, unit]]) =>
    row(`supplies.packs.${key}`, what, packs[key as keyof typeof packs], unit, ASSUMED),
  ),
  ...Object.entries(weights).map(([key, kg]) =>
    row(`supplies.weights.${key}`, `Weight: ${WEIGHTS[key] ?? key}`, kg, 'kg', ASSUMED),
  ),
  row('supplies.weights', 'Weight of anything else', 0, 'kg', ASSUMED),
  row('supplies.cupsPerBag', 'Cups for each trash bag', DEFAULT_SUPPLIES.cupsPerBag, 'cups', PRACTICE),
  row('supplies.cupsPerBox', 'Cups for each trash box', DEFAULT_SUPPLIES.cupsPerBox, 'cups', ASSUMED),
  row('–', 'Fewest trash boxes of a direction', FEWEST_BOXES, 'boxes', ASSUMED),
  row('–', 'Least distance between trash boxes', CLOSEST_BOXES, 'm', ASSUMED),
  row('supplies.resupply', 'Second delivery during the race', null, '', ASSUMED),
  row(
    'supplies.prePourFloor',
    "Poured before the first runner, of the day's cups, where arrivals are bunched",
    prePourFloor[0],
    'share',
    PRACTICE,
  ),
  row(
    'supplies.prePourFloor',
    "Poured before the first runner, of the day's cups, where arrivals are spread",
    prePourFloor[1],
    'share',
    PRACTICE,
  ),
  row('–', 'Bunched: 10 to 90 % of arrivals within', BUNCHED, 's', PRACTICE),
  row('–', 'Spread: 10 to 90 % of arrivals take at least (in proportion between the two)', SPREAD, 's', ASSUMED),
  row(
    'supplies.prePourSafety',
    'Pourers pour so many times slower than their rate while runners come',
    DEFAULT_SUPPLIES.prePourSafety,
    '×',
    ASSUMED,
  ),
];

const crewRows: readonly DefaultRow[] = [
  row('crew.pourers', 'Pourers while runners come: the fewest with whom the cups last', null, 'persons', ASSUMED),
  row('crew.pourRate', 'Cups a person pours', DEFAULT_CREW.pourRate, 'a minute', PRACTICE),
  row('–', 'Who pours before opening', 'all but the captain', '', ASSUMED),
  row('crew.handRate', 'Cups a person hands out', DEFAULT_CREW.handRate, 'a minute', ASSUMED),
  row(
    'crew.fromTables',
    'Cups that runners take from the tables themselves',
    DEFAULT_CREW.fromTables,
    'share',
    ASSUMED,
  ),
  row(
    'crew.handSpacing',
    'Room along the road for each person handing out',
    DEFAULT_CREW.handSpacing,
    'm',
    "a marathon's volunteer instructions: 6 ft",
  ),
  row('crew.tapTime', 'Filling a bottle at a tap', DEFAULT_CREW.tapTime, 's', ASSUMED),
  row('crew.tableCost', 'A table more weighs as much as', DEFAULT_CREW.tableCost, 'persons', ASSUMED),
  row('crew.gelRate', 'Gels a person hands out', DEFAULT_CREW.gelRate, 'a minute', ASSUMED),
  row(
    'crew.cleanPer',
    'Cups on the ground in the busiest hour for each person cleaning up',
    DEFAULT_CREW.cleanPer,
    'cups',
    ASSUMED,
  ),
  row('crew.ready', 'Ready before the first runner', DEFAULT_CREW.ready, 's', PRACTICE),
  row('crew.setUp', 'Set-up, without pouring', DEFAULT_CREW.setUp, 's', PRACTICE),
  row('crew.pourWithin', 'Longest time for pouring before the first runner', DEFAULT_CREW.pourWithin, 's', ASSUMED),
  row('crew.breakDown', 'Breaking down, without the tables', DEFAULT_CREW.breakDown, 's', ASSUMED),
  row('crew.breakDownTable', 'Breaking down each table', DEFAULT_CREW.breakDownTable, 's', ASSUMED),
  row('crew.minimum', 'Smallest crew to open a station', DEFAULT_CREW.minimum, 'persons', ASSUMED),
  row('crew.longest', 'Longest shift', DEFAULT_CREW.longest, 's', ASSUMED),
  row('–', 'Captains', 1, 'persons', PRACTICE),
  row('–', 'Gloves for each person of each shift', GLOVES_EACH, 'gloves', ASSUMED),
  row('–', 'Towels for each drink table', TOWELS_EACH, 'towels', ASSUMED),
];

const vehicleRows: readonly DefaultRow[] = [
  row('vehicles.kg', 'A vehicle carries', DEFAULT_VEHICLE.kg, 'kg', PRACTICE),
  row('vehicles.places', "Stations' loads that a vehicle holds", DEFAULT_VEHICLE.places, 'loads', ASSUMED),
  row('vehicles.kmh', 'Speed along the course', DEFAULT_VEHICLE.kmh, 'km/h', ASSUMED),
  row('vehicles.stop', 'Stop at each station, without the unloading', STOP_LEAST, 's', ASSUMED),
  row('vehicles.unload', 'Loaded or unloaded', DEFAULT_VEHICLE.unload, 'kg a minute', ASSUMED),
  row('vehicles.from', 'Loaded at the start of the course from', DEFAULT_VEHICLE.from, 's', ASSUMED),
];

/** All defaults, in the order of a plan. */
export const DEFAULTS_TABLE: readonly DefaultRow[] = [...raceRows, ...supplyRows, ...crewRows, ...vehicleRows];
