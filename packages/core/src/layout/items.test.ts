/** Items of the lead's direction: what race day asks for, what a hand has placed, and the pass along which all find room. */
import { describe, expect, it } from 'vitest';
import { indexCourse } from '../course/segmentIndex.ts';
import { inverse } from '../geodesy/karney.ts';
import type { ItemKind, PlanStation } from '../plan/plan.ts';
import { ORIGIN, type TurtleLeg, from, turtle, valueOf } from '../testing/courses.ts';
import { layoutOf, planCourse, planOf, planRace, planStation } from '../testing/plans.ts';
import { courseTable } from '../station/seeStation.ts';
import { layStation } from './layStation.ts';
import type { Item, LaidDirection, StationLayout } from './layout.ts';
import type { DayNeeds } from './stretches.ts';

const STRAIGHT: readonly TurtleLeg[] = [[90, 3000]];
/** Back along the very geodesic that it came. */
const OUT_AND_BACK: readonly TurtleLeg[] = [
  [70, 2000],
  [inverse(...from(ORIGIN, 70, 2000), ...ORIGIN).azimuthDeg, 2000],
];
const LAPS: readonly TurtleLeg[] = [
  [0, 800],
  [90, 600],
  [180, 800],
  [270, 600],
  [0, 800],
  [90, 600],
  [180, 800],
  [270, 600],
];

const on = (measure: number, side: 'left' | 'right' = 'right', offset: number = 6): PlanStation['on'] & object => ({
  course: 'c',
  measure,
  side,
  offset,
});
const laid = (legs: readonly TurtleLeg[], keys: Partial<PlanStation>): StationLayout =>
  layoutOf([turtle(ORIGIN, legs, 100)], [keys]).stations[0]!;
const kinds = (direction: LaidDirection | undefined): ItemKind[] => direction!.items.map((item) => item.kind);

function itemOf(direction: LaidDirection | undefined, kind: ItemKind): Item {
  const item = direction?.items.find((each) => each.kind === kind);
  if (item === undefined) throw new Error(`no ${kind}`);
  return item;
}

function expectAt(item: Item, start: number, end: number): void {
  expect([item.from, item.to]).toEqual([expect.closeTo(start, 4), expect.closeTo(end, 4)]);
  expect(item.along).toEqual([expect.closeTo(start - 1500, 9), expect.closeTo(end - 1500, 9)]);
}

describe('what race day asks of a station', () => {
  const needs: DayNeeds = { tables: { gel: 1, sportsDrink: 2, water: 3 }, crew: { handOut: 40 } };
  const asked = (keys: Partial<PlanStation>, day: DayNeeds = needs): StationLayout => {
    const plan = planOf({
      courses: [planCourse('c')],
      races: [planRace('c', 'c')],
      stations: [planStation({ on: on(1500), ...keys })],
    });
    return valueOf(layStation(plan, 0, courseTable([indexCourse(turtle(ORIGIN, STRAIGHT, 100))]), day));
  };

  it('is so many tables, and a line where cups change hands that may reach farther than they do', () => {
    const { directions, needs: kept } = asked({});
    expect(kept).toBe(needs);
    expect(kinds(directions[0])).toEqual(['sign', 'sportsDrink', 'water', 'handOut', 'trash']);
    // Two tables, 10 ft, three tables: 12.192 m, its centre at 6.096 m; 40 persons at 6 ft, 36.576 m to either side.
    expectAt(itemOf(directions[0], 'water'), 1500 + 6.7056, 1500 + 12.192);
    expectAt(itemOf(directions[0], 'handOut'), 1500 + 6.096 - 36.576, 1500 + 6.096 + 36.576);
    expectAt(itemOf(directions[0], 'sign'), 1500 + 6.096 - 36.576 - 91.44, 1500 + 6.096 - 36.576 - 91.44);
    expectAt(itemOf(directions[0], 'trash'), 1500 + 6.096 + 36.576 + 45.72, 1500 + 6.096 + 36.576 + 91.44);
  });

  it('has no line where nobody hands out, and is not kept where race day has no numbers', () => {
    expect(kinds(asked({}, { ...needs, crew: { handOut: 0 } }).directions[0])).toEqual([
      'sign',
      'sportsDrink',
      'water',
      'trash',
    ]);
    expect(laid(STRAIGHT, { on: on(1500) })).not.toHaveProperty('needs');
  });
});

