/** Where the courses stand on the overview's map: north up, unless a turn shows them much larger. */
import { type Course } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import { wrapDegrees } from '../geodesy/ellipsoid.ts';
import { eastNorth, project } from '../geodesy/frame.ts';
import type { Layout } from '../layout/layout.ts';
import { type Place, thinned } from './backdrop.ts';

export interface View {
  readonly on: (at: LonLat) => Place;
  /** Millimetres for a metre. */
  readonly scale: number;
  /** By how many degrees the map is turned clockwise: north is so far from up. */
  readonly turnDeg: number;
  /** One line, or more where gaps are skipped. */
  readonly lines: (course: Course) => Place[][];
}

/** What a view is made of; the frame in millimetres. */
export interface Framed {
  readonly layout: Pick<Layout, 'courses' | 'stations'>;
  readonly width: number;
  readonly height: number;
}

const PAD = 11;

/** Everything about the middle vertex of the first course: north is true there, and 1 mm off at most on paper anywhere on a day's run. */
export function viewOf({ layout: { courses, stations }, width, height }: Framed): View {
  const { lon, lat } = courses[0]!.course;
  const middle = Math.floor(lon.length / 2);
  const origin: LonLat = [wrapDegrees(lon[middle]!), lat[middle]!];
  const spots = new Map(courses.map(({ course }) => [course.id, spotsOf(course, origin)]));
  const pins = stations.map(({ at }) => eastNorth(origin, at));
  const all = [
    ...[...spots.values()].map(({ x, y }) => ({ x, y })),
    { x: pins.map(({ east }) => east), y: pins.map(({ north }) => north) },
  ];
  const { turnDeg, scale, middle: centre } = bestTurn(all, width - 2 * PAD, height - 2 * PAD);
  const turned = turnedBy(turnDeg);
  const place = (x: number, y: number): Place => {
    const [across, up] = turned(x, y);
    return [width / 2 + (across - centre[0]) * scale, height / 2 - (up - centre[1]) * scale];
  };
  const on = (at: LonLat): Place => {
    const { east, north } = eastNorth(origin, at);
    return place(east, north);
  };
  const lines = (course: Course): Place[][] => {
    const { x, y } = spots.get(course.id)!;
    const places = Array.from(x, (one, k) => place(one, y[k]!));
    // No line runs over a skipped gap.
    const cuts = [0, ...course.skips.map(({ vertex }) => vertex + 1), places.length];
    return cuts.slice(1).map((end, k) => thinned(places.slice(cuts[k], end)));
  };
  return { scale, turnDeg, on, lines };
}

/** How a turn of so many degrees clockwise moves a place, east and north of the middle. */
function turnedBy(turnDeg: number): (x: number, y: number) => readonly [number, number] {
  const [sin, cos] = [Math.sin((turnDeg * Math.PI) / 180), Math.cos((turnDeg * Math.PI) / 180)];
  return (x, y) => [x * cos + y * sin, y * cos - x * sin];
}

/** A map is turned only where the courses come out so many times larger: people read maps with north up. */
const WORTH_TURNING = 1.25;
const TURN_STEP = 5;

interface Turn {
  readonly turnDeg: number;
  readonly scale: number;
  readonly middle: readonly [number, number];
}

/** North up, or the turn with which the courses fill the frame best where that is worth it. */
function bestTurn(
  all: readonly { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> }[],
  width: number,
  height: number,
): Turn {
  const at = (turnDeg: number): Turn => {
    const turned = turnedBy(turnDeg);
    let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const { x, y } of all)
      for (let k = 0; k < x.length; k++) {
        const [across, up] = turned(x[k]!, y[k]!);
        [x0, x1, y0, y1] = [Math.min(x0, across), Math.max(x1, across), Math.min(y0, up), Math.max(y1, up)];
      }
    const scale = Math.min(width / Math.max(x1 - x0, 100), height / Math.max(y1 - y0, 100));
    return { turnDeg, scale, middle: [(x0 + x1) / 2, (y0 + y1) / 2] };
  };
  const up = at(0);
  // As near to north up as may be: a turn of 85° either way shows what one of 95° would.
  const turns = Array.from({ length: 180 / TURN_STEP }, (_, k) => (k + 1) * TURN_STEP - 90).filter(
    (turn) => turn !== 0,
  );
  const best = turns.map(at).reduce((a, b) => (b.scale > a.scale * 1.001 ? b : a), up);
  return best.scale >= up.scale * WORTH_TURNING ? best : up;
}

function spotsOf({ lon, lat }: Course, origin: LonLat): { readonly x: Float64Array; readonly y: Float64Array } {
  const [x, y] = [new Float64Array(lon.length), new Float64Array(lon.length)];
  project(origin, lon, lat, 0, lon.length, x, y);
  return { x, y };
}
