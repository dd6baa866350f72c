/**
 * The ground about a station as the drawings need it: the course near it in metres east and north of the pin,
 * and how far along the course a point of the station stands.
 */
import { max, min } from 'd3-array';
import { courseLength, startMeasure } from '../course/course.ts';
import { sliceLine } from '../course/locate.ts';
import type { LonLat } from '../finding.ts';
import { eastNorth } from '../geodesy/frame.ts';
import type { Layout, LaidDirection, StationLayout } from '../layout/layout.ts';
import { courseById, findCourse } from '../plan/lookups.ts';
import type { Plan, PlanPoint } from '../plan/plan.ts';
import type { SheetText } from '../text/sheetText.ts';
import { crossingInWords } from '../text/streetWords.ts';
import { shortened } from './frame.ts';
import type { KerbGate, KerbMouth, KerbPoint } from './drawing/frame.ts';

/** East and north of the pin, metres. */
export type Spot = readonly [east: number, north: number];

export const spotFrom =
  (origin: LonLat) =>
  (at: LonLat): Spot => {
    const { east, north } = eastNorth(origin, at);
    return [east, north];
  };

/** A course between two measures as spots about a pin; empty where it does not run there. */
export function spotsAlong(
  { courses }: Pick<Layout, 'courses'>,
  course: string,
  [from, to]: readonly [number, number],
  origin: LonLat,
): Spot[] {
  const found = findCourse(courses, course);
  return found === undefined ? [] : sliceLine(found.course, from, to).map(spotFrom(origin));
}

/** A point's word: its kind, or its own name where it is of no kind. */
export const pointWord = ({ kind, name }: Pick<PlanPoint, 'kind' | 'name'>, { frame }: SheetText): string =>
  kind === 'other' && name !== undefined && name.trim() !== '' ? shortened(name, 24) : frame.points[kind];

/** Farther from the course than this a point is not at its kerb, metres. */
const NEAR = 40;
/** A stretch before the sign and past the trash drop that still counts, metres. */
const BEYOND = 10;

/** The points that stand near the kerb between sign and trash drop of a direction, nearest place each. */
export function kerbPoints(
  layout: Pick<Layout, 'courses'>,
  station: Pick<StationLayout, 'at' | 'station'>,
  direction: LaidDirection,
  text: SheetText,
  points: readonly PlanPoint[] = station.station.points,
): KerbPoint[] {
  const place = placesAlong(layout, station, direction);
  return points.flatMap((point): KerbPoint[] => {
    const found = place(point.at);
    return found === null || found.distance > NEAR
      ? []
      : [{ kind: point.kind, word: pointWord(point, text), along: found.along }];
  });
}

interface Along {
  /** From the pin's foot along the course, metres. */
  readonly along: number;
  /** Of the course, metres. */
  readonly distance: number;
  readonly left: boolean;
}

/** Where a place stands along the kerb between sign and trash drop of a direction; `null` where nothing is laid out. */
function placesAlong(
  layout: Pick<Layout, 'courses'>,
  { at }: Pick<StationLayout, 'at'>,
  direction: LaidDirection,
): (place: LonLat) => Along | null {
  const ends = direction.items.flatMap(({ from, to }) => [from, to]);
  if (ends.length === 0) return () => null;
  const course = courseById(layout.courses, direction.course).course;
  const range = [
    Math.max(startMeasure(course), Math.min(...ends) - BEYOND),
    Math.min(courseLength(course), Math.max(...ends) + BEYOND),
  ] as const;
  const line = spotsAlong(layout, direction.course, range, at);
  return (place) => {
    const found = nearestShare(line, spotFrom(at)(place));
    return found === null
      ? null
      : {
          along: range[0] + found.share * (range[1] - range[0]) - direction.measure,
          distance: found.distance,
          left: found.left,
        };
  };
}

/** Farther from the course than this, ground to keep clear is not at its kerb, metres. */
const BESIDE = 15;

/** The plan's ground to keep clear, a neighbour's drive or gate, that lies at the tables' own kerb. */
export function kerbGates(
  layout: Pick<Layout, 'courses'> & { readonly plan: Pick<Plan, 'zones'> },
  station: Pick<StationLayout, 'at'>,
  direction: LaidDirection,
): KerbGate[] {
  const place = placesAlong(layout, station, direction);
  return layout.plan.zones.flatMap(({ rule, name, polygon }): KerbGate[] => {
    if (rule !== 'keep-clear') return [];
    const near = polygon
      .flatMap((at) => place(at) ?? [])
      .filter(({ distance, left }) => distance <= BESIDE && left === (direction.side === 'left'));
    const alongs = near.map(({ along }) => along);
    return near.length < 2 ? [] : [{ word: name, along: [min(alongs)!, max(alongs)!] }];
  });
}

/** Streets that meet the course between sign and trash drop, by the plan's map: where their mouths are, and what they are called. */
export function kerbMouths(
  { ground }: Pick<Layout, 'ground'>,
  direction: LaidDirection,
  { frame: { street } }: SheetText,
): KerbMouth[] {
  const ends = direction.items.flatMap(({ from, to }) => [from, to]);
  const { side, measure: chalk } = direction;
  if (ends.length === 0 || side === 'unclear') return [];
  const range = [Math.min(...ends) - BEYOND, Math.max(...ends) + BEYOND] as const;
  const junctions = ground?.along.get(direction.course)?.junctions ?? [];
  return junctions
    .filter(({ measure, sides }) => sides.length > 0 && measure >= range[0] && measure <= range[1])
    .map((junction): KerbMouth => {
      const { sides, mouth } = junction;
      const near = sides.includes(side);
      return {
        word: begun(crossingInWords(junction, street)),
        kerb: near && sides.length > 1 ? 'both' : near ? 'near' : 'far',
        along: [mouth.from - chalk, mouth.to - chalk],
      };
    });
}

/** A label begins with a capital, though the words for what has no name do not. */
const begun = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** The nearest place on a line of spots: its share of the length, how far off, and on which side of it; `null` where the line has no length. */
export function nearestShare(
  line: readonly Spot[],
  [east, north]: Spot,
): { readonly share: number; readonly distance: number; readonly left: boolean } | null {
  let run = 0;
  let best = { at: 0, distance: Infinity, left: false };
  for (const [k, [x, y]] of line.slice(1).entries()) {
    const [x0, y0] = line[k]!;
    const [dx, dy] = [x - x0, y - y0];
    const length = Math.hypot(dx, dy);
    const t = length === 0 ? 0 : Math.min(Math.max(((east - x0) * dx + (north - y0) * dy) / (length * length), 0), 1);
    const distance = Math.hypot(east - x0 - t * dx, north - y0 - t * dy);
    if (distance < best.distance)
      best = { at: run + t * length, distance, left: dx * (north - y0) - dy * (east - x0) > 0 };
    run += length;
  }
  return run === 0 ? null : { share: best.at / run, distance: best.distance, left: best.left };
}
