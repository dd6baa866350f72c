import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import { layoutStage } from '../analyse.ts';
import type { Course } from '../course/course.ts';
import { indexCourse } from '../course/segmentIndex.ts';
import type { Finding, LonLat } from '../finding.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import { inverse } from '../geodesy/karney.ts';
import type { ItemKind, PlanStation } from '../plan/plan.ts';
import { reviewLayout } from '../review/review.ts';
import { ORIGIN, type TurtleLeg, courseOfSegments, from, turtle, turtlePoints } from '../testing/courses.ts';
import { layoutOf, planCourse, planOf, planRace, planStation } from '../testing/plans.ts';
import type { Item, LaidDirection, StationLayout } from './layout.ts';
import { real } from '../testing/numbers.ts';

const STRAIGHT: readonly TurtleLeg[] = [[90, 3000]];
/** Back along the very geodesic that it came. */
const OUT_AND_BACK: readonly TurtleLeg[] = [
  [70, 2000],
  [inverse(...from(ORIGIN, 70, 2000), ...ORIGIN).azimuthDeg, 2000],
];

const on = (measure: number, side: 'left' | 'right' = 'right', offset: number = 6): PlanStation['on'] & object => ({
  course: 'c',
  measure,
  side,
  offset,
});

const laid = (legs: readonly TurtleLeg[], keys: Partial<PlanStation>): StationLayout =>
  layoutOf([turtle(ORIGIN, legs, 100)], [keys]).stations[0]!;

function itemOf(direction: LaidDirection | undefined, kind: ItemKind): Item {
  const item = direction?.items.find((each) => each.kind === kind);
  if (item === undefined) throw new Error(`no ${kind}`);
  return item;
}

const kinds = (direction: LaidDirection | undefined): ItemKind[] => direction!.items.map((item) => item.kind);

function expectAt(item: Item, kind: ItemKind, start: number, end: number, foot: number = 1500): void {
  expect(item.kind).toBe(kind);
  expect(item.from).toBeCloseTo(start, 4);
  expect(item.to).toBeCloseTo(end, 4);
  expect(item.along[0]).toBeCloseTo(start - foot, 9);
  expect(item.along[1]).toBeCloseTo(end - foot, 9);
}

/** Findings of the checks on the one station, by code. */
const codes = (legs: readonly TurtleLeg[], keys: Partial<PlanStation>): string[] =>
  reviewLayout(layoutOf([turtle(ORIGIN, legs, 100)], [keys])).findings.map((finding) => finding.code);

