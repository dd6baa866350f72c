import { describe, expect, it } from 'vitest';
import { type Corner, readOffsetLine } from './offsetLine.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const corner = (at: number, degrees: number): Corner => ({ at, turn: radians(degrees) });

/** What the line at `offset` is longer between 0 and 100. */
const longer = (corners: readonly Corner[], offset: number, from: number = 0, to: number = 100): number | null =>
  readOffsetLine(corners, from, to, offset).longer;

describe('the line at an offset', () => {
  it('is trimmed by 2·o·tan(θ/2) inside a corner and rounded by o·θ outside, on either side', () => {
    for (const sign of [1, -1]) {
      expect(longer([corner(50, 60 * sign)], 6 * sign)).toBeCloseTo(-2 * 6 * Math.tan(radians(30)), 12);
      expect(longer([corner(50, 60 * sign)], -6 * sign)).toBeCloseTo(6 * radians(60), 12);
    }
    expect(longer([corner(30, 60), corner(70, -60)], 6)).toBeCloseTo(-12 * Math.tan(radians(30)) + 6 * radians(60), 12);
  });

  it('counts the corners strictly between its ends, and all their turns without a sign', () => {
    const corners = [corner(0, 40), corner(20, 30), corner(50, -20), corner(100, 50)];
    expect(readOffsetLine(corners, 0, 100, 2)).toEqual({
      longer: expect.closeTo(-4 * Math.tan(radians(15)) + 2 * radians(20), 12),
      totalTurn: expect.closeTo(radians(50), 12),
    });
    expect(readOffsetLine(corners, 20, 50, 2)).toEqual({ longer: 0, totalTurn: 0 });
    expect(readOffsetLine(corners, -1, 101, 0.1).totalTurn).toBeCloseTo(radians(140), 12);
  });

  it('is as long as the course on the course itself, also where it turns back, and folds beside it', () => {
    expect(readOffsetLine([corner(50, 170)], 0, 100, 0)).toEqual({ longer: 0, totalTurn: radians(170) });
    for (const offset of [1, -1]) expect(longer([corner(50, 170)], offset)).toBeNull();
  });

  it('folds at a turn of more than 150°, not at 150°, inside and outside', () => {
    for (const offset of [2, -2]) {
      expect(longer([corner(50, 150)], offset)).not.toBeNull();
      expect(longer([corner(50, 150.001)], offset)).toBeNull();
    }
  });

  it('folds where a leg to an end is shorter than the trim, at its beginning and at its end', () => {
    // At 90° the trim is the offset.
    for (const at of [6, 94]) {
      expect(longer([corner(at, 90)], 5.999)).toBeCloseTo(-2 * 5.999, 9);
      expect(longer([corner(at, 90)], 6.001)).toBeNull();
      expect(longer([corner(at, 90)], -6.001)).toBeCloseTo(6.001 * radians(90), 9);
    }
  });

  it('folds where the trims of two corners overlap, not where one lies outside', () => {
    expect(longer([corner(40, 90), corner(60, 90)], 9.999)).toBeCloseTo(-4 * 9.999, 9);
    expect(longer([corner(40, 90), corner(60, 90)], 10.001)).toBeNull();
    // An outside corner loses nothing of its legs: the inside one needs its own trim only.
    expect(longer([corner(40, 90), corner(60, -90)], 19.999)).toBeCloseTo(19.999 * (radians(90) - 2), 9);
    expect(longer([corner(40, 90), corner(60, -90)], 20.001)).toBeNull();
    expect(longer([corner(40, -90), corner(60, 90)], 20.001)).toBeNull();
  });

  it('trims a drawn corner over vertices that hardly turn, up to 6° together', () => {
    const slight = (degrees: number, count: number): Corner[] =>
      Array.from({ length: count }, (_, k) => corner(51 + k, degrees));
    // The trim of 10 m reaches over the slight vertices, which lie 1 m apart from 1 m behind the corner on.
    expect(longer([corner(50, 90), ...slight(1.4, 4)], 10)).toBeCloseTo(-20 - 4 * 20 * Math.tan(radians(0.7)), 9);
    expect(longer([corner(50, 90), ...slight(1.6, 4)], 10)).toBeNull();
    expect(longer([...slight(1.4, 4), corner(56, 90)], 10)).toBeCloseTo(-20 - 4 * 20 * Math.tan(radians(0.7)), 9);
    expect(longer([...slight(1.6, 4), corner(56, 90)], 10)).toBeNull();
    // Those that turn the other way count as well, and lose nothing themselves.
    expect(longer([corner(50, 90), ...slight(-1.4, 4)], 10)).toBeCloseTo(-20 + 40 * radians(1.4), 9);
    expect(longer([corner(50, 90), ...slight(-1.6, 4)], 10)).toBeNull();
  });

  it('folds where a vertex under the trim turns by 3° or more, or the corner itself by less than 20°', () => {
    expect(longer([corner(50, 90), corner(55, 2.9)], 10)).not.toBeNull();
    expect(longer([corner(50, 90), corner(55, 3.1)], 10)).toBeNull();
    expect(longer([corner(50, 90), corner(55, -2.9)], 10)).not.toBeNull();
    expect(longer([corner(50, 90), corner(55, -3.1)], 10)).toBeNull();
    // At 19° and 25 m the trim is 4.18 m, at 21° 4.63 m: only the latter is a drawn corner.
    expect(longer([corner(50, 21), corner(52, 1)], 25)).not.toBeNull();
    expect(longer([corner(50, 19), corner(52, 1)], 25)).toBeNull();
    expect(longer([corner(50, 21), corner(52, -1)], 25)).not.toBeNull();
    expect(longer([corner(50, 19), corner(52, -1)], 25)).toBeNull();
  });

  it('goes on behind the slight vertices: the next corner that does turn must leave room for both trims', () => {
    expect(longer([corner(40, 90), corner(45, 1), corner(60, 90)], 9.9)).not.toBeNull();
    expect(longer([corner(40, 90), corner(45, 1), corner(60, 90)], 10.1)).toBeNull();
    expect(longer([corner(90, 90), corner(94, 1)], 10.1)).toBeNull();
  });

  it('needs no leg for the rounding of a straight line', () => {
    const rounding: Corner = { at: 1e-9, turn: 1e-9 };
    expect(longer([rounding], 6)).toBeCloseTo(0, 7);
  });
});

it('an end within the trim of a bend is no fold where the corners stand for a smooth line', () => {
  // 5 m inside a turn of 10°: the trim is 0.44 m.
  const bend = [corner(50, 10)];
  expect(readOffsetLine(bend, 49.7, 100, 5).longer).toBeNull();
  expect(readOffsetLine(bend, 49.7, 100, 5, true).longer).toBeCloseTo(-0.875, 3);
  expect(readOffsetLine(bend, 49.5, 100, 5).longer).toBeCloseTo(-0.875, 3);
  // Two trims that overlap fold all the same.
  expect(readOffsetLine([corner(50, 60), corner(52, 60)], 0, 100, 5, true).longer).toBeNull();
});
