/** Findings that somebody accepts, and removing that waiver; each is one step of undo over the plan's `waivers`. */
import type { Finding } from '@halfcup/core';
import { setValue, type Command } from './edits.ts';
import type { OpenPlan } from '../store/store.ts';
import { appended } from './variants.ts';

export interface Waiver {
  readonly by: string;
  readonly reason: string;
  /** ISO 8601; absent where none is given. */
  readonly date?: string;
}

const about = (open: OpenPlan, { where: { station } }: Finding): string => {
  const name = open.document.plan.stations.find(({ id }) => id === station)?.name;
  return name === undefined ? '' : `, ${name}`;
};

/** A waiver is for every finding of one kind at one station, or at none. */
export const sameKind = (one: Finding, other: Finding): boolean =>
  one.code === other.code && one.where.station === other.where.station;

export const waiveFinding = (open: OpenPlan, finding: Finding, waiver: Waiver): Command => {
  const { station } = finding.where;
  return appended(
    'waivers',
    { code: finding.code, ...(station === undefined ? {} : { station }), ...waiver },
    `waive a finding${about(open, finding)}`,
  );
};

/** The waiver that a waived finding was found by, or that matches nothing and is a finding itself; −1 where there is none. */
export function waiverAt(open: OpenPlan, finding: Finding): number {
  if (finding.code === 'waiver-unmatched')
    return Number(/^\/waivers\/(\d+)$/u.exec(finding.where.path ?? '')?.[1] ?? -1);
  if (finding.waived === undefined) return -1;
  return open.document.plan.waivers.findIndex(
    ({ code, station }) => code === finding.code && station === finding.where.station,
  );
}

export const removeWaiver = (open: OpenPlan, finding: Finding): Command =>
  setValue(['waivers', waiverAt(open, finding)], undefined, `remove a waiver${about(open, finding)}`);

/** What a person typed, read; or what is wrong with it, by field. */
export function readWaiver(typed: {
  readonly by: string;
  readonly reason: string;
  readonly date: string;
}): { readonly waiver: Waiver } | { readonly trouble: Partial<Record<keyof Waiver, string>> } {
  const [by, reason, date] = [typed.by.trim(), typed.reason.trim(), typed.date.trim()];
  const real =
    date === '' ||
    (/^\d{4}-\d{2}-\d{2}$/u.test(date) &&
      !Number.isNaN(Date.parse(date)) &&
      new Date(date).toISOString().startsWith(date));
  const trouble = {
    ...(by === '' ? { by: 'Type the name of the person who answers for it.' } : {}),
    ...(reason === '' ? { reason: 'Type why this may stay as it is.' } : {}),
    ...(real ? {} : { date: `“${date}” is not a date. Write it as 2027-08-01, or leave it empty.` }),
  };
  return Object.keys(trouble).length > 0 ? { trouble } : { waiver: { by, reason, ...(date === '' ? {} : { date }) } };
}

/** The calendar day here, ISO 8601. */
export function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}
