/**
 * The supply order: whole packs of all stations at the plan's prices, and the last day to order each. What is ordered should be
 * there the day before the race (an assumption, printed with the order); lead times are whole calendar days.
 */
import type { Plan } from '../plan/plan.ts';
import { isPlan } from '../plan/shapes.ts';
import { type Shape, aDate, aText, finite, listOf, maybe, recordOf, want } from '../wants.ts';
import type { Pack, RaceDay } from './day.ts';

/** Days before the race on which everything should be there: an assumption. */
export const DELIVERED_BEFORE = 1;

/** One thing that is ordered. */
export interface OrderLine {
  /** What all stations need of it. */
  readonly pack: Pack;
  /** Packs to order: no fewer than are needed, and as many as are sold together, or a multiple of that. */
  readonly ordered: number;
  /** Of one pack, in the plan's currency; `null` where the plan has none. */
  readonly price: number | null;
  readonly cost: number | null;
  /** Days from the order to the delivery; `null` where the plan does not say. */
  readonly leadDays: number | null;
  /** Last day to order it, ISO 8601; `null` without a date of the race or a lead time. */
  readonly orderBy: string | null;
}

/** The order of a whole race day. */
export interface SupplyOrder {
  readonly currency: string;
  /** What is to be ordered first stands first; then as the supply list has it. */
  readonly lines: readonly OrderLine[];
  /** Of the lines that have a price. */
  readonly total: number;
  /** Lines without a price. */
  readonly unpriced: number;
  /** ISO 8601; `null` without a date of the race. */
  readonly deliverBy: string | null;
}

const hasTotals: Shape = recordOf('a race day', {
  totals: recordOf('totals', {
    packs: listOf(recordOf('a pack', { kind: aText, need: finite, pack: finite, count: finite })),
  }),
});

const DAY = 24 * 3600 * 1000;

/** The day so many days before another. */
const daysBefore = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) - days * DAY).toISOString().slice(0, 10);

/** Cents have no fractions. */
const cents = (amount: number): number => Math.round(amount * 100) / 100;

/**
 * The order for a race day at the plan's `prices`; papers are printed, not ordered.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { supplyOrder } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run", "date": "2027-09-12",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier", "waves": [{ "time": "08:00", "entrants": 400 }], "finish": { "median": "50 min", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004], "serves": ["gel"], "supplies": { "gelOrder": 1 } }],
 *   "prices": { "currency": "EUR", "items": [{ "kind": "gels", "price": 19.5, "sold": 10, "leadDays": 14 }] }
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const analysed = analyse(read.value.plan, { gpx: new Map() });
 * if (!analysed.ok) throw new Error(analysed.findings[0]?.message);
 * const [first] = supplyOrder(read.value.plan, analysed.value.day!).lines;
 * first?.pack.count; // → 15
 * first?.ordered; // → 20
 * first?.cost; // → 390
 * first?.orderBy; // → '2027-08-28'
 * ```
 */
export function supplyOrder(plan: Plan, day: Pick<RaceDay, 'totals'>): SupplyOrder {
  want('supplyOrder', 'plan', isPlan, plan);
  want('supplyOrder', 'plan.date', maybe(aDate), plan.date);
  want('supplyOrder', 'day', hasTotals, day);
  const lines = day.totals.packs.filter(({ kind }) => kind !== 'instructions').map((pack) => lineOf(plan, pack));
  const last = '9999-12-31';
  return {
    currency: plan.prices?.currency ?? '',
    lines: lines.toSorted((a, b) => (a.orderBy ?? last).localeCompare(b.orderBy ?? last)),
    total: cents(lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0)),
    unpriced: lines.filter(({ price }) => price === null).length,
    deliverBy: plan.date === undefined ? null : daysBefore(plan.date, DELIVERED_BEFORE),
  };
}

function lineOf({ prices, date }: Plan, pack: Pack): OrderLine {
  const found = prices?.items.find(({ kind }) => kind === pack.kind);
  const sold = found?.sold ?? 1;
  const ordered = Math.ceil(pack.count / sold) * sold;
  const leadDays = found?.leadDays ?? null;
  return {
    pack,
    ordered,
    price: found?.price ?? null,
    cost: found === undefined ? null : cents(ordered * found.price),
    leadDays,
    orderBy: date === undefined || leadDays === null ? null : daysBefore(date, DELIVERED_BEFORE + leadDays),
  };
}
