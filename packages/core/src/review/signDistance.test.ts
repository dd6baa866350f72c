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

it('says what the distance is taken from, how it was placed, and how far to move what', () => {
  const [own] = found({ practice: { signAhead: 120 * 0.9144 } });
  expect(own!.message).toBe(
    'The sign is 110 m before the first table (the station’s own distance). It should be 82 to 101 m. Clear the station’s own distance, or waive this if it is meant.',
  );
  const [hand] = found(ahead(60));
  expect(hand!.message).toBe(
    'The sign is 60 m before the first table (placed by hand). It should be 82 to 101 m. Move the sign back 23 m, or the tables forward.',
  );
  expect(found(ahead(110))[0]!.message).toContain('Move the sign forward 9.5 m, or the tables back.');
  const [behind] = found(ahead(-3));
  expect(behind!.message).toBe(
    'The sign is 3 m behind the first table (placed by hand). It should be 82 to 101 m before it. Move the sign back 86 m, or the tables forward.',
  );
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
    message: expect.stringContaining('50 m before the hand-out line') as string,
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

it('has no place to tell where the sign stands off the course', () => {
  const [finding] = found({
    on: { course: 'c', measure: 40, side: 'right', offset: 5 },
    practice: { signAhead: 120 * 0.9144 },
  });
  expect(finding!.where).not.toHaveProperty('at', ORIGIN);
  expect(finding!.where.at).toEqual(
    layoutOf([course], [{ on: { course: 'c', measure: 40, side: 'right', offset: 5 } }]).stations[0]!.at,
  );
});
