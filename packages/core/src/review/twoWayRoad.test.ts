import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, turtlePoints } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { twoWayRoad } from './twoWayRoad.ts';

const centre = (course: Course): Course => ({ ...course, drawn: 'centre' });
const station: Partial<PlanStation> = {
  on: { course: 'c', measure: 1500, side: 'right', offset: 5 },
  side: 'right',
  races: ['c'],
};

const ROAD = turtlePoints(ORIGIN, [[90, 3000]]);
const OUT = centre(courseThrough(ROAD));
/** Race d, whose line runs so many metres to the right of c's. */
const beside = (right: number): Course =>
  courseThrough(
    ROAD.map((at) => from(at, 180, right)),
    'd',
  );
const back = (right: number): Course => courseThrough(ROAD.map((at) => from(at, 180, right)).reverse(), 'd');

/** Race c runs east; race d comes the other way, its line so many metres to c's right. */
const oncoming = (
  right: number,
  keys: Partial<PlanStation> = {},
  drawn: (course: Course) => Course = centre,
): readonly Finding[] => twoWayRoad.find(layoutOf([OUT, drawn(back(right))], [{ ...station, ...keys }]));

describe('two-way-road', () => {
  it('is a warning where runners come the other way within half the clear width of an item', () => {
    // Items stand 5 m to the right of c.
    const found = oncoming(3.6);
    expect(found).toEqual([
      expect.objectContaining({
        code: 'two-way-road',
        severity: 'warning',
        measured: expect.closeTo(1.4, 2),
        limit: 1.5,
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/0', station: 's1', course: 'd' }),
      }),
    ]);
    expect(found[0]!.cannotTell).toBeUndefined();
    expect(found[0]!.message).toMatch(/sign|trash/);
    expect(oncoming(3.4)).toEqual([]);
    expect(oncoming(6.4)).toHaveLength(1);
    expect(oncoming(6.6)).toEqual([]);
  });

  it('is silent on one centre line run both ways: the items stand at the kerb', () => {
    const there = centre(courseThrough([...ROAD, ...ROAD.slice(0, -1).reverse()]));
    expect(twoWayRoad.find(layoutOf([there], [station]))).toEqual([]);
    expect(twoWayRoad.find(layoutOf([there], [{ ...station, passes: 'all' }]))).toEqual([]);
    expect(
      twoWayRoad.find(
        layoutOf(
          [there],
          [{ ...station, on: { course: 'c', measure: 1500, side: 'right', offset: 1 }, practice: { kerb: 1.4 } }],
        ),
      ),
    ).toHaveLength(1);
  });

  it('is silent for runners who come the same way', () => {
    expect(twoWayRoad.find(layoutOf([OUT, centre(beside(5))], [station]))).toEqual([]);
  });

  it('cannot tell from recorded lines nearer than their own error', () => {
    expect(oncoming(4.9, {}, (course) => course)).toEqual([expect.objectContaining({ cannotTell: true })]);
    // One recorded line of 0.5 m: 1.4 m is sure.
    expect(oncoming(4.9, { practice: { courseR95: 0.5 } }, (course) => course)[0]!.cannotTell).toBeUndefined();
  });

  it('is a note at most on recorded lines, and nothing where the item stands beyond the edge of the road', () => {
    const recorded = (course: Course): Course => course;
    expect(oncoming(4.9, {}, recorded)).toEqual([expect.objectContaining({ severity: 'note', cannotTell: true })]);
    expect(oncoming(4.9, { width: 9 }, recorded)).toEqual([]);
    // Lines drawn on purpose are taken as they are.
    expect(oncoming(4.9, { width: 9 })).toEqual([expect.objectContaining({ severity: 'warning' })]);
  });

  it('lets a served way come to the tables, but not run through the sign', () => {
    const both = layoutOf([OUT, centre(back(4.5))], [{ ...station, races: ['c', 'd'], passes: 'all' }]);
    const [finding] = twoWayRoad.find(both);
    expect(finding!.message).not.toContain('water');
    expect(finding!.message).toContain('sign');
  });
});

describe('what is told of runners who come the other way', () => {
  it('is the nearest of all items and courses, with every kind and course that is met', () => {
    const found = twoWayRoad.find(
      layoutOf([OUT, centre(back(3.8)), { ...centre(back(4.8)), id: 'e', name: 'e' }], [station]),
    );
    expect(found).toEqual([
      expect.objectContaining({ measured: expect.closeTo(0.2, 2), where: expect.objectContaining({ course: 'e' }) }),
    ]);
    expect(found[0]!.message).toContain(
      'Runners on e and d come the other way, 0.2 m from the sign, the sports drink, the water and the trash. It should be at least 1.5 m, half the clear width. Move',
    );
    const doubted = twoWayRoad.find(layoutOf([OUT, back(3.8)], [station]));
    expect(doubted[0]!.message).toContain(
      'It should be at least 1.5 m, half the clear width; recorded lines are not exact enough to tell. Check on the ground.',
    );
  });

  it('is nothing where the side is unclear: items then stand on the line itself', () => {
    expect(twoWayRoad.find(layoutOf([OUT, centre(back(0.2))], [{ at: from(ORIGIN, 90, 1500), races: ['c'] }]))).toEqual(
      [],
    );
  });

  it('counts tables as met only by ways that are served there, within the sign’s distance of their pin', () => {
    const layout = layoutOf([OUT, centre(back(4.5))], [{ ...station, races: ['c', 'd'], passes: 'all' }]);
    const [only] = layout.stations;
    const unserved = {
      ...layout,
      stations: [
        { ...only!, passes: only!.passes.map((pass) => (pass.course === 'd' ? { ...pass, served: false } : pass)) },
      ],
    };
    expect(twoWayRoad.find(unserved)[0]!.message).toContain('water');
    const elsewhere = {
      ...layout,
      stations: [
        {
          ...only!,
          passes: only!.passes.map((pass) => (pass.course === 'd' ? { ...pass, measure: pass.measure + 200 } : pass)),
        },
      ],
    };
    expect(twoWayRoad.find(elsewhere)[0]!.message).toContain('water');
    expect(twoWayRoad.find(layout)[0]!.message).not.toContain('water');
  });
});

it('the nearest place of an item is told where the two lines run together', () => {
  // Race d comes from 3.8 m beside race c at the trash drop to 4.6 m at the sign.
  const coming = centre(
    courseThrough(
      [
        from(from(ORIGIN, 90, 3000), 180, 0.4),
        from(from(ORIGIN, 90, 1600), 180, 3.8),
        from(from(ORIGIN, 90, 1400), 180, 4.6),
        from(from(ORIGIN, 90, 0), 180, 10),
      ],
      'd',
    ),
  );
  const [finding] = twoWayRoad.find(layoutOf([OUT, coming], [station]));
  expect(finding!.measured).toBeCloseTo(0.43, 1);
  expect(finding!.where.item).toBe('sign');
  const parting = centre(
    courseThrough(
      [
        from(from(ORIGIN, 90, 3000), 180, 10),
        from(from(ORIGIN, 90, 1600), 180, 4.6),
        from(from(ORIGIN, 90, 1400), 180, 3.8),
        from(from(ORIGIN, 90, 0), 180, 0.4),
      ],
      'd',
    ),
  );
  const [other] = twoWayRoad.find(layoutOf([OUT, parting], [station]));
  expect(other).toMatchObject({
    measured: expect.closeTo(0.41, 1) as number,
    where: { item: 'trash', measure: expect.closeTo(3000 - 1598.1, 0) },
  });
});
