/** A medical point that an ambulance does not come near: no access point within a short carry. */
import type { Layout } from '../layout/layout.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { type StationPoint, nearestPoint, pointsOfKind, refOf } from './points.ts';

/** A short carry, metres: farther is a warning. */
const CARRY = 60;
/** Farther than this, metres, the access point is that of another place, and none serves this one. */
const SERVES = 250;

export const medicalWithoutAccess: Check = check(
  {
    code: 'medical-without-access',
    lost: true,
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: (layout) => (pointsOfKind(layout, 'medical').length > 0 ? null : 'no-medical'),
  },
  (layout) => pointsOfKind(layout, 'medical').flatMap((medical) => cutOff(medical, layout)),
);

function cutOff(medical: StationPoint, layout: Layout): Case<'medical-without-access'>[] {
  const { station, point, key } = medical;
  // The access point of a neighbouring station is as good.
  const nearest = nearestPoint(point.at, pointsOfKind(layout, 'access'));
  if (nearest !== null && nearest.distance <= CARRY) return [];
  const where = { ...atStation(station, key), at: point.at };
  const own = { point: refOf(medical), limit: CARRY };
  if (nearest === null) return [{ params: { ...own, nearest, far: true }, where, limit: CARRY, unit: 'm' }];
  const far = nearest.distance > SERVES;
  const { to, distance } = nearest;
  const other = to.station === station ? null : to.station.id;
  return [
    {
      params: { ...own, nearest: { point: refOf(to), station: other, distance }, far },
      where,
      measured: nearest.distance,
      limit: CARRY,
      unit: 'm',
      ...(far ? {} : { severity: 'warning' as const }),
    },
  ];
}
