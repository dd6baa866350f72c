/** Points recorded on the ground, judged by the open plan for as long as they lie here; they are no part of it. Pure. */
import { reviewBuilt, type CheckRun, type Finding, type PlacedStation, type PlacedVerdict } from '@halfcup/core';
import { placeFindings } from '@halfcup/core/plan';
import type { OpenPlan, Placed } from '../store/store.ts';
import { keep } from './derive.ts';

export interface PlacedView {
  readonly verdicts: readonly PlacedVerdict[];
  /** How far each recorded station stands from its plan. */
  readonly stations: readonly PlacedStation[];
  /** Of reading the file first, then of the points, then of stations as built; each with its place in the points' file or in the plan. */
  readonly findings: readonly Finding[];
  /** The plan's own, with what they find as built, then those of the points. */
  readonly checks: readonly CheckRun[];
}

const viewing: (open: OpenPlan) => (placed: Placed) => PlacedView = keep((open) =>
  keep((placed) => {
    const { findings, ...built } = reviewBuilt(open.analysis, placed.document);
    return { ...built, findings: [...placed.findings, ...placeFindings(findings, open.document)] };
  }),
);

/** The points held against the plan as it is shown. */
export const placedView = (open: OpenPlan, placed: Placed): PlacedView => viewing(open)(placed);

/** What checks have found, of the plan and of the points; what reading files has found is not among it. */
export const reviewed = (open: OpenPlan, placed: Placed | null): readonly Finding[] =>
  placed === null ? open.analysis.findings : [...open.analysis.findings, ...placedView(open, placed).findings];

function byCode(findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const codes = new Map<string, Finding[]>();
  for (const finding of findings) {
    const own = codes.get(finding.code);
    if (own === undefined) codes.set(finding.code, [finding]);
    else own.push(finding);
  }
  return codes;
}

const ofPlan = keep((open: OpenPlan) => byCode(reviewed(open, null)));
const withPlaced = keep((open: OpenPlan) => keep((placed: Placed) => byCode(reviewed(open, placed))));

/** The same by code: each card of a long list asks for those of its own. */
export const reviewedByCode = (open: OpenPlan, placed: Placed | null): ReadonlyMap<string, readonly Finding[]> =>
  placed === null ? ofPlan(open) : withPlaced(open)(placed);

/** All that the review shows: of reading, of the checks, and of the points. */
export const reviewList = (open: OpenPlan, placed: Placed | null): readonly Finding[] =>
  placed === null ? open.findings : [...open.findings, ...placedView(open, placed).findings];

/** Every check that the review shows, as it went. */
export const reviewChecks = (open: OpenPlan, placed: Placed | null): readonly CheckRun[] =>
  placed === null ? open.analysis.checks : placedView(open, placed).checks;