// Distances: common practice, no source; exact yards and feet.
describe('the items of a station on a straight course, pin at 1,500 m', () => {
  it('stand at the house’s distances: sign, sports drink, water, trash', () => {
    const [direction] = laid(STRAIGHT, { on: on(1500) }).directions;
    expect(kinds(direction)).toEqual(['sign', 'sportsDrink', 'water', 'trash']);
    const [sign, sportsDrink, water, trash] = direction!.items as [Item, Item, Item, Item];
    expectAt(sign, 'sign', 1408.56, 1408.56);
    expectAt(sportsDrink, 'sportsDrink', 1500, 1501.8288);
    expectAt(water, 'water', 1504.8768, 1506.7056);
    expectAt(trash, 'trash', 1552.4256, 1598.1456);
    expect(sign.wording).toBe('Water ahead');
  });

  it('have a gel table before the pin and the sign farther upstream, where gel is served', () => {
    const [direction] = laid(STRAIGHT, { on: on(1500), serves: ['gel', 'sportsDrink', 'water'] }).directions;
    expect(kinds(direction)).toEqual(['sign', 'gel', 'sportsDrink', 'water', 'trash']);
    expectAt(itemOf(direction, 'gel'), 'gel', 1490.5512, 1492.38);
    expectAt(itemOf(direction, 'sign'), 'sign', 1399.1112, 1399.1112);
    expectAt(itemOf(direction, 'trash'), 'trash', 1552.4256, 1598.1456);
    expect(itemOf(direction, 'sign').wording).toBe('Water and gel ahead');
  });

  it('begin with water at the pin where only water is served', () => {
    const [direction] = laid(STRAIGHT, { on: on(1500), serves: ['water'] }).directions;
    expect(kinds(direction)).toEqual(['sign', 'water', 'trash']);
    expectAt(itemOf(direction, 'water'), 'water', 1500, 1501.8288);
    expectAt(itemOf(direction, 'trash'), 'trash', 1547.5488, 1593.2688);
  });

  it('are none where nothing is served', () => {
    expect(laid(STRAIGHT, { on: on(1500), serves: [] }).directions[0]!.items).toEqual([]);
  });

  it('follow the station’s own practice and tables', () => {
    const [direction] = laid(STRAIGHT, {
      on: on(1500),
      practice: { signAhead: 120 * 0.9144, tableGap: 5 },
      tables: { sportsDrink: 3, water: 2 },
    }).directions;
    expectAt(itemOf(direction, 'sign'), 'sign', 1390.272, 1390.272);
    expectAt(itemOf(direction, 'water'), 'water', 1510.4864, 1514.144);
  });

  it('stand square to the course at the pin’s offset, on its side: by geographiclib', () => {
    for (const [side, square] of [
      ['right', 90],
      ['left', -90],
    ] as const) {
      const [direction] = laid(STRAIGHT, { on: on(1500, side, 6.5) }).directions;
      for (const item of direction!.items) {
        expect(item.side).toBe(side);
        expect(item.offset).toBeCloseTo(side === 'left' ? 6.5 : -6.5, 4);
        [item.from, item.to].forEach((measure, end) => {
          const foot = from(ORIGIN, 90, measure);
          const [course, away] = [inverse(...foot, ...from(ORIGIN, 90, 3000)), inverse(...foot, ...item.at[end]!)];
          expect(away.length).toBeCloseTo(6.5, 4);
          expect(azimuthDifference(away.azimuthDeg, course.azimuthDeg + square)).toBeLessThan(0.001);
        });
      }
    }
  });

  it('hold their distances on a calibrated course: a known 10 m is 10 m, whatever was recorded', () => {
    const course = turtle(ORIGIN, STRAIGHT, 100);
    // The recording ran 2 % long.
    const scaled: Course = {
      ...course,
      scale: { raw: course.scale.raw, measure: course.scale.measure.map((measure) => measure / 1.02) },
    };
    const [direction] = layoutOf([scaled], [{ on: on(1500) }]).stations[0]!.directions;
    const sign = itemOf(direction, 'sign');
    expect(sign.from).toBeCloseTo(1408.56, 4);
    expect(inverse(...from(ORIGIN, 90, 1408.56 * 1.02), ...sign.at[0]!).length).toBeCloseTo(6, 3);
  });

  it('are the same at any longitude and latitude up to 79°, to a millimetre', () => {
    const anywhere = fc.record({ lon: real(-180, 180), lat: real(-79, 79), azimuthDeg: real(0, 360) });
    fc.assert(
      fc.property(anywhere, ({ lon, lat, azimuthDeg }) => {
        const [direction] = layoutOf([turtle([lon, lat], [[azimuthDeg, 3000]], 100)], [{ on: on(1500) }]).stations[0]!
          .directions;
        const sign = itemOf(direction, 'sign');
        expect(sign.from).toBeCloseTo(1408.56, 3);
        expect(inverse(...from([lon, lat], azimuthDeg, 1408.56), ...sign.at[0]!).length).toBeCloseTo(6, 3);
        expect(direction!.side).toBe('right');
      }),
      { seed: 7, numRuns: 100 },
    );
  });
});

const waterOffset = (keys: Partial<PlanStation>): number => itemOf(laid(STRAIGHT, keys).directions[0], 'water').offset;

const beside = (metres: number): LonLat => from(from(ORIGIN, 90, 1500), 180, metres);

