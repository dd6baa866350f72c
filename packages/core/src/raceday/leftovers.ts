/**
 * From what is left at a station after the day to what was used there: the counts under `used` that `learnRates` takes.
 * A jug that is open counts half (an assumption, printed on the form). Cups that are gone are shared between two drinks by
 * the litres of their jugs; where nobody counted cups, litres become cups by the plan's cup and fill.
 */
import { type Finding, type Result, bad, good } from '../finding.ts';
import { LEFT_KEYS, type LeftKey } from '../kinds.ts';
import { byId } from '../plan/lookups.ts';
import type { Plan, Served } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import { isPlan } from '../plan/shapes.ts';
import { foundOf } from '../text/found.ts';
import type { YearParams } from '../text/params/year.ts';
import { type Shape, aText, finite, listOf, maybe, notNegative, partly, recordOf, want } from '../wants.ts';
import type { Pack, StationDay } from './day.ts';
import { writtenNumber } from './namedTable.ts';
import { yearFinding } from './yearFinding.ts';

/** What is left at one station: packs and jugs, and loose pieces; what nobody counted is absent. */
export type LeftCounts = { readonly [key in LeftKey]?: number };

/** Pieces used: cups of each drink, gels. */
export type Used = { readonly [kind in Served]?: number };

/** What was sent to a station. */
export type SentDay = Pick<StationDay, 'id' | 'packs'>;

/** A day of a station with what was sent to it. */
export const isSentDay: Shape = recordOf<SentDay>('a day of a station', {
  id: aText,
  packs: listOf(recordOf('a pack', { kind: aText, pack: finite, count: finite })),
});
const isLeftCounts: Shape = recordOf<LeftCounts>('counts', {
  waterFull: maybe(notNegative),
  waterEmpty: maybe(notNegative),
  sportsDrinkFull: maybe(notNegative),
  sportsDrinkEmpty: maybe(notNegative),
  cupPacks: maybe(notNegative),
  cupsLoose: maybe(notNegative),
  gelBoxes: maybe(notNegative),
  gelsLoose: maybe(notNegative),
});

const SUPPLY = {
  waterFull: 'waterJug',
  waterEmpty: 'waterJug',
  sportsDrinkFull: 'sportsDrinkJug',
  sportsDrinkEmpty: 'sportsDrinkJug',
  cupPacks: 'cups',
  cupsLoose: 'cups',
  gelBoxes: 'gels',
  gelsLoose: 'gels',
} as const satisfies Record<LeftKey, Pack['kind']>;

/** Of a jug that is open, so much is used: an assumption. */
const OPEN_JUG = 0.5;

/** One count that a station's form asks for, with what was sent of it: packs of `pack` pieces, litres for jugs. */
export interface LeftField {
  readonly key: LeftKey;
  readonly sent: number;
  readonly pack: number;
}

/**
 * What there is to count at a station, in the form's order: only what it was sent.
 * @example
 * ```ts
 * import { leftFields } from '@halfcup/core/raceday';
 *
 * const packs = [{ kind: 'gels', need: 300, pack: 24, count: 13 }] as const;
 * leftFields({ id: 's1', packs }); // → [{ key: 'gelBoxes', sent: 13, pack: 24 }, { key: 'gelsLoose', sent: 13, pack: 24 }]
 * ```
 */
export function leftFields(day: SentDay): LeftField[] {
  want('leftFields', 'day', isSentDay, day);
  return LEFT_KEYS.flatMap((key) => {
    const pack = packOfKey(day, key);
    return pack === undefined ? [] : [{ key, sent: pack.count, pack: pack.pack }];
  });
}

const packOfKey = ({ packs }: SentDay, key: LeftKey): Pack | undefined =>
  packs.find(({ kind }) => kind === SUPPLY[key]);

type Unread = YearParams['leftovers-unread'];

const fault = ({ id }: SentDay, key: LeftKey | null, params: Unread): Finding =>
  yearFinding('leftovers-unread', params, {
    severity: 'error',
    where: { station: id, ...(key === null ? {} : { item: key }) },
  });

/**
 * Cups of each drink and gels used at a station, from what is left of what race day sends there. A fault names its count in
 * `where.item`: more left than was sent, a count of what was not sent, cups without the jugs that tell two drinks apart.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { usedOf } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier" }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004], "serves": ["water"] }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const packs = [{ kind: 'waterJug', need: 50, pack: 4, count: 13 }, { kind: 'cups', need: 480, pack: 100, count: 5 }] as const;
 * const used = usedOf(read.value.plan, { id: 's1', packs }, { waterFull: 2, cupPacks: 1, cupsLoose: 30 });
 * used.ok && used.value; // → { water: 370 }
 * ```
 */
export function usedOf(plan: Plan, day: SentDay, left: LeftCounts): Result<Used> {
  want('usedOf', 'plan', isPlan, plan);
  want('usedOf', 'day', isSentDay, day);
  want('usedOf', 'left', isLeftCounts, left);
  const counted = LEFT_KEYS.filter((key) => left[key] !== undefined);
  if (counted.length === 0) return bad([fault(day, null, { problem: 'noCounts' })]);
  const faults = counted.flatMap((key) => sentFaults(day, left, key));
  if (faults.length > 0) return bad(faults);
  const drinks = drinksUsed(plan, day, left);
  if (!drinks.ok) return drinks;
  const gel = piecesGone(day, left, 'gelBoxes', 'gelsLoose');
  return good({ ...drinks.value, ...(gel === undefined ? {} : { gel }) });
}

