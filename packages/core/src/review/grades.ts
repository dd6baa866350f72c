/** Grades at the tables (course/grades.ts): on a slope cups slide, tables tip and wheels run. */
import { gradeBetween } from '../course/grades.ts';
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import type { StationPass } from '../station/station.ts';
import { byId } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { courseOf, tableEnds } from './standing.ts';

/** Course before and after the tables that counts with them, metres. */
const AROUND = 25;
/** Course before the tables over which a descent is measured, metres. */
const DESCENT = 100;
/** Rounding of a grade. */
const SAME = 1e-9;

const noElevations = ({ courses }: Layout): 'no-elevations' | null =>
  courses.some(({ course }) => course.ele !== null) ? null : 'no-elevations';

/** Ends of the tables on a pass's own course; the pin's foot on a pass that is not served. */
function tablesOn(pass: StationPass, k: number, { directions }: StationLayout): readonly [number, number] {
  const direction = directions.find(({ passes }) => passes.includes(k));
  const ends = direction === undefined ? null : tableEnds(direction);
  return ends === null
    ? [pass.measure, pass.measure]
    : [ends[0] + pass.measure - direction!.measure, ends[1] + pass.measure - direction!.measure];
}

export const gradeAtTables: Check = check(
  {
    code: 'grade-at-tables',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: noElevations,
  },
  (layout) => layout.stations.flatMap((station) => steepAt(station, layout)),
);

/** By the first served pass whose course has elevations. */
function steepAt(station: StationLayout, layout: Layout): Case<'grade-at-tables'>[] {
  const has = (direction: LaidDirection): StationPass | undefined =>
    direction.passes
      .map((k) => station.passes[k]!)
      .find((pass) => pass.served && courseOf(layout, pass.course).course.ele !== null);
  const direction = station.directions.find((laid) => tableEnds(laid) !== null && has(laid) !== undefined);
  if (direction === undefined) return [];
  const pass = has(direction)!;
  const [from, to] = tablesOn(
    pass,
    direction.passes.find((k) => station.passes[k] === pass)!,
    station,
  );
  const grade = gradeBetween(courseOf(layout, pass.course).course, from - AROUND, to + AROUND);
  const { maxGrade } = station.practice;
  if (grade === null || Math.abs(grade) <= maxGrade + SAME) return [];
  return [
    {
      params: { measured: Math.abs(grade), limit: maxGrade, climbs: grade > 0, around: AROUND },
      where: { ...atStation(station), course: pass.course, measure: pass.measure },
      measured: grade,
      limit: [-maxGrade, maxGrade],
    },
  ];
}

/** A steep descent before the tables of runners; where a race on wheels has it too, that is found with the wheels. */
export const afterDescent: Check = check(
  {
    code: 'after-descent',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: noElevations,
  },
  (layout) =>
    layout.stations.flatMap((station) => {
      const steep = station.passes.flatMap((pass, k) => {
        const found = pass.served ? descentBefore(pass, k, station, layout) : null;
        return found === null ? [] : [{ pass, grade: found }];
      });
      const onWheels = station.passes.some((pass, k) => descentTo(pass, k, station, layout).length > 0);
      const [first] = steep.toSorted((a, b) => a.grade - b.grade);
      if (first === undefined || onWheels) return [];
      const { pass, grade } = first;
      const { maxGrade } = station.practice;
      const races = [...new Set(steep.map((one) => one.pass.race))];
      return [
        {
          params: { measured: -grade, limit: maxGrade, races, over: DESCENT },
          where: { ...atStation(station), course: pass.course, race: pass.race, measure: pass.measure },
          measured: grade,
          limit: -maxGrade,
        },
      ];
    }),
);

/** The grade over the 100 m before the tables, where it falls as steeply as the practice allows at most, or more; `null` elsewhere. */
function descentBefore(pass: StationPass, k: number, station: StationLayout, layout: Layout): number | null {
  const [tables] = tablesOn(pass, k, station);
  const grade = gradeBetween(courseOf(layout, pass.course).course, tables - DESCENT, tables);
  return grade === null || -grade < station.practice.maxGrade - SAME ? null : grade;
}

export const descentWithWheels: Check = check(
  {
    code: 'descent-with-wheels',
    // Wheels come down whomever the station serves.
    lost: true,
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: (layout) => {
      const wheels = layout.plan.races.filter(({ division }) => division === 'wheels');
      if (wheels.length === 0) return 'no-wheels';
      return wheels.some(({ course }) => courseOf(layout, course).course.ele !== null) ? null : 'no-wheels-elevations';
    },
  },
  (layout) =>
    layout.stations.flatMap((station) => station.passes.flatMap((pass, k) => descentTo(pass, k, station, layout))),
);

function descentTo(
  pass: StationPass,
  k: number,
  station: StationLayout,
  layout: Layout,
): Case<'descent-with-wheels'>[] {
  const race = byId(layout.plan.races, pass.race);
  if (race.division !== 'wheels' || pass.end !== undefined) return [];
  const grade = descentBefore(pass, k, station, layout);
  const { maxGrade } = station.practice;
  if (grade === null) return [];
  return [
    {
      params: { measured: -grade, limit: maxGrade, race: race.id, over: DESCENT },
      where: { ...atStation(station), course: pass.course, race: pass.race, measure: pass.measure },
      measured: grade,
      limit: -maxGrade,
    },
  ];
}