describe('an item placed by hand on a road that is run both ways', () => {
  it('is read back from the pass nearest to where it would stand, not from the way home', () => {
    const at = from(from(ORIGIN, 70, 1900), 160, 5);
    const [direction] = laid(OUT_AND_BACK, { on: on(1900), items: { sign: { at } } }).directions;
    expect(itemOf(direction, 'sign')).toMatchObject({ from: expect.closeTo(1900, 2), side: 'right' });
    const [home] = laid(OUT_AND_BACK, { on: on(2100, 'left'), items: { sign: { at } } }).directions;
    expect(itemOf(home, 'sign')).toMatchObject({ from: expect.closeTo(2100, 2), side: 'left' });
  });

  it('has the wheel distance from the chalk mark along the station’s own offset, and one point or its own end', () => {
    const [direction] = laid(STRAIGHT, {
      on: on(1500),
      items: {
        sign: { at: from(from(ORIGIN, 90, 1440), 180, 9) },
        water: { at: from(from(ORIGIN, 90, 1510), 180, 9) },
      },
    }).directions;
    expect(itemOf(direction, 'sign').wheel).toEqual([expect.closeTo(-60, 2), expect.closeTo(-60, 2)]);
    const water = itemOf(direction, 'water');
    expect(water.wheel).toEqual([expect.closeTo(10, 2), expect.closeTo(11.8288, 2)]);
    expect(water.at[1]).not.toEqual(water.at[0]);
    expect(inverse(...from(ORIGIN, 90, 1511.8288), ...water.at[1]!).length).toBeCloseTo(9, 2);
    expect(itemOf(direction, 'sign').at[0]).toEqual(itemOf(direction, 'sign').at[1]);
  });

  it('keeps the station’s offset where its own side cannot be told, and its far end there', () => {
    const [direction] = laid(STRAIGHT, {
      on: on(1500),
      items: { water: { at: from(from(ORIGIN, 90, 1510), 180, 1) } },
    }).directions;
    expect(itemOf(direction, 'water')).toMatchObject({ side: 'unclear', offset: expect.closeTo(-6, 3), byHand: true });
  });

  it('is read from the nearest place where it stands too far off for a pass', () => {
    const [direction] = laid(STRAIGHT, {
      on: on(1500),
      items: { sign: { at: from(from(ORIGIN, 90, 1440), 180, 90) } },
    }).directions;
    expect(itemOf(direction, 'sign')).toMatchObject({ from: expect.closeTo(1440, 1), offset: expect.closeTo(-90, 1) });
  });
});

describe('room for all items', () => {
  it('is taken on the first served pass that has it, else the first that is served', () => {
    const layout = (passes: PlanStation['passes']): LaidDirection =>
      layoutOf([turtle(ORIGIN, LAPS, 100)], [{ on: on(60), passes }]).stations[0]!.directions[0]!;
    expect(layout('lead').measure).toBeCloseTo(2860, 0);
    // Only the first lap is served: its sign has no place, and no other lap's is taken.
    expect(layout([{ race: 'c', pass: 0 }]).measure).toBeCloseTo(60, 0);
    expect(itemOf(layout([{ race: 'c', pass: 0 }]), 'sign').at).toEqual([null, null]);
  });

  it('is there where the sign stands right at the start, and the trash right at the finish', () => {
    const laps = turtle(ORIGIN, LAPS, 100);
    const at = (measure: number): number => layoutOf([laps], [{ on: on(measure) }]).stations[0]!.directions[0]!.measure;
    expect(at(91.45)).toBeCloseTo(91.45, 1);
    expect(at(91.4)).toBeGreaterThan(2800);
  });
});

