/**
 * As-placed: points recorded on the ground held against the plan: the sign's distance to the first
 * table, the trash drop's to the last, sides and order, with the error of both ends of each.
 */
import type { Finding } from '../finding.ts';
import type { GpxDocument } from '../gpx/document.ts';
import { type Layout, type StationLayout, isTable } from '../layout/layout.ts';
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
import { voiceOf } from '../plan/voice.ts';
import { inEnglish } from '../text/inEnglish.ts';
import { isPlacedCode, waive } from './waivers.ts';

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
  const { pinR95 } = layout.plan.practice;
  const { points, findings } = pointsOf(document, pinR95);
  const targets = targetsOf(layout.stations);
  const matching = matchPoints(points, layout.stations, targets);
  const grounds = layout.stations.flatMap((station) =>
    station.directions.map((direction) => groundOf(layout, station, direction, matching.matched)),
  );
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
  const all = inEnglish(waive(said, layout.plan, isPlacedCode), voiceOf(layout.plan));
  return {
    verdicts: judged.map(({ one }) => one.verdict),
    findings: all,
    checks: PLACED_RULES.map((rule) => runOf(rule, all)),
  };
}

/** A point whose item is known, but which no pass of the course runs by. */
function offCourse({ point, target }: Matched, layout: Layout): Finding[] {
  const { station, direction, kind } = target;
  const item = direction.items.find((one) => one.kind === kind)!;
  if (onCourse(point, item.from, groundOf(layout, station, direction, [])) !== null) return [];
  const message = `${point.label}, the ${itemWord(kind).toLowerCase()} of ${named(station)}, stands more than ${station.practice.snapRadius} m from course "${direction.course}" or beyond its end, so no course distance can be told. Look where it was recorded.`;
  return [
    {
      code: 'placed-off-course',
      severity: 'warning',
      message,
      where: { ...point.where, station: station.id, course: direction.course, item: kind },
    },
  ];
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
  if (lacking.length === own.length) {
    return [
      {
        code: 'placed-missing',
        severity: 'warning',
        message: `Nothing was recorded at ${named(station)}; expected its sign, tables and trash drop.`,
        where,
      },
    ];
  }
  return lacking.map(({ kind, direction }) => {
    const way =
      station.directions.length > 1 && !isTable({ kind })
        ? ` for runners who pass at ${direction.measure.toFixed(0)} m of course "${direction.course}"`
        : '';
    const instead =
      kind === 'sign'
        ? 'its distance to the first table is not checked'
        : kind === 'trash'
          ? 'its distance to the last table is not checked'
          : 'distances to it are taken from where the plan has it';
    const message = `${itemWord(kind)} of ${named(station)}${way} was not recorded: ${instead}.`;
    return {
      code: 'placed-missing',
      severity: kind === 'sign' ? 'warning' : 'note',
      message,
      where: { ...where, course: direction.course, item: kind },
    };
  });
}
