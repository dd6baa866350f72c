import { describe, expect, it } from 'vitest';
import type { StationLayout } from '../layout/layout.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, type TurtleLeg, from, turtle } from '../testing/courses.ts';
import { type PlanKeys, layoutOf, planRace } from '../testing/plans.ts';

const OUT_AND_BACK: readonly TurtleLeg[] = [
  [70, 2000],
  [250, 2000],
];
const LAP: readonly TurtleLeg[] = [
  [0, 800],
  [90, 600],
  [180, 800],
  [270, 600],
];

/** The one station of a plan with one race on a drawn course. */
function station(legs: readonly TurtleLeg[], keys: Partial<PlanStation>): StationLayout {
  return layoutOf([turtle(ORIGIN, legs)], [keys]).stations[0]!;
}

/** 7 m to the right of the way out at 300 m. */
const BESIDE = from(from(ORIGIN, 70, 300), 160, 7);

const served = (layout: StationLayout): boolean[] => layout.passes.map((pass) => pass.served);
const groups = (layout: StationLayout): (readonly number[])[] => layout.directions.map((direction) => direction.passes);

const branching = (turn: number): StationLayout =>
  layoutOf(
    [
      turtle(ORIGIN, [[90, 2000]], 20, 'a'),
      turtle(
        ORIGIN,
        [
          [90, 320],
          [90 - turn, 500],
        ],
        20,
        'b',
      ),
    ],
    [{ at: from(from(ORIGIN, 90, 310), 180, 6) }],
  ).stations[0]!;

/** A straight road, and a zigzag of 6 m legs along it, never over 6 m away. */
const zigzag = (turn: number): StationLayout =>
  layoutOf(
    [
      turtle(ORIGIN, [[90, 2000]], 20, 'a'),
      turtle(
        ORIGIN,
        [
          [90, 280],
          ...Array.from({ length: 30 }, (_, k): TurtleLeg => [90 + (k % 2 === 0 ? turn : -turn), 6]),
          [90, 500],
        ],
        20,
        'b',
      ),
    ],
    [{ at: from(from(ORIGIN, 90, 310), 180, 12) }],
  ).stations[0]!;

const order = (...races: string[]): PlanKeys['races'] => races.map((race) => planRace(race, race));

