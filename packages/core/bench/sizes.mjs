/** Passes and the nearest place on courses of 83 to 100,000 points, against a plain loop and cheap-ruler; and from which size on they are quicker. */
import CheapRuler from 'cheap-ruler';
import { buildCourse, fromEastNorth, indexCourse, nearestOn, passesOf } from '@halfcup/core/geometry';
import { pinsAlong, windingLine } from './data.mjs';
import { plainPasses } from './plainLoop.mjs';
import { overInSlices } from './timing.mjs';

/** Points, metres between them, and the targets: passes, the nearest place, and all from the points on. */
const SIZES = [
  { points: 83, spacing: 60, passes: 1.5, nearest: 2 },
  { points: 533, spacing: 20, passes: 1, nearest: 2 },
  { points: 1800, spacing: 12, whole: 1 },
  { points: 4926, spacing: 4.3, passes: 0.5, nearest: 1, whole: 1 },
  { points: 20_000, spacing: 2.1, passes: 0.05, nearest: 0.3, whole: 1 },
  { points: 100_000, spacing: 2.1, passes: 0.01, nearest: 0.1, whole: 1 },
];
const PINS = 30;
const ROUNDS = 5;

function prepared(points, spacing) {
  const line = windingLine(points, spacing);
  const segment = { ...line, ele: new Float64Array(points).fill(NaN) };
  const course = () => buildCourse({ id: 'c', name: 'c', segments: [segment], drawn: 'centre' }).value;
  const indexed = indexCourse(course());
  const pins = pinsAlong(indexed.course, PINS);
  const ring = pins.map((_, k) => (2 * Math.PI * k) / PINS);
  const middle = pins[PINS / 2];
  return {
    line,
    course,
    indexed,
    pins,
    far: ring.map((turn) => fromEastNorth(middle, 20_000 * Math.cos(turn), 20_000 * Math.sin(turn))),
    six: pins.filter((_, k) => k % 5 === 2),
    coordinates: Array.from(line.lon, (x, i) => [x, line.lat[i]]),
  };
}

/** Time of ours over the peer's for one call on each of some points. */
const over = (ours, peer, points) => overInSlices(ours, peer, points, ROUNDS, 15);

const passesOver = ({ line, indexed, pins }) =>
  over(
    (at) => passesOf(indexed, at),
    (at) => plainPasses(line.lon, line.lat, at, 60),
    pins,
  );

const wholeOver = ({ line, course, six }) =>
  over(
    () => {
      const fresh = indexCourse(course());
      return six.map((at) => passesOf(fresh, at));
    },
    () => six.map((at) => plainPasses(line.lon, line.lat, at, 60)),
    [0, 1],
  );

export function benchSizes(report) {
  for (const { points, spacing, passes, nearest, whole } of SIZES) {
    const size = prepared(points, spacing);
    const { line, indexed, pins, far, coordinates } = size;
    const on = `on ${points.toLocaleString('en')} points`;
    const loop = 'time over a plain loop with sides';
    if (passes !== undefined) {
      report(`all passes by one point ${on}`, loop, passesOver(size), '×', 'at most', passes);
      const ruler = (at) => new CheapRuler(at[1], 'meters').pointOnLine(coordinates, at);
      const ratio = over((at) => passesOf(indexed, at), ruler, pins);
      report(`all passes by one point ${on}`, "time over cheap-ruler's one nearest point", ratio, '×');
      const away = over(
        (at) => nearestOn(indexed, at),
        (at) => plainPasses(line.lon, line.lat, at, 60),
        far,
      );
      report(`the nearest place from 20 km off ${on}`, loop, away, '×', 'at most', nearest);
    }
    if (whole !== undefined) {
      const work = `a course built and indexed, and six stations ${on}`;
      report(work, 'time over six plain loops over the same points', wholeOver(size), '×', 'at most', whole);
    }
  }
  report('all passes by one point', 'quicker than a plain loop from', crossover(passesOver), ' points', 'at most', 533);
}

/** The least of some sizes from which on the time stays under the peer's. */
function crossover(ratioOf) {
  const sizes = [40, 60, 83, 120, 170, 240, 340, 533];
  const slower = sizes.map((points) => ratioOf(prepared(points, 20)) > 1);
  return sizes[slower.lastIndexOf(true) + 1] ?? Infinity;
}
