/** Zones and points that lie far from every course: most often longitude and latitude are swapped, or a digit is wrong. */
import { startMeasure } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import { nearestOn } from '../course/passes.ts';
import { swappedPosition } from '../course/swapped.ts';
import type { LonLat } from '../finding.ts';
import { wrapDegrees } from '../geodesy/ellipsoid.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanZone } from '../plan/plan.ts';
import type { AbsenceParams } from '../text/params/reviewAbsence.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';
import { depthIn, encloses, local, localZones } from './zones.ts';

/** Metres from the nearest course. */
export const FAR = 1000;
/** Of an outline with more corners than this, not every side is looked at, but one in each half of `FAR`. */
const MANY_CORNERS = 100;
/** Most places that are looked at on one side of a zone. */
const MOST_STEPS = 200;

type Thing = AbsenceParams['far-from-courses']['things'][number];
interface Found extends Thing {
  readonly at: LonLat;
  readonly path: string;
}

export const distanceTo = ({ courses }: Layout, at: LonLat): number =>
  Math.min(Infinity, ...courses.map((indexed) => nearestOn(indexed, at).distance));

const isSwapped = ({ courses }: Layout, at: LonLat): boolean =>
  courses.some((indexed) => swappedPosition(indexed, at) !== null);

/** How near an outline comes to a course, looked at in steps as wide as the last place was too far; it stops where that is near enough. */
function outlineDistance(layout: Layout, { polygon }: PlanZone): number {
  let nearest = Infinity;
  // Metres of outline ahead that are beyond `FAR` as surely as the last place looked at.
  let free = 0;
  for (const [k, from] of polygon.entries()) {
    const to = polygon[(k + 1) % polygon.length]!;
    const length = inverseLength(from[0], from[1], to[0], to[1]);
    free -= length;
    if (polygon.length > MANY_CORNERS && free > 0) continue;
    const [east, north] = [wrapDegrees(to[0] - from[0]), to[1] - from[1]];
    for (let share = 0, step = 0; share < 1 && step < MOST_STEPS; step++) {
      const at: LonLat = [wrapDegrees(from[0] + east * share), from[1] + north * share];
      const distance = distanceTo(layout, at);
      nearest = Math.min(nearest, distance);
      if (distance <= FAR) return nearest;
      free = Math.min(distance - FAR, FAR / 2) - (1 - share) * length;
      share += Math.max(distance - FAR, FAR / 2) / length;
    }
  }
  return nearest;
}

/** Whether a course starts inside: a zone as large as a town. */
const holdsStart = ({ courses }: Layout, zone: PlanZone): boolean =>
  courses.some(({ course }) => {
    const ground = pointAt(course, startMeasure(course));
    if (ground === null) return false;
    const [shape] = localZones([zone], zone.rule, ground.at);
    return shape !== undefined && depthIn(shape, local(ground.at, ground.at)) >= 0;
  });

function farZones(layout: Layout): Found[] {
  return layout.plan.zones.flatMap((zone, k) => {
    const [at] = zone.polygon;
    if (at === undefined || !encloses(zone)) return [];
    const distance = outlineDistance(layout, zone);
    if (distance <= FAR || holdsStart(layout, zone)) return [];
    const own = { name: zone.name, station: null, distance, swapped: isSwapped(layout, at) };
    return [{ is: 'zone' as const, ...own, at, path: `/zones/${k}` }];
  });
}

function farPoints(layout: Layout): Found[] {
  return layout.stations.flatMap((station) =>
    station.station.points.flatMap(({ at, name }, k) => {
      const distance = distanceTo(layout, at);
      if (distance <= FAR) return [];
      const own = { name: name ?? '', station: station.id, distance, swapped: isSwapped(layout, at) };
      return [{ is: 'point' as const, ...own, at, path: `/stations/${station.index}/points/${k}` }];
    }),
  );
}

export const farFromCourses: Check = check(
  {
    code: 'far-from-courses',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ plan }) =>
      plan.zones.length > 0 || plan.stations.some(({ points }) => points.length > 0) ? null : 'no-zones-points',
  },
  (layout) => {
    const found = [...farZones(layout), ...farPoints(layout)];
    const [first] = found;
    if (first === undefined) return [];
    const { path, at, station, distance } = first;
    const alone = found.length === 1 && station !== null ? { station } : {};
    const things = found.map(({ at: _at, path: _path, ...thing }) => thing);
    return [
      { params: { limit: FAR, things }, where: { path, at, ...alone }, measured: distance, limit: FAR, unit: 'm' },
    ];
  },
);