describe('directions', () => {
  it('are two on an out-and-back, of which the lead alone is served by default', () => {
    const layout = station(OUT_AND_BACK, { at: BESIDE });
    expect(layout.passes.map((pass) => [Math.round(pass.measure), pass.side, pass.served])).toEqual([
      [300, 'right', true],
      [3700, 'left', false],
    ]);
    expect(layout.directions).toEqual([
      expect.objectContaining({
        lead: true,
        side: 'right',
        passes: [0],
        course: 'c',
        measure: expect.closeTo(300, 2),
        azimuthDeg: expect.closeTo(70, 1),
      }),
    ]);
  });

  it('are one over all laps, each of which is served', () => {
    const layout = station([...LAP, ...LAP, ...LAP], { at: from(from(ORIGIN, 0, 400), 90, 6) });
    expect(groups(layout)).toEqual([[0, 1, 2]]);
    expect(layout.passes.map((pass) => [Math.round(pass.measure), pass.pass, pass.served])).toEqual([
      [400, 0, true],
      [3200, 1, true],
      [6000, 2, true],
    ]);
  });

  it('are all served where the plan says so, the opposite one with its sides flipped', () => {
    const layout = station(OUT_AND_BACK, { at: BESIDE, passes: 'all' });
    expect(served(layout)).toEqual([true, true]);
    expect(layout.directions.map(({ lead, side, passes }) => ({ lead, side, passes }))).toEqual([
      { lead: true, side: 'right', passes: [0] },
      { lead: false, side: 'left', passes: [1] },
    ]);
  });

  it('serve just the passes that the plan lists', () => {
    const layout = station(OUT_AND_BACK, { at: BESIDE, passes: [{ race: 'c', pass: 1 }] });
    expect(served(layout)).toEqual([false, true]);
    const laps = station([...LAP, ...LAP, ...LAP], {
      at: from(from(ORIGIN, 0, 400), 90, 6),
      passes: [
        { race: 'c', pass: 0 },
        { race: 'c', pass: 2 },
      ],
    });
    expect(served(laps)).toEqual([true, false, true]);
  });

  it('begin with the lead that the plan chooses, and then serve that one', () => {
    const layout = station(OUT_AND_BACK, { at: BESIDE, lead: { race: 'c', pass: 1 } });
    expect(served(layout)).toEqual([false, true]);
    expect(layout.directions).toEqual([
      expect.objectContaining({ lead: true, passes: [1], side: 'left', azimuthDeg: expect.closeTo(250, 1) }),
    ]);
    const all = station(OUT_AND_BACK, { at: BESIDE, lead: { race: 'c', pass: 1 }, passes: 'all' });
    expect(all.directions.map(({ lead, passes }) => ({ lead, passes }))).toEqual([
      { lead: true, passes: [1] },
      { lead: false, passes: [0] },
    ]);
  });

  it('take a crossing at right angles as a direction of its own', () => {
    const layout = station(
      [
        [90, 600],
        [0, 300],
        [270, 300],
        [180, 600],
      ],
      { at: from(from(ORIGIN, 90, 295), 0, 5), passes: 'all' },
    );
    expect(layout.directions.map(({ passes, side }) => ({ passes, side }))).toEqual([
      { passes: [0], side: 'left' },
      { passes: [1], side: 'right' },
    ]);
  });

  it('take two courses on one road as one, up to 10 m apart', () => {
    const legs: readonly TurtleLeg[] = [[70, 2000]];
    const at = from(from(ORIGIN, 70, 300), 160, 5);
    const along = (apart: number): StationLayout =>
      layoutOf([turtle(ORIGIN, legs, 20, 'a'), turtle(from(ORIGIN, 160, apart), legs, 20, 'b')], [{ at }]).stations[0]!;
    expect(groups(along(9.9))).toEqual([[0, 1]]);
    expect(groups(along(10.1))).toEqual([[0]]);
    expect(served(along(10.1))).toEqual([true, false]);
  });

  it('take a course that leaves by more than 60° within the next 30 m as a direction of its own', () => {
    // At a small angle the two run within 10 m of each other to the end of the 30 m; at a wide one they do not.
    expect(groups(branching(20))).toEqual([[0, 1]]);
    expect(groups(branching(65))).toEqual([[0]]);
  });

  it('take a course that stays near but runs over 60° another way as a direction of its own', () => {
    expect(groups(zigzag(55))).toEqual([[0, 1]]);
    expect(groups(zigzag(65))[0]).toEqual([0]);
  });

  it('compare no more of a course than it has: one that ends at the station belongs to the road it ends on', () => {
    const layout = layoutOf(
      [turtle(ORIGIN, [[90, 2000]], 20, 'a'), turtle(ORIGIN, [[90, 310]], 20, 'b')],
      [{ at: from(from(ORIGIN, 90, 306), 180, 6) }],
    ).stations[0]!;
    expect(groups(layout)).toEqual([[0, 1]]);
  });

  it('serve only the races that the station serves, and lead with the first of those', () => {
    const courses = [turtle(ORIGIN, OUT_AND_BACK, 20, 'a'), turtle(from(ORIGIN, 70, 2000), [[250, 2000]], 20, 'b')];
    const layout = layoutOf(courses, [{ at: BESIDE, races: ['b'] }]).stations[0]!;
    expect(layout.passes.map(({ race, pass, served: yes }) => [race, pass, yes])).toEqual([
      ['a', 0, false],
      ['a', 1, false],
      ['b', 0, true],
    ]);
    // The way back of race a runs with race b: it is in the direction, and not served.
    expect(layout.directions).toEqual([
      expect.objectContaining({ lead: true, passes: [1, 2], side: 'left', azimuthDeg: expect.closeTo(250, 1) }),
    ]);
  });

  it('follow the plan’s order of races: its first race leads', () => {
    const courses = [turtle(ORIGIN, OUT_AND_BACK, 20, 'a'), turtle(from(ORIGIN, 70, 2000), [[250, 2000]], 20, 'b')];
    const lead = (keys: PlanKeys): number =>
      layoutOf(courses, [{ at: BESIDE }], keys).stations[0]!.directions[0]!.azimuthDeg;
    expect(lead({ races: order('a', 'b')! })).toBeCloseTo(70, 1);
    expect(lead({ races: order('b', 'a')! })).toBeCloseTo(250, 1);
  });

  it('count the passes of two races on one course for each', () => {
    const layout = layoutOf([turtle(ORIGIN, OUT_AND_BACK, 20, 'c')], [{ at: BESIDE }], {
      races: [planRace('m', 'c'), planRace('h', 'c')],
    }).stations[0]!;
    expect(layout.passes.map(({ race, pass, course }) => [race, pass, course])).toEqual([
      ['m', 0, 'c'],
      ['m', 1, 'c'],
      ['h', 0, 'c'],
      ['h', 1, 'c'],
    ]);
    expect(groups(layout)).toEqual([[0, 2]]);
  });

  it('do not serve a pass whose pin lies beyond an end, unless the plan lists it', () => {
    const beyond = from(from(ORIGIN, 250, 20), 160, 6);
    const layout = station([[70, 2000]], { at: beyond });
    expect(layout.passes).toEqual([expect.objectContaining({ end: 'start', served: false })]);
    expect(served(station([[70, 2000]], { at: beyond, passes: 'all' }))).toEqual([false]);
    expect(served(station([[70, 2000]], { at: beyond, passes: [{ race: 'c', pass: 0 }] }))).toEqual([true]);
  });

  it('lead with the first pass that is not beyond an end', () => {
    // Starts 20 m past the pin, comes round by it, and runs on the way it started.
    const layout = station(
      [
        [70, 500],
        [160, 300],
        [250, 700],
        [340, 300],
        [70, 600],
      ],
      { at: from(from(ORIGIN, 250, 20), 160, 6) },
    );
    expect(layout.passes.map(({ end, served: yes }) => [end, yes])).toEqual([
      ['start', false],
      [undefined, true],
    ]);
    expect(layout.directions[0]).toMatchObject({ lead: true, measure: expect.closeTo(1980, 1) });
  });
});

