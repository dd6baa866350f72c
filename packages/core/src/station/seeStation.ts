/**
 * One station as its races see it: its pin, its passes by every race, its directions. Nothing is laid out here.
 */
import { courseLength, startMeasure } from '../course/course.ts';
import { courseFinding } from '../course/courseFinding.ts';
import { pointAt } from '../course/locate.ts';
import { nearestOn, passesOf } from '../course/passes.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { type LonLat, type Result, bad, good } from '../finding.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import type { DeclaredSide, Plan, PlanStation } from '../plan/plan.ts';
import { practiceOf } from '../plan/practice.ts';
import { type CourseTable, directionsOf, groupPasses, leadPass, markServed, servesRace } from './directions.ts';
import { sideAcross } from './sides.ts';
import type { SeenStation, StationPass } from './station.ts';

/** Where a station's pin stands; an error where `on` names a measure beyond its course or in a skipped gap. */
export function pinOf(station: PlanStation, index: number, courses: CourseTable): Result<LonLat> {
  if (station.at !== undefined) return good(station.at);
  const { course: id, measure, side, offset } = station.on!;
  const { course } = courses.get(id)!;
  const ground = pointAt(course, measure, side === 'left' ? offset : -offset);
  if (ground !== null) return good(ground.at);
  const [start, length] = [startMeasure(course), courseLength(course)];
  const miss =
    measure > length
      ? ({ problem: 'past', length } as const)
      : measure < start
        ? ({ problem: 'before', start } as const)
        : ({ problem: 'gap' } as const);
  const where = { path: `/stations/${index}/on/measure`, station: station.id, course: id };
  const params = { what: 'station', measure, course: id, ...miss } as const;
  const facts = { severity: 'error', where, measured: measure, limit: length, unit: 'm' } as const;
  return bad([courseFinding('measure-beyond-course', params, facts)]);
}

/** Passes of a pin by every race, in the plan's order of races; courses that races share are searched once. */
export function stationPasses(plan: Plan, station: PlanStation, at: LonLat, courses: CourseTable): StationPass[] {
  const practice = practiceOf(plan, station);
  const byCourse = new Map<string, ReturnType<typeof passesOf>>();
  return plan.races.flatMap((race) => {
    const passes = byCourse.get(race.course) ?? passesOf(courses.get(race.course)!, at, practice);
    byCourse.set(race.course, passes);
    return passes.map((pass, k) => ({ ...pass, race: race.id, course: race.course, pass: k, served: false }));
  });
}

/** The declared side as the lead's runners see it: the station's own, else that of `on`, turned where the lead runs against that course. */
export function declaredSide(
  station: PlanStation,
  lead: StationPass | undefined,
  courses: CourseTable,
): DeclaredSide | undefined {
  if (station.side !== undefined || station.on === undefined || lead === undefined) return station.side;
  const { course, measure, side } = station.on;
  const own = pointAt(courses.get(course)!.course, measure);
  if (own === null || azimuthDifference(own.azimuthDeg, lead.azimuthDeg) <= 90) return side;
  return side === 'left' ? 'right' : 'left';
}

/** Where the plan's station at `index` stands, who passes it and from which directions. */
export function seeStation(plan: Plan, index: number, courses: CourseTable): Result<SeenStation> {
  const station = plan.stations[index]!;
  const pin = pinOf(station, index, courses);
  if (!pin.ok) return pin;
  const at = pin.value;
  const practice = practiceOf(plan, station);
  const seen = stationPasses(plan, station, at, courses);
  const groups = groupPasses(seen, courses);
  const lead = leadPass(station, seen);
  const passes = markServed(station, seen, groups.find((group) => group.includes(lead)) ?? []);
  const declared = declaredSide(station, passes[lead], courses);
  const directions = directionsOf(passes, groups, lead, declared, (pass) =>
    sideAcross(pass, { station, practice, courses, lead: passes[lead]!, declared }),
  );
  const nearest = passes.some((pass) => servesRace(station, pass.race))
    ? null
    : nearestCourse(plan, station, at, courses);
  return good({
    id: station.id,
    name: station.name,
    index,
    station,
    practice,
    at,
    declared: declared ?? null,
    passes,
    directions,
    nearest,
  });
}

function nearestCourse(plan: Plan, station: PlanStation, at: LonLat, courses: CourseTable): SeenStation['nearest'] {
  const ids = new Set(plan.races.filter((race) => servesRace(station, race.id)).map((race) => race.course));
  const found = [...ids].map((id) => {
    const { measure, distance } = nearestOn(courses.get(id)!, at);
    return { course: id, measure, distance };
  });
  return found.sort((a, b) => a.distance - b.distance)[0] ?? null;
}

/** Courses by id, for the stages that look them up. */
export const courseTable = (courses: readonly IndexedCourse[]): CourseTable =>
  new Map(courses.map((indexed) => [indexed.course.id, indexed]));