describe('the offset of the items', () => {
  it('is half the road and the setback where the plan gives a width, wherever the pin is', () => {
    expect(waterOffset({ at: beside(9), width: 7 })).toBeCloseTo(-4, 9);
    expect(waterOffset({ at: beside(9), width: 7, side: 'left' })).toBeCloseTo(4, 9);
    expect(waterOffset({ at: beside(0.5), width: 7, side: 'right', practice: { setback: 1 } })).toBeCloseTo(-4.5, 9);
  });

  it('is the pin’s own where its side is clear', () => {
    expect(waterOffset({ at: beside(9) })).toBeCloseTo(-9, 3);
    expect(waterOffset({ at: beside(9), side: 'right' })).toBeCloseTo(-9, 3);
  });

  it('is the kerb’s on the declared side where the pin contradicts it, with a finding', () => {
    expect(waterOffset({ at: beside(9), side: 'left' })).toBe(4);
    expect(codes(STRAIGHT, { at: beside(9), side: 'left' })).toContain('side-contradicted');
  });

  it('is the kerb’s on the declared side where the pin does not tell its side', () => {
    expect(waterOffset({ at: beside(1), side: 'left' })).toBe(4);
    expect(waterOffset({ at: beside(1), side: 'right', practice: { kerb: 3 } })).toBe(-3);
  });

  it('is 0 where the side is unclear and nobody declares it, with a finding', () => {
    for (const width of [{}, { width: 7 }]) {
      expect(waterOffset({ at: beside(1), ...width })).toBe(0);
      expect(codes(STRAIGHT, { at: beside(1), ...width })).toContain('side-unclear');
    }
    expect(itemOf(laid(STRAIGHT, { at: beside(1) }).directions[0], 'sign').side).toBe('unclear');
  });
});

const outside = (legs: readonly TurtleLeg[], keys: Partial<PlanStation>): Finding[] =>
  reviewLayout(layoutOf([turtle(ORIGIN, legs, 100)], [keys])).findings.filter(
    (finding) => finding.code === 'item-outside',
  );

describe('an item that falls off the course', () => {
  it('has no place before the start, and a finding: nothing is clamped', () => {
    const [direction] = laid(STRAIGHT, { on: on(50) }).directions;
    const sign = itemOf(direction, 'sign');
    expect(sign).toMatchObject({ at: [null, null], wheel: null, from: expect.closeTo(-41.44, 4) });
    expect(itemOf(direction, 'water').at).not.toContain(null);
    expect(outside(STRAIGHT, { on: on(50) })).toEqual([
      expect.objectContaining({ where: expect.objectContaining({ item: 'sign', station: 's1' }) }),
    ]);
  });

  it('has one end only where it runs over the finish, and boxes only on the course', () => {
    const trash = itemOf(laid(STRAIGHT, { on: on(2930) }).directions[0], 'trash');
    expect(trash.at).toEqual([expect.anything(), null]);
    expect(trash.boxes!.map((box) => box.at !== null)).toEqual([true, true, false, false]);
    expect(outside(STRAIGHT, { on: on(2930) }).map((finding) => finding.where.item)).toEqual(['trash']);
  });

  it('has no place in a skipped gap, and a finding where it runs over one', () => {
    const course = courseOfSegments(
      [turtlePoints(ORIGIN, [[90, 1500]], 100), turtlePoints(from(ORIGIN, 90, 1700), [[90, 1500]], 100)],
      'skip',
    );
    const gap = course.skips[0]!.raw;
    const layout = layoutOf([course], [{ on: on(gap - 52.4256 - 20) }, { on: on(gap + 91.44) }]);
    const [over, into] = layout.stations as [StationLayout, StationLayout];
    expect(itemOf(over.directions[0], 'trash').at).not.toContain(null);
    expect(itemOf(into.directions[0], 'sign').at).toEqual([null, null]);
    const found = reviewLayout(layout).findings.filter((finding) => finding.code === 'item-outside');
    expect(found.map(({ where }) => [where.station, where.item])).toEqual([
      ['s1', 'trash'],
      ['s2', 'sign'],
    ]);
    expect(found[0]!.message).toContain('across a skipped gap');
  });

  it('is avoided on laps: the items stand along the first pass that has room for all', () => {
    const lap: readonly TurtleLeg[] = [
      [0, 800],
      [90, 600],
      [180, 800],
      [270, 600],
    ];
    const layout = layoutOf([turtle(ORIGIN, [...lap, ...lap], 100)], [{ on: on(60) }]);
    const [direction] = layout.stations[0]!.directions;
    expect(direction).toMatchObject({ passes: [0, 1], measure: layout.stations[0]!.passes[1]!.measure });
    expect(direction!.measure).toBeCloseTo(2860, 0);
    expect(itemOf(direction, 'sign')).toMatchObject({
      from: expect.closeTo(direction!.measure - 91.44, 4),
      along: [expect.closeTo(-91.44, 9), expect.closeTo(-91.44, 9)],
    });
    expect(itemOf(direction, 'sign').at).not.toContain(null);
  });
});

