/** On the road: what is to be placed next, how far it is from where the device is, and the record of what stands. Pure. */
import { type Analysis, type Item, type LonLat, type StationLayout } from '@halfcup/core';
import { type Units, formOf } from '@halfcup/core/plan';
import { passesOf, segmentLength, wheelBetween } from '@halfcup/core/geometry';
import { writeGpx } from '@halfcup/core/gpx';
import { ITEM_WORD, lengthText, sideWords } from '../../words.ts';
import { leadOf } from './derive.ts';

/** One thing to be placed, at one end where it has two. */
export interface Peg {
  /** As the record names it, so that the review finds the station and the item again: "s3 sign". */
  readonly name: string;
  readonly title: string;
  readonly station: StationLayout;
  readonly course: string;
  readonly measure: number;
  /** Metres left of the course line. */
  readonly offset: number;
  readonly side: Item['side'];
  readonly at: LonLat;
}

const ENDS: readonly (readonly [string, 0 | 1])[] = [
  ['first box', 0],
  ['last box', 1],
];
const NAMES: Readonly<Record<Item['kind'], string>> = {
  sign: 'sign',
  gel: 'gel table',
  sportsDrink: 'sports drink table',
  water: 'water table',
  handOut: 'hand-out',
  trash: 'trash',
};

function pegsAt(station: StationLayout): Peg[] {
  const lead = leadOf(station);
  if (lead === undefined) return [];
  return lead.items.flatMap((item) => {
    if (formOf(item.kind) === 'line') return [];
    const ends: readonly (readonly [string, 0 | 1])[] = formOf(item.kind) === 'boxes' ? ENDS : [['', 0]];
    return ends.flatMap(([word, end]): Peg[] => {
      const at = item.at[end];
      if (at === null) return [];
      const name = [station.id, NAMES[item.kind], word].filter((part) => part !== '').join(' ');
      const title = `${ITEM_WORD[item.kind]}${word === '' ? '' : `, ${word}`}${item.wording === undefined ? '' : ` “${item.wording}”`}`;
      return [
        {
          name,
          title,
          station,
          course: lead.course,
          measure: end === 0 ? item.from : item.to,
          offset: item.offset,
          side: item.side,
          at,
        },
      ];
    });
  });
}

/** All that is to be placed, course by course, in running order. */
export function pegsOf(analysis: Analysis): Peg[] {
  const order = new Map(analysis.courses.map(({ course }, index) => [course.id, index]));
  return analysis.stations
    .flatMap(pegsAt)
    .toSorted((a, b) => (order.get(a.course) ?? 0) - (order.get(b.course) ?? 0) || a.measure - b.measure);
}

/** Where the device is, as it says itself. */
export interface Fix {
  readonly at: LonLat;
  /** Radius that holds the true place in 95 of 100 cases, metres (W3C Geolocation). */
  readonly accuracy: number;
  /** Milliseconds since 1970 UTC. */
  readonly time: number;
}

export interface Way {
  /** Metres along the course still to go, back is negative; `null` where no course passes the device. */
  readonly along: number | null;
  /** The same by wheel on the peg's side; `null` where no wheel can run. */
  readonly wheel: number | null;
  /** Straight to the place, metres. */
  readonly straight: number;
}

/** How far it is from a fix to a peg, by the pass of its course that is nearest to the peg along the course. */
export function wayTo(analysis: Analysis, peg: Peg, { at }: Fix): Way {
  const straight = segmentLength(at[0], at[1], peg.at[0], peg.at[1]);
  const indexed = analysis.courses.find(({ course }) => course.id === peg.course);
  const passes = indexed === undefined ? [] : passesOf(indexed, at, peg.station.practice);
  const [pass] = passes.toSorted((a, b) => Math.abs(a.measure - peg.measure) - Math.abs(b.measure - peg.measure));
  if (indexed === undefined || pass === undefined) return { along: null, wheel: null, straight };
  const wheel = wheelBetween(indexed.course, pass.measure, peg.measure, peg.offset, 0);
  return { along: peg.measure - pass.measure, wheel: wheel?.length ?? null, straight };
}

/** Nearer than this along the course counts as there, metres. */
const THERE = 0.5;

/** "34 yd further on, right-hand side"; what to do where no course passes. */
export function wayWords(way: Way, side: Peg['side'], units: Units): string {
  if (way.along === null) return `${lengthText(way.straight, units)} away in a straight line; no course passes here`;
  const place = sideWords(side);
  if (Math.abs(way.along) < THERE) return `Here, ${place}`;
  return `${lengthText(Math.abs(way.along), units)} ${way.along > 0 ? 'further on' : 'back'}, ${place}`;
}

/** One thing that stands, with where the device says that it does. */
export interface Stood extends Fix {
  readonly name: string;
  /** As typed: "98 yd". */
  readonly wheeled: string | null;
}

/** Metres of accuracy to one of `hdop`: the review takes five times the hdop as the 95 % radius. */
const ACCURACY_PER_HDOP = 5;

/** The record as a GPX file of points as placed. */
export const recordGpx = (plan: string, record: readonly Stood[]): string =>
  writeGpx({
    creator: 'Halfcup',
    name: `${plan}, as placed`,
    waypoints: record.map(({ name, at, accuracy, time, wheeled }) => ({
      lon: at[0],
      lat: at[1],
      time,
      name,
      hdop: Math.max(accuracy, 0.05) / ACCURACY_PER_HDOP,
      ...(wheeled === null ? {} : { comment: `wheel ${wheeled}` }),
    })),
  });

/** The first peg that is not recorded yet. */
export const nextPeg = (pegs: readonly Peg[], record: readonly Stood[]): Peg | undefined =>
  pegs.find((peg) => !record.some((one) => one.name === peg.name));

const KEY = 'halfcup-as-placed';
const keyOf = (plan: string): string => `${KEY}:${plan}`;

const isStood = (value: unknown): value is Stood => {
  const one = value as Partial<Record<keyof Stood, unknown>> | null;
  return (
    typeof one?.name === 'string' &&
    Array.isArray(one.at) &&
    one.at.length === 2 &&
    one.at.every(Number.isFinite) &&
    Number.isFinite(one.accuracy) &&
    Number.isFinite(one.time)
  );
};

/** What was recorded for a plan when the page was last here. */
export function keptRecord(storage: () => Pick<Storage, 'getItem'>, plan: string): readonly Stood[] {
  try {
    const value: unknown = JSON.parse(storage().getItem(keyOf(plan)) ?? '[]');
    return Array.isArray(value) ? value.filter(isStood) : [];
  } catch {
    return [];
  }
}

/** Keeps a record in the browser; says why it could not. */
export function keepRecord(
  storage: () => Pick<Storage, 'setItem'>,
  plan: string,
  record: readonly Stood[],
): string | null {
  try {
    storage().setItem(keyOf(plan), JSON.stringify(record));
    return null;
  } catch {
    return 'This browser saves nothing for this page. Save the points before you close it.';
  }
}
