/**
 * The road's day at the places that a plan knows: its stations and the entries of its clock. Where a road is run several
 * times, or by several courses, whoever runs on it counts, and each time that a clock gives for it has to hold: police
 * and drivers read one line of it.
 */
import { pointAt } from '../course/locate.ts';
import { passesOf } from '../course/passes.ts';
import type { LonLat } from '../finding.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import type { PlanClock } from '../plan/plan.ts';
import type { RaceOnCourse } from '../raceday/arrivals.ts';
import { type ClockKey, type Timeline, timeAt, timelineOf } from '../raceday/clockAlong.ts';
import { passingAt } from '../raceday/passing.ts';
import type { ReasonCode } from '../text/params/checks.ts';
import type { RoadAt } from '../text/params/reviewTimes.ts';
import type { DayFacts } from './check.ts';
import { disordered } from './clockFaults.ts';
import { saysOf } from './clockShort.ts';
import { courseOf } from './standing.ts';

/** When a race is at a place: its first, or its last or its sweep. */
export interface RaceTime {
  readonly race: string;
  readonly time: number;
}

/** A place and its road's day; clock times, `null` where none is known: the latest closing, the earliest reopening. */
export interface RoadPlace extends RoadAt {
  readonly at: LonLat;
  readonly closes: number | null;
  readonly reopens: number | null;
  readonly first: RaceTime | null;
  readonly last: RaceTime | null;
}

/** Courses no farther apart than this share a road, metres: two drawings of one road differ by some. */
export const SAME_ROAD = 15;

/** Rounding that is no lateness, seconds. */
export const SAME_TIME = 0.5;

const known = new WeakMap<DayFacts, { readonly layout: Layout; readonly places: readonly RoadPlace[] }>();

/** Every place, stations first; those of courses whose clock is out of order are left out: that is found by itself. */
export function roadPlaces(layout: Layout, facts: DayFacts): readonly RoadPlace[] {
  const before = known.get(facts);
  if (before?.layout === layout) return before.places;
  const faulty = new Set(disordered(layout).map(({ course }) => course));
  const stations = layout.stations.flatMap(atLead);
  const entries = layout.plan.clock
    .map(atEntry)
    .filter((entry) => !stations.some((one) => one.course === entry.course && isSamePlace(one.measure, entry.measure)));
  const places = [...stations, ...entries]
    .filter(({ course }) => !faulty.has(course))
    .flatMap((place) => placeOf(place, layout, facts));
  known.set(facts, { layout, places });
  return places;
}

/** Measures no farther apart, metres, are one place to whoever writes a clock. */
const SAME_PLACE = 50;
const isSamePlace = (one: number, other: number): boolean => Math.abs(one - other) <= SAME_PLACE;

/** A time of the clock as it is typed where it is given for that place, else between the times given; none where nobody can say. */
function roadTime(line: Timeline, measure: number): number | null {
  const typed = line.measures.findIndex((one) => isSamePlace(one, measure));
  if (typed >= 0) return line.times[typed]!;
  const time = saysOf(line, measure) ? timeAt(line, measure) : null;
  return time === null ? null : Math.round(time);
}

/** Where the tables of a station are passed. */
function atLead(station: StationLayout): RoadAt[] {
  const lead = leadOf(station);
  return lead === undefined ? [] : [{ course: lead.course, measure: lead.measure, station: station.id }];
}

const atEntry = ({ course, measure }: PlanClock): RoadAt => ({ course, measure, station: null });

function placeOf(place: RoadAt, layout: Layout, { races }: DayFacts): RoadPlace[] {
  const ground = pointAt(courseOf(layout, place.course).course, place.measure);
  if (ground === null) return [];
  const passes = layout.courses.flatMap((indexed) =>
    passesOf(indexed, ground.at, { snapRadius: SAME_ROAD }).map(({ measure }) => ({
      course: indexed.course.id,
      measure,
    })),
  );
  const timesOf = (key: ClockKey): number[] =>
    passes.flatMap(({ course, measure }) => roadTime(timelineOf(layout.plan.clock, course, key), measure) ?? []);
  const passings = passes.flatMap(({ course, measure }) =>
    races.filter(({ field }) => field.race.course === course).flatMap((race) => timesOfRace(race, measure)),
  );
  const [closes, reopens] = [timesOf('closes'), timesOf('reopens')];
  return [
    {
      ...place,
      at: ground.at,
      closes: closes.length === 0 ? null : Math.max(...closes),
      reopens: reopens.length === 0 ? null : Math.min(...reopens),
      first: passings.map(({ race, first }) => ({ race, time: first })).sort((a, b) => a.time - b.time)[0] ?? null,
      last: passings.map(({ race, last }) => ({ race, time: last })).sort((a, b) => b.time - a.time)[0] ?? null,
    },
  ];
}

function timesOfRace(race: RaceOnCourse, measure: number): { race: string; first: number; last: number }[] {
  const passing = passingAt(race, measure);
  return passing === null ? [] : [{ race: race.field.race.id, ...passing }];
}

/** Why nothing can be said of a time of the clock, where no entry gives it. */
export const noTime =
  (key: ClockKey, reason: ReasonCode) =>
  ({ plan }: Layout): ReasonCode | null =>
    plan.clock.some((entry) => entry[key] !== undefined) ? null : reason;

/** Cases of places by the course on which they are, the worst first in each. */
export function byCourse<T extends RoadAt>(places: readonly T[], badness: (place: T) => number): T[][] {
  return [...new Set(places.map(({ course }) => course))].map((course) =>
    places.filter((place) => place.course === course).sort((a, b) => badness(b) - badness(a)),
  );
}

/** A place as a finding's parameters hold it: the position is in `where`. */
export function withoutAt<T extends { readonly at: LonLat }>(place: T): Omit<T, 'at'> {
  const { at: _at, ...rest } = place;
  return rest;
}
