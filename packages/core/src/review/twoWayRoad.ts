/**
 * An item in the way of runners who come the other way. Test: the distance from the item's places
 * to the line of any pass that runs against its direction; under half the clear width that line
 * runs through the item. On one centre line run both ways an item at the kerb stands clear. Lines
 * drawn on purpose are taken as they are; a recorded one errs by `courseR95`, and inside that the
 * check cannot tell: a note, and nothing where the item stands beyond the edge of a road whose width is given.
 */
import type { Course, Pass } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import { passesOf } from '../course/passes.ts';
import type { LonLat } from '../finding.ts';
import { type StationLayout, isTable } from '../layout/layout.ts';
import { type Check, COMMON_PRACTICE, type Case, type Ground, atStation, doubt, stationCheck } from './check.ts';
import { type Standing, courseOf, itemsStanding, linePoints } from './standing.ts';
import { linesTell, runsAgainst } from '../station/sides.ts';

/** Metres of stretch between places that are looked at. */
const STEP = 5;

export const twoWayRoad: Check = stationCheck(
  {
    code: 'two-way-road',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (station, ground) => {
    const met = itemsStanding(station).flatMap((standing) => metBy(standing, station, ground));
    return met.length === 0
      ? []
      : [
          foundOf(
            met.sort((a, b) => a.pass.distance - b.pass.distance),
            station,
          ),
        ];
  },
);

interface Met {
  readonly standing: Standing;
  readonly at: LonLat;
  /** The item's own course, and that of the runners who come against it. */
  readonly own: Course;
  readonly course: Course;
  readonly pass: Pass;
}

/** The nearest pass of each course against an item's direction, within half the clear width of one of its places. */
function metBy(standing: Standing, station: StationLayout, ground: Ground): Met[] {
  const { item, direction } = standing;
  // Where the side is unclear items stand on the line itself: that has a finding of its own.
  if (item.side === 'unclear') return [];
  const within = station.practice.clearWidth / 2;
  const own = courseOf(ground, direction.course).course;
  const azimuthDeg = pointAt(own, (item.from + item.to) / 2)?.azimuthDeg ?? direction.azimuthDeg;
  const points = linePoints(standing, ground, STEP);
  return ground.courses.flatMap((indexed) => {
    const near = points
      .flatMap((at) =>
        passesOf(indexed, at, { ...station.practice, snapRadius: within }).map((pass) => ({
          standing,
          at,
          own,
          course: indexed.course,
          pass,
        })),
      )
      .filter(
        ({ pass }) =>
          runsAgainst(pass.azimuthDeg, azimuthDeg) && !(isTable(item) && meetsTables(indexed.course.id, pass, station)),
      );
    const nearest = near.sort((a, b) => a.pass.distance - b.pass.distance)[0];
    if (nearest === undefined) return [];
    return isOnVerge(item, station) && !isClear(nearest, station) ? [] : [nearest];
  });
}

/** Whether an item stands beyond the edge of its road, as wide as the plan gives it. */
const isOnVerge = ({ offset }: Standing['item'], { station: { width } }: StationLayout): boolean =>
  width !== undefined && Math.abs(offset) >= width / 2;

/** Whether the lines tell that an item is so near the other way. Items follow their own course's line, so the pin's error does not enter. */
const isClear = ({ pass, own, course }: Met, { practice }: StationLayout): boolean =>
  linesTell(practice.clearWidth / 2 - pass.distance, own, course, practice);

/** A served pass of the other direction is meant to come to the tables. */
function meetsTables(course: string, { measure }: Pass, station: StationLayout): boolean {
  const { practice } = station;
  return station.passes.some(
    (pass) => pass.served && pass.course === course && Math.abs(pass.measure - measure) <= practice.signAhead,
  );
}

function foundOf(met: readonly Met[], station: StationLayout): Case<'two-way-road'> {
  const { standing, at, course, pass } = met[0]!;
  const limit = station.practice.clearWidth / 2;
  const items = [...new Set(met.map((one) => one.standing.item.kind))];
  const courses = [...new Set(met.map((one) => one.course.id))];
  const sure = isClear(met[0]!, station);
  const where = { ...atStation(station), course: course.id, item: standing.item.kind, measure: pass.measure, at };
  return {
    ...(sure ? {} : { severity: 'note' as const }),
    params: { measured: pass.distance, limit, courses, items, sure },
    where,
    measured: pass.distance,
    limit,
    unit: 'm',
    ...doubt(sure),
  };
}
