import { describe, expect, it } from 'vitest';
import { timeAt, timelineOf } from './clockAlong.ts';

const clock = [
  { course: 'c', measure: 10_000, closes: 7200 },
  { course: 'c', measure: 0, closes: 3600, accessOpens: 100 },
  { course: 'd', measure: 5000, closes: 1 },
];

describe('The clock along a course', () => {
  it('is linear between entries, and the nearest entry’s beyond them', () => {
    const closes = timelineOf(clock, 'c', 'closes');
    expect([-1, 0, 2500, 10_000, 42_195].map((measure) => timeAt(closes, measure))).toEqual([
      3600, 3600, 4500, 7200, 7200,
    ]);
  });

  it('knows only entries with the time asked for, and nothing where there are none', () => {
    expect(timeAt(timelineOf(clock, 'c', 'accessOpens'), 9000)).toBe(100);
    expect(timeAt(timelineOf(clock, 'c', 'reopens'), 9000)).toBeNull();
    expect(timeAt(timelineOf(clock, 'x', 'closes'), 0)).toBeNull();
  });

  it('takes the first of two entries at one measure', () => {
    const twice = timelineOf(
      [
        { course: 'c', measure: 5, closes: 10 },
        { course: 'c', measure: 5, closes: 20 },
        { course: 'c', measure: 7, closes: 40 },
      ],
      'c',
      'closes',
    );
    expect([4, 5, 6].map((measure) => timeAt(twice, measure))).toEqual([10, 10, 30]);
  });
});
