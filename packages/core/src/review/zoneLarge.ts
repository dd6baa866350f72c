/** A zone that is farther across than any place that is kept clear, or than the whole race: one of its corners lies far off. */
import { inverseLength } from '../geodesy/karney.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanZone } from '../plan/plan.ts';
import { acrossOf } from './across.ts';
import { type Case, type Check, COMMON_PRACTICE, check } from './check.ts';
import { encloses } from './zones.ts';

/** Farthest across, metres. */
const ACROSS = 10_000;
/** A zone in which all may stand can hold the whole race, and so much more. */
const BEYOND = 2;

export const zoneLarge: Check = check(
  {
    code: 'zone-large',
    severity: 'warning',
    source: COMMON_PRACTICE,
    lost: true,
    missing: ({ plan }) => (plan.zones.some(encloses) ? null : 'no-zones-points'),
  },
  (layout) => layout.plan.zones.flatMap((zone, k) => largeAt(zone, k, layout)),
);

function largeAt(zone: PlanZone, k: number, layout: Layout): Case<'zone-large'>[] {
  if (!encloses(zone)) return [];
  const { across, at } = acrossOf(zone.polygon);
  const limit = zone.rule === 'keep-clear' ? ACROSS : Math.max(ACROSS, BEYOND * extentOf(layout));
  if (across <= limit) return [];
  return [
    {
      params: { zone: zone.name, across, limit },
      where: { path: `/zones/${k}`, at },
      measured: across,
      limit,
      unit: 'm',
    },
  ];
}

/** About how far apart the courses' places are, metres: the longest way from the first of them. */
function extentOf({ courses }: Layout): number {
  const [first] = courses;
  if (first === undefined) return 0;
  const [lon, lat] = [first.course.lon[0]!, first.course.lat[0]!];
  let most = 0;
  for (const { course } of courses) {
    const step = Math.max(1, Math.floor(course.lon.length / SAMPLES));
    for (let k = 0; k < course.lon.length; k += step)
      most = Math.max(most, inverseLength(lon, lat, course.lon[k]!, course.lat[k]!));
  }
  return most;
}

/** Places of each course that are looked at. */
const SAMPLES = 200;
