import { describe, expect, it } from 'vitest';
import { buildCourse } from './course/build.ts';
import { calibrate } from './course/calibrate.ts';
import { pointAt } from './course/locate.ts';
import { passesOf } from './course/passes.ts';
import { swappedPosition } from './course/swapped.ts';
import { indexCourse } from './course/segmentIndex.ts';
import { ORIGIN, from, segmentThrough, turtle, turtlePoints } from './testing/courses.ts';
import { aText, finite, listOf, maybe, over, recordOf, remembered, want } from './wants.ts';

const course = turtle(ORIGIN, [[90, 1000]]);
const indexed = indexCourse(course);
const pin = from(from(ORIGIN, 90, 500), 180, 8);
/** What no caller in TypeScript can give. */
const given = (value: unknown): never => value as never;

describe('options', () => {
  it('that are partial are laid over the defaults', () => {
    const [whole] = passesOf(indexed, pin);
    expect(passesOf(indexed, pin, { snapRadius: 60 })).toEqual([whole]);
    expect(passesOf(indexed, pin, given({ snapRadius: 60, pinR95: undefined }))).toEqual([whole]);
    expect(whole!.confidence).toBeGreaterThan(0.95);
    expect(passesOf(indexed, pin, { pinR95: 50 })[0]!.side).toBe('unclear');
    expect(passesOf(indexed, pin, { snapRadius: 5 })).toEqual([]);
  });

  it('that are partial calibrate too', () => {
    const marks = [{ at: pin, measure: 501 }];
    expect(calibrate(indexed, { marks, options: { snapRadius: 60 } })).toEqual(calibrate(indexed, { marks }));
  });

  it('of the wrong kind are refused by name', () => {
    expect(() => passesOf(indexed, pin, given({ snapRadius: '60' }))).toThrow(
      new TypeError('passesOf wants options.snapRadius as a number of 0 or more; found “60”'),
    );
    expect(() => passesOf(indexed, pin, { sideConfidence: 95 })).toThrow(RangeError);
    const input = { id: 'c', name: 'c', segments: [segmentThrough(turtlePoints(ORIGIN, [[90, 100]]))] };
    expect(() => buildCourse({ ...input, gaps: given('ignore') })).toThrow(
      new RangeError("buildCourse wants input.gaps as 'refuse', 'join', 'skip'; found “ignore”"),
    );
  });
});

describe('a value in the place of another', () => {
  it('is told as what it is: a course where its index is wanted, and the other way round', () => {
    // These two take either.
    expect(passesOf(given(course), pin)).toEqual(passesOf(indexed, pin));
    expect(() => passesOf(given('course'), pin)).toThrow(TypeError);
    expect(() => swappedPosition(given(course), pin)).toThrow(
      new TypeError('swappedPosition wants the course that indexCourse returns, not the course itself'),
    );
    expect(() => pointAt(given(indexed), 500)).toThrow(
      new TypeError('pointAt wants the course itself, not what indexCourse returns: that holds it as `course`'),
    );
    expect(() => pointAt(course, given('500'))).toThrow(
      new TypeError('pointAt wants the measure in metres as a number; found “500”'),
    );
  });

  it('is told by where it is inside', () => {
    const shape = recordOf('a buoy', { name: maybe(aText), depths: listOf(finite, 1) });
    const message = (value: unknown): string => {
      try {
        want('depthOf', 'buoy', shape, value);
      } catch (error) {
        return (error as Error).message;
      }
      return '';
    };
    expect(message({ depths: [1, NaN] })).toBe('depthOf wants buoy.depths[1] as a number; found NaN');
    expect(message({ depths: [] })).toBe('depthOf wants buoy.depths as a list of 1 or more; found an empty list');
    expect(message({ name: 3, depths: [1] })).toBe('depthOf wants buoy.name as a text; found 3');
    expect(message([])).toBe('depthOf wants buoy as a buoy; found an empty list');
    expect(message({ depths: [1] })).toBe('');
  });
});

it('a record that has passed is not looked at again', () => {
  let looks = 0;
  const shape = remembered((value) => {
    looks++;
    return recordOf('a record', {})(value);
  });
  const record = {};
  for (let k = 0; k < 3; k++) want('f', 'record', shape, record);
  expect(looks).toBe(1);
  expect(() => want('f', 'record', shape, 3)).toThrow(TypeError);
});

it('what is undefined does not lie over a default', () => {
  expect(over({ a: 1, b: 2 }, given({ a: undefined, b: 3, c: 4 }))).toEqual({ a: 1, b: 3 });
  const defaults = { a: 1 };
  expect(over(defaults, undefined)).toBe(defaults);
});
