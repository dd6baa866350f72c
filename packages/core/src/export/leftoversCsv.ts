/** The leftover form as a table to be filled in: a row a station, in the words of a language of the papers. */
import { LEFT_KEYS } from '../kinds.ts';
import { nameById } from '../plan/lookups.ts';
import type { Plan } from '../plan/plan.ts';
import { isPlan } from '../plan/shapes.ts';
import { type SentDay, isSentDay, leftFields } from '../raceday/leftovers.ts';
import { textOf } from '../text/languages.ts';
import { aText, listOf, maybe, want } from '../wants.ts';
import { csvText } from './csvText.ts';

/**
 * An empty leftover form (CSV, RFC 4180), for `readLeftovers`; columns for what any station was sent. `language`: BCP 47,
 * absent: the plan's.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { leftoversCsv } from '@halfcup/core/papers';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier" }],
 *   "stations": [{ "id": "s1", "name": "Pier", "at": [-30.06, 12.20004], "serves": ["water"] }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const packs = [{ kind: 'waterJug', need: 50, pack: 4, count: 13 }] as const;
 * leftoversCsv(read.value.plan, [{ id: 's1', packs }]); // → 'station,name,water jugs full,water jugs empty\r\ns1,Pier,,\r\n'
 * ```
 */
export function leftoversCsv(plan: Plan, days: readonly SentDay[], language?: string): string {
  want('leftoversCsv', 'plan', isPlan, plan);
  want('leftoversCsv', 'days', listOf(isSentDay), days);
  want('leftoversCsv', 'language', maybe(aText), language);
  const { year } = textOf(language ?? plan.language).text;
  const fields = days.map((day) => new Set(leftFields(day).map(({ key }) => key)));
  const keys = LEFT_KEYS.filter((key) => fields.some((of) => of.has(key)));
  return csvText([
    [year.station, year.name, ...keys.map((key) => year.left[key])],
    ...days.map(({ id }) => [id, nameById(plan.stations, id), ...keys.map(() => null)]),
  ]);
}
