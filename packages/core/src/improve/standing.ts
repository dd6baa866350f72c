/** How an analysed plan stands: its findings counted, and the longest leg of every race. */
import type { Analysis } from '../analyse.ts';
import type { Finding } from '../finding.ts';
import { WAIVER_CODES } from '../review/waivers.ts';

/** A race's longest leg. */
export interface LongestLeg {
  readonly race: string;
  /** `start`, or a station's id. */
  readonly from: string;
  /** `finish`, or a station's id. */
  readonly to: string;
  /** Metres. */
  readonly length: number;
}

/** Unwaived findings by severity, waived ones, waivers that no finding needs (which are in no other count), and longest legs. */
export interface Standing {
  readonly error: number;
  readonly warning: number;
  readonly note: number;
  readonly waived: number;
  readonly idle: number;
  readonly longest: readonly LongestLeg[];
}

/** What is said of a waiver itself is not counted: mending what it is about would be no gain otherwise. */
const isIdle = ({ code }: Finding): boolean => (WAIVER_CODES as readonly string[]).includes(code);

/** Whether a finding counts. */
export const isOpen = (finding: Finding): boolean => finding.waived === undefined && !isIdle(finding);

const sumOf = (longest: readonly LongestLeg[]): number =>
  longest.reduce((sum, { length }) => sum + Math.round(length), 0);

/** Whether one has fewer errors than the other, or as many and fewer warnings, or as many and the lesser sum of longest legs, to the metre. */
export function betters(one: Standing, other: Standing): boolean {
  const pairs = [
    [one.error, other.error],
    [one.warning, other.warning],
    [sumOf(one.longest), sumOf(other.longest)],
  ] as const;
  const differs = pairs.find(([a, b]) => a !== b);
  return differs !== undefined && differs[0] < differs[1];
}

/** Counts and longest legs of an analysis. */
export function standingOf({ findings, spacing }: Analysis): Standing {
  const open = findings.filter(isOpen);
  const count = (severity: Finding['severity']): number =>
    open.filter((finding) => finding.severity === severity).length;
  const longest = spacing.map(({ race, legs, longest: most }) => {
    const leg = legs.find(({ length }) => length === most)!;
    return { race, from: leg.from, to: leg.to, length: most };
  });
  return {
    error: count('error'),
    warning: count('warning'),
    note: count('note'),
    waived: findings.filter(({ waived }) => waived !== undefined).length,
    idle: findings.filter(isIdle).length,
    longest,
  };
}
