/** Findings that somebody accepts, and removing that waiver; each is one step of undo over the plan's `waivers`. */
import type { Finding } from '@halfcup/core';
import { type PlanWaiver, covers, seenOf } from '@halfcup/core/plan';
import { setValue, type Command } from './edits.ts';
import type { OpenPlan } from '../store/store.ts';
import { appended } from './variants.ts';

export interface Waiver {
  readonly by: string;
  readonly reason: string;
  /** ISO 8601. */
  readonly date: string;
}

const about = (open: OpenPlan, { where: { station } }: Finding): string => {
  const name = open.document.plan.stations.find(({ id }) => id === station)?.name;
  return name === undefined ? '' : `, ${name}`;
};

/** The waiver of a finding as the plan keeps it: bound to what is seen now. */
const waiverOf = (finding: Finding, waiver: Waiver): PlanWaiver => {
  const { station } = finding.where;
  return { code: finding.code, ...(station === undefined ? {} : { station }), ...waiver, seen: seenOf(finding) };
};

/** Whether a waiver that is given for one finding holds for another too. */
export const waivedTogether = (one: Finding, other: Finding): boolean =>
  covers(waiverOf(one, { by: '', reason: '', date: '' }), other);

export const waiveFinding = (open: OpenPlan, finding: Finding, waiver: Waiver): Command =>
  appended('waivers', waiverOf(finding, waiver), `waive a finding${about(open, finding)}`);

/** The waiver that a waived finding was found by, or that is a finding itself; −1 where there is none. */
export function waiverAt(open: OpenPlan, finding: Finding): number {
  if (finding.code.startsWith('waiver-'))
    return Number(/^\/waivers\/(\d+)$/u.exec(finding.where.path ?? '')?.[1] ?? -1);
  if (finding.waived === undefined) return -1;
  return open.document.plan.waivers.findIndex((waiver) => covers(waiver, finding));
}

export const removeWaiver = (open: OpenPlan, finding: Finding): Command =>
  setValue(['waivers', waiverAt(open, finding)], undefined, `remove a waiver${about(open, finding)}`);

/** A word: two letters in a row. */
const WORD = /\p{L}\p{M}*\p{L}/u;

/** What a person typed, read; or what is wrong with it, by field. `raceDay`: ISO 8601, where the plan gives it. */
export function readWaiver(
  typed: { readonly by: string; readonly reason: string; readonly date: string },
  raceDay: string | undefined,
): { readonly waiver: Waiver } | { readonly trouble: Partial<Record<keyof Waiver, string>> } {
  const [by, reason, date] = [typed.by.trim(), typed.reason.trim(), typed.date.trim()];
  const wrongDate = dateTrouble(date, raceDay);
  const trouble = {
    ...(WORD.test(by) ? {} : { by: 'Type the name of the person who answers for it.' }),
    ...(WORD.test(reason) ? {} : { reason: 'Type in words why this may stay as it is.' }),
    ...(wrongDate === null ? {} : { date: wrongDate }),
  };
  return Object.keys(trouble).length > 0 ? { trouble } : { waiver: { by, reason, date } };
}

function dateTrouble(date: string, raceDay: string | undefined): string | null {
  if (date === '') return 'Type the day on which it is given, such as 2027-08-01.';
  const real =
    /^\d{4}-\d{2}-\d{2}$/u.test(date) &&
    !Number.isNaN(Date.parse(date)) &&
    new Date(date).toISOString().startsWith(date);
  if (!real) return `“${date}” is not a date. Write it as 2027-08-01.`;
  return raceDay !== undefined && date > raceDay ? `The race is on ${raceDay}: a waiver is given before it.` : null;
}

/** The calendar day here, ISO 8601. */
export function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}
