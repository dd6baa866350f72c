/**
 * Stations whose tables stand face to face on one road: both, and runners of every way between them, share its width.
 * Faced: the tables of one lie beside those of the other along its course, on the other side of it.
 */
import { passesOf } from '../course/passes.ts';
import { inverseLength } from '../geodesy/karney.ts';
import { type LaidDirection, type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { courseById, leadOf } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { clearBeside } from './clearWidth.ts';
import { againstOnRoad } from './flowsShareWidth.ts';
import { tableEnds } from './standing.ts';

/** Half of a wide road and its verge, metres: tables farther from a course line are beside another road. */
const WIDEST = 15;
/** No degree of latitude is shorter, metres. */
const DEGREE = 110_000;
/** Rounding, metres. */
const SAME = 1e-9;

export const stationsFace: Check = check(
  {
    code: 'stations-face',
    severity: 'error',
    source: `${COMMON_PRACTICE}; the metre for the crew is an assumption`,
    missing: ({ stations }) => (stations.length > 1 ? null : 'one-station'),
  },
  (layout) =>
    layout.stations.flatMap((station, k) =>
      layout.stations.slice(k + 1).flatMap((other) => (face(station, other, layout) ? facing(station, other) : [])),
    ),
);

function face(one: StationLayout, other: StationLayout, layout: Layout): boolean {
  const [mine, its] = [leadOf(one), leadOf(other)];
  if (mine === undefined || its === undefined || mine.side === 'unclear' || !mayMeet(one, other)) return false;
  const own = tableEnds(mine);
  const beside = placesBeside(its, mine, one, layout);
  if (own === null || beside.length === 0) return false;
  const alongs = beside.map(({ measure }) => measure);
  const across = mine.side === 'left' ? -1 : 1;
  return (
    Math.min(...alongs) < own[1] &&
    Math.max(...alongs) > own[0] &&
    beside.every(({ offset }) => Math.sign(offset) === across)
  );
}

/** Most that tables of two stations which face each other can have between their pins, metres, for each table's metre of theirs. */
function mayMeet(one: StationLayout, other: StationLayout): boolean {
  const reach = [one, other].map(({ directions }) => {
    const lead = leadOf({ directions })!;
    return Math.max(0, ...lead.items.filter(isTable).flatMap(({ along }) => along.map(Math.abs)));
  });
  const [a, b] = [one.at, other.at];
  const most = 1.1 * (reach[0]! + reach[1]!) + 2 * WIDEST;
  // Latitudes tell of most pairs that they are far apart.
  return Math.abs(a[1] - b[1]) * DEGREE <= most && inverseLength(a[0], a[1], b[0], b[1]) <= most;
}

/** Both ends of each of a station's tables as they lie along and beside another's course, near its own tables. */
function placesBeside(
  tables: LaidDirection,
  own: LaidDirection,
  { practice }: StationLayout,
  { courses }: Layout,
): { readonly measure: number; readonly offset: number }[] {
  const indexed = courseById(courses, own.course);
  return tables.items.filter(isTable).flatMap((item) =>
    item.at.flatMap((at) => {
      if (at === null) return [];
      const away = (measure: number): number => Math.abs(measure - own.measure);
      const near = passesOf(indexed, at, { ...practice, snapRadius: WIDEST });
      const pass = near.sort((a, b) => away(a.measure) - away(b.measure))[0];
      return pass === undefined ? [] : [pass];
    }),
  );
}

function facing(one: StationLayout, other: StationLayout): Case<'stations-face'>[] {
  const ways = againstOnRoad(one).length > 0 ? 2 : 1;
  const limit = ways * Math.max(one.practice.clearWidth, other.practice.clearWidth);
  const [mine, its] = [clearBeside(one), clearBeside(other)];
  const road = mine === null && its === null ? null : Math.min(mine?.width ?? Infinity, its?.width ?? Infinity);
  // Tables and crew of one whose width is not given take as much as the other's.
  const taken = (mine ?? its)?.taken ?? 0;
  const measured = road === null ? null : road - taken - ((its ?? mine)?.taken ?? 0);
  if (measured !== null && measured >= limit - SAME) return [];
  const params = { other: other.id, measured, road, limit };
  const where = { ...atStation(one, 'width') };
  if (measured === null) return [{ params, where, severity: 'warning', limit, unit: 'm', cannotTell: true }];
  return [{ params, where, measured, limit, unit: 'm' }];
}
