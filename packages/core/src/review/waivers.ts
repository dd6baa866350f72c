/**
 * Waivers: findings that somebody has accepted, by code, station, name and reason. A waived finding
 * stays in the list; a waiver that matches none is a finding itself.
 */
import type { Finding } from '../finding.ts';
import type { Plan, PlanWaiver } from '../plan/plan.ts';
import { makeFinding } from './check.ts';

/** One without a station is for findings that are about none: never for all of them. */
const matches = (waiver: PlanWaiver, finding: Finding): boolean =>
  waiver.code === finding.code && waiver.station === finding.where.station;

/** Codes of what is found on recorded points, which a review without any cannot find. */
export const isPlacedCode = (code: string): boolean => code.startsWith('placed-');

/**
 * The findings, those that a waiver of the plan names marked as waived, and one `waiver-unmatched` for each waiver
 * that names none, of those whose code `looked` is for.
 */
export function waive(
  findings: readonly Finding[],
  { waivers }: Plan,
  looked: (code: string) => boolean = () => true,
): Finding[] {
  const marked = findings.map((finding) => {
    const waiver = waivers.find((one) => matches(one, finding));
    if (waiver === undefined) return finding;
    const { by, reason, date } = waiver;
    return { ...finding, waived: { by, reason, ...(date === undefined ? {} : { date }) } };
  });
  const unmatched = waivers.flatMap((waiver, k): Finding[] => {
    if (!looked(waiver.code) || findings.some((finding) => matches(waiver, finding))) return [];
    const where = { path: `/waivers/${k}`, ...(waiver.station === undefined ? {} : { station: waiver.station }) };
    return [makeFinding('waiver-unmatched', { waived: waiver.code, by: waiver.by }, { severity: 'warning', where })];
  });
  return [...marked, ...unmatched];
}
