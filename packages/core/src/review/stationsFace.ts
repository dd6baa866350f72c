/**
 * Stations whose tables stand face to face on one road: both, and runners of every way between them, share its width.
 * Faced: the tables of one lie beside those of the other along its course, on the other side of it.
 */
import type { Pass } from '../course/course.ts';
import { passesOf } from '../course/passes.ts';
import { lengthBetween } from '../geodesy/segment.ts';
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
  (layout) => {
    const faces = layout.stations.flatMap(faceOf);
    const placesOf = placesByCourse(layout);
    return faces.flatMap((one, k) =>
      faces.slice(k + 1).flatMap((other) => (face(one, other, placesOf) ? facing(one.station, other.station) : [])),
    );
  },
);

/** A station with its tables as those see it for whom they are laid out. */
interface Face {
  readonly station: StationLayout;
  readonly lead: LaidDirection;
  readonly tables: readonly [from: number, to: number];
  /** Farthest from the pin that a table reaches, metres. */
  readonly reach: number;
}

function faceOf(station: StationLayout): Face[] {
  const lead = leadOf(station);
  const tables = lead === undefined ? null : tableEnds(lead);
  if (lead === undefined || tables === null || lead.side === 'unclear') return [];
  return [{ station, lead, tables, reach: Math.max(...tables.map((end) => Math.abs(end - lead.measure))) }];
}

function face(one: Face, other: Face, placesOf: PlacesOf): boolean {
  if (!mayMeet(one, other)) return false;
  const beside = placesBeside(placesOf(other.lead, one.lead.course), one.lead);
  if (beside.length === 0) return false;
  const alongs = beside.map(({ measure }) => measure);
  const across = one.lead.side === 'left' ? -1 : 1;
  return (
    Math.min(...alongs) < one.tables[1] &&
    Math.max(...alongs) > one.tables[0] &&
    beside.every(({ offset }) => Math.sign(offset) === across)
  );
}

/** Whether tables of two stations can lie beside each other at all. Latitudes tell of most that they are far apart. */
function mayMeet(one: Face, other: Face): boolean {
  const [a, b] = [one.station.at, other.station.at];
  const most = 1.1 * (one.reach + other.reach) + 2 * WIDEST;
  return Math.abs(a[1] - b[1]) * DEGREE <= most && lengthBetween(a[0], a[1], b[0], b[1]) <= most;
}

/** Where one end of a table lies along and beside a course, for each time that the course passes it. */
type Place = readonly Pick<Pass, 'measure' | 'offset'>[];

/** Both ends of each of a station's tables, along and beside a course. */
type PlacesOf = (tables: LaidDirection, course: string) => readonly Place[];

/** The same for every other station: looked for once on each course, not once for each pair. */
function placesByCourse({ courses }: Layout): PlacesOf {
  const known = new Map<LaidDirection, Map<string, readonly Place[]>>();
  return (tables, course) => {
    const found = known.get(tables) ?? new Map<string, readonly Place[]>();
    known.set(tables, found);
    const indexed = courseById(courses, course);
    const places =
      found.get(course) ??
      tables.items
        .filter(isTable)
        .flatMap(({ at }) =>
          at.flatMap((end) => (end === null ? [] : [passesOf(indexed, end, { snapRadius: WIDEST })])),
        );
    found.set(course, places);
    return places;
  };
}

/** Of each place the time that the course passes it nearest to a station's own tables. */
function placesBeside(places: readonly Place[], own: LaidDirection): Place {
  const away = ({ measure }: Place[number]): number => Math.abs(measure - own.measure);
  return places.flatMap((place) => place.toSorted((a, b) => away(a) - away(b)).slice(0, 1));
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
