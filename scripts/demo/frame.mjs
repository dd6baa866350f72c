// The local plane: kilometres east (x) and north (y) of the island's origin, and the way to WGS 84.
// Radii of curvature at the origin; good for drawing, never for measuring: lengths are geodesics.
import geographiclib from 'geographiclib-geodesic';

const { Geodesic } = geographiclib;
const a = 6378.137;
const f = 1 / 298.257223563;
export const origin = { lon: -17.4, lat: -33.2 };
const rad = Math.PI / 180;
const e2 = f * (2 - f);
const w = 1 - e2 * Math.sin(origin.lat * rad) ** 2;
const kmPerLon = (a / Math.sqrt(w)) * Math.cos(origin.lat * rad) * rad;
const kmPerLat = ((a * (1 - e2)) / w ** 1.5) * rad;

/** Rounds to a number of decimals, and never gives -0. */
export const round = (value, decimals) => Number(value.toFixed(decimals)) + 0;

/** [lon, lat] of a point of the plane, rounded. */
export const toLonLat = ([x, y], decimals = 7) => [
  round(origin.lon + x / kmPerLon, decimals),
  round(origin.lat + y / kmPerLat, decimals),
];

/** [x, y] in kilometres of a [lon, lat]. */
export const toPlane = ([lon, lat]) => [(lon - origin.lon) * kmPerLon, (lat - origin.lat) * kmPerLat];

/** Geodesic length of a [lon, lat] line, metres. */
export function geodesicLength(line) {
  let sum = 0;
  for (let i = 1; i < line.length; i += 1)
    sum += Geodesic.WGS84.Inverse(line[i - 1][1], line[i - 1][0], line[i][1], line[i][0]).s12;
  return sum;
}

/** The point at a measure along a [lon, lat] line, moved square to it (metres, left positive), as [lon, lat]. */
export function pointAt(line, measure, offset = 0) {
  let left = measure;
  for (let i = 1; i < line.length; i += 1) {
    const [p, q] = [line[i - 1], line[i]];
    const leg = Geodesic.WGS84.Inverse(p[1], p[0], q[1], q[0]);
    if (left > leg.s12 && i < line.length - 1) {
      left -= leg.s12;
      continue;
    }
    const foot = Geodesic.WGS84.Direct(p[1], p[0], leg.azi1, left);
    const moved = Geodesic.WGS84.Direct(foot.lat2, foot.lon2, foot.azi2 - 90, offset);
    return [round(moved.lon2, 7), round(moved.lat2, 7)];
  }
  throw new Error('pointAt: a line needs two points');
}

/** The raw measure of a vertex of a [lon, lat] line. */
export const measureOf = (line, index) => geodesicLength(line.slice(0, index + 1));

export const add = (p, q, k = 1) => [p[0] + q[0] * k, p[1] + q[1] * k];
export const sub = (p, q) => [p[0] - q[0], p[1] - q[1]];
export const lengthOf = (p) => Math.sqrt(p[0] * p[0] + p[1] * p[1]);
export const between = (p, q) => lengthOf(sub(p, q));

/** Distance from a point to a segment, kilometres. */
export function toSegment(p, s, t) {
  const d = sub(t, s);
  const k = Math.max(0, Math.min(1, ((p[0] - s[0]) * d[0] + (p[1] - s[1]) * d[1]) / (d[0] * d[0] + d[1] * d[1] || 1)));
  return between(p, add(s, d, k));
}

/** Distance from a point to a line, kilometres. */
export function toLine(p, line) {
  let best = Infinity;
  for (let i = 1; i < line.length; i += 1) best = Math.min(best, toSegment(p, line[i - 1], line[i]));
  return best;
}

export const smoothstep = (low, high, value) => {
  const t = Math.max(0, Math.min(1, (value - low) / (high - low)));
  return t * t * (3 - 2 * t);
};