describe('the wheel distance of an item', () => {
  /** Drawn on the road’s centre: 1000 m east, then so many degrees to the right. */
  const turning = (turn: number, keys: Partial<PlanStation>): LaidDirection =>
    layoutOf(
      [
        {
          ...turtle(
            ORIGIN,
            [
              [90, 1000],
              [90 + turn, 1000],
            ],
            50,
          ),
          drawn: 'centre',
        },
      ],
      [keys],
    ).stations[0]!.directions[0]!;
  const radians = (degrees: number): number => (degrees * Math.PI) / 180;

  it('has the margin of its farther end: the turn on the way there times 1 m', () => {
    // The trash drop stands from 52.4 m to 98.1 m behind the pin; the corner lies 70 m behind it.
    const trash = itemOf(turning(30, { on: on(930) }), 'trash');
    expect(trash.wheelMargin).toBeCloseTo(radians(30), 3);
    expect(trash.wheel).toEqual([expect.closeTo(52.4256, 3), expect.closeTo(98.1456 - 12 * Math.tan(radians(15)), 2)]);
    expect(itemOf(turning(30, { on: on(930) }), 'sign').wheelMargin).toBeCloseTo(0, 6);
    // Upstream: the corner lies between the sign and the pin.
    const sign = itemOf(turning(30, { on: on(1050) }), 'sign');
    expect(sign.wheelMargin).toBeCloseTo(radians(30), 3);
    expect(sign.wheel![0]).toBeCloseTo(-91.44 + 12 * Math.tan(radians(15)), 2);
  });

  it('is none where the way to either end cannot be wheeled', () => {
    // A turn over 150° has no inside: the trash drop’s far end lies behind it.
    expect(itemOf(turning(160, { on: on(930) }), 'trash').wheel).toBeNull();
    expect(itemOf(turning(160, { on: on(930) }), 'water').wheel).not.toBeNull();
    expect(itemOf(turning(160, { on: on(1050, 'left') }), 'sign').wheel).toBeNull();
  });

  it('has a margin of half the road where the line is not drawn on its centre', () => {
    const shortest = layoutOf(
      [
        {
          ...turtle(
            ORIGIN,
            [
              [90, 1000],
              [120, 1000],
            ],
            50,
          ),
          drawn: 'shortest',
        },
      ],
      [{ on: on(1050), width: 9 }],
    ).stations[0]!.directions[0]!;
    expect(itemOf(shortest, 'sign').wheelMargin).toBeCloseTo(4.5 * radians(30), 3);
  });
});

describe('tables that another direction meets', () => {
  it('are those that its course runs by, first to last, and it has no items where it meets none', () => {
    const [lead, other] = laid(OUT_AND_BACK, { on: on(800), passes: 'all', serves: ['gel', 'sportsDrink', 'water'] })
      .directions as [LaidDirection, LaidDirection];
    expect(kinds(other)).toEqual(['sign', 'water', 'sportsDrink', 'gel', 'trash']);
    for (const item of other.items) expect(item.from).toBeLessThanOrEqual(item.to);
    expect(itemOf(other, 'trash').boxes).toHaveLength(itemOf(lead, 'trash').boxes!.length);
    expect(
      laid(OUT_AND_BACK, { on: on(800), passes: 'all', serves: [] }).directions.map(({ items }) => items.length),
    ).toEqual([0, 0]);
  });

  it('keep their own ground, and are told by that direction’s own distances and side', () => {
    const [lead, other] = laid(OUT_AND_BACK, { on: on(800), passes: 'all', serves: ['water'] }).directions as [
      LaidDirection,
      LaidDirection,
    ];
    expect(itemOf(other, 'water')).toMatchObject({
      side: 'left',
      at: [...itemOf(lead, 'water').at].reverse(),
      from: expect.closeTo(4000 - 801.8288, 2),
      to: expect.closeTo(3200, 2),
    });
    expect(itemOf(other, 'water').offset).toBeCloseTo(6, 3);
    expect(itemOf(other, 'water').wheel).toEqual([expect.closeTo(-1.8288, 2), expect.closeTo(0, 2)]);
  });
});

it('tables that have no place on the lead’s course are not met by another direction, and are no error', () => {
  const [lead, other] = laid(OUT_AND_BACK, { on: on(3999), passes: 'all', lead: { race: 'c', pass: 1 } })
    .directions as [LaidDirection, LaidDirection];
  expect(itemOf(lead, 'water').at).toEqual([null, null]);
  expect(other.items).toEqual([]);
});

it('a sign placed by hand before a corner is wheeled round it', () => {
  const course = {
    ...turtle(
      ORIGIN,
      [
        [90, 1000],
        [120, 1000],
      ],
      50,
    ),
    drawn: 'centre' as const,
  };
  const [direction] = layoutOf(
    [course],
    [{ on: on(1050), items: { sign: { at: from(from(ORIGIN, 90, 960), 180, 9) } } }],
  ).stations[0]!.directions;
  expect(itemOf(direction, 'sign').wheel![0]).toBeCloseTo(-90 + 12 * Math.tan(Math.PI / 12), 1);
  const [behind] = layoutOf(
    [course],
    [{ on: on(960), items: { trash: { at: from(from(from(ORIGIN, 90, 1000), 120, 30), 210, 9) } } }],
  ).stations[0]!.directions;
  expect(itemOf(behind, 'trash').wheel![0]).toBeCloseTo(70 - 12 * Math.tan(Math.PI / 12), 1);
});
