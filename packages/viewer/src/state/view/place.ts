/** "Where is this?": what one says of a place on a course to somebody who must find it. Pure but for `ask`. */
import { type LonLat, type StationLayout } from '@halfcup/core';
import { gridReference } from '@halfcup/core/units';
import { courseLength, PASS_DEFAULTS, passesOf, pointAt } from '@halfcup/core/geometry';
import { compassWord, farText, lengthText, ordinal } from '../../words.ts';
import { numberOf } from './derive.ts';
import type { CoursePlace, OpenPlan, Store } from '../store/store.ts';

/** Asks about a place on a course, or closes the answer with `null`. */
export function ask(store: Store, place: CoursePlace | null): void {
  store.asked.value = place;
}

/** A race that comes by, once for each time it does. */
export interface ComesBy {
  readonly race: string;
  readonly measure: number;
  readonly azimuthDeg: number;
  /** From 0, and how often the race comes by here. */
  readonly pass: number;
  readonly passes: number;
}

/** A station before or after the place on the same course. */
export interface Neighbour {
  readonly number: number;
  readonly name: string;
  /** Metres along the course. */
  readonly distance: number;
}

export interface PlaceFacts {
  readonly at: LonLat;
  readonly course: string;
  readonly measure: number;
  /** The first is the place asked about; without races the list is empty. */
  readonly comesBy: readonly ComesBy[];
  readonly grid: ReturnType<typeof gridReference>;
  readonly before: Neighbour | null;
  readonly after: Neighbour | null;
}

/** How near another pass must come to be at the same place, metres: across a road, and its other carriageway. */
const SAME_PLACE = 20;
/** Digits of the grid reference: a square of 10 m, about what a course line is good for. */
const GRID_DIGITS = 4;

function comesBy({ analysis }: OpenPlan, place: CoursePlace, at: LonLat): ComesBy[] {
  const rows = analysis.plan.races.flatMap((race) => {
    const indexed = analysis.courses.find(({ course }) => course.id === race.course);
    const passes = indexed === undefined ? [] : passesOf(indexed, at, { ...PASS_DEFAULTS, snapRadius: SAME_PLACE });
    return passes.map(({ measure, azimuthDeg }, pass) => ({
      race: race.name,
      own: race.course === place.course,
      measure,
      azimuthDeg,
      pass,
      passes: passes.length,
    }));
  });
  const apart = (row: (typeof rows)[number]): number =>
    row.own ? Math.abs(row.measure - place.measure) : Number.POSITIVE_INFINITY;
  return rows.toSorted((a, b) => apart(a) - apart(b)).map(({ own: _own, ...row }) => row);
}

function neighbours(stations: readonly StationLayout[], place: CoursePlace): Pick<PlaceFacts, 'before' | 'after'> {
  const all = stations.flatMap((station) =>
    station.passes
      .filter((pass) => pass.served && pass.course === place.course)
      .map((pass) => ({ number: numberOf(station), name: station.name, by: pass.measure - place.measure })),
  );
  const nearest = (list: typeof all): Neighbour | null => {
    const [first] = list.toSorted((a, b) => Math.abs(a.by) - Math.abs(b.by));
    return first === undefined ? null : { number: first.number, name: first.name, distance: Math.abs(first.by) };
  };
  return { before: nearest(all.filter(({ by }) => by <= 0)), after: nearest(all.filter(({ by }) => by > 0)) };
}

/** All that is known of a place; `null` where its course is not there or has a skipped gap. */
export function placeFacts(open: OpenPlan, place: CoursePlace): PlaceFacts | null {
  const course = open.analysis.courses.find((one) => one.course.id === place.course)?.course;
  if (course === undefined) return null;
  const measure = Math.min(Math.max(place.measure, 0), courseLength(course));
  const at = pointAt(course, measure)?.at;
  if (at === undefined) return null;
  const here = { course: place.course, measure };
  return {
    at,
    course: course.name,
    measure,
    comesBy: comesBy(open, here, at),
    grid: gridReference(at, GRID_DIGITS),
    ...neighbours(open.analysis.stations, here),
  };
}

/** In both units, whichever are shown: the one who answers may use either. */
export const bothMeasures = (metres: number): string => `${farText(metres, 'metric')} (${farText(metres, 'imperial')})`;
const bothLengths = (metres: number): string => `${lengthText(metres, 'metric')} (${lengthText(metres, 'imperial')})`;

export const coordinatesText = ([lon, lat]: LonLat): string => `${lat.toFixed(6)}, ${lon.toFixed(6)}`;

const raceLine = ({ race, measure, azimuthDeg, pass, passes }: ComesBy): string =>
  `${race}, ${bothMeasures(measure)} from the start${passes > 1 ? `, ${ordinal(pass + 1)} of ${passes} times past` : ''}, runners heading ${compassWord(azimuthDeg)}`;

/** What one says, a line for each thing, in the order in which it is asked for. */
export function placeLines(open: OpenPlan, facts: PlaceFacts): string[] {
  const [first, ...others] = facts.comesBy;
  const { before, after, grid } = facts;
  return [
    `${open.document.plan.name ?? 'Road race'}, on the course`,
    first === undefined
      ? `${facts.course}, ${bothMeasures(facts.measure)} from the start`
      : raceLine({ ...first, measure: facts.measure }),
    ...others.map((one) => `Also ${raceLine(one)}`),
    `Latitude, longitude: ${coordinatesText(facts.at)} (decimal degrees, WGS 84)`,
    grid.text === null ? `No grid reference: ${grid.reason}` : `Grid reference (MGRS): ${grid.text}`,
    ...(before === null ? [] : [`${bothLengths(before.distance)} past station ${before.number}, ${before.name}`]),
    ...(after === null ? [] : [`${bothLengths(after.distance)} before station ${after.number}, ${after.name}`]),
  ];
}
