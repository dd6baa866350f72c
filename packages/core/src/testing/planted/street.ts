/** Streets for good plans: drawn by turtle in a plane, with places of stations on them; and the same as a receiver records them. Not part of the package. */
import type { LonLat } from '../../finding.ts';
import { from } from '../courses.ts';
import { gaussian } from '../placed.ts';

/** Metres east and north of the plan's origin. */
export type Spot = readonly [east: number, north: number];

/**
 * Straight on; a bend of so many degrees at a radius; straight on to an easting or a northing (metres); or the place
 * of a station, which takes no road.
 */
export type Move =
  | readonly ['on', number]
  | readonly ['east', number]
  | readonly ['north', number]
  | readonly ['left' | 'right', degrees: number, radius: number]
  | readonly ['stop', string];

/** A line in the plane with the measure of each vertex, and of each station on it, metres. */
export interface Street {
  readonly spots: readonly Spot[];
  readonly measures: readonly number[];
  readonly stops: Readonly<Record<string, number>>;
}

const STRAIGHT = 25;
const ARC = 7;
const RAD = Math.PI / 180;

/** The measures of vertices along a line. */
function measured(spots: readonly Spot[]): number[] {
  const measures = [0];
  for (let k = 1; k < spots.length; k++)
    measures.push(measures[k - 1]! + Math.hypot(spots[k]![0] - spots[k - 1]![0], spots[k]![1] - spots[k - 1]![1]));
  return measures;
}

/** A street from a spot, headed by an azimuth in degrees, with a vertex each 25 m of straight and each 7 m of bend. */
export function draw(start: Spot, azimuthDeg: number, moves: readonly Move[]): Street {
  const spots: Spot[] = [start];
  const at: (readonly [string, number])[] = [];
  let heading = azimuthDeg * RAD;
  const ahead = (length: number): void => {
    const [east, north] = spots.at(-1)!;
    spots.push([east + length * Math.sin(heading), north + length * Math.cos(heading)]);
  };
  const straight = (length: number): void => {
    if (!(length > 0)) throw new Error(`A street cannot go on by ${length} m from ${String(spots.at(-1))}.`);
    const pieces = Math.ceil(length / STRAIGHT);
    for (let k = 0; k < pieces; k++) ahead(length / pieces);
  };
  for (const move of moves) {
    const [east, north] = spots.at(-1)!;
    if (move[0] === 'on') straight(move[1]);
    else if (move[0] === 'east') straight((move[1] - east) / Math.sin(heading));
    else if (move[0] === 'north') straight((move[1] - north) / Math.cos(heading));
    else if (move[0] === 'stop') at.push([move[1], spots.length - 1]);
    else {
      const turn = move[1] * RAD * (move[0] === 'right' ? 1 : -1);
      const pieces = Math.max(Math.ceil((Math.abs(turn) * move[2]) / ARC), Math.ceil(move[1] / 20));
      for (let k = 0; k < pieces; k++) {
        heading += turn / pieces / 2;
        ahead(2 * move[2] * Math.sin(Math.abs(turn) / pieces / 2));
        heading += turn / pieces / 2;
      }
    }
  }
  const measures = measured(spots);
  return { spots, measures, stops: Object.fromEntries(at.map(([id, vertex]) => [id, measures[vertex]!])) };
}

/** A station in the middle of 440 m of straight road. */
export const stop = (id: string): Move[] => [
  ['on', 220],
  ['stop', id],
  ['on', 220],
];

/** A gentle S to the left and back, heading and line as before. */
export const sway = (across: number = 150, degrees: number = 25, radius: number = 250): Move[] => [
  ['left', degrees, radius],
  ['on', across],
  ['right', 2 * degrees, radius],
  ['on', across],
  ['left', degrees, radius],
];

/** A gentle S to the right and back. */
export const swing = (across: number = 150, degrees: number = 25, radius: number = 250): Move[] =>
  sway(across, degrees, radius).map((move) =>
    move[0] === 'left' ? ['right', move[1], move[2]] : move[0] === 'right' ? ['left', move[1], move[2]] : move,
  );

/** Round two corners of a block: to the left of the way, and on. */
export const block = (across: number = 160): Move[] => [
  ['left', 90, 9],
  ['on', across],
  ['right', 90, 9],
];

/** Out along a street and back on it. */
export const andBack = ({ spots, stops }: Street): Street => {
  const both = [...spots, ...spots.slice(0, -1).reverse()];
  return { spots: both, measures: measured(both), stops };
};

export const lengthOf = ({ measures }: Street): number => measures.at(-1)!;

/** The spot at a measure, `left` metres to the left of the way. */
export function spotAt({ spots, measures }: Street, measure: number, left: number = 0): Spot {
  const next = measures.findIndex((one, k) => k > 0 && one >= measure);
  if (next < 0 || measure < 0) throw new Error(`The street does not reach ${measure} m.`);
  const [a, b] = [spots[next - 1]!, spots[next]!];
  const length = measures[next]! - measures[next - 1]!;
  const [east, north] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const on = measure - measures[next - 1]!;
  return [a[0] + east * on - north * left, a[1] + north * on + east * left];
}

/** A spot on the ground, to a centimetre. */
export function groundOf(origin: LonLat, [east, north]: Spot): LonLat {
  const [lon, lat] = from(origin, Math.atan2(east, north) / RAD, Math.hypot(east, north));
  return [Number(lon.toFixed(7)), Number(lat.toFixed(7))];
}

/** How a receiver errs: standard deviation of each axis and length over which an error is forgotten, metres. */
const SIGMA = 2;
const CORRELATION = 45;
const RECORDED = 8;

/** A point of a recording, and the measure at which the recorder truly was. */
export interface Recorded {
  readonly spot: Spot;
  readonly was: number;
}

/**
 * A street as a receiver records it: a point each 8 m, each axis off by a first-order autoregressive error of 2 m that is
 * forgotten over 45 m (common practice, no source).
 */
export function recorded(street: Street, seed: number): Recorded[] {
  const normal = gaussian(seed);
  const length = lengthOf(street);
  const pieces = Math.round(length / RECORDED);
  const keep = Math.exp(-length / pieces / CORRELATION);
  let [e, n] = [normal() * SIGMA, normal() * SIGMA];
  const points: Recorded[] = [];
  for (let k = 0; k <= pieces; k++) {
    const measure = Math.min((length * k) / pieces, length);
    const [east, north] = spotAt(street, measure);
    points.push({ spot: [east + e, north + n], was: measure });
    const fresh = SIGMA * Math.sqrt(1 - keep * keep);
    [e, n] = [keep * e + fresh * normal(), keep * n + fresh * normal()];
  }
  return points;
}
