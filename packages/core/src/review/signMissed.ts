/** A served pass whose runners do not meet the sign before the tables: their course joins in between. */
import { pointAt } from '../course/locate.ts';
import { passesOf } from '../course/passes.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import type { LaidDirection, StationLayout } from '../layout/layout.ts';
import { courseById, itemOf } from '../plan/lookups.ts';
import type { StationPass } from '../station/station.ts';
import { type Check, COMMON_PRACTICE, type Case, type Ground, atStation, stationCheck } from './check.ts';
import { strayedBy } from './itemOffCourse.ts';

/** Farthest from the course that a sign can stand and still be met, metres beyond its own offset. */
const WITHIN = 15;
const ANGLE = 90;

export const signMissed: Check = stationCheck(
  {
    code: 'sign-missed',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (station, ground) => station.directions.flatMap((direction) => missed(direction, station, ground)),
);

function missed(direction: LaidDirection, station: StationLayout, ground: Ground): Case<'sign-missed'>[] {
  const passes = direction.passes
    .map((k) => station.passes[k]!)
    .filter((pass) => pass.served && !meetsSign(pass, direction, ground));
  const sign = itemOf(direction, 'sign');
  // A sign that strayed is missed by all, and found for itself.
  if (sign !== undefined && strayedBy(sign, direction, station, ground) !== null) return [];
  const [first] = passes;
  if (first === undefined) return [];
  const { course, race, measure } = first;
  return [
    {
      params: { race, measure, passes: passes.map((pass) => ({ race: pass.race, measure: pass.measure })) },
      where: { ...atStation(station), course, race, item: 'sign', measure },
    },
  ];
}

function meetsSign(pass: StationPass, direction: LaidDirection, { courses }: Ground): boolean {
  const sign = itemOf(direction, 'sign');
  // A sign without a place has a finding of its own.
  if (sign === undefined || sign.at[0] === null) return true;
  const indexed = courseById(courses, pass.course);
  const own = courseById(courses, direction.course);
  // The course may turn between sign and tables: what counts is the way it runs at the sign.
  const azimuthDeg = pointAt(own.course, sign.from)?.azimuthDeg ?? direction.azimuthDeg;
  const ahead = direction.measure - sign.from;
  return passesOf(indexed, sign.at[0]).some((by) => {
    const before = pass.measure - by.measure;
    return (
      by.distance <= Math.abs(sign.offset) + WITHIN &&
      before > 0 &&
      before < 2 * ahead &&
      azimuthDifference(by.azimuthDeg, azimuthDeg) <= ANGLE
    );
  });
}
