/**
 * As-placed: points recorded on the ground held against the plan: the sign's distance to the first
 * table, the trash drop's to the last, sides and order, with the error of both ends of each.
 */
import type { Finding } from '../finding.ts';
import type { GpxDocument } from '../gpx/document.ts';
import { type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { assumptions, verdictFindings } from './placedFindings.ts';
import { groundOf, onCourse } from './placedGround.ts';
import { type Held, holdPoints } from './placedHeld.ts';
import type { Matched, Matching, Target } from './placedMatch.ts';
import { orderFindings, sideFindings } from './placedOrder.ts';
import { makePlaced } from './placedPoint.ts';
import { PLACED_RULES } from './placedRules.ts';
import { farFinding } from './placedStation.ts';
import { swapFinding } from './placedSwapped.ts';
import { type PlacedVerdict, judge } from './placedVerdict.ts';
import { type CheckRun, runOf } from './review.ts';
import { voiceOf } from '../plan/voice.ts';
import { inEnglish } from '../text/inEnglish.ts';
import { isPlacedCode, waive } from './waivers.ts';
import { want } from '../wants.ts';
import { isGpxDocument } from '../gpx/shapes.ts';
import { isLayout } from '../layout/shapes.ts';

export type { PlacedVerdict, Verdict } from './placedVerdict.ts';

/** What points recorded on the ground come to. */
export interface PlacedReview {
  /** By station in the plan's order; of each direction the sign, then the trash drop. */
  readonly verdicts: readonly PlacedVerdict[];
  /** Of the points first, then by station; positions name the file of the points. Waived ones marked. */
  readonly findings: readonly Finding[];
  /** What was asked of the points. */
  readonly checks: readonly CheckRun[];
}

/**
 * Holds the waypoints of a GPX file, recorded on the ground, against a layout: by their names ("s1 sign", "station 1 water"),
 * else by where they stand. What was not recorded or cannot be matched is a finding, never a verdict; what the recorded
 * errors leave open has the verdict `cannot tell`.
 * @example
 * ```ts
 * import { analyse, readPlan, reviewPlaced } from '@halfcup/core';
 * import { readGpx } from '@halfcup/core/gpx';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const gpx = readGpx(`<gpx version="1.1" creator="me">
 *   <wpt lat="-33.20004" lon="-17.37953"><name>s1 sign</name></wpt>
 *   <wpt lat="-33.20004" lon="-17.37855"><name>s1 sports drink</name></wpt></gpx>`, 'placed.gpx');
 * const placed = gpx.ok ? reviewPlaced(result.value, gpx.value) : null;
 * placed?.verdicts.map(({ item, measured, margin, verdict }) => [item, measured, margin, verdict]); // → [['sign', 91.38, 4.75, 'holds']]
 * ```
 */
export function reviewPlaced(layout: Layout, document: GpxDocument): PlacedReview {
  want('reviewPlaced', 'layout', isLayout, layout);
  want('reviewPlaced', 'document', isGpxDocument, document);
  return judged(holdPoints(layout, document));
}

/** Verdicts, findings and checks on points that were held against a layout. */
export function judged(held: Held): PlacedReview {
  const { layout, file, targets, matching, swaps, grounds } = held;
  const verdicts = grounds.flatMap((ground) => judge(ground).map((one) => ({ one, station: ground.station })));
  const said = [
    assumptions(file, layout.plan.practice.pinR95),
    ...held.findings,
    ...matching.findings,
    ...swaps.map(swapFinding),
    ...matching.matched.flatMap((one) => offCourse(one, layout)),
    ...layout.stations.flatMap((station) => missing(station, targets, matching, file)),
    ...held.stations.flatMap(({ placed, anchor }) => farFinding(placed, anchor)),
    ...verdicts.flatMap(({ one, station }) => verdictFindings(one, station)),
    ...grounds.flatMap((ground) => [...sideFindings(ground), ...orderFindings(ground)]),
  ];
  const all = inEnglish(
    waive(said, layout.plan, ({ code }) => isPlacedCode(code)),
    voiceOf(layout.plan),
  );
  return {
    verdicts: verdicts.map(({ one }) => one.verdict),
    findings: all,
    checks: PLACED_RULES.map((rule) => runOf(rule, all)),
  };
}

/** A point whose item is known, but which no pass of the course runs by. */
function offCourse({ point, target }: Matched, layout: Layout): Finding[] {
  const { station, direction, kind } = target;
  const item = itemOf(direction, kind)!;
  if (onCourse(point, item.from, groundOf(layout, station, direction, [])) !== null) return [];
  const params = { point: point.waypoint.name, item: kind, radius: station.practice.snapRadius };
  const where = { ...point.where, station: station.id, course: direction.course, item: kind };
  return [makePlaced('placed-off-course', params, { severity: 'warning', where })];
}

/** What the plan has at a station and nobody recorded; one finding where it is all of it. */
function missing(
  station: StationLayout,
  targets: readonly Target[],
  { matched, blocked }: Matching,
  file: string,
): Finding[] {
  const own = targets.filter((target) => target.station === station);
  const lacking = own.filter((target) => !blocked.has(target) && matched.every((one) => one.target !== target));
  const where = { file, station: station.id, at: station.at };
  if (own.length === 0) return [];
  if (lacking.length === own.length)
    return [makePlaced('placed-missing', { is: 'all' }, { severity: 'warning', where })];
  return lacking.map(({ kind, direction }) => {
    const measure = station.directions.length > 1 && !isTable({ kind }) ? direction.measure : null;
    return makePlaced(
      'placed-missing',
      { is: 'one', item: kind, measure },
      { severity: kind === 'sign' ? 'warning' : 'note', where: { ...where, course: direction.course, item: kind } },
    );
  });
}
