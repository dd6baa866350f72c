/** Where the sign stands badly: in the carriageway, or where runners cannot read it in time. */
import { passesOf } from '../course/passes.ts';
import type { LonLat } from '../finding.ts';
import type { Item, LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { isSure } from '../station/sides.ts';
import type { StationPass } from '../station/station.ts';
import { SHARP, WINDOW, sharpBend } from './bends.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check, doubt } from './check.ts';
import { gradeBetween } from '../course/grades.ts';
import { strayedBy } from './itemOffCourse.ts';
import { courseOf } from './standing.ts';

/** Course before the sign over which runners read it, metres. */
const READ = 30;
/** A corner so near past the sign, metres, is at it. */
const AT_SIGN = 5;
/** Course before the sign over which a descent is measured, metres. */
const DESCENT = 100;
/** A descent on which a sign is hard to read is so many times as steep as the road at tables may be. */
const STEEP = 1.5;
/** Rounding of a grade, and of metres. */
const SAME = 1e-9;

export const signInRoad: Check = check(
  {
    code: 'sign-in-road',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) => layout.stations.flatMap((station) => station.directions.flatMap((one) => inRoad(one, station, layout))),
);

/** A sign that a hand has placed: others stand beside the road by the layout. */
function inRoad(direction: LaidDirection, station: StationLayout, layout: Layout): Case<'sign-in-road'>[] {
  const sign = itemOf(direction, 'sign');
  const at = sign?.at[0] ?? null;
  if (sign?.byHand !== true || at === null || strayedBy(sign, direction, station, layout) !== null) return [];
  const road = station.station.width ?? null;
  const indexed = courseOf(layout, direction.course);
  const { drawn } = indexed.course;
  // A line on the shortest way comes to the kerbs: without a width it does not tell where the road is.
  if (road === null && drawn === 'shortest') return [];
  const { practice } = station;
  const limit = (road ?? practice.clearWidth) / 2;
  const measured = distanceFrom(sign, at, indexed, practice.snapRadius);
  if (measured >= limit - SAME) return [];
  const sure = isSure(limit - measured, { ...practice, courseR95: drawn === 'recorded' ? practice.courseR95 : 0 });
  return [
    {
      params: { measured, limit, road, sure },
      where: { ...atStation(station, 'items/sign'), course: direction.course, item: 'sign', measure: sign.from, at },
      measured,
      limit,
      unit: 'm',
      ...doubt(sure),
    },
  ];
}

/** From the course's line by the sign; its side may be unclear. */
function distanceFrom(sign: Item, at: LonLat, indexed: ReturnType<typeof courseOf>, snapRadius: number): number {
  const passes = passesOf(indexed, at, { snapRadius });
  const away = ({ measure }: { readonly measure: number }): number => Math.abs(measure - sign.from);
  return passes.sort((a, b) => away(a) - away(b))[0]?.distance ?? Infinity;
}

export const signHardToRead: Check = check(
  {
    code: 'sign-hard-to-read',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    layout.stations.flatMap((station) => station.directions.flatMap((one) => hardToRead(one, station, layout))),
);

function hardToRead(direction: LaidDirection, station: StationLayout, layout: Layout): Case<'sign-hard-to-read'>[] {
  const sign = itemOf(direction, 'sign');
  const at = sign?.at[0] ?? null;
  if (sign === undefined || at === null || strayedBy(sign, direction, station, layout) !== null) return [];
  const served = direction.passes.map((k) => station.passes[k]!).filter((pass) => pass.served);
  const where = { ...atStation(station, sign.byHand === true ? 'items/sign' : ''), item: 'sign', at };
  const measureOf = ({ measure }: StationPass): number => sign.from + measure - direction.measure;
  const bends = served.flatMap((pass) => {
    const measure = measureOf(pass);
    const bend = sharpBend(courseOf(layout, pass.course), measure - READ, measure + AT_SIGN, WINDOW);
    return bend === null ? [] : [{ bend, course: pass.course }];
  });
  const [sharpest] = bends.sort((a, b) => Math.abs(b.bend.turn) - Math.abs(a.bend.turn));
  if (sharpest !== undefined) {
    const { turn, measure } = sharpest.bend;
    const params = { is: 'bend', turn, most: SHARP, within: READ } as const;
    return [
      {
        params,
        where: { ...where, course: sharpest.course, measure },
        measured: Math.abs(turn),
        limit: SHARP,
        unit: '°',
      },
    ];
  }
  const limit = STEEP * station.practice.maxGrade;
  const grades = served.flatMap((pass) => {
    const measure = measureOf(pass);
    const grade = gradeBetween(courseOf(layout, pass.course).course, measure - DESCENT, measure);
    return grade === null || -grade <= limit + SAME ? [] : [{ pass, measure, grade }];
  });
  const [steepest] = grades.sort((a, b) => a.grade - b.grade);
  if (steepest === undefined) return [];
  return [
    {
      params: { is: 'descent', measured: -steepest.grade, limit, over: DESCENT },
      where: { ...where, course: steepest.pass.course, measure: steepest.measure },
      measured: steepest.grade,
      limit: -limit,
    },
  ];
}
