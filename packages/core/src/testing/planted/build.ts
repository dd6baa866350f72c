/** Builds good plans out of streets: courses, stations with all that belongs to them, the road's clock. Not part of the package. */
import type { LonLat } from '../../finding.ts';
import type { GpxSegment } from '../../gpx/document.ts';
import { writeGpx } from '../../gpx/write.ts';
import { ORIGIN } from '../courses.ts';
import type { ClockText, CourseText, FileTexts, Pair, PlanText, PointText, RaceText, StationText } from './planText.ts';
import { type Recorded, type Street, groundOf, lengthOf, recorded, spotAt } from './street.ts';

/** Lines drawn along the middle of the road, or as a receiver recorded them. */
export type Lines = 'drawn' | 'recorded';

/** What plants put things on: the true ground, whatever the lines say. */
export interface Ground {
  /** The place at a measure of a course, so many metres to the left of its way. */
  readonly at: (course: string, measure: number, left?: number) => Pair;
  readonly length: (course: string) => number;
  /** A station or another mark of a street, metres along the course. */
  readonly stop: (course: string, mark: string) => number;
  /** Where a station's pin stands. */
  readonly foot: (station: string) => Foot;
}

export interface Foot {
  readonly course: string;
  readonly measure: number;
  readonly side: 'left' | 'right';
  /** From the middle of the road to its edge, metres. */
  readonly kerb: number;
}

export interface GoodPlan {
  readonly text: PlanText;
  readonly files: FileTexts;
  readonly ground: Ground;
}

/** A street of a course, in the plan itself or in a file. */
export interface CourseOf {
  readonly id: string;
  readonly name: string;
  readonly street: Street;
  /** Metres above the sea at a measure. */
  readonly height: (measure: number, east: number, north: number) => number;
  readonly inFile: boolean;
  /** Of the recorder's errors. */
  readonly seed: number;
  /** Where it is recorded: its first and its last metres are cut from the recording of another course, which stands before it. */
  readonly cutFrom?: { readonly of: string; readonly first: number; readonly last: number };
}

/** A gentle country: no road on it is steeper than 2.5 %. */
export const rolling = (_: number, east: number, north: number): number =>
  24 + 5 * Math.sin(east / 610) + 4 * Math.cos(north / 530);