const both = (keys: Partial<PlanStation> = {}): [LaidDirection, LaidDirection] =>
  laid(OUT_AND_BACK, { on: on(800), passes: 'all', serves: ['gel', 'sportsDrink', 'water'], ...keys }).directions as [
    LaidDirection,
    LaidDirection,
  ];

it('a pass whose items would run over a skipped gap has no room for them: the next one is taken', () => {
  const again: readonly TurtleLeg[] = [
    [90, 280],
    [0, 300],
    [270, 1000],
    [180, 300],
    [90, 1000],
  ];
  const course = courseOfSegments(
    [turtlePoints(ORIGIN, [[90, 520]], 40), turtlePoints(from(ORIGIN, 90, 720), again, 40)],
    'skip',
  );
  const [direction] = layoutOf([course], [{ on: on(440) }]).stations[0]!.directions;
  expect(direction).toMatchObject({ passes: [0, 1], measure: expect.closeTo(520 + 280 + 1600 + 440, 0) });
});

describe('another served direction', () => {
  it('meets the same tables, in the opposite order and on the other side', () => {
    const [lead, other] = both();
    expect(kinds(lead)).toEqual(['sign', 'gel', 'sportsDrink', 'water', 'trash']);
    expect(kinds(other)).toEqual(['sign', 'water', 'sportsDrink', 'gel', 'trash']);
    for (const kind of ['gel', 'sportsDrink', 'water'] as const) {
      const [met, table] = [itemOf(other, kind), itemOf(lead, kind)];
      expect(met.at).toEqual(table.at.toReversed());
      expect(met).toMatchObject({
        side: 'left',
        from: expect.closeTo(4000 - table.to, 4),
        to: expect.closeTo(4000 - table.from, 4),
      });
      expect(met.along[0]).toBeCloseTo(-table.along[1], 4);
    }
  });

  it('has a sign of its own before the first table met, and its trash past the last', () => {
    const [, other] = both();
    expect(other.measure).toBeCloseTo(3200, 4);
    expect(itemOf(other, 'sign').from).toBeCloseTo(itemOf(other, 'water').from - 91.44, 4);
    expect(itemOf(other, 'sign').wording).toBe('Water and gel ahead');
    expect(itemOf(other, 'trash')).toMatchObject({
      from: expect.closeTo(itemOf(other, 'gel').to + 45.72, 4),
      to: expect.closeTo(itemOf(other, 'gel').to + 91.44, 4),
    });
    // On the ground: north of the way out, as the tables; the runners' left.
    const foot = from(ORIGIN, 70, 4000 - itemOf(other, 'sign').from);
    const away = inverse(...foot, ...itemOf(other, 'sign').at[0]!);
    expect(away.length).toBeCloseTo(6, 3);
    expect(azimuthDifference(away.azimuthDeg, 160)).toBeLessThan(0.1);
  });

  it('has its sign beside the tables also where the declared side contradicts the pin', () => {
    const [lead, other] = both({ side: 'left' });
    expect([lead.side, other.side]).toEqual(['left', 'right']);
    const [sign, table] = [itemOf(other, 'sign'), itemOf(lead, 'water')];
    expect([sign.offset, table.offset]).toEqual([-4, 4]);
    expect(
      azimuthDifference(
        inverse(...from(ORIGIN, 70, 4000 - sign.from), ...sign.at[0]!).azimuthDeg,
        inverse(...from(ORIGIN, 70, table.from), ...table.at[0]!).azimuthDeg,
      ),
    ).toBeLessThan(0.1);
  });
});

