import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { tablesHidden } from './tablesHidden.ts';

/** A road that turns by so many degrees half-way between sign and tables: it swings 45.72 m·sin(turn ÷ 2) from the straight line. */
const bend = (turn: number): readonly Finding[] =>
  tablesHidden.find(
    layoutOf(
      [
        turtle(ORIGIN, [
          [90, 1000],
          [90 - turn, 1000],
        ]),
      ],
      [{ on: { course: 'c', measure: 1045.72, side: 'right', offset: 5 } }],
    ),
  );

it('a course that swings over 10 m from the line of sight is noted', () => {
  expect(bend(26)).toEqual([
    expect.objectContaining({
      code: 'tables-hidden',
      severity: 'note',
      measured: expect.closeTo(45.72 * Math.sin((13 * Math.PI) / 180), 2),
      limit: 10,
      unit: 'm',
      where: expect.objectContaining({ path: '/stations/0', station: 's1', item: 'sign', course: 'c' }),
    }),
  ]);
  expect(bend(25)).toEqual([]);
});

it('a sign without a place on the course hides nothing: that has a finding of its own', () => {
  expect(
    tablesHidden.find(
      layoutOf(
        [
          turtle(ORIGIN, [
            [90, 40],
            [0, 1000],
          ]),
        ],
        [{ on: { course: 'c', measure: 80, side: 'right', offset: 5 } }],
      ),
    ),
  ).toEqual([]);
});

it('asks nothing where there are no tables, or a hand put the sign behind them', () => {
  const course = turtle(ORIGIN, [
    [90, 1000],
    [40, 1000],
  ]);
  const laid = (keys: object): readonly Finding[] =>
    tablesHidden.find(
      layoutOf([course], [{ on: { course: 'c', measure: 1045.72, side: 'right', offset: 5 }, ...keys }]),
    );
  expect(laid({})).toHaveLength(1);
  expect(laid({ serves: [] })).toEqual([]);
  expect(laid({ items: { sign: { at: from(from(from(ORIGIN, 90, 1000), 40, 80), 130, 5) } } })).toEqual([]);
});
