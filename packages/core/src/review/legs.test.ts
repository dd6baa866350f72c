import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation, Practice } from '../plan/plan.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { legLong, legShort } from './legs.ts';

const course = turtle(ORIGIN, [[90, 12_000]], 200);
const on = (measure: number): Partial<PlanStation> => ({ on: { course: 'c', measure, side: 'right', offset: 5 } });
const found = (check: Check, measures: number[], practice: Partial<Practice> = {}): readonly Finding[] => check.find(layoutOf([course], measures.map(on), { practice }));

// 1.6 km to 5 km: IMMDA guidance (quoted, not read).
describe('leg-long', () => {
  it('is a warning where a race runs over 5 km without a station', () => {
    expect(found(legLong, [4000, 9000.1])).toEqual([
      expect.objectContaining({
        code: 'leg-long',
        severity: 'warning',
        measured: expect.closeTo(5000.1, 2),
        limit: 5000,
        unit: 'm',
        source: expect.stringContaining('IMMDA'),
        where: expect.objectContaining({ race: 'c', course: 'c', station: 's2', path: '/stations/1', measure: expect.closeTo(9000.1, 2) }),
      }),
    ]);
    expect(found(legLong, [4000, 8999.9])).toEqual([]);
  });

  it('counts the ways from the start and to the finish as well', () => {
    expect(found(legLong, [5000.1, 8000]).map((finding) => finding.message)).toEqual([expect.stringContaining('from the start to s1')]);
    expect(found(legLong, [2000, 6999.9])).toEqual([expect.objectContaining({ message: expect.stringContaining('from s2 to the finish'), where: expect.objectContaining({ station: 's2', measure: expect.closeTo(12_000, 2) }) })]);
    expect(found(legLong, [])).toEqual([expect.objectContaining({ measured: expect.closeTo(12_000, 2), where: { race: 'c', course: 'c', measure: expect.closeTo(12_000, 2) } })]);
  });

  it('holds against the plan’s own limit', () => {
    expect(found(legLong, [4000, 8000], { maxSpacing: 3999 })).toHaveLength(3);
    expect(found(legLong, [4000, 8000], { maxSpacing: 4001 })).toEqual([]);
  });
});

describe('leg-short', () => {
  it('is a note where two stations are nearer than 1.6 km', () => {
    expect(found(legShort, [4000, 5599.9])).toEqual([
      expect.objectContaining({ code: 'leg-short', severity: 'note', measured: expect.closeTo(1599.9, 2), limit: 1600, unit: 'm', where: expect.objectContaining({ station: 's2' }) }),
    ]);
    expect(found(legShort, [4000, 5600.1])).toEqual([]);
  });

  it('leaves the ways from the start and to the finish alone', () => {
    expect(found(legShort, [500, 11_500])).toEqual([]);
  });
});