describe('an item placed by hand', () => {
  const at = from(from(ORIGIN, 90, 1440), 180, 5);

  it('stands where the plan puts it, with its measure and side read back from the course', () => {
    const [direction] = laid(STRAIGHT, { on: on(1500), items: { sign: { at } } }).directions;
    const sign = itemOf(direction, 'sign');
    expect(sign).toMatchObject({
      at: [at, at],
      byHand: true,
      side: 'right',
      from: expect.closeTo(1440, 2),
      wording: 'Water ahead',
    });
    expect(sign.along).toEqual([expect.closeTo(-60, 2), expect.closeTo(-60, 2)]);
    expect(sign.offset).toBeCloseTo(-5, 3);
    expect(itemOf(direction, 'water')).not.toHaveProperty('byHand');
  });

  it('keeps its length where it is a table, and may stand on the other side', () => {
    const [direction] = laid(STRAIGHT, {
      on: on(1500),
      items: { water: { at: from(from(ORIGIN, 90, 1510), 0, 8) } },
    }).directions;
    expect(itemOf(direction, 'water')).toMatchObject({
      side: 'left',
      from: expect.closeTo(1510, 2),
      to: expect.closeTo(1511.8288, 2),
      offset: expect.closeTo(8, 3),
    });
  });

  it('is held against the practice as any other', () => {
    expect(codes(STRAIGHT, { on: on(1500), items: { sign: { at } } })).toContain('sign-distance');
    expect(
      codes(STRAIGHT, { on: on(1500), items: { sign: { at: from(from(ORIGIN, 90, 1408.56), 180, 5) } } }),
    ).not.toContain('sign-distance');
  });
});

const boxes = (keys: Partial<PlanStation>): NonNullable<Item['boxes']> =>
  itemOf(laid(STRAIGHT, { on: on(1500), ...keys }).directions[0], 'trash').boxes!;

describe('the boxes of a trash drop', () => {
  it('stand evenly from end to end, none over 20 m from the next', () => {
    expect(boxes({}).map((box) => box.measure)).toEqual(
      [1552.4256, 1567.6656, 1582.9056, 1598.1456].map((measure) => expect.closeTo(measure, 4)),
    );
  });

  it('are as many as the plan says, each with its place beside the course', () => {
    const six = boxes({ boxes: 6 });
    expect(six.map((box) => box.measure)).toEqual(
      [0, 1, 2, 3, 4, 5].map((k) => expect.closeTo(1552.4256 + 9.144 * k, 4)),
    );
    for (const { measure, at } of six) expect(inverse(...from(ORIGIN, 90, measure), ...at!).length).toBeCloseTo(6, 4);
  });

  it('stand in the middle where there is only one', () => {
    expect(boxes({ boxes: 1 }).map((box) => box.measure)).toEqual([expect.closeTo(1575.2856, 4)]);
  });
});

const refusal = (measure: number, course: Course = turtle(ORIGIN, STRAIGHT, 100)): Finding => {
  const plan = planOf({
    courses: [planCourse('c')],
    races: [planRace('c', 'c')],
    stations: [planStation({ on: on(measure) })],
  });
  const result = layoutStage(plan, [indexCourse(course)]);
  expect(result.ok).toBe(false);
  return result.findings[0]!;
};

describe('the pin', () => {
  it('stands beside the measure that the plan names, left or right', () => {
    for (const [side, square] of [
      ['left', -90],
      ['right', 90],
    ] as const) {
      const truth = inverse(...from(ORIGIN, 90, 700), ...laid(STRAIGHT, { on: on(700, side, 5) }).at);
      expect(truth.length).toBeCloseTo(5, 5);
      expect(azimuthDifference(truth.azimuthDeg, 90 + square)).toBeLessThan(0.01);
    }
  });

  it('is refused where its course has no such measure', () => {
    expect(refusal(3000.5)).toMatchObject({
      code: 'measure-beyond-course',
      severity: 'error',
      measured: 3000.5,
      limit: expect.closeTo(3000, 3),
      unit: 'm',
      where: { path: '/stations/0/on/measure', station: 's1', course: 'c' },
    });
    expect(laid(STRAIGHT, { on: on(2999.5) }).passes).toHaveLength(1);
  });

  it('is refused where the course skips a gap', () => {
    const course = courseOfSegments(
      [turtlePoints(ORIGIN, [[90, 500]], 100), turtlePoints(from(ORIGIN, 90, 700), [[90, 500]], 100)],
      'skip',
    );
    expect(refusal(course.skips[0]!.raw, course).message).toContain('where c skips a gap');
  });

  it('far from every course has no pass, no item, and the nearest place told', () => {
    const layout = laid(STRAIGHT, { at: from(from(ORIGIN, 90, 1200), 0, 400) });
    expect(layout).toMatchObject({
      passes: [],
      directions: [],
      nearest: { course: 'c', distance: expect.closeTo(400, 2), measure: expect.closeTo(1200, 1) },
    });
    expect(laid(STRAIGHT, { on: on(1500) }).nearest).toBeNull();
  });
});

