import { describe, expect, it } from 'vitest';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { stationUnserved } from './stationUnserved.ts';

const road = turtle(ORIGIN, [[90, 3000]]);
const found = (station: Parameters<typeof layoutOf>[1][number]): readonly string[] =>
  stationUnserved.find(layoutOf([road], [station])).map((finding) => finding.message);

describe('a station that serves nobody', () => {
  it('is found where its pin lies beyond the start, and not where it stands just behind it', () => {
    expect(found({ at: from(ORIGIN, 260, 10) })).toEqual([expect.stringContaining('beyond an end')]);
    expect(found({ at: from(from(ORIGIN, 90, 1), 0, 10) })).toEqual([]);
  });

  it('is silent where the plan names the pass beyond the end', () => {
    expect(found({ at: from(ORIGIN, 260, 10), passes: [{ race: 'c', pass: 0 }] })).toEqual([]);
  });

  it('is silent where no race passes at all: that is another finding', () => {
    expect(found({ at: from(ORIGIN, 0, 900) })).toEqual([]);
  });
});

it('a station with no pass chosen is told so, beside an end too; one whose listed passes do not exist is told that', () => {
  const pin = from(from(ORIGIN, 90, 1500), 0, 10);
  for (const none of [{ passes: [] }, { races: [] }])
    expect(found({ at: pin, ...none })).toEqual([
      expect.stringContaining('none of the times that runners come past is chosen'),
    ]);
  expect(found({ at: pin, passes: [{ race: 'c', pass: 4 }] })).toEqual([]);
  const back = turtle(ORIGIN, [
    [90, 1000],
    [270, 1010],
  ]);
  const [finding] = stationUnserved.find(layoutOf([back], [{ at: from(from(ORIGIN, 270, 5), 0, 3), passes: [] }]));
  expect(finding!.message).toContain('none of the times that runners come past is chosen');
  const courses = [road, turtle(from(ORIGIN, 0, 12), [[90, 3000]], 20, 'd')];
  expect(
    stationUnserved.find(layoutOf(courses, [{ at: from(from(ORIGIN, 90, 1500), 0, 6), races: ['d'], passes: [] }])),
  ).toEqual([expect.objectContaining({ where: expect.objectContaining({ course: 'd' }) })]);
});
