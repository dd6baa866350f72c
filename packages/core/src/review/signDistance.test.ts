import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation, Practice } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { signDistance } from './signDistance.ts';

const course = turtle(ORIGIN, [[90, 3000]], 100);
const found = (keys: Partial<PlanStation>, practice: Partial<Practice> = {}): readonly Finding[] =>
  signDistance.find(
    layoutOf([course], [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, ...keys }], { practice }),
  );

/** The sign placed by hand, so many metres before the first table. */
const ahead = (metres: number): Partial<PlanStation> => ({
  items: { sign: { at: from(from(ORIGIN, 90, 1500 - metres), 180, 5) } },
});

// 100 yd and a tolerance of 10 yd: common practice, no source.
it('a sign farther than the tolerance from 100 yards is an error, with both limits', () => {
  for (const metres of [82.28, 100.6]) {
    expect(found(ahead(metres))).toEqual([
      expect.objectContaining({
        code: 'sign-distance',
        severity: 'error',
        measured: expect.closeTo(metres, 2),
        limit: [expect.closeTo(82.296, 9), expect.closeTo(100.584, 9)],
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/0/items/sign', station: 's1', item: 'sign', course: 'c' }),
      }),
    ]);
  }
  for (const metres of [82.31, 91.44, 100.57]) expect(found(ahead(metres))).toEqual([]);
});

it('the house’s own layout holds, also exactly at the tolerance', () => {
  expect(found({})).toEqual([]);
  expect(found({ practice: { signAhead: 110 * 0.9144 } })).toEqual([]);
  expect(found({ practice: { signAhead: 110 * 0.9144 + 0.001 } })).toHaveLength(1);
});

it('a station’s own distance is held against the plan’s rule, so that a reviewer sees the exception', () => {
  expect(found({ practice: { signAhead: 120 * 0.9144 } })).toEqual([
    expect.objectContaining({
      measured: expect.closeTo(109.728, 6),
      where: expect.objectContaining({ path: '/stations/0' }),
    }),
  ]);
});

it('is measured from the first table, which is the gel where gel is served', () => {
  expect(found({ ...ahead(91.44), serves: ['gel', 'water'] })).toEqual([
    expect.objectContaining({ measured: expect.closeTo(91.44 - 9.4488, 2) }),
  ]);
});

it('the plan’s own rule and tolerance are the limit', () => {
  expect(found(ahead(60), { signAhead: 62, signTolerance: 3 })).toEqual([]);
  expect(found(ahead(58.9), { signAhead: 62, signTolerance: 3 })).toEqual([
    expect.objectContaining({ limit: [59, 65] }),
  ]);
});

it('says what the distance is taken from, how it was placed, and what a wheel shows', () => {
  const [own] = found({ practice: { signAhead: 120 * 0.9144 } });
  expect(own!.message).toBe(
    'The sign of Station s1 stands 109.7 m before the first table (109.7 m by wheel from the chalk mark); expected 82.3 m to 100.6 m. The station itself asks for 109.7 m: waive this if that is meant, or take its "signAhead" out. Move the sign or the tables.',
  );
  const [hand] = found(ahead(60));
  expect(hand!.message).toContain('stands 60.0 m before the first table (60.0 m by wheel from the chalk mark)');
  expect(hand!.message).toContain('It was placed by hand.');
  const [behind] = found(ahead(-3));
  expect(behind!.message).toContain('stands 3.0 m behind the first table');
});

it('is taken from the hand-out line where that reaches farther than the tables', () => {
  const layout = layoutOf([course], [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, ...ahead(60) }]);
  const [station] = layout.stations;
  const [direction] = station!.directions;
  const line = {
    ...direction!.items.find(({ kind }) => kind === 'water')!,
    kind: 'handOut' as const,
    from: 1490,
    to: 1530,
  };
  const [finding] = signDistance.find({
    ...layout,
    stations: [{ ...station!, directions: [{ ...direction!, items: [...direction!.items, line] }] }],
  });
  expect(finding).toMatchObject({
    measured: expect.closeTo(50, 1) as number,
    message: expect.stringContaining('50.0 m before the hand-out line') as string,
  });
});

it('asks nothing where there is no sign, or no table that it could stand before', () => {
  const layout = layoutOf([course], [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, ...ahead(60) }]);
  const [station] = layout.stations;
  const [direction] = station!.directions;
  const only = (...kinds: string[]): readonly Finding[] =>
    signDistance.find({
      ...layout,
      stations: [
        {
          ...station!,
          directions: [{ ...direction!, items: direction!.items.filter(({ kind }) => kinds.includes(kind)) }],
        },
      ],
    });
  expect(only('sign', 'water')).toHaveLength(1);
  expect([only('sign', 'trash'), only('water', 'trash'), only()]).toEqual([[], [], []]);
});

it('has no place and no wheel to tell where the sign stands off the course', () => {
  const [finding] = found({
    on: { course: 'c', measure: 40, side: 'right', offset: 5 },
    practice: { signAhead: 120 * 0.9144 },
  });
  expect(finding!.where).not.toHaveProperty('at', ORIGIN);
  expect(finding!.where.at).toEqual(
    layoutOf([course], [{ on: { course: 'c', measure: 40, side: 'right', offset: 5 } }]).stations[0]!.at,
  );
  expect(finding!.message).not.toContain('by wheel');
});
