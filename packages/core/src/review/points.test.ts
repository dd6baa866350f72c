import { describe, expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanPoint, PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { dropSide } from './dropSide.ts';
import { medicalWithoutAccess } from './medicalAccess.ts';
import { trashBlocksMedical } from './trashBlocksMedical.ts';

const course = turtle(ORIGIN, [[90, 3000]], 100);
/** A place at a measure of the straight course, so many metres to its right. */
const place = (measure: number, right: number): LonLat =>
  from(from(ORIGIN, 90, measure), right < 0 ? 0 : 180, Math.abs(right));
const station: Partial<PlanStation> = { on: { course: 'c', measure: 1500, side: 'right', offset: 6 } };
const found = (check: Check, points: readonly PlanPoint[], keys: Partial<PlanStation> = {}): readonly Finding[] =>
  check.find(layoutOf([course], [{ ...station, ...keys, points }]));
const point = (kind: PlanPoint['kind'], measure: number, right: number): PlanPoint => ({
  kind,
  at: place(measure, right),
});

/** Where a side becomes clear: 1.6449·√(5² + 3²)/2.4477 m (see sides.test.ts). */
const CLEAR = (1.6448536 * Math.hypot(5, 3)) / 2.4477468;

describe('drop-side', () => {
  const dropped = (right: number, keys: Partial<PlanStation> = {}): readonly Finding[] =>
    found(dropSide, [point('drop', 1450, right)], keys);

  it('is a warning where the drop point lies across the course from the tables', () => {
    expect(dropped(-8)).toEqual([
      expect.objectContaining({
        code: 'drop-side',
        severity: 'warning',
        measured: expect.closeTo(8, 2),
        unit: 'm',
        where: expect.objectContaining({
          station: 's1',
          path: '/stations/0/points/0',
          at: place(1450, -8),
          measure: expect.closeTo(1450, 1),
        }),
      }),
    ]);
    expect(dropped(8)).toEqual([]);
  });

  it('cannot tell where the point is too near the line, too far from it, or the tables have no side', () => {
    const undecided = expect.objectContaining({ severity: 'note', cannotTell: true });
    expect(dropped(-CLEAR - 0.01)).toEqual([expect.not.objectContaining({ cannotTell: true })]);
    expect(dropped(-CLEAR + 0.01)).toEqual([undecided]);
    expect(dropped(-59.9)).toEqual([expect.objectContaining({ severity: 'warning' })]);
    expect(dropped(-60.1)).toEqual([undecided]);
    expect(dropSide.find(layoutOf([course], [{ at: place(1500, 0), points: [point('drop', 1450, 8)] }]))).toEqual([
      undecided,
    ]);
  });

  it('takes the way past the tables on a road that is run both ways', () => {
    const back = turtle(
      ORIGIN,
      [
        [90, 2000],
        [270, 2000],
      ],
      100,
    );
    const layout = layoutOf(
      [back],
      [{ at: place(1500, 6), lead: { race: 'c', pass: 1 }, points: [point('drop', 1450, 8)] }],
    );
    expect(layout.stations[0]!.directions[0]!.side).toBe('left');
    expect(dropSide.find(layout)).toEqual([]);
  });
});

describe('medical-without-access', () => {
  it('is a warning over 60 m, an error over 250 m, and an error where the plan names none', () => {
    const away = (metres: number): readonly Finding[] =>
      found(medicalWithoutAccess, [point('medical', 1500, 10), point('access', 1500 + metres, 10)]);
    expect(away(59.9)).toEqual([]);
    expect(away(60.1)).toEqual([
      expect.objectContaining({
        code: 'medical-without-access',
        severity: 'warning',
        measured: expect.closeTo(60.1, 2),
        limit: 60,
        where: expect.objectContaining({ path: '/stations/0/points/0' }),
      }),
    ]);
    expect(away(249.9)).toEqual([expect.objectContaining({ severity: 'warning' })]);
    expect(away(250.1)).toEqual([expect.objectContaining({ severity: 'error' })]);
    expect(found(medicalWithoutAccess, [point('medical', 1500, 10), point('drop', 1500, 10)])).toEqual([
      expect.objectContaining({ severity: 'error', limit: 60 }),
    ]);
  });

  it('takes the access point of another station as well', () => {
    const second: Partial<PlanStation> = {
      on: { course: 'c', measure: 1600, side: 'left', offset: 6 },
      points: [point('access', 1540, -8)],
    };
    expect(
      medicalWithoutAccess.find(layoutOf([course], [{ ...station, points: [point('medical', 1500, 10)] }, second])),
    ).toEqual([]);
  });
});

describe('trash-blocks-medical', () => {
  // The trash drop: from 1,552.4 m to 1,598.1 m (tables of 22 ft with their gap, then 50 to 100 yd; common practice, no source).
  const [FIRST, LAST] = [1552.4256, 1598.1456];
  const between = (medical: PlanPoint, access: PlanPoint): readonly Finding[] =>
    found(trashBlocksMedical, [medical, access]);

  it('is an error where all three stand on one side, with how much of the trash lies between', () => {
    expect(between(point('medical', 1530, 10), point('access', FIRST + 1, 10))).toEqual([
      expect.objectContaining({
        code: 'trash-blocks-medical',
        severity: 'error',
        measured: expect.closeTo(1, 2),
        limit: 0,
        where: expect.objectContaining({ item: 'trash', path: '/stations/0/points/0' }),
      }),
    ]);
    expect(between(point('medical', 1530, 10), point('access', FIRST - 0.1, 10))).toEqual([]);
    expect(between(point('medical', 1650, 10), point('access', LAST - 1, 10))).toHaveLength(1);
    expect(between(point('medical', 1650, 10), point('access', LAST + 0.1, 10))).toEqual([]);
  });

  it('is silent where either point is across the road', () => {
    expect(between(point('medical', 1530, -10), point('access', 1620, 10))).toEqual([]);
    expect(between(point('medical', 1530, 10), point('access', 1620, -10))).toEqual([]);
  });

  it('cannot tell where a side is unclear, or a point too far from the course', () => {
    expect(between(point('medical', 1530, 70), point('access', 1530, 10))).toEqual([
      expect.objectContaining({ severity: 'note', cannotTell: true }),
    ]);
    expect(between(point('medical', 1530, 10), point('access', 1530, 70))).toEqual([
      expect.objectContaining({ severity: 'note', cannotTell: true }),
    ]);
    expect(between(point('medical', 1530, 1), point('access', 1620, 10))).toEqual([
      expect.objectContaining({ severity: 'note', cannotTell: true }),
    ]);
  });
});

it('each says that it could not run where the plan names no such points', () => {
  const bare = layoutOf([course], [station]);
  const all = layoutOf(
    [course],
    [{ ...station, points: [point('medical', 1500, 10), point('access', 1500, 12), point('drop', 1500, 12)] }],
  );
  for (const check of [dropSide, medicalWithoutAccess, trashBlocksMedical]) {
    expect(check.missing!(bare)).toMatch(/^no-(?:drop|medical|medical-with-access)$/u);
    expect(check.missing!(all)).toBeNull();
  }
});

describe('what is said of points', () => {
  it('is their own name, or their kind', () => {
    const named = (name?: string): string =>
      found(medicalWithoutAccess, [{ ...point('medical', 1500, 10), ...(name === undefined ? {} : { name }) }])[0]!
        .message;
    expect(named()).toMatch(/^A first-aid point has no access point: the plan has none\. One should be within 60 m\./u);
    expect(named('Tent')).toMatch(/^“Tent” has no access point/u);
  });

  it('is how far the nearest access point is and what to do about it, up to and over 250 m', () => {
    const away = (metres: number): string =>
      found(medicalWithoutAccess, [
        point('medical', 1500, 10),
        point('access', 1900, 10),
        { ...point('access', 1500 + metres, 10), name: 'Lane' },
      ])[0]!.message;
    expect(away(100)).toContain(
      'A first-aid point is 100 m from the nearest access point (“Lane”), as the crow flies. It should be at most 60 m. Move one of them',
    );
    expect(away(300)).toContain('Add one that an ambulance can reach.');
  });

  it('is why a drop point’s side cannot be told', () => {
    const dropped = (right: number, keys: Partial<PlanStation> = {}): string =>
      found(dropSide, [point('drop', 1450, right)], keys)[0]!.message;
    expect(dropped(-61)).toContain('is more than 60 m from the course, so it is unclear on which side it lies.');
    expect(dropped(1)).toContain('is 1 m from the course line: its side is only 66 % sure.');
    expect(
      dropSide.find(layoutOf([course], [{ at: place(1500, 0), points: [point('drop', 1450, 8)] }]))[0]!.message,
    ).toContain('The side of the tables is unclear, and so is whether a supplies drop lies on it.');
    expect(dropped(-8)).toContain('lies 8 m to the left of the course; the tables stand on the right.');
    expect(dropSide.find(layoutOf([course], [{ at: place(1500, 400), points: [point('drop', 1450, 8)] }]))).toEqual([]);
  });

  it('is which of two points lies too far off to tell, and where the trash lies between them', () => {
    const between = (medical: PlanPoint, access: PlanPoint): string =>
      found(trashBlocksMedical, [medical, access])[0]!.message;
    expect(between(point('medical', 1530, 70), point('access', 1530, 10))).toMatch(
      /^A first-aid point is more than 60 m from the course/u,
    );
    expect(between(point('medical', 1530, 10), point('access', 1530, 70))).toMatch(
      /^An access point is more than 60 m from the course/u,
    );
    expect(between(point('medical', 1530, 10), point('access', 1620, 10))).toContain(
      '46 m of the row of trash boxes lies between a first-aid point and its access point, all on the right.',
    );
    expect(between(point('medical', 1530, 1), point('access', 1620, 10))).toContain(
      'but it is unclear whether all three are on one side.',
    );
    expect(found(trashBlocksMedical, [point('medical', 1530, -10), point('access', 1620, 1)])).toEqual([]);
  });

  it('is asked of the access point of the same station, the nearest of several', () => {
    const second: Partial<PlanStation> = {
      on: { course: 'c', measure: 1900, side: 'right', offset: 6 },
      points: [point('access', 1580, 10)],
    };
    const layout = (...points: PlanPoint[]): readonly Finding[] =>
      trashBlocksMedical.find(layoutOf([course], [{ ...station, points }, second]));
    expect(layout(point('medical', 1530, 10), point('access', 1500, 10), point('access', 1700, 10))).toEqual([]);
    expect(layout(point('medical', 1530, 10), point('access', 1700, 10))).toHaveLength(1);
    expect(found(trashBlocksMedical, [point('medical', 1530, 10), point('access', 1620, 10)], { serves: [] })).toEqual(
      [],
    );
  });
});
