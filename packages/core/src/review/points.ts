/** Where a station's own points (access, drop, medical) lie along the course and beside it. */
import type { Pass } from '../course/course.ts';
import { passesOf } from '../course/passes.ts';
import type { LonLat } from '../finding.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { courseById } from '../plan/lookups.ts';
import type { PlanPoint, PointKind } from '../plan/plan.ts';
import type { PointRef } from '../text/params/review.ts';

/** A point with the station that names it. */
export interface StationPoint {
  readonly point: PlanPoint;
  readonly station: StationLayout;
  /** JSON pointer of the point, below the station. */
  readonly key: string;
}

/** All points of some kinds, by station. */
export const pointsOfKind = ({ stations }: Layout, ...kinds: readonly PointKind[]): StationPoint[] =>
  stations.flatMap((station) =>
    station.station.points
      .map((point, k) => ({ point, station, key: `points/${k}` }))
      .filter(({ point }) => kinds.includes(point.kind)),
  );

/** The nearest of some points and its distance in metres, as the crow flies; `null` where there are none. */
export function nearestPoint(
  at: LonLat,
  points: readonly StationPoint[],
): { readonly to: StationPoint; readonly distance: number } | null {
  const all = points.map((to) => ({ to, distance: inverseLength(at[0], at[1], to.point.at[0], to.point.at[1]) }));
  return all.sort((a, b) => a.distance - b.distance)[0] ?? null;
}

/**
 * The pass of a point by a direction's course that is nearest, along the course, to the station: on a road run both
 * ways it is this direction's, so left and right are those of its runners. `null` where the course keeps farther off than the snap radius.
 */
export function passOfPoint(
  at: LonLat,
  direction: LaidDirection,
  { practice }: StationLayout,
  { courses }: Layout,
): Pass | null {
  const indexed = courseById(courses, direction.course);
  const along = (pass: Pass): number => Math.abs(pass.measure - direction.measure);
  return passesOf(indexed, at, practice).sort((a, b) => along(a) - along(b))[0] ?? null;
}

/** A point as a sentence takes it. */
export const refOf = ({ point: { kind, name } }: StationPoint): PointRef => ({ kind, name: name ?? null });
