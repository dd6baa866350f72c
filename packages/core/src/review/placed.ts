/**
 * As-placed: points recorded on the ground held against the plan: the sign's distance to the first
 * table, the trash drop's to the last, sides and order, with the error of both ends of each.
 */
import type { Finding } from '../finding.ts';
import type { GpxDocument } from '../gpx/document.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { itemWord } from '../station/wording.ts';
import { named } from './check.ts';
import { assumptions, verdictFindings } from './placedFindings.ts';
import { groundOf, onCourse } from './placedGround.ts';
import { type Matched, type Matching, type Target, matchPoints, targetsOf } from './placedMatch.ts';
import { orderFindings, sideFindings } from './placedOrder.ts';
import { pointsOf } from './placedPoint.ts';
import { PLACED_RULES } from './placedRules.ts';
import { type PlacedVerdict, judge } from './placedVerdict.ts';
import { type CheckRun, runOf } from './review.ts';
import { isPlacedCode, waive } from './waivers.ts';

export type { PlacedVerdict, Verdict } from './placedVerdict.ts';

export interface PlacedReview {
  /** By station in the plan's order; of each direction the sign, then the trash drop. */
  readonly verdicts: readonly PlacedVerdict[];
  /** Of the points first, then by station; positions name the file of the points. Waived ones marked. */
  readonly findings: readonly Finding[];
  /** What was asked of the points. */
  readonly checks: readonly CheckRun[];
}

/**
 * Holds the waypoints of a document against a layout. What was not recorded, cannot be matched or cannot
 * be told from the recorded errors is a finding, never a verdict.
 */
export function reviewPlaced(layout: Layout, document: GpxDocument): PlacedReview {
  const { pinR95 } = layout.plan.practice;
  const { points, findings } = pointsOf(document, pinR95);
  const targets = targetsOf(layout.stations);
  const matching = matchPoints(points, layout.stations, targets);
  const grounds = layout.stations.flatMap((station) => station.directions.map((direction) => groundOf(layout, station, direction, matching.matched)));
  const judged = grounds.flatMap((ground) => judge(ground).map((one) => ({ one, station: ground.station })));
  const said = [
    assumptions(document.file, pinR95),
    ...findings,
    ...matching.findings,
    ...matching.matched.flatMap((one) => offCourse(one, layout)),
    ...layout.stations.flatMap((station) => missing(station, targets, matching, document.file)),
    ...judged.flatMap(({ one, station }) => verdictFindings(one, station)),
    ...grounds.flatMap((ground) => [...sideFindings(ground), ...orderFindings(ground)]),
  ];
  const all = waive(said, layout.plan, isPlacedCode);
  return { verdicts: judged.map(({ one }) => one.verdict), findings: all, checks: PLACED_RULES.map((rule) => runOf(rule, all)) };
}

/** A point whose item is known, but which no pass of the course runs by. */
function offCourse({ point, target }: Matched, layout: Layout): Finding[] {
  const { station, direction, kind } = target;
  const item = direction.items.find((one) => one.kind === kind)!;
  if (onCourse(point, item.from, groundOf(layout, station, direction, [])) !== null) return [];
  const message = `${point.label}, the ${itemWord(kind).toLowerCase()} of ${named(station)}, stands more than ${station.practice.snapRadius} m from course "${direction.course}" or beyond its end, so no course distance can be told. Look where it was recorded.`;
  return [{ code: 'placed-off-course', severity: 'warning', message, where: { ...point.where, station: station.id, course: direction.course, item: kind } }];
}

/** What the plan has at a station and nobody recorded; one finding where it is all of it. */
function missing(station: StationLayout, targets: readonly Target[], { matched, blocked }: Matching, file: string): Finding[] {
  const own = targets.filter((target) => target.station === station);
  const lacking = own.filter((target) => !blocked.has(target) && matched.every((one) => one.target !== target));
  const where = { file, station: station.id, at: station.at };
  if (own.length === 0) return [];
  if (lacking.length === own.length) {
    return [{ code: 'placed-missing', severity: 'warning', message: `Nothing was recorded at ${named(station)}; expected its sign, tables and trash drop.`, where }];
  }
  return lacking.map(({ kind, direction }) => {
    const way = station.directions.length > 1 && (kind === 'sign' || kind === 'trash') ? ` for runners who pass at ${direction.measure.toFixed(0)} m of course "${direction.course}"` : '';
    const instead = kind === 'sign' ? 'its distance to the first table is not checked' : kind === 'trash' ? 'its distance to the last table is not checked' : 'distances to it are taken from where the plan has it';
    const message = `${itemWord(kind)} of ${named(station)}${way} was not recorded: ${instead}.`;
    return { code: 'placed-missing', severity: kind === 'sign' ? 'warning' : 'note', message, where: { ...where, course: direction.course, item: kind } };
  });
}