describe('the side of a direction', () => {
  it('is the declared one, whatever the pin says', () => {
    for (const offset of [0.5, 7]) {
      const layout = station(OUT_AND_BACK, {
        at: from(from(ORIGIN, 70, 300), 160, offset),
        side: 'left',
        passes: 'all',
      });
      expect(layout.directions.map((direction) => direction.side)).toEqual(['left', 'right']);
    }
  });

  it('is unclear on both ways where the pin stands on the line and nobody declares it', () => {
    const layout = station(OUT_AND_BACK, { at: from(from(ORIGIN, 70, 300), 160, 0.5), passes: 'all' });
    expect(layout.directions.map((direction) => direction.side)).toEqual(['unclear', 'unclear']);
  });

  it('is declared by the place on a course as well, and turned where the lead runs against that place', () => {
    const on = { course: 'c', measure: 300, side: 'right', offset: 1 } as const;
    expect(station(OUT_AND_BACK, { on })).toMatchObject({ declared: 'right', directions: [{ side: 'right' }] });
    expect(station(OUT_AND_BACK, { on, lead: { race: 'c', pass: 1 } })).toMatchObject({
      declared: 'left',
      directions: [{ side: 'left' }],
    });
    expect(station(OUT_AND_BACK, { on, side: 'left' })).toMatchObject({
      declared: 'left',
      directions: [{ side: 'left' }],
    });
  });
});