export const minutes = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
export const clock = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(Math.floor(minute % 60)).padStart(2, '0')}`;
export const km = (measure: number): string => `${(measure / 1000).toFixed(3)} km`;

export function groundUnder(courses: readonly CourseOf[], stops: readonly StopOf[], origin: LonLat = ORIGIN): Ground {
  const streetOf = (id: string): Street => courses.find((course) => course.id === id)!.street;
  const markOf = (course: string, mark: string): number => {
    const at = streetOf(course).stops[mark];
    if (at === undefined) throw new Error(`No ${mark} on ${course}.`);
    return at;
  };
  return {
    at: (course, measure, left = 0) => [...groundOf(origin, spotAt(streetOf(course), measure, left))] as Pair,
    length: (course) => lengthOf(streetOf(course)),
    stop: markOf,
    foot: (station) => {
      const { course, measure, side, width } = stops.find(({ id }) => id === station)!;
      return { course, measure: measure ?? markOf(course, station), side, kerb: width / 2 };
    },
  };
}

/** Courses of a plan, and the files that hold those which are not in it. */
export function coursesOf(
  courses: readonly CourseOf[],
  lines: Lines,
  origin: LonLat = ORIGIN,
): { courses: CourseText[]; files: FileTexts } {
  const files: FileTexts = {};
  const recordings = new Map<string, readonly Recorded[]>();
  const texts = courses.map((course): CourseText => {
    const { id, name, street, height, inFile } = course;
    const drawn = street.spots.map((spot, k) => ({ spot, was: street.measures[k]! }));
    const vertices = lines === 'drawn' ? drawn : recordingOf(course, courses, recordings);
    recordings.set(id, vertices);
    const points = vertices.map(({ spot, was }) => {
      const [east, north] = lines === 'drawn' ? spot : spotAt(street, was);
      return [...groundOf(origin, spot), Number(height(was, east, north).toFixed(2))];
    });
    const keys = { id, name, drawn: lines === 'drawn' ? 'centre' : 'recorded', length: km(lengthOf(street)) } as const;
    if (!inFile) return { ...keys, line: points };
    const column = (index: number): Float64Array => Float64Array.from(points, (point) => point[index]!);
    const segment: GpxSegment = { lon: column(0), lat: column(1), ele: column(2) };
    files[`${id}.gpx`] = writeGpx({ creator: 'test', tracks: [{ name, segments: [segment] }] });
    return { ...keys, gpx: `${id}.gpx` };
  });
  return { courses: texts, files };
}

/** A course as it is recorded, with what was recorded before where it is cut from it. */
function recordingOf(
  { street, seed, cutFrom }: CourseOf,
  courses: readonly CourseOf[],
  recordings: ReadonlyMap<string, readonly Recorded[]>,
): readonly Recorded[] {
  const own = recorded(street, seed);
  if (cutFrom === undefined) return own;
  const { of, first, last } = cutFrom;
  const other = recordings.get(of)!;
  const [length, otherLength] = [lengthOf(street), lengthOf(courses.find(({ id }) => id === of)!.street)];
  return [
    ...other.filter(({ was }) => was <= first),
    ...own.filter(({ was }) => was > first && was < length - last),
    ...other
      .filter(({ was }) => was >= otherLength - last)
      .map(({ spot, was }) => ({ spot, was: was - otherLength + length })),
  ];
}

/** What a coordinator knows of a station before it is drawn. */
export interface StopOf {
  readonly id: string;
  readonly name: string;
  readonly street: string;
  readonly course: string;
  /** Absent: where the street has its stop. */
  readonly measure?: number;
  readonly side: 'left' | 'right';
  /** Of the road, metres. */
  readonly width: number;
  /** Given by the pin, or by course and measure. */
  readonly by: 'at' | 'on';
  readonly medical?: boolean;
  /** Call sign; the captain, the telephone and the points take their words from name and street. */
  readonly radio: string;
  /** Of the telephone. */
  readonly line: number;
  readonly more: Partial<StationText>;
}

/** Where points stand from the pin's foot, metres downstream, and beyond the kerb. */
const DROP = [-32, 5] as const;
const MEDICAL = [-55, 4] as const;
const ACCESS = [-58, 22] as const;

/** A place by a foot: metres downstream, and beyond the kerb on the side of the tables. */
export const placeBy = (
  { course, measure, side, kerb }: Foot,
  { at }: Ground,
  along: number,
  beyond: number = 0.5,
): Pair => at(course, measure + along, (kerb + beyond) * (side === 'left' ? 1 : -1));

/** The points of a station that stands at a foot. */
export function pointsAt(foot: Foot, ground: Ground, street: string, medical: boolean): PointText[] {
  const place = ([along, beyond]: readonly [number, number]): Pair => placeBy(foot, ground, along, beyond);
  const tent: PointText[] = [
    { kind: 'medical', at: place(MEDICAL), name: 'First aid tent' },
    { kind: 'access', at: place(ACCESS), name: 'Ambulance access', street },
  ];
  return [{ kind: 'drop', at: place(DROP), name: 'Supplies', street }, ...(medical ? tent : [])];
}

/** The pin at a foot, by itself or by its course and measure. */
export const pinAt = (foot: Foot, ground: Ground, by: 'at' | 'on'): Pick<StationText, 'at' | 'on'> =>
  by === 'at'
    ? { at: placeBy(foot, ground, 0) }
    : { on: { course: foot.course, measure: km(foot.measure), side: foot.side, offset: `${foot.kerb + 0.5} m` } };

export function stationOf(stopOf: StopOf, ground: Ground): StationText {
  const { id, name, street, side, width, radio, line, more } = stopOf;
  const foot = ground.foot(id);
  return {
    id,
    name,
    ...pinAt(foot, ground, stopOf.by),
    side,
    serves: ['sportsDrink', 'water'],
    width: `${width} m`,
    points: pointsAt(foot, ground, street, stopOf.medical === true),
    people: { captain: `Captain, ${name}`, radio, phone: `extension ${line}` },
    ...more,
  };
}

/** How a course is closed to traffic, clock times. */
export interface Closure {
  readonly course: string;
  readonly opens: string;
  /** At the start of the course. */
  readonly closes: string;
  /** The sweep leaves the start, and comes to the finish. */
  readonly sweep: readonly [from: string, to: string];
  /** Minutes from the sweep to the road's reopening. */
  readonly after: number;
  /** Metres a minute at which the closing runs ahead of the leaders; absent: closed and reopened all at one time. */
  readonly rolls?: number;
}

const SHARES = [0, 0.25, 0.5, 0.75, 1];

export function clockOf({ course, opens, closes, sweep, after, rolls }: Closure, length: number): ClockText[] {
  const [from, to] = [minutes(sweep[0]), minutes(sweep[1])];
  return SHARES.map((share) => {
    const swept = from + (to - from) * share;
    return {
      course,
      measure: km(length * share),
      accessOpens: opens,
      closes: clock(minutes(closes) + (rolls === undefined ? 0 : (length * share) / rolls)),
      sweep: clock(swept),
      reopens: clock(rolls === undefined ? to + after : swept + after),
    };
  });
}

/** What makes one good plan, beside what all have. */
export interface PlanOf {
  readonly name: string;
  readonly courses: readonly CourseOf[];
  readonly races: readonly RaceText[];
  readonly stops: readonly StopOf[];
  readonly zones: (ground: Ground) => PlanText['zones'];
  readonly vehicles: PlanText['vehicles'];
  readonly closures: readonly Closure[];
}

/** A complete plan on lines drawn or recorded. */
export function planned({ name, courses, races, stops, zones, vehicles, closures }: PlanOf, lines: Lines): GoodPlan {
  const ground = groundUnder(courses, stops);
  const { courses: lineTexts, files } = coursesOf(courses, lines);
  const text: PlanText = {
    format: 'halfcup-plan',
    version: 1,
    name,
    date: '2027-09-12',
    timeZone: 'Etc/GMT+1',
    units: 'metric',
    courses: lineTexts,
    races: [...races],
    stations: stops.map((one) => stationOf(one, ground)),
    zones: zones(ground),
    practice: {
      signAhead: '90 m',
      signTolerance: '9 m',
      gelAhead: '8 m',
      tableGap: '3 m',
      tableLength: '1.8 m',
      trashFrom: '45 m',
      trashTo: '90 m',
    },
    supplies: { heat: 'warm' },
    vehicles,
    clock: closures.flatMap((closure) => clockOf(closure, ground.length(closure.course))),
    contacts: {
      emergency: 'the local emergency number',
      raceControl: 'race control, harbour office',
      radioChannel: 'channel 3',
    },
  };
  return { text, files, ground };
}

/** Trucks that are loaded at so early a clock time. */
export const trucks = (count: number, from: string, places: number): PlanText['vehicles'] =>
  Array.from({ length: count }, (_, k) => ({
    id: `v${k + 1}`,
    name: `Truck ${['one', 'two', 'three', 'four'][k]}`,
    kg: 3500,
    places,
    kmh: 30,
    stop: '12 min',
    from,
  }));

/** A keep-clear yard beside the road: `along` by `deep` metres, `off` metres from the middle of the road. */
export function yard(ground: Ground, course: string, measure: number, off: number, along = 14, deep = 12): Pair[] {
  const out = off > 0 ? deep : -deep;
  return [
    ground.at(course, measure, off),
    ground.at(course, measure + along, off),
    ground.at(course, measure + along, off + out),
    ground.at(course, measure, off + out),
  ];
}
