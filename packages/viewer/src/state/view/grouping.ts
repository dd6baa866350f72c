/** The review's list in groups: by theme, by severity or by station; what is waived last. How a person wants it grouped is remembered. */
import type { Finding, Severity } from '@halfcup/core';
import { themeText } from '@halfcup/core/sentences';
import { THEMES } from '@halfcup/core/stages';
import type { Grouping, OpenPlan, Placed, Store } from '../store/store.ts';
import { countsOf, isOpen, keep, numberOf, type Counts } from './derive.ts';
import { reviewChecks, reviewList } from './placed.ts';

export const GROUPINGS: readonly Grouping[] = ['theme', 'severity', 'station'];

export interface FindingGroup {
  /** Stays the group's own while the plan changes. */
  readonly key: string;
  readonly title: string;
  /** Where all in it have one. */
  readonly severity: Severity | 'waived' | null;
  /** The gravest first, then in the plan's order. */
  readonly findings: readonly Finding[];
  /** Of the open ones. */
  readonly counts: Counts;
}

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };
const SEVERITIES: readonly (readonly [Severity, string])[] = [
  ['error', 'Errors'],
  ['warning', 'Warnings'],
  ['note', 'Notes'],
];

type Titled = readonly [key: string, title: string];

/** What was found as files were read has no check, and so no theme. */
const READING: Titled = ['reading', 'Reading the files'];
const WHOLE: Titled = ['', 'The plan as a whole'];

/** A place in the plan's order: what is about no station comes first. */
const stationOrder: (open: OpenPlan) => (finding: Finding) => number = keep((open) => {
  const order = new Map(open.analysis.stations.map(({ id, index }) => [id, index]));
  return ({ where }) => (where.station === undefined ? -1 : (order.get(where.station) ?? -1));
});

/** The gravest first, then in the plan's order. */
export function graveFirst(findings: readonly Finding[], open: OpenPlan): Finding[] {
  const place = stationOrder(open);
  return findings.toSorted((a, b) => RANK[a.severity] - RANK[b.severity] || place(a) - place(b));
}

/** The groups of a grouping in their order, and to which one a finding belongs. */
function groupingOf(
  open: OpenPlan,
  placed: Placed | null,
  by: Grouping,
): { readonly titles: readonly Titled[]; readonly keyOf: (finding: Finding) => string } {
  if (by === 'severity') return { titles: SEVERITIES, keyOf: ({ severity }) => severity };
  if (by === 'station') {
    const { stations } = open.analysis;
    const known = new Set(stations.map(({ id }) => `station ${id}`));
    return {
      titles: [WHOLE, ...stations.map((one): Titled => [`station ${one.id}`, `${numberOf(one)} · ${one.name}`])],
      keyOf: ({ where }) => {
        const key = `station ${where.station ?? ''}`;
        return where.station !== undefined && known.has(key) ? key : WHOLE[0];
      },
    };
  }
  const themes = new Map(reviewChecks(open, placed).map(({ code, theme }) => [code, theme]));
  return {
    titles: [READING, ...THEMES.map((theme): Titled => [theme, themeText(theme, 'en')])],
    keyOf: ({ code, built }) =>
      built === true || code.startsWith('placed-') ? 'as-built' : (themes.get(code) ?? READING[0]),
  };
}

/** All that the review shows, in groups; empty ones are left out. */
export function groupsOf(open: OpenPlan, placed: Placed | null, by: Grouping): readonly FindingGroup[] {
  const findings = reviewList(open, placed);
  const { titles, keyOf } = groupingOf(open, placed, by);
  const groups = new Map<string, Finding[]>();
  const add = (key: string, finding: Finding): void => {
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [finding]);
    else group.push(finding);
  };
  for (const finding of findings) add(isOpen(finding) ? keyOf(finding) : 'waived', finding);
  return [...titles, ['waived', 'Waived'] as const].flatMap(([key, title]) => {
    const own = groups.get(key);
    if (own === undefined) return [];
    const severity = key === 'waived' ? key : by === 'severity' ? (key as Severity) : null;
    return [{ key, title, severity, findings: graveFirst(own, open), counts: countsOf(own) }];
  });
}

const KEY = 'halfcup-grouping';

/** What was chosen when the page was last here; by theme where nothing was. */
export function rememberedGrouping(storage: () => Pick<Storage, 'getItem'>): Grouping {
  try {
    const kept = storage().getItem(KEY);
    return GROUPINGS.find((one) => one === kept) ?? 'theme';
  } catch {
    return 'theme';
  }
}

/** Groups the list another way and remembers it, where the browser lets the page. */
export function chooseGrouping(store: Store, by: Grouping): void {
  store.grouping.value = by;
  try {
    localStorage.setItem(KEY, by);
  } catch {
    // The list is grouped as chosen until the page is closed; that is all there is to lose.
  }
}
