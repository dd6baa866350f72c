/**
 * Take rates learnt from what was counted after the day: each kind's rates are scaled by what was used over what
 * the plan reckoned, summed over the stations that counted. A plan whose counts are its own sums learns the rates
 * that it has. Counted cups include the spilt ones, so waste is taken out of them as it is put in.
 */
import { findById } from '../plan/lookups.ts';
import type { Division, Plan, Served, TakeRates } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import { takeRates, type Heads } from './cups.ts';
import type { StationDay } from './day.ts';
import { type Shape, aText, finite, listOf, recordOf, want } from '../wants.ts';
import { isPlan } from '../plan/shapes.ts';

/** Take rates learnt from a day, and from what. */
export interface Learnt {
  /** Pieces an arrival, of the divisions that came and the kinds that were counted. */
  readonly take: { readonly [division in Division]?: TakeRates };
  /** For each kind that was counted: pieces used and reckoned, the one over the other, and the stations that counted. */
  readonly basis: readonly {
    readonly kind: Served;
    readonly used: number;
    readonly reckoned: number;
    readonly factor: number;
    readonly stations: readonly string[];
    /** How much the stations differ; `null` where one alone has counted. */
    readonly spread: Spread | null;
    /** Each station that counted. */
    readonly each: readonly { readonly station: string; readonly used: number; readonly reckoned: number }[];
  }[];
}

/** How much used over reckoned differs between stations. */
export interface Spread {
  /** Of the station with the lowest factor. */
  readonly low: number;
  /** Of the station with the highest factor. */
  readonly high: number;
  /** Standard error of the factor, by which a station weighs as much as it was reckoned to take. */
  readonly error: number;
}

/** The part of a station's day that counts heads. */
export interface DayHeads {
  readonly id: string;
  readonly races: readonly Pick<StationDay['races'][number], 'race' | 'arrivals'>[];
}

const isDayHeads: Shape = recordOf<DayHeads>('a day of a station', {
  id: aText,
  races: listOf(recordOf('arrivals', { race: aText, arrivals: finite })),
});

const headsOfDay = (plan: Plan, day: DayHeads): Heads[] =>
  day.races.flatMap(({ race, arrivals }) =>
    plan.races.filter(({ id }) => id === race).map(({ division }) => ({ division, count: arrivals })),
  );

const KINDS: readonly Served[] = ['gel', 'sportsDrink', 'water'];

/** What the plan reckoned to be taken of a kind at one station, waste included for cups. */
function reckonedAt(plan: Plan, day: DayHeads, kind: Served): number {
  const station = findById(plan.stations, day.id);
  if (station === undefined) return 0;
  const supplies = suppliesOf(plan, station);
  const taken = headsOfDay(plan, day).reduce(
    (sum, { division, count }) => sum + count * takeRates(supplies, division)[kind],
    0,
  );
  return kind === 'gel' ? taken : taken * (1 + supplies.waste);
}

/**
 * Range and standard error of a ratio of sums, √(n ÷ (n − 1) × Σ(used − factor × reckoned)²) ÷ Σ reckoned: the ratio estimator of
 * sampling, as D. Patterson's `ratio.est` (University of Montana, course 549, read) has it, of a sample from many stations.
 */
function spreadOf(counted: readonly { readonly used: number; readonly reckoned: number }[]): Spread | null {
  const n = counted.length;
  if (n < 2) return null;
  const sum = (of: (one: { readonly used: number; readonly reckoned: number }) => number): number =>
    counted.reduce((total, one) => total + of(one), 0);
  const reckoned = sum((one) => one.reckoned);
  const factor = sum(({ used }) => used) / reckoned;
  const squares = sum((one) => (one.used - factor * one.reckoned) ** 2);
  const factors = counted.map((one) => one.used / one.reckoned);
  return {
    low: Math.min(...factors),
    high: Math.max(...factors),
    error: Math.sqrt((n / (n - 1)) * squares) / reckoned,
  };
}

/**
 * Rates for the plan's `supplies.take`, from each station's `used` and its day's arrivals; nothing where none was counted.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { learnRates } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier", "waves": [{ "time": "08:00", "entrants": 400 }], "finish": { "median": "50 min", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004], "used": { "water": 450 } }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const learnt = learnRates(plan, [{ id: 's1', races: [{ race: 'run', arrivals: 360 }] }]);
 * learnt.take; // → { run: { water: 1.087 } }
 * learnt.basis.map(({ kind, used, reckoned }) => ({ kind, used, reckoned })); // → [{ kind: 'water', used: 450, reckoned: 496.8 }]
 * ```
 */
export function learnRates(plan: Plan, days: readonly DayHeads[]): Learnt {
  want('learnRates', 'plan', isPlan, plan);
  want('learnRates', 'days', listOf(isDayHeads), days);
  const basis = KINDS.flatMap((kind) => {
    const counted = days.flatMap((day) => {
      const station = findById(plan.stations, day.id);
      const used = station?.serves.includes(kind) === true ? station.used?.[kind] : undefined;
      const reckoned = reckonedAt(plan, day, kind);
      return used === undefined || reckoned === 0 ? [] : [{ station: day.id, used, reckoned }];
    });
    if (counted.length === 0) return [];
    const used = counted.reduce((sum, one) => sum + one.used, 0);
    const reckoned = counted.reduce((sum, one) => sum + one.reckoned, 0);
    const stations = counted.map(({ station }) => station);
    return [{ kind, used, reckoned, factor: used / reckoned, stations, spread: spreadOf(counted), each: counted }];
  });
  const came = new Set(
    days.flatMap((day) => headsOfDay(plan, day).flatMap(({ division, count }) => (count > 0 ? [division] : []))),
  );
  const ratesOf = (division: Division): TakeRates =>
    Object.fromEntries(basis.map(({ kind, factor }) => [kind, takeRates(plan.supplies, division)[kind] * factor]));
  return {
    take: basis.length === 0 ? {} : Object.fromEntries([...came].map((division) => [division, ratesOf(division)])),
    basis,
  };
}
