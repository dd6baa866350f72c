import { describe, expect, it } from 'vitest';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { swingFromChord } from './sight.ts';

describe('how far a course swings from the straight line', () => {
  it('is nothing on a straight road', () => {
    expect(swingFromChord(turtle(ORIGIN, [[90, 500]]), 100, 200)).toBeLessThan(1e-6);
  });

  it('is the height of the triangle at a corner', () => {
    const square = turtle(ORIGIN, [
      [90, 200],
      [0, 200],
    ]);
    expect(swingFromChord(square, 150, 250)).toBeCloseTo(50 / Math.SQRT2, 2);
    expect(swingFromChord(square, 170, 240)).toBeCloseTo((30 * 40) / 50, 2);
  });

  it('is the rise of the arc on a bend', () => {
    // A circle of 60 m radius in steps of 5°: 30° to either side of the middle.
    const step = 120 * Math.sin((2.5 * Math.PI) / 180);
    const bend = turtle(
      ORIGIN,
      Array.from({ length: 24 }, (_, k) => [87.5 - 5 * k + 360, step] as const),
      50,
    );
    expect(swingFromChord(bend, 6 * step, 18 * step)).toBeCloseTo(60 * (1 - Math.cos(Math.PI / 6)), 2);
  });

  it('is the way out and back where both ends stand at one place', () => {
    expect(
      swingFromChord(
        turtle(ORIGIN, [
          [90, 200],
          [270, 200],
        ]),
        170,
        230,
      ),
    ).toBeCloseTo(30, 3);
  });

  it('is null where an end is off the course: nothing is clamped', () => {
    const course = turtle(ORIGIN, [
      [90, 200],
      [0, 200],
    ]);
    for (const [from, to] of [
      [-1, 250],
      [150, 401],
      [250, 150],
    ] as const)
      expect(swingFromChord(course, from, to)).toBeNull();
  });

  it('is null where the stretch has no length, and counts the swing to either side', () => {
    const course = turtle(ORIGIN, [
      [90, 200],
      [180, 200],
    ]);
    expect(swingFromChord(course, 100, 100)).toBeNull();
    expect(swingFromChord(course, 150, 250)).toBeCloseTo(50 / Math.SQRT2, 2);
    expect(swingFromChord(course, 0, 400)).toBeCloseTo(200 / Math.SQRT2, 1);
  });
});
