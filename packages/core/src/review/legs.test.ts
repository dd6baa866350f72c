import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation, Practice } from '../plan/plan.ts';
import { voiceOf } from '../plan/voice.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf, planRace } from '../testing/plans.ts';
import { inEnglish } from '../text/inEnglish.ts';
import type { Check } from './check.ts';
import { legLong, legShort } from './legs.ts';

const course = turtle(ORIGIN, [[90, 12_000]], 200);
const on = (measure: number): Partial<PlanStation> => ({ on: { course: 'c', measure, side: 'right', offset: 5 } });
const found = (check: Check, measures: number[], practice: Partial<Practice> = {}): readonly Finding[] =>
  check.find(layoutOf([course], measures.map(on), { practice }));

// At most 5 km: Western Province Athletics, station guide 2019 (read). At least 1.6 km: common practice, no source.
describe('leg-long', () => {
  it('is a warning where a race runs over 5 km without a station', () => {
    expect(found(legLong, [4000, 9000.1])).toEqual([
      expect.objectContaining({
        code: 'leg-long',
        severity: 'warning',
        measured: expect.closeTo(5000.1, 2),
        limit: 5000,
        unit: 'm',
        source: expect.stringContaining('Western Province Athletics'),
        where: expect.objectContaining({
          race: 'c',
          course: 'c',
          station: 's2',
          path: '/stations/1',
          measure: expect.closeTo(9000.1, 2),
        }),
      }),
    ]);
    expect(found(legLong, [4000, 8999.9])).toEqual([]);
  });

  it('counts the ways from the start and to the finish as well', () => {
    expect(found(legLong, [5000.1, 8000]).map((finding) => finding.message)).toEqual([
      expect.stringContaining('from the start to here (at 5.00 km).'),
    ]);
    expect(found(legLong, [2000, 6999.9])).toEqual([
      expect.objectContaining({
        message: expect.stringContaining('from here to the finish'),
        where: expect.objectContaining({ station: 's2', measure: expect.closeTo(12_000, 2) }),
      }),
    ]);
    expect(found(legLong, [])).toEqual([
      expect.objectContaining({
        measured: expect.closeTo(12_000, 2),
        where: { race: 'c', course: 'c', measure: expect.closeTo(12_000, 2) },
      }),
    ]);
  });

  it('holds against the plan’s own limit', () => {
    expect(found(legLong, [4000, 8000], { maxSpacing: 3999 })).toHaveLength(3);
    expect(found(legLong, [4000, 8000], { maxSpacing: 4001 })).toEqual([]);
  });
});

describe('leg-short', () => {
  it('is silent of stations face to face', () => {
    expect(found(legShort, [4000, 4049])).toEqual([]);
    expect(found(legShort, [4000, 4051])).toHaveLength(1);
  });

  it('is a note where two stations are nearer than 1.6 km', () => {
    expect(found(legShort, [4000, 5599.9])).toEqual([
      expect.objectContaining({
        code: 'leg-short',
        severity: 'note',
        measured: expect.closeTo(1599.9, 2),
        limit: 1600,
        unit: 'm',
        where: expect.objectContaining({ station: 's2' }),
      }),
    ]);
    expect(found(legShort, [4000, 5600.1])).toEqual([]);
  });

  it('leaves the ways from the start and to the finish alone', () => {
    expect(found(legShort, [500, 11_500])).toEqual([]);
  });
});

describe('what a leg’s finding says', () => {
  it('names the race and both stations by their own names', () => {
    const races = [planRace('a', 'c'), { ...planRace('b', 'c'), name: 'Long Bay 10' }];
    const layout = layoutOf(
      [course],
      [
        { ...on(1500), name: 'Gannet Point' },
        { ...on(7100), name: 'Fort', races: ['b'] },
      ],
      { races },
    );
    expect(inEnglish(legLong.find(layout), voiceOf(layout.plan)).map(({ message }) => message)).toEqual([
      'a runs 10.50 km from here to the finish. It should be at most 5.00 km. Add a station between, or move one.',
      'Long Bay 10 runs 5.60 km from Gannet Point to here (at 7.10 km). It should be at most 5.00 km. Add a station between, or move one.',
    ]);
    expect(legShort.find(layoutOf([course], [on(4000), on(5000)])).map(({ message }) => message)).toEqual([
      'c runs 1.00 km from s1 to here (at 5.00 km). It should be at least 1.60 km. Move one of the two, or leave one out.',
    ]);
  });

  it('lets a leg be just as long or as short as the practice says', () => {
    const layout = layoutOf([course], [on(4000), on(7000)]);
    const exact = layout.spacing[0]!.legs[1]!.length;
    const held = (practice: Partial<Practice>): number[] =>
      [legLong, legShort].map(
        (check) =>
          check
            .find({ ...layout, plan: { ...layout.plan, practice: { ...layout.plan.practice, ...practice } } })
            .filter(({ where }) => where.station === 's2' && Math.abs((where.measure ?? 0) - 7000) < 1).length,
      );
    expect(held({ maxSpacing: exact, minSpacing: exact })).toEqual([0, 0]);
    expect(held({ maxSpacing: exact - 0.001, minSpacing: exact + 0.001 })).toEqual([1, 1]);
  });
});
