/** A medical point that an ambulance does not come near: no access point within a short carry. */
import type { Layout } from '../layout/layout.ts';
import { type Check, COMMON_PRACTICE, type Found, atStation, check, metres } from './check.ts';
import { type StationPoint, nearestPoint, pointNamed, pointsOfKind } from './points.ts';

/** A short carry, metres: farther is a warning. */
const CARRY = 60;
/** Farther than this, metres, the access point is that of another place, and none serves this one. */
const SERVES = 250;

export const medicalWithoutAccess: Check = check(
  {
    code: 'medical-without-access',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: (layout) => (pointsOfKind(layout, 'medical').length > 0 ? null : 'no-medical'),
  },
  (layout) => pointsOfKind(layout, 'medical').flatMap((medical) => cutOff(medical, layout)),
);

function cutOff(medical: StationPoint, layout: Layout): Found[] {
  const { station, point, key } = medical;
  // The access point of a neighbouring station is as good.
  const nearest = nearestPoint(point.at, pointsOfKind(layout, 'access'));
  if (nearest !== null && nearest.distance <= CARRY) return [];
  const name = pointNamed(medical);
  const where = { ...atStation(station, key), at: point.at };
  if (nearest === null) {
    return [
      {
        message: `${name} has no access point: the plan names none; expected one within ${metres(CARRY)}. Name where an ambulance comes up to it.`,
        where,
        limit: CARRY,
        unit: 'm',
      },
    ];
  }
  const far = nearest.distance > SERVES;
  const message = `${name} is ${metres(nearest.distance)} from the nearest access point (${pointNamed(nearest.to)}), as the crow flies; expected at most ${metres(CARRY)}. ${
    far
      ? 'Name where an ambulance comes up to it.'
      : 'Move one of them, name a nearer access point, or agree the carry with the medical lead and waive it.'
  }`;
  return [
    {
      message,
      where,
      measured: nearest.distance,
      limit: CARRY,
      unit: 'm',
      ...(far ? {} : { severity: 'warning' as const }),
    },
  ];
}
