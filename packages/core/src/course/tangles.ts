/**
 * Standing-still tangles: stretches over 30 m long by measure that stay inside a circle of 10 m
 * radius and turn more than 720° in all. A recorder that stands still draws them.
 * Cost: two comparisons a vertex where the course moves on.
 */
import type { LonLat } from '../finding.ts';
import { DEGREES, RADIANS } from '../geodesy/ellipsoid.ts';
import { type Frame, frameAt, project } from '../geodesy/frame.ts';
import { lengthBetween } from '../geodesy/segment.ts';
import type { Metres } from '../units.ts';
import type { Course } from './course.ts';

/** A stretch where a recorder stood still, between two raw measures. */
export interface Tangle {
  readonly from: Metres;
  readonly to: Metres;
}

const LENGTH = 30;
const RADIUS = 10;
const TURN = 720;

/** All tangles of a course, in running order; each as long as it goes. */
export function tanglesOf(course: Course): Tangle[] {
  const { lon, lat, raw, skips } = course;
  const last = raw.length - 1;
  const tangles: Tangle[] = [];
  let frame = frameAt(0, 0);
  let ahead = 0;
  let clear = 0;
  for (let i = 0; i < last; i++) {
    if (raw[i]! < clear) continue;
    while (ahead < last && raw[ahead]! - raw[i]! <= LENGTH) ahead++;
    if (raw[ahead]! - raw[i]! <= LENGTH) break;
    const away = lat[i]! - frame.lat;
    if (away > REACH || away < -REACH) frame = frameAt(0, lat[i]!);
    // A chord longer than the circle is wide: no circle holds both ends, nor those of a later start that is not nearer by more than that.
    const chord = leastChord(course, frame, i, ahead);
    if (chord > 2 * RADIUS) {
      if (skips.length === 0) clear = raw[i]! + chord - 2 * RADIUS;
      continue;
    }
    const end = circledUntil(course, i);
    if (raw[end]! - raw[i]! > LENGTH && turnOver(lon, lat, i, end)) {
      tangles.push({ from: raw[i]!, to: raw[end]! });
      i = end;
    }
  }
  return tangles;
}

/** Degrees of latitude within which a parallel's radius is taken as constant; at 80° it changes by 0.2 %. */
const REACH = 0.02;

/** Never more than the chord between two vertices, metres: a frame's radii, less a hundredth; where they do not hold, the geodesic. */
function leastChord({ lon, lat }: Course, frame: Frame, i: number, j: number): number {
  const north = (lat[j]! - lat[i]!) * RADIANS * frame.meridian;
  const east = (lon[j]! - lon[i]!) * RADIANS * frame.parallel;
  const chord = 0.99 * Math.sqrt(north * north + east * east);
  return frame.temperate && chord < 1000 && chord > 2 * RADIUS
    ? chord
    : lengthBetween(lon[i]!, lat[i]!, lon[j]!, lat[j]!);
}

/** The last vertex of the longest stretch from `first` that a circle of RADIUS holds. */
function circledUntil(course: Course, first: number): number {
  const { lon, lat, raw } = course;
  const origin: LonLat = [lon[first]!, lat[first]!];
  let size = 64;
  for (;;) {
    const count = Math.min(size, raw.length - first);
    const east = new Float64Array(count);
    const north = new Float64Array(count);
    project(origin, lon, lat, first, count, east, north);
    const end = growCircle(east, north, count);
    if (end < count - 1 || count < size) return first + end;
    size *= 4;
  }
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Index of the last point of the longest run from 0 whose smallest enclosing circle has at most RADIUS (Welzl, incremental). */
function growCircle(x: Float64Array, y: Float64Array, count: number): number {
  let circle: Circle = { x: x[0]!, y: y[0]!, r: 0 };
  for (let i = 1; i < count; i++) {
    if (holds(circle, x[i]!, y[i]!)) continue;
    // Farther from the first point than the circle is wide: no need to fit one.
    if (Math.hypot(x[i]! - x[0]!, y[i]! - y[0]!) > 2 * RADIUS) return i - 1;
    circle = circleWith(x, y, i);
    if (circle.r > RADIUS) return i - 1;
  }
  return count - 1;
}

const holds = (circle: Circle, x: number, y: number): boolean =>
  Math.hypot(x - circle.x, y - circle.y) <= circle.r + 1e-9;

/** Smallest circle of points 0 to `last` that has point `last` on its rim. */
function circleWith(x: Float64Array, y: Float64Array, last: number): Circle {
  let circle: Circle = { x: x[last]!, y: y[last]!, r: 0 };
  for (let j = 0; j < last; j++) {
    if (holds(circle, x[j]!, y[j]!)) continue;
    circle = {
      x: (x[j]! + x[last]!) / 2,
      y: (y[j]! + y[last]!) / 2,
      r: Math.hypot(x[j]! - x[last]!, y[j]! - y[last]!) / 2,
    };
    for (let k = 0; k < j; k++) if (!holds(circle, x[k]!, y[k]!)) circle = throughThree(x, y, last, j, k);
  }
  return circle;
}

function throughThree(x: Float64Array, y: Float64Array, a: number, b: number, c: number): Circle {
  const bx = x[b]! - x[a]!;
  const by = y[b]! - y[a]!;
  const cx = x[c]! - x[a]!;
  const cy = y[c]! - y[a]!;
  const twice = 2 * (bx * cy - by * cx);
  if (twice === 0) return { x: x[a]!, y: y[a]!, r: Infinity };
  const ux = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / twice;
  const uy = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / twice;
  return { x: x[a]! + ux, y: y[a]! + uy, r: Math.hypot(ux, uy) };
}

function turnOver(lon: Float64Array, lat: Float64Array, first: number, last: number): boolean {
  const count = last - first + 1;
  const east = new Float64Array(count);
  const north = new Float64Array(count);
  project([lon[first]!, lat[first]!], lon, lat, first, count, east, north);
  let turned = 0;
  for (let i = 1; i < count - 1; i++) {
    const ax = east[i]! - east[i - 1]!;
    const ay = north[i]! - north[i - 1]!;
    const bx = east[i + 1]! - east[i]!;
    const by = north[i + 1]! - north[i]!;
    turned += Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * DEGREES;
  }
  return turned > TURN;
}
