/** Tables of the year for other tools: the supply order, and the crew that each station needs by the hour. No names of people. */
import { nameById } from '../plan/lookups.ts';
import type { Plan } from '../plan/plan.ts';
import { isPlan } from '../plan/shapes.ts';
import type { RaceDay, StationDay } from '../raceday/day.ts';
import { supplyOrder } from '../raceday/supplyOrder.ts';
import { formatMinute } from '../format.ts';
import { textOf } from '../text/languages.ts';
import { suppliesText } from '../text/supplyWords.ts';
import { isRaceDay } from '../raceday/shapes.ts';
import { aText, maybe, want } from '../wants.ts';
import { type CsvCell, csvText } from './csvText.ts';

const rounded = (value: number): number => Number(value.toFixed(3));

/**
 * The supply order (CSV, RFC 4180), what is to be ordered first on top: packs needed and ordered, pieces or litres in a pack,
 * price of a pack, cost, currency, days of delivery, last day to order (ISO 8601). `language`: BCP 47, absent: the plan's.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { orderCsv } from '@halfcup/core/papers';
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
 * orderCsv(read.value.plan, analysed.value.day!).split('\r\n')[1]; // → 'Boxes of gels,15,20,24,19.5,390,EUR,14,2027-08-28'
 * ```
 */
export function orderCsv(plan: Plan, day: RaceDay, language?: string): string {
  want('orderCsv', 'plan', isPlan, plan);
  want('orderCsv', 'day', isRaceDay, day);
  want('orderCsv', 'language', maybe(aText), language);
  const { text } = textOf(language ?? plan.language);
  const { lines, currency } = supplyOrder(plan, day);
  return csvText([
    text.year.order.heads,
    ...lines.map(({ pack, ordered, price, cost, leadDays, orderBy }): CsvCell[] => [
      suppliesText(pack, text.frame.supplies),
      pack.count,
      ordered,
      rounded(pack.pack),
      price,
      cost,
      currency,
      leadDays,
      orderBy,
    ]),
  ]);
}

const HOUR = 3600;

/**
 * People needed at each station by clock hour, from when the crew comes until all is packed (CSV, RFC 4180): arrivals in
 * that hour, and people by task. `language`: BCP 47, absent: the plan's.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { crewCsv } from '@halfcup/core/papers';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier", "waves": [{ "time": "08:00", "entrants": 400 }], "finish": { "median": "50 min", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "name": "Pier", "at": [-30.06, 12.20004] }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const analysed = analyse(read.value.plan, { gpx: new Map() });
 * if (!analysed.ok) throw new Error(analysed.findings[0]?.message);
 * crewCsv(read.value.plan, analysed.value.day!).split('\r\n')[0]; // → 'station,name,from,until,arrivals,captain,pouring,handing out cups,handing out gels,cleaning up,people'
 * ```
 */
export function crewCsv(plan: Plan, day: RaceDay, language?: string): string {
  want('crewCsv', 'plan', isPlan, plan);
  want('crewCsv', 'day', isRaceDay, day);
  want('crewCsv', 'language', maybe(aText), language);
  const { year } = textOf(language ?? plan.language).text;
  return csvText([[year.station, year.name, ...year.crewHeads], ...day.stations.flatMap((own) => hoursOf(plan, own))]);
}

function hoursOf(plan: Plan, own: StationDay): CsvCell[][] {
  const { crewAt, crew } = own;
  const ends = own.packedAt ?? own.openUntil;
  if (crewAt === null || ends === null) return [];
  const first = Math.floor(crewAt / HOUR);
  const count = Math.max(1, Math.ceil(ends / HOUR) - first);
  return Array.from({ length: count }, (_, k): CsvCell[] => {
    const [from, until] = [(first + k) * HOUR, (first + k + 1) * HOUR];
    const arrivals = own.perMinute
      .filter(([at]) => at >= from && at < until)
      .reduce((sum, [, counts]) => sum + Object.values(counts).reduce((all, one) => all + one, 0), 0);
    return [
      own.id,
      nameById(plan.stations, own.id),
      formatMinute(Math.max(from, crewAt)),
      formatMinute(Math.min(until, ends)),
      arrivals,
      crew.captain,
      crew.pour,
      crew.handOut,
      crew.gel,
      crew.clean,
      crew.total,
    ];
  });
}
