/**
 * A check: one question that a safety reviewer asks of a layout, with its code, its source and
 * what it finds. One check a file; `checks.ts` lists them.
 */
import type { Finding, Severity } from '../finding.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';

/** Where a rule comes from when nobody has printed it. */
export const COMMON_PRACTICE = 'common practice, no source';

/** What is known of a check without running it. */
export interface Rule {
  /** Stable; each finding carries it. */
  readonly code: string;
  /** Of its findings, unless one of them says otherwise. */
  readonly severity: Severity;
  /** What is asked, as a short statement of how it should be. */
  readonly title: string;
  /** Where the rule is printed, or "common practice, no source". */
  readonly source: string;
  /** Why the check cannot run on this layout (no width given, no zones, …), or `null` where it can. Absent: it always can. */
  readonly missing?: (layout: Layout) => string | null;
}

/** A question that a safety reviewer asks of a layout, with what answers it. */
export interface Check extends Rule {
  /** What it finds, waivers not counted. */
  readonly find: (layout: Layout) => readonly Finding[];
  /** `find` of one station, where nothing but it and the courses enters: what it found stands as long as these do. */
  readonly findAt?: (station: StationLayout, ground: Pick<Layout, 'courses'>) => readonly Finding[];
}

/** What a check of one station may look at beside it. */
export type Ground = Pick<Layout, 'courses'>;

/** A finding's parts that differ from case to case. `severity` and `source` only where they differ from the rule's. */
export type Found = Omit<Finding, 'code' | 'severity' | 'source'> & Partial<Pick<Finding, 'severity' | 'source'>>;

/** A check whose findings carry its own code, severity and source. */
export function check(rule: Rule, find: (layout: Layout) => readonly Found[]): Check {
  return { ...rule, find: (layout) => find(layout).map((found) => findingOf(rule, found)) };
}

const findingOf = ({ code, severity, source }: Rule, found: Found): Finding => ({ code, severity, source, ...found });

/** A check that asks the same of each station, by itself. */
export function stationCheck(rule: Rule, findAt: (station: StationLayout, ground: Ground) => readonly Found[]): Check {
  const at = (station: StationLayout, ground: Ground): Finding[] =>
    findAt(station, ground).map((found) => findingOf(rule, found));
  return { ...rule, find: (layout) => layout.stations.flatMap((station) => at(station, layout)), findAt: at };
}

/** `where` of something at a station. */
export const atStation = (station: StationLayout, key: string = ''): Finding['where'] => ({
  path: `/stations/${station.index}${key === '' ? '' : `/${key}`}`,
  station: station.id,
  at: station.at,
});

/** Name and id as a sentence takes them. */
export const named = (station: StationLayout): string =>
  station.name === station.id ? `Station ${station.id}` : `${station.name} (${station.id})`;

/** Metres for a message, to a decimetre. */
export const metres = (value: number): string => `${(Math.round(value * 10) / 10 + 0).toFixed(1)} m`;
