import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import { ORIGIN, courseThrough as through, from, turtle as recorded, turtlePoints } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { coursesDisagree } from './coursesDisagree.ts';

const centre = (course: Course): Course => ({ ...course, drawn: 'centre' });
const turtle = (...args: Parameters<typeof recorded>): Course => centre(recorded(...args));
const courseThrough = (...args: Parameters<typeof through>): Course => centre(through(...args));

/** Two drawings of one straight road, the second `apart` metres to the left. */
const drawnTwice = (apart: number): ReturnType<typeof coursesDisagree.find> => {
  const full = turtle(ORIGIN, [[90, 3000]], 20, 'full');
  const half = turtle(from(ORIGIN, 0, apart), [[90, 3000]], 25, 'half');
  return coursesDisagree.find(
    layoutOf([full, half], [{ at: from(from(ORIGIN, 90, 1500), 180, 6), side: 'right', width: 7 }]),
  );
};

describe('two courses on one road', () => {
  it('are reported where their lines place an item more than 0.5 m apart, with the distance', () => {
    const [finding] = drawnTwice(0.6);
    expect(finding).toMatchObject({
      code: 'courses-disagree',
      severity: 'warning',
      limit: 0.5,
      unit: 'm',
      where: { station: 's1', course: 'half', race: 'half' },
    });
    expect(finding!.measured).toBeCloseTo(0.6, 2);
  });

  it('are silent at 0.4 m', () => {
    expect(drawnTwice(0.4)).toEqual([]);
  });

  it('may differ besides by what each errs where they are recorded', () => {
    const found = (apart: number, ...drawn: readonly ((course: Course) => Course)[]): readonly unknown[] => {
      const lines = [
        recorded(ORIGIN, [[90, 3000]], 20, 'full'),
        recorded(from(ORIGIN, 0, apart), [[90, 3000]], 25, 'half'),
      ];
      return coursesDisagree.find(
        layoutOf(
          lines.map((line, k) => drawn[k]?.(line) ?? line),
          [{ at: from(from(ORIGIN, 90, 1500), 180, 6), side: 'right', width: 7 }],
        ),
      );
    };
    expect(found(6.4)).toEqual([]);
    expect(found(6.6)).toEqual([expect.objectContaining({ limit: 6.5 })]);
    expect(found(3.4, centre)).toEqual([]);
    expect(found(3.6, centre)).toEqual([expect.objectContaining({ limit: 3.5 })]);
  });

  it('are silent where one is only stretched to its length more than the other', () => {
    const full = turtle(ORIGIN, [[90, 3000]], 20, 'full');
    const half = turtle(ORIGIN, [[90, 3000]], 20, 'half');
    const stretched = { ...half, scale: { raw: half.scale.raw, measure: half.scale.measure.map((one) => one * 1.02) } };
    const keys = { at: from(from(ORIGIN, 90, 1500), 180, 6), side: 'right', width: 7 } as const;
    // The last box stands 98 m past the pin: 2 % of that are 2 m.
    expect(coursesDisagree.find(layoutOf([full, stretched], [keys]))).toEqual([]);
    const aside = turtle(from(ORIGIN, 0, 2.6), [[90, 3000]], 25, 'half');
    const both = { ...aside, scale: stretched.scale };
    expect(coursesDisagree.find(layoutOf([full, both], [keys]))).toHaveLength(1);
  });

  it('are silent where the pin itself gives the offset, however far apart the lines are', () => {
    const full = turtle(ORIGIN, [[90, 3000]], 20, 'full');
    const half = turtle(from(ORIGIN, 0, 2), [[90, 3000]], 25, 'half');
    expect(
      coursesDisagree.find(layoutOf([full, half], [{ at: from(from(ORIGIN, 90, 1500), 180, 6), side: 'right' }])),
    ).toEqual([]);
  });
});

describe('which items of two courses are compared', () => {
  const full = turtle(ORIGIN, [[90, 3000]], 20, 'full');
  const half = turtle(from(ORIGIN, 0, 2), [[90, 3000]], 25, 'half');
  const pin = { at: from(from(ORIGIN, 90, 1500), 180, 6), side: 'right' as const, width: 7 };

  it('are those of served passes of another course, each course told once', () => {
    expect(coursesDisagree.find(layoutOf([full, half], [{ ...pin, races: ['full'] }]))).toEqual([]);
    const laps = turtle(
      from(ORIGIN, 0, 2),
      [
        [90, 3000],
        [0, 400],
        [270, 3000],
        [180, 400],
        [90, 3000],
      ],
      25,
      'half',
    );
    expect(coursesDisagree.find(layoutOf([full, laps], [pin]))).toHaveLength(1);
  });

  it('are not those that a hand has placed, nor where one has no place', () => {
    const hand = from(from(ORIGIN, 90, 1450), 180, 6);
    const items = Object.fromEntries(['sign', 'sportsDrink', 'water', 'trash'].map((kind) => [kind, { at: hand }]));
    expect(coursesDisagree.find(layoutOf([full, half], [{ ...pin, items }]))).toEqual([]);
    const [finding] = coursesDisagree.find(layoutOf([full, half], [pin]));
    expect(finding!.measured).toBeCloseTo(2, 2);
  });

  it('are told with the farthest apart, and not where the courses part by more than a road’s width', () => {
    // The second course bears off from the first behind the tables: its trash drop is farthest off.
    const off = courseThrough(
      [...turtlePoints(ORIGIN, [[90, 1520]], 20), ...turtlePoints(from(ORIGIN, 90, 1540), [[93, 500]], 20)],
      'half',
    );
    expect(coursesDisagree.find(layoutOf([full, off], [pin]))).toEqual([
      expect.objectContaining({ where: expect.objectContaining({ item: 'trash' }) }),
    ]);
    const away = courseThrough(
      [...turtlePoints(ORIGIN, [[90, 1520]], 20), ...turtlePoints(from(ORIGIN, 90, 1540), [[130, 500]], 20)],
      'half',
    );
    expect(coursesDisagree.find(layoutOf([full, away], [pin]))).toEqual([]);
  });
});

it('the item that lies farthest apart is told, be it the first that runners meet', () => {
  // The second course comes in from 3 m aside and meets the first behind the tables.
  const full = turtle(ORIGIN, [[90, 3000]], 20, 'full');
  const aside = Array.from({ length: 6 }, (_, k) => from(from(ORIGIN, 90, 1400 + 20 * k), 0, 3 - 0.5 * k));
  const half = courseThrough([...aside, ...turtlePoints(from(ORIGIN, 90, 1520), [[90, 1400]], 20)], 'half');
  const told = coursesDisagree.find(
    layoutOf([full, half], [{ at: from(from(ORIGIN, 90, 1500), 180, 6), side: 'right', width: 7 }]),
  );
  expect(told).toEqual([expect.objectContaining({ where: expect.objectContaining({ item: 'sign' }) })]);
});
