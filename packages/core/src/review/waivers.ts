/**
 * Waivers: findings that somebody has accepted, by code and station, with name, reason and date, and with what was seen when it was
 * given. A waived finding stays in the list. A waiver that matches none, no longer fits what is found, or lacks what makes it one
 * is a finding itself.
 */
import { type Finding, isFinding } from '../finding.ts';
import { nearest } from '../plan/nearest.ts';
import { isWaiver } from '../plan/shapes.ts';
import { want } from '../wants.ts';
import type { Plan, PlanWaiver } from '../plan/plan.ts';
import { titles } from '../text/en/checks.ts';
import type { ReviewParams } from '../text/params/review.ts';
import { makeFinding } from './check.ts';
import { stillSeen } from './seen.ts';

/** Codes of findings that are about waivers. */
export const WAIVER_CODES = ['waiver-unmatched', 'waiver-refused', 'waiver-outgrown', 'waiver-unbound'] as const;

/** What a waiver lacks, so that it does not hold; `null` where it lacks nothing. */
export type WaiverLack = ReviewParams['waiver-refused']['lacks'];

/** A word: two letters in a row, in any script. */
const WORD = /\p{L}\p{M}*\p{L}/u;

/** Why a waiver is refused, `null` where it is one: a name, a reason in words, a date that is not after the race's. */
export function lackOf(
  { by, reason, date }: Pick<PlanWaiver, 'by' | 'reason' | 'date'>,
  { date: raceDay }: Pick<Plan, 'date'>,
): WaiverLack | null {
  if (!WORD.test(by)) return 'by';
  if (!WORD.test(reason)) return 'reason';
  if (date === undefined) return 'date';
  return raceDay !== undefined && date > raceDay ? 'earlierDate' : null;
}

/** By code and station. One without a station is for findings that are about none: never for all of them. */
const isAbout = (waiver: PlanWaiver, finding: Finding): boolean =>
  waiver.code === finding.code && waiver.station === finding.where.station;

/**
 * Whether a waiver is for this very finding: of its code and station, of the same thing, and no worse by a tenth than it was.
 * @example
 * ```ts
 * import { covers, seenOf } from '@halfcup/core/plan';
 * const leg = { code: 'leg-long', severity: 'warning', message: 'm', where: { station: 's2' }, measured: 5200, limit: 5000 } as const;
 * const waiver = { code: 'leg-long', station: 's2', by: 'R. Gull', reason: 'a bridge', date: '2027-08-01', seen: seenOf(leg) };
 * covers(waiver, { ...leg, measured: 5300 }); // → true
 * covers(waiver, { ...leg, measured: 8000 }); // → false
 * ```
 */
export function covers(waiver: PlanWaiver, finding: Finding): boolean {
  want('covers', 'waiver', isWaiver, waiver);
  want('covers', 'finding', isFinding, finding);
  return isFor(waiver, finding);
}

const isFor = (waiver: PlanWaiver, finding: Finding): boolean =>
  isAbout(waiver, finding) && (waiver.seen === undefined || stillSeen(waiver.seen, finding) === 'same');

/** Codes of what is found on recorded points, which a review without any cannot find. */
export const isPlacedCode = (code: string): boolean => code.startsWith('placed-');

/** Whether a waiver is for what is found on recorded points, or of stations as they were recorded. */
export const isOfGround = ({ code, seen }: PlanWaiver): boolean => isPlacedCode(code) || seen?.['built'] !== undefined;

/**
 * The findings, those that a waiver of the plan is for marked as waived, and a finding for each waiver of those that `looked`
 * is for that matches none, is refused, no longer fits, or does not say what was seen.
 */
export function waive(
  findings: readonly Finding[],
  plan: Plan,
  looked: (waiver: PlanWaiver) => boolean = () => true,
): Finding[] {
  const held = plan.waivers.map((waiver) => ({ waiver, lacks: lackOf(waiver, plan) }));
  const marked = findings.map((finding) => {
    const found = held.find(({ waiver, lacks }) => lacks === null && isFor(waiver, finding));
    if (found === undefined) return finding;
    const { by, reason, date } = found.waiver;
    return { ...finding, waived: { by, reason, ...(date === undefined ? {} : { date }) } };
  });
  const said = held.flatMap(({ waiver, lacks }, k) =>
    looked(waiver) ? aboutWaiver(waiver, lacks, findings, `/waivers/${k}`) : [],
  );
  return [...marked, ...said];
}

/** The code that was perhaps meant, where no finding of a plan has the one that is given. */
function nearOf(code: string): { readonly near?: string } {
  const codes = Object.keys(titles);
  const near = codes.includes(code) ? undefined : nearest(code, codes);
  return near === undefined ? {} : { near };
}

/** What is to be said of a waiver itself. */
function aboutWaiver(
  waiver: PlanWaiver,
  lacks: WaiverLack | null,
  findings: readonly Finding[],
  path: string,
): Finding[] {
  const where = { path, ...(waiver.station === undefined ? {} : { station: waiver.station }) };
  const told = { waived: waiver.code, by: waiver.by };
  const facts = { severity: 'warning', where } as const;
  const about = findings.filter((finding) => isAbout(waiver, finding));
  if (about.length === 0) return [makeFinding('waiver-unmatched', { ...told, ...nearOf(waiver.code) }, facts)];
  if (lacks !== null) return [makeFinding('waiver-refused', { ...told, lacks }, facts)];
  if (waiver.seen === undefined) return [makeFinding('waiver-unbound', told, { severity: 'note', where })];
  const { seen } = waiver;
  const fits = new Set(about.map((finding) => stillSeen(seen, finding)));
  if (fits.has('same')) return [];
  return [makeFinding('waiver-outgrown', { ...told, worse: fits.has('worse') }, facts)];
}