describe('the pin’s declared side', () => {
  it('is the station’s own before that of its place along a course, and none where neither is given', () => {
    expect(laid(STRAIGHT, { on: on(1500, 'left'), side: 'right' }).declared).toBe('right');
    expect(laid(STRAIGHT, { on: on(1500, 'left') }).declared).toBe('left');
    expect(laid(STRAIGHT, { at: beside(9) }).declared).toBeNull();
  });

  it('is turned where the lead runs against the course along which the station was placed', () => {
    const courses = [turtle(ORIGIN, STRAIGHT, 100), turtle(from(ORIGIN, 90, 3000), [[270, 3000]], 100, 'd')];
    const races = [planRace('d', 'd'), planRace('c', 'c')];
    const [against] = layoutOf(courses, [{ on: on(1500, 'left'), lead: { race: 'd', pass: 0 } }], { races }).stations;
    expect(against!.declared).toBe('right');
    const [other] = layoutOf(courses, [{ on: on(1500, 'right'), lead: { race: 'd', pass: 0 } }], { races }).stations;
    expect(other!.declared).toBe('left');
    const [along] = layoutOf(courses, [{ on: on(1500, 'left'), lead: { race: 'c', pass: 0 } }], { races }).stations;
    expect(along!.declared).toBe('left');
  });
});

describe('passes and places of a station', () => {
  it('are those of every race in the plan’s order, with their number on each', () => {
    const races = [planRace('b', 'c'), planRace('a', 'c')];
    const [station] = layoutOf([turtle(ORIGIN, OUT_AND_BACK, 100)], [{ on: on(800), passes: 'all' }], {
      races,
    }).stations;
    expect(station!.passes.map(({ race, pass, course, served }) => [race, pass, course, served])).toEqual([
      ['b', 0, 'c', true],
      ['b', 1, 'c', true],
      ['a', 0, 'c', true],
      ['a', 1, 'c', true],
    ]);
    expect(station).toMatchObject({ id: 's1', index: 0 });
  });

  it('are told with the nearest of all courses whose races the station serves, where none passes', () => {
    const courses = [
      turtle(ORIGIN, STRAIGHT, 100, 'a'),
      turtle(from(ORIGIN, 0, 700), STRAIGHT, 100, 'b'),
      turtle(from(ORIGIN, 0, 500), STRAIGHT, 100, 'z'),
    ];
    const [station] = layoutOf(courses, [{ at: from(from(ORIGIN, 90, 1200), 0, 400), races: ['a', 'b'] }]).stations;
    expect(station!.nearest).toMatchObject({ course: 'b', distance: expect.closeTo(300, 1) });
    const [seen] = layoutOf(courses, [{ at: from(from(ORIGIN, 90, 1200), 0, 505), races: ['a', 'b'] }]).stations;
    expect(seen!.passes).toHaveLength(1);
    expect(seen!.nearest).toMatchObject({ course: 'b' });
    const [all] = layoutOf(courses, [{ at: from(from(ORIGIN, 90, 1200), 0, 505) }]).stations;
    expect(all!.nearest).toBeNull();
  });

  it('past an end of a course are refused with its length or its start', () => {
    expect(refusal(3000.5).message).toContain(
      'The station is at 3.001 km, but c is 3.000 km long. It should be on the course.',
    );
    expect(refusal(-1).message).toBe(
      'The station is at -0.001 km, but c begins at 0.000 km. It should be on the course.',
    );
  });
});
