import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { signMissed } from './signMissed.ts';

/** Race b comes from the south and joins race a's road so many metres before the tables; the sign stands 91.44 m before them. */
function joining(before: number): readonly Finding[] {
  const join = from(ORIGIN, 90, 1500 - before);
  const courses = [
    turtle(ORIGIN, [[90, 3000]], 20, 'a'),
    turtle(
      from(join, 180, 600),
      [
        [0, 600],
        [90, 1000],
      ],
      20,
      'b',
    ),
  ];
  return signMissed.find(layoutOf(courses, [{ on: { course: 'a', measure: 1500, side: 'left', offset: 5 } }]));
}

// Race b runs beside race a, and comes over to it between sign and tables.
const beside = (apart: number): readonly Finding[] => {
  const courses = [
    turtle(ORIGIN, [[90, 3000]], 20, 'a'),
    turtle(
      from(ORIGIN, 180, apart),
      [
        [90, 1440],
        [0, apart],
        [90, 1000],
      ],
      20,
      'b',
    ),
  ];
  return signMissed.find(layoutOf(courses, [{ on: { course: 'a', measure: 1500, side: 'left', offset: 5 } }]));
};

describe('sign-missed', () => {
  it('is a warning where a served course joins between sign and tables', () => {
    for (const before of [40, 70]) {
      expect(joining(before)).toEqual([
        expect.objectContaining({
          code: 'sign-missed',
          severity: 'warning',
          where: expect.objectContaining({
            path: '/stations/0',
            station: 's1',
            race: 'b',
            course: 'b',
            item: 'sign',
            measure: expect.closeTo(600 + before, 0),
          }),
        }),
      ]);
    }
  });

  it('is silent where it joins before the sign', () => {
    for (const before of [95, 150]) expect(joining(before)).toEqual([]);
  });

  it('counts runners who pass within 15 m beyond the sign’s own offset, not farther', () => {
    // The sign is 5 m north of race a; the way over passes it at a right angle from 32 m on.
    expect(beside(14.5)).toEqual([]);
    expect(beside(15.5)).toHaveLength(1);
  });

  it('is silent on a road that turns between sign and tables: they run by the sign all the same', () => {
    const layout = layoutOf(
      [
        turtle(
          ORIGIN,
          [
            [90, 1000],
            [350, 1000],
          ],
          20,
          'a',
        ),
      ],
      [{ on: { course: 'a', measure: 1050, side: 'left', offset: 5 } }],
    );
    expect(layout.stations[0]!.directions).toEqual([
      expect.objectContaining({ measure: expect.closeTo(1050, 1), azimuthDeg: expect.closeTo(350, 1) }),
    ]);
    expect(signMissed.find(layout)).toEqual([]);
  });

  it('says nothing of passes that are not served', () => {
    const join = from(ORIGIN, 90, 1460);
    const courses = [
      turtle(ORIGIN, [[90, 3000]], 20, 'a'),
      turtle(
        from(join, 180, 600),
        [
          [0, 600],
          [90, 1000],
        ],
        20,
        'b',
      ),
    ];
    expect(
      signMissed.find(
        layoutOf(courses, [{ on: { course: 'a', measure: 1500, side: 'left', offset: 5 }, races: ['a'] }]),
      ),
    ).toEqual([]);
  });
});

describe('a sign is met', () => {
  const course = turtle(ORIGIN, [[90, 3000]], 20, 'a');
  const pin = { on: { course: 'a', measure: 1500, side: 'left' as const, offset: 5 } };

  it('by runners of the same pass only: not by those who pass it on another lap, or far before', () => {
    // Race b runs by the sign, goes round a block of 700 m and joins the road again between sign and tables.
    const round = turtle(
      from(ORIGIN, 90, 1000),
      [
        [90, 450],
        [180, 200],
        [270, 250],
        [180, 100],
        [90, 270],
        [0, 300],
        [90, 900],
      ],
      20,
      'b',
    );
    const found = signMissed.find(layoutOf([course, round], [pin]));
    expect(found.map(({ where }) => where.race)).toEqual(['b']);
  });

  it('not by runners who pass it the other way', () => {
    // Race b comes towards the sign from the east, turns 30 m before it… and goes back to the tables.
    const turning = turtle(
      from(from(ORIGIN, 90, 1600), 0, 10),
      [
        [270, 200],
        [180, 10],
        [90, 30],
        [90, 600],
      ],
      10,
      'b',
    );
    const layout = layoutOf([course, turning], [pin]);
    const met = signMissed.find(layout).map(({ where }) => where.race);
    expect(met).toEqual([]);
    const short = turtle(
      from(from(ORIGIN, 90, 1600), 0, 10),
      [
        [270, 180],
        [180, 10],
        [90, 30],
        [90, 600],
      ],
      10,
      'b',
    );
    expect(signMissed.find(layoutOf([course, short], [pin])).map(({ where }) => where.race)).toEqual(['b']);
  });

  it('or not asked for, where there is none or it has no place', () => {
    expect(signMissed.find(layoutOf([course], [{ ...pin, serves: [] }]))).toEqual([]);
    expect(
      signMissed.find(layoutOf([course], [{ on: { course: 'a', measure: 50, side: 'left', offset: 5 } }])),
    ).toEqual([]);
  });
});
