/**
 * Rates learnt from what was counted after the day: what was used over what the plan reckoned, summed over the stations
 * that counted, scales the litres an hour that runners drink and the gels that they take. A plan whose counts are its own sums learns the rates
 * that it has. Counted cups include the spilt ones, so waste is taken out of them as it is put in.
 */
import { findById } from '../plan/lookups.ts';
import type { Division, Plan, Served, TakeRates } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import type { StationDay } from './day.ts';
import { ASSUMED_LEG, drinkRate, takeOf } from './take.ts';
import { type Shape, aText, finite, listOf, recordOf, want } from '../wants.ts';
import { isPlan } from '../plan/shapes.ts';

/** Take rates learnt from a day, and from what. */
export interface Learnt {
  /** Pieces an arrival, of the divisions that came and the kinds that were counted. */
  readonly take: { readonly [division in Division]?: TakeRates };
  /** Litres an hour for `supplies.drinkRate`; absent where no drink was counted. */
  readonly drinkRate?: number;
  /** For `supplies.waterShare`; absent where no station that hands out both drinks counted both. */
  readonly waterShare?: number;
  /** For each kind that was counted: pieces used and reckoned, the one over the other, and the stations that counted. */
  readonly basis: readonly {
    readonly kind: Served;
    readonly used: number;
    readonly reckoned: number;
    readonly factor: number;
    readonly stations: readonly string[];
  }[];
}

/** The part of a station's day that counts heads. */
export interface DayHeads {
  readonly id: string;
  readonly races: readonly Pick<StationDay['races'][number], 'race' | 'arrivals' | 'take'>[];
}

const isDayHeads: Shape = recordOf<DayHeads>('a day of a station', {
  id: aText,
  races: listOf(recordOf('arrivals', { race: aText, arrivals: finite })),
});

const KINDS: readonly Served[] = ['gel', 'sportsDrink', 'water'];

/** Arrivals of a division at a station, and what one of them is reckoned to take. */
interface Came {
  readonly division: Division;
  readonly count: number;
  readonly take: { readonly [kind in Served]: number };
}

function cameOf(plan: Plan, day: DayHeads): Came[] {
  const station = findById(plan.stations, day.id);
  if (station === undefined) return [];
  return day.races.flatMap(({ race, arrivals, take }) =>
    plan.races
      .filter(({ id }) => id === race)
      .map(({ division }) => {
        const { cups, gels } = takeOf(suppliesOf(plan, station), station.serves, division, ASSUMED_LEG);
        return { division, count: arrivals, take: take ?? { ...cups, gel: gels } };
      }),
  );
}

/** What the plan reckoned to be taken of a kind at one station, waste included for cups. */
function reckonedAt(plan: Plan, day: DayHeads, kind: Served): number {
  const station = findById(plan.stations, day.id);
  if (station === undefined) return 0;
  const taken = cameOf(plan, day).reduce((sum, { count, take }) => sum + count * take[kind], 0);
  return kind === 'gel' ? taken : taken * (1 + suppliesOf(plan, station).waste);
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
 * learnt.basis.map(({ kind, used, reckoned }) => ({ kind, used, reckoned })); // → [{ kind: 'water', used: 450, reckoned: 533.2954 }]
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
    return [{ kind, used, reckoned, factor: used / reckoned, stations: counted.map(({ station }) => station) }];
  });
  if (basis.length === 0) return { take: {}, basis };
  const came = days.flatMap((day) => cameOf(plan, day)).filter(({ count }) => count > 0);
  const meanOf = (division: Division, kind: Served): number => {
    const own = came.filter((one) => one.division === division && one.take[kind] > 0);
    const heads = own.reduce((sum, { count }) => sum + count, 0);
    return heads === 0 ? 0 : own.reduce((sum, { count, take }) => sum + count * take[kind], 0) / heads;
  };
  const ratesOf = (division: Division): TakeRates =>
    Object.fromEntries(basis.map(({ kind, factor }) => [kind, meanOf(division, kind) * factor]));
  const divisions = [...new Set(came.map(({ division }) => division))];
  return {
    take: Object.fromEntries(divisions.map((division) => [division, ratesOf(division)])),
    ...drinkOf(plan, basis),
    basis,
  };
}

/** The litres an hour that the counted drinks tell, and water's share of them. */
function drinkOf(plan: Plan, basis: Learnt['basis']): Pick<Learnt, 'drinkRate' | 'waterShare'> {
  const drinks = basis.filter(({ kind }) => kind !== 'gel');
  if (drinks.length === 0) return {};
  const sum = (of: (one: Learnt['basis'][number]) => number): number =>
    drinks.reduce((total, one) => total + of(one), 0);
  const rate = drinkRate(plan.supplies) * (sum(({ used }) => used) / sum(({ reckoned }) => reckoned));
  const { waterShare } = plan.supplies;
  const factorOf = (kind: Served): number | undefined => drinks.find((one) => one.kind === kind)?.factor;
  const [water, sports] = [factorOf('water'), factorOf('sportsDrink')];
  if (water === undefined || sports === undefined) return { drinkRate: rate };
  return {
    drinkRate: rate,
    waterShare: (waterShare * water) / (waterShare * water + (1 - waterShare) * sports),
  };
}
