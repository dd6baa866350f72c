/** Wheel readings on recorded bends of 30 to 40 m radius, held against the kerb of the bend itself, walked by its formula. */
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import { fromEastNorth } from '../geodesy/frame.ts';
import { ORIGIN, generator, segmentThrough, valueOf } from '../testing/courses.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';
import { offsetUncertainty, wheelBetween } from './wheel.ts';

const STRAIGHT = 120;

/** A straight, a bend to the left, a straight. */
interface Bend {
  readonly radius: number;
  readonly turn: number;
}

/** East and north of the place at a measure on the bend's line. */
function placeOn({ radius, turn }: Bend, measure: number): readonly [number, number] {
  if (measure < STRAIGHT) return [measure, 0];
  const angle = Math.min((measure - STRAIGHT) / radius, turn);
  const rest = measure - STRAIGHT - radius * angle;
  const x = STRAIGHT + radius * Math.sin(angle) + rest * Math.cos(angle);
  return [x, radius * (1 - Math.cos(angle)) + rest * Math.sin(angle)];
}

/** Length of the line at an offset, left positive, between two measures: the radius less the offset, times the turn between them. */
function kerbLength({ radius, turn }: Bend, from: number, to: number, offset: number): number {
  const within = (measure: number): number => Math.min(Math.max((measure - STRAIGHT) / radius, 0), turn);
  return to - from - offset * (within(to) - within(from));
}

/** The bend as a recorder draws it: points so far apart, each off by a normal error that goes on into the next. */
function recordedOn(bend: Bend, step: number, sigma: number, seed: number): ReturnType<typeof buildCourse> {
  const random = generator(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
  const all = 2 * STRAIGHT + bend.radius * bend.turn;
  let [east, north] = [0, 0];
  const points = Array.from({ length: Math.floor(all / step) + 1 }, (_, k) => {
    const [x, y] = placeOn(bend, k * step);
    [east, north] = [0.8 * east + 0.6 * sigma * normal(), 0.8 * north + 0.6 * sigma * normal()];
    return fromEastNorth(ORIGIN, x + east, y + north);
  });
  return buildCourse({ id: 'c', name: 'c', segments: [segmentThrough(points)] });
}

it('holds the kerb of a recorded bend within its margin', () => {
  const off = { outside: 0, read: 0 };
  const runs = tries(1000);
  fc.assert(
    fc.property(
      real(30, 40),
      real(0.5, 2.7),
      real(3, 25),
      real(0, 1),
      real(3, 8),
      fc.boolean(),
      real(-40, 20),
      fc.integer({ min: 1, max: 1e6 }),
      (radius, turn, step, sigma, offset, left, begins, seed) => {
        const bend = { radius, turn };
        const course = valueOf(recordedOn(bend, step, sigma, seed));
        const from = STRAIGHT + begins;
        const side = left ? offset : -offset;
        const reading = wheelBetween(course, from, from + 91, side, offsetUncertainty(course, 4));
        if (reading === null || reading.length === null) return;
        off.read++;
        const error = Math.abs(reading.length - kerbLength(bend, from, from + 91, side));
        if (error > reading.margin) off.outside++;
        // What the recorder's wandering adds to the course distance is not the wheel's.
        expect(error).toBeLessThan(reading.margin + 2);
      },
    ),
    { seed: 15, numRuns: runs },
  );
  expect(off.read).toBeGreaterThan(0.9 * runs);
  expect(off.outside).toBeLessThan(0.005 * runs + 1);
});
