/**
 * As built: the whole review again, on the positions that were recorded on the ground. Verdicts on signs and trash drops as of
 * `reviewPlaced`; beside them how far each station stands from its plan, and what every check finds of it where it stands.
 */
import type { Analysis } from './analyse.ts';
import type { Finding } from './finding.ts';
import type { GpxDocument } from './gpx/document.ts';
import { isGpxDocument } from './gpx/shapes.ts';
import { voiceOf } from './plan/voice.ts';
import { builtFindings } from './review/builtFindings.ts';
import { type PlacedReview, judged } from './review/placed.ts';
import { holdPoints } from './review/placedHeld.ts';
import { PLACED_RULES } from './review/placedRules.ts';
import type { PlacedStation } from './review/placedStation.ts';
import { type CheckRun, runOf } from './review/review.ts';
import { isAnalysis } from './review/shapes.ts';
import { isOfGround, isPlacedCode, waive } from './review/waivers.ts';
import { inEnglish } from './text/inEnglish.ts';
import { want } from './wants.ts';

/** What points recorded on the ground come to, with what the review finds where they are. */
export interface BuiltReview extends Omit<PlacedReview, 'checks'> {
  /** In the plan's order; those of which a table was recorded. */
  readonly stations: readonly PlacedStation[];
  /** Of the points as of `reviewPlaced`, then of stations as built, which have `built`. Waived ones marked. */
  readonly findings: readonly Finding[];
  /** The analysis's own, with what they found as built counted, then those of the points. */
  readonly checks: readonly CheckRun[];
}

/**
 * Reviews a plan as it was built: the waypoints of a GPX file held against it as by `reviewPlaced`, every station moved to where its
 * tables were recorded, and every check run again there. What the plan's own review finds alike is not said twice, what the recorded
 * errors leave open is a note with `cannotTell`.
 * @example
 * ```ts
 * import { analyse, readPlan, reviewBuilt } from '@halfcup/core';
 * import { readGpx } from '@halfcup/core/gpx';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const gpx = readGpx('<gpx version="1.1" creator="me"><wpt lat="-33.20004" lon="-17.3775"><name>s1</name></wpt></gpx>', 'placed.gpx');
 * const built = gpx.ok ? reviewBuilt(result.value, gpx.value) : null;
 * built?.stations.map(({ station, along, verdict }) => [station, along, verdict]); // → [['s1', 97.94, 'fails']]
 * ```
 */
export function reviewBuilt(analysis: Analysis, document: GpxDocument): BuiltReview {
  want('reviewBuilt', 'analysis', isAnalysis, analysis);
  want('reviewBuilt', 'document', isGpxDocument, document);
  const { plan, kept, day } = analysis;
  const held = holdPoints(analysis, document);
  const placed = judged(held);
  const found = builtFindings({
    held,
    planned: analysis.findings,
    known: kept === undefined ? undefined : { ...analysis, atStations: kept.atStations },
    day: day === null || kept === undefined || kept.fields === null ? null : { races: kept.fields.races, day },
  });
  const waived = waive(found, plan, (waiver) => isOfGround(waiver) && !isPlacedCode(waiver.code));
  const built = inEnglish(waived, voiceOf(plan));
  const findings = [...placed.findings, ...built];
  return {
    verdicts: placed.verdicts,
    stations: held.stations.map((one) => one.placed),
    findings,
    checks: [
      ...analysis.checks.map((check) => withBuilt(check, built)),
      ...PLACED_RULES.map((rule) => runOf(rule, findings)),
    ],
  };
}

/** A check of the plan, with what it found as built. */
function withBuilt(check: CheckRun, built: readonly Finding[]): CheckRun {
  const own = built.filter(({ code }) => code === check.code);
  if (own.length === 0) return check;
  const open = own.filter(({ cannotTell }) => cannotTell === true).length;
  return { ...check, found: check.found + own.length, cannotTell: check.cannotTell + open };
}
