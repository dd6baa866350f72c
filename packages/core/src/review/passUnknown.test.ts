import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { passUnknown } from './passUnknown.ts';

const found = (keys: Partial<PlanStation>): readonly Finding[] =>
  passUnknown.find(
    layoutOf(
      [
        turtle(ORIGIN, [
          [70, 2000],
          [250, 2000],
        ]),
      ],
      [{ at: from(from(ORIGIN, 70, 300), 160, 6), ...keys }],
    ),
  );

it('a lead that the course does not make is an error that says how many passes there are', () => {
  const [finding, ...more] = found({ lead: { race: 'c', pass: 2 } });
  expect(more).toEqual([]);
  expect(finding).toMatchObject({
    code: 'pass-unknown',
    severity: 'error',
    where: { path: '/stations/0/lead', station: 's1', race: 'c' },
  });
  expect(finding!.message).toContain('names the 3rd time that c comes past, but it comes past only twice.');
  expect(found({ lead: { race: 'c', pass: 1 } })).toEqual([]);
});

it('a race that the station lists and that never comes by is a warning, once', () => {
  const far = turtle(from(ORIGIN, 0, 5000), [[90, 2000]], 50, 'd');
  const near = turtle(ORIGIN, [[70, 2000]], 50, 'c');
  const of = (keys: Partial<PlanStation>): readonly Finding[] =>
    passUnknown.find(layoutOf([near, far], [{ at: from(from(ORIGIN, 70, 300), 160, 6), ...keys }]));
  expect(of({ races: ['c', 'd'] })).toEqual([
    expect.objectContaining({
      severity: 'warning',
      where: expect.objectContaining({ path: '/stations/0/races', race: 'd' }),
      message: 'The plan serves d here, but that race does not come past. Choose a race that does.',
    }),
  ]);
  expect(of({ races: ['c'] })).toEqual([]);
  expect(of({})).toEqual([]);
  const listed = of({
    races: ['c', 'd'],
    passes: [
      { race: 'd', pass: 0 },
      { race: 'c', pass: 0 },
    ],
  });
  expect(listed.map(({ where }) => where.path)).toEqual(['/stations/0/passes/0']);
});

it('each listed pass that the course does not make is one error at its own place in the plan', () => {
  const passes = [
    { race: 'c', pass: 0 },
    { race: 'c', pass: 2 },
    { race: 'c', pass: 1 },
    { race: 'c', pass: 7 },
  ];
  expect(found({ passes }).map((finding) => finding.where.path)).toEqual([
    '/stations/0/passes/1',
    '/stations/0/passes/3',
  ]);
  expect(found({ passes: passes.slice(0, 1) })).toEqual([]);
});

it('a station that no course passes is told that alone', () => {
  expect(found({ at: from(ORIGIN, 0, 900), lead: { race: 'c', pass: 0 } })).toEqual([]);
});

it('passes of another race do not count, and one pass is told in the singular', () => {
  const [finding, ...more] = passUnknown.find(
    layoutOf(
      [turtle(ORIGIN, [[70, 2000]]), turtle(from(ORIGIN, 0, 900), [[70, 2000]], 20, 'd')],
      [
        {
          at: from(from(ORIGIN, 70, 300), 160, 6),
          passes: [
            { race: 'c', pass: 0 },
            { race: 'd', pass: 0 },
            { race: 'c', pass: 1 },
          ],
        },
      ],
    ),
  );
  expect(finding!.message).toContain('serves d here, but that race does not come past.');
  expect(more).toEqual([
    expect.objectContaining({
      message: expect.stringContaining('names the 2nd time that c comes past, but it comes past only once.'),
    }),
  ]);
});