/**
 * The same from counts as people type them: "3", "2.5" or "2,5", empty where nobody counted.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { usedOfTexts } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier" }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004], "serves": ["water"] }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const packs = [{ kind: 'waterJug', need: 50, pack: 4, count: 13 }, { kind: 'cups', need: 480, pack: 100, count: 5 }] as const;
 * usedOfTexts(read.value.plan, { id: 's1', packs }, { cupPacks: 'two' }).findings[0]?.where; // → { station: 's1', item: 'cupPacks' }
 * ```
 */
export function usedOfTexts(plan: Plan, day: SentDay, texts: { readonly [key in LeftKey]?: string }): Result<Used> {
  want('usedOfTexts', 'plan', isPlan, plan);
  want('usedOfTexts', 'day', isSentDay, day);
  want('usedOfTexts', 'texts', partly('texts', Object.fromEntries(LEFT_KEYS.map((key) => [key, aText]))), texts);
  const read = LEFT_KEYS.map((key) => ({ key, text: texts[key] ?? '', value: writtenNumber(texts[key] ?? '') }));
  const unread = read.filter(({ value }) => value === undefined);
  if (unread.length > 0)
    return bad(
      unread.map(({ key, text }) => fault(day, key, { problem: 'notNumber', count: key, found: foundOf(text.trim()) })),
    );
  const counted = read.filter(({ value }) => value !== null);
  return usedOf(plan, day, Object.fromEntries(counted.map(({ key, value }) => [key, value!])));
}

/** What cannot be of one count: more than was sent, by itself or with the counts that go before it. */
function sentFaults(day: SentDay, left: LeftCounts, key: LeftKey): Finding[] {
  const pack = packOfKey(day, key);
  const own = left[key]!;
  const item = SUPPLY[key];
  if (pack === undefined) return own === 0 ? [] : [fault(day, key, { problem: 'notSent', item })];
  const { count, pack: size } = pack;
  const before = LEFT_KEYS.slice(0, LEFT_KEYS.indexOf(key)).filter((other) => SUPPLY[other] === item);
  const others = before.reduce((sum, other) => sum + (left[other] ?? 0), 0);
  if (key === 'cupsLoose' || key === 'gelsLoose') {
    const sum = others * size + own;
    return sum <= count * size || others > count
      ? []
      : [fault(day, key, { problem: 'tooMany', item, left: sum, sent: count * size, pieces: true })];
  }
  const sum = others + own;
  return sum <= count || others > count ? [] : [fault(day, key, { problem: 'tooMany', item, left: sum, sent: count })];
}

/** Pieces of a supply that are gone; `undefined` where nobody counted, 0 of what was not sent. */
function piecesGone(day: SentDay, left: LeftCounts, packs: LeftKey, loose: LeftKey): number | undefined {
  const sent = packOfKey(day, packs);
  if (sent === undefined || (left[packs] === undefined && left[loose] === undefined)) return undefined;
  return Math.round(sent.count * sent.pack - (left[packs] ?? 0) * sent.pack - (left[loose] ?? 0));
}

/** Litres of a drink that are gone; `undefined` where its jugs were not counted. */
function litresGone(day: SentDay, left: LeftCounts, drink: 'water' | 'sportsDrink'): number | undefined {
  const sent = packOfKey(day, `${drink}Full`);
  const [full, empty] = [left[`${drink}Full`], left[`${drink}Empty`]];
  if (sent === undefined || (full === undefined && empty === undefined)) return undefined;
  if (full === undefined) return empty! * sent.pack;
  const open = empty === undefined ? 0 : sent.count - full - empty;
  return (sent.count - full - open * OPEN_JUG) * sent.pack;
}

const DRINKS = ['sportsDrink', 'water'] as const;

function drinksUsed(plan: Plan, day: SentDay, left: LeftCounts): Result<Used> {
  const { cup, fill } = suppliesOf(plan, byId(plan.stations, day.id));
  const sent = DRINKS.filter((drink) => packOfKey(day, `${drink}Full`) !== undefined);
  const litres = sent.flatMap((drink) => {
    const gone = litresGone(day, left, drink);
    return gone === undefined ? [] : [[drink, gone] as const];
  });
  const cups = piecesGone(day, left, 'cupPacks', 'cupsLoose');
  if (cups === undefined)
    return good(Object.fromEntries(litres.map(([drink, gone]) => [drink, Math.round(gone / (cup * fill))])));
  if (sent.length === 1) return good({ [sent[0]!]: cups });
  const missing = sent.find((drink) => litres.every(([counted]) => counted !== drink));
  if (missing !== undefined) return bad([fault(day, `${missing}Full`, { problem: 'whichDrink', drink: missing })]);
  const all = litres.reduce((sum, [, gone]) => sum + gone, 0);
  if (all === 0 && cups > 0) return bad([fault(day, 'cupPacks', { problem: 'noDrink', cups })]);
  const [[first, gone]] = litres as unknown as readonly [readonly [Served, number]];
  const own = all === 0 ? 0 : Math.round((cups * gone) / all);
  return good({ [first]: own, [sent[1]!]: cups - own });
}
