import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import type { Result } from '../finding.ts';
import { ORIGIN, from, turtle, valueOf } from '../testing/courses.ts';
import { calibrate } from './calibrate.ts';
import { type Course, courseLength, rawLength, startMeasure } from './course.ts';
import { pointAt, sliceLine } from './locate.ts';
import { measureOfName } from './markNames.ts';
import { passesOf } from './passes.ts';
import { measureOf, rawOf } from './scale.ts';
import { type IndexedCourse, indexCourse } from './segmentIndex.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

const straight = indexCourse(turtle(ORIGIN, [[90, 10_000]], 50));
const at = (raw: number, course: Course = straight.course): readonly [number, number] => pointAt(course, raw)!.at;
const reasons = (result: Result<IndexedCourse>): string[] => result.findings.map((finding) => finding.code);

describe('calibration', () => {
  it('leaves a course as it is where there are no marks and no length', () => {
    expect(valueOf(calibrate(straight, { marks: [] }))).toBe(straight);
  });

  it('stretches the whole course to a known length', () => {
    const { course } = valueOf(calibrate(straight, { marks: [], length: 10_100 }));
    expect(courseLength(course)).toBe(10_100);
    expect(measureOf(course, 5000)).toBeCloseTo(5050, 3);
    expect(rawLength(course)).toBeCloseTo(10_000, 3);
  });

  it('hits every mark, is linear between them, and holds the last factor to the finish', () => {
    const { course } = valueOf(
      calibrate(straight, {
        marks: [
          { at: at(6060), measure: 6000 },
          { at: at(3000), measure: 3000 },
        ],
      }),
    );
    expect(measureOf(course, 3000)).toBeCloseTo(3000, 4);
    expect(measureOf(course, 6060)).toBeCloseTo(6000, 4);
    expect(measureOf(course, 4530)).toBeCloseTo(4500, 4);
    expect(courseLength(course)).toBeCloseTo(6000 + (3940 * 3000) / 3060, 3);
    const pass = passesOf({ ...straight, course }, pointAt(straight.course, 6060, 8)!.at)[0]!;
    expect(pass.measure).toBeCloseTo(6000, 3);
  });

  it('takes the start from a mark that stands there', () => {
    const result = calibrate(straight, {
      marks: [
        { at: at(0), measure: 100 },
        { at: at(5000), measure: 5100 },
      ],
    });
    const { course } = valueOf(result);
    expect(startMeasure(course)).toBe(100);
    expect(measureOf(course, 1000)).toBeCloseTo(1100, 3);
    expect(pointAt(course, 50)).toBeNull();
    expect(result.findings).toEqual([]);
  });

  it('assigns each mark the right one of its passes on laps', () => {
    const lap: [number, number][] = [
      [0, 1000],
      [90, 250],
      [180, 1000],
      [270, 250],
    ];
    const laps = indexCourse(turtle(ORIGIN, [...lap, ...lap, ...lap], 25));
    const place = at(300, laps.course);
    const { course } = valueOf(
      calibrate(laps, {
        marks: [
          { at: place, measure: 5250 },
          { at: at(1800, laps.course), measure: 4270 },
        ],
      }),
    );
    // The laps, drawn by azimuth, close to some centimetres only.
    expect(measureOf(course, 4300)).toBeCloseTo(4270, 1);
    expect(measureOf(course, 5300)).toBeCloseTo(5250, 1);
  });

  it('assigns marks to the way out or the way back of an out-and-back', () => {
    const track = indexCourse(
      turtle(
        ORIGIN,
        [
          [45, 4000],
          [225, 4000],
        ],
        40,
      ),
    );
    const marks = [1000, 2000, 5000, 6000, 7000].map((measure) => ({ at: at(measure * 1.01, track.course), measure }));
    const { course } = valueOf(calibrate(track, { marks }));
    for (const { measure } of marks) expect(measureOf(course, measure * 1.01)).toBeCloseTo(measure, 2);
  });

  it('takes a mark at start and finish of a loop for the finish when it says the whole length', () => {
    const loop = indexCourse(
      turtle(
        ORIGIN,
        [
          [0, 1000],
          [90, 1000],
          [180, 1000],
          [270, 1000],
        ],
        25,
      ),
    );
    const { course } = valueOf(calibrate(loop, { marks: [{ at: ORIGIN, measure: 4040 }] }));
    expect(startMeasure(course)).toBe(0);
    expect(courseLength(course)).toBeCloseTo(4040, 0);
  });

  it('says which factors lie outside 0.97 to 1.03, and is silent just inside', () => {
    const result = calibrate(straight, { marks: [{ at: at(5000), measure: 4800, name: '3 mi' }] });
    expect(result.findings).toEqual([
      expect.objectContaining({
        code: 'mark-factor',
        severity: 'warning',
        measured: expect.closeTo(0.96, 5),
        limit: [0.97, 1.03],
      }),
    ]);
    expect(result.findings[0]!.message).toContain('3 mi');
    expect(calibrate(straight, { marks: [{ at: at(5000), measure: 4851 }] }).findings).toEqual([]);
  });

  it('refuses marks that no assignment puts in order, marks off the course, and a length before the last mark', () => {
    expect(
      reasons(
        calibrate(straight, {
          marks: [
            { at: at(5000), measure: 5000 },
            { at: at(3000), measure: 6000 },
          ],
        }),
      ),
    ).toEqual(['marks-no-order']);
    expect(reasons(calibrate(straight, { marks: [{ at: from(at(5000), 0, 300), measure: 5000 }] }))).toEqual([
      'mark-off-course',
    ]);
    expect(reasons(calibrate(straight, { marks: [{ at: at(9000), measure: 9000 }], length: 8000 }))).toEqual([
      'marks-no-order',
    ]);
  });

  it('lays marks over the scale that a course has already', () => {
    const once = valueOf(calibrate(straight, { marks: [{ at: at(5000), measure: 5100 }] }));
    const { course } = valueOf(calibrate(once, { marks: [], length: courseLength(once.course) * 2 }));
    for (const raw of [0, 2500, 5000, 7500])
      expect(measureOf(course, raw)).toBeCloseTo(measureOf(once.course, raw) * 2, 6);
  });

  it('turns raw into calibrated and back, slices add up, and marks are hit exactly', () => {
    const gaps = fc.array(fc.tuple(real(200, 900), real(0.975, 1.025)), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(gaps, real(0, 1), real(0, 1), (steps, a, b) => {
        let raw = 0;
        let measure = 0;
        const marks = steps.map(([gap, factor]) => ({ at: at((raw += gap)), raw, measure: (measure += gap * factor) }));
        const { course } = valueOf(calibrate(straight, { marks }));
        for (const mark of marks) expect(Math.abs(measureOf(course, mark.raw) - mark.measure)).toBeLessThan(1e-4);
        const length = courseLength(course);
        expect(rawOf(course, measureOf(course, a * 9999))).toBeCloseTo(a * 9999, 6);
        const [low, high] = [Math.min(a, b) * length, Math.max(a, b) * length];
        const ends = [sliceLine(course, low, high).at(-1), pointAt(course, high)?.at];
        if (high - low > 1e-3) expect(ends[0]).toEqual(ends[1]);
      }),
      { seed: 20261125, numRuns: tries(1000) },
    );
  });
});

// Source: coursemeasurement.org.uk, lessons 3, 8 and 10 (read): counts of a calibrated bicycle are a raw measure, known distances are marks.
describe('the measuring lessons', () => {
  const scaled = (raw: number[], measure: number[]): Course => ({ ...straight.course, scale: { raw, measure } });

  it('lesson 10: 118,127 counts at 11,242 a kilometre are 10.50765 km, two laps 21.0153 km, so the start moves 82.2 m', () => {
    const course = scaled([0, 11_242], [0, 1000]);
    expect(measureOf(course, 118_127)).toBeCloseTo(10_507.65, 2);
    expect(2 * measureOf(course, 118_127)).toBeCloseTo(21_015.3, 1);
    expect(21_097.5 - 2 * measureOf(course, 118_127)).toBeCloseTo(82.2, 1);
  });

  it('lesson 10: the ride counts over 499.55 m, with 0.1 % added, give 11,238 and 11,242 counts a kilometre', () => {
    for (const [counts, printed] of [
      [[5610, 5608, 5609, 5607], 11_238],
      [[5612.5, 5609, 5611.5, 5608], 11_242],
    ] as const) {
      const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
      const course = scaled([0, mean], [0, 499.55]);
      // Within one count: the lesson rounds on the way.
      expect(Math.abs(rawOf(course, 1000) * 1.001 - printed)).toBeLessThan(1);
    }
  });

  it('lesson 3: a mark 351.35 of 671.53 along is at 0.52321, and 5,226 counts are 9,988.3 m, 11.7 m short', () => {
    expect(measureOf(scaled([0, 671.53], [0, 1]), 351.35)).toBeCloseTo(0.52321, 5);
    const course = scaled([0, 5226], [0, 9988.3]);
    expect(measureOf(course, 5226)).toBe(9988.3);
    expect(10_000 - measureOf(course, 5226)).toBeCloseTo(11.7, 6);
  });

  it('lesson 8: 100,000 counts at 10,904 a kilometre are 9.1709 km', () => {
    expect(measureOf(scaled([0, 10_904], [0, 1000]), 100_000)).toBeCloseTo(9170.9, 1);
  });
});

describe('distances in the names of marks', () => {
  it('are read in both orders and units, and nothing else is', () => {
    expect(measureOfName('10 km')).toBe(10_000);
    expect(measureOfName('Km 12,5')).toBe(12_500);
    expect(measureOfName('mile 6')).toBeCloseTo(9656.064, 9);
    expect(measureOfName('6 miles')).toBeCloseTo(9656.064, 9);
    expect([measureOfName('12k'), measureOfName('12 K'), measureOfName('21,1 km')]).toEqual([12_000, 12_000, 21_100]);
    expect([measureOfName('KM 40 water'), measureOfName('10k start'), measureOfName('K 12')]).toEqual([
      null,
      null,
      null,
    ]);
    expect([
      measureOfName('Harbour'),
      measureOfName('km'),
      measureOfName('10'),
      measureOfName('10 kmh'),
      measureOfName('route 10 km'),
    ]).toEqual([null, null, null, null, null]);
  });
});

describe('marks at the ends', () => {
  it('a mark at the start alone moves all measures, with the line’s own factor', () => {
    const { course } = valueOf(calibrate(straight, { marks: [{ at: at(0), measure: 100 }] }));
    expect([startMeasure(course), courseLength(course)]).toEqual([100, expect.closeTo(10_100, 3)]);
    expect(measureOf(course, 4000)).toBeCloseTo(4100, 3);
  });

  it('a mark within 1 m of the start or finish is that end, farther in it is a place of its own', () => {
    const { course } = valueOf(
      calibrate(straight, {
        marks: [
          { at: at(0.9), measure: 100 },
          { at: at(5000), measure: 5100 },
        ],
      }),
    );
    expect(startMeasure(course)).toBe(100);
    expect(
      startMeasure(
        valueOf(
          calibrate(straight, {
            marks: [
              { at: at(1.1), measure: 100 },
              { at: at(5000), measure: 5100 },
            ],
          }),
        ).course,
      ),
    ).toBe(0);
    const near = calibrate(straight, { marks: [{ at: at(9999.1), measure: 10_100 }], length: 10_100.5 });
    expect(courseLength(valueOf(near).course)).toBe(10_100.5);
    expect(reasons(near)).toEqual([]);
    expect(reasons(calibrate(straight, { marks: [{ at: at(9998.5), measure: 10_100 }], length: 10_101.5 }))).toEqual(
      [],
    );
    expect(reasons(calibrate(straight, { marks: [{ at: at(9999.5), measure: 10_100 }], length: 10_102 }))).toEqual([
      'mark-factor',
    ]);
  });

  it('takes a start mark of 0 for the start, and prefers the course’s own start where the mark would bend it', () => {
    const loop = indexCourse(
      turtle(
        ORIGIN,
        [
          [0, 1000],
          [90, 1000],
          [180, 1000],
          [270, 1000],
        ],
        25,
      ),
    );
    expect(startMeasure(valueOf(calibrate(loop, { marks: [{ at: ORIGIN, measure: 0 }] })).course)).toBe(0);
    expect(courseLength(valueOf(calibrate(loop, { marks: [{ at: ORIGIN, measure: 0 }] })).course)).toBeCloseTo(4000, 0);
  });
});

describe('what is said of marks', () => {
  it('is how far off the course one is, by name or measure, with its own place', () => {
    const off = from(at(5000), 0, 300);
    const [named, unnamed] = calibrate(straight, {
      marks: [
        { at: off, measure: 5000, name: 'km 5', where: { path: '/marks/0' } },
        { at: off, measure: 6000 },
      ],
      where: { course: 'c' },
    }).findings;
    expect(named).toMatchObject({
      code: 'mark-off-course',
      severity: 'error',
      measured: expect.closeTo(300, 1) as number,
      limit: 60,
      where: { course: 'c', path: '/marks/0', at: off },
    });
    expect(named!.message).toBe('“km 5” is 300 m from the course. It should be at most 60 m away.');
    expect(unnamed!.message).toContain('The 6.00 km mark is');
  });

  it('is both ends and both lengths, from the start and to the finish too', () => {
    const said = calibrate(straight, {
      marks: [{ at: at(5000), measure: 4800, name: '3 mi' }],
      length: 10_000,
    }).findings;
    expect(said.map(({ message }) => message)).toEqual([
      'From the start to “3 mi” the marks say 4.80 km, but the line is 5.00 km long. They should agree within 3 %. Fix the mark or the line.',
      'From “3 mi” to the finish the marks say 5.20 km, but the line is 5.00 km long. They should agree within 3 %. Fix the mark or the line.',
    ]);
    expect(said.map(({ measured }) => measured)).toEqual([expect.closeTo(0.96, 5), expect.closeTo(1.04, 5)]);
    expect(said[0]!.where.measure).toBe(4800);
    expect(calibrate(straight, { marks: [{ at: at(5000), measure: 4800 }] }).findings[0]!.message).toContain(
      'to the 4.80 km mark the marks say',
    );
    for (const [measure, count] of [
      [4850.01, 0],
      [4849.9, 1],
      [5149.9, 0],
      [5150.1, 1],
    ] as const)
      expect(calibrate(straight, { marks: [{ at: at(5000), measure }] }).findings).toHaveLength(count);
  });

  it('is every mark with all its places where they have no order, and the finish where a length is known', () => {
    const [finding] = calibrate(straight, {
      marks: [
        { at: at(5000), measure: 5000, name: 'A' },
        { at: at(3000), measure: 6000 },
      ],
      length: 10_000,
    }).findings;
    expect(finding!.message).toContain(
      '“A” at 5.00 km, the 6.00 km mark at 3.00 km, the finish at 10.00 km. Course distance should grow',
    );
    expect(
      calibrate(straight, {
        marks: [
          { at: at(5000), measure: 5000 },
          { at: at(3000), measure: 6000 },
        ],
      }).findings[0]!.message,
    ).not.toContain('finish');
    const track = indexCourse(
      turtle(
        ORIGIN,
        [
          [45, 4000],
          [225, 4000],
        ],
        40,
      ),
    );
    expect(
      calibrate(track, {
        marks: [
          { at: at(1000, track.course), measure: 9000 },
          { at: at(1000, track.course), measure: 9500 },
          { at: at(1000, track.course), measure: 9600 },
        ],
      }).findings[0]!.message,
    ).toMatch(/mark at 1\.00 km or 7\.00 km/u);
  });
});

it('two marks that say the same distance at different places have no order, nor one at no distance but the start', () => {
  expect(
    reasons(
      calibrate(straight, {
        marks: [
          { at: at(3000), measure: 3000 },
          { at: at(4000), measure: 3000 },
        ],
      }),
    ),
  ).toEqual(['marks-no-order']);
  expect(reasons(calibrate(straight, { marks: [{ at: at(3000), measure: 0 }] }))).toEqual(['marks-no-order']);
});

it('only the first mark may be the start itself: a later one that stands there is the finish', () => {
  const loop = indexCourse(
    turtle(
      ORIGIN,
      [
        [0, 1000],
        [90, 1000],
        [180, 1000],
        [270, 1000],
      ],
      25,
    ),
  );
  const { course } = valueOf(
    calibrate(loop, {
      marks: [
        { at: at(2000, loop.course), measure: 2000 },
        { at: ORIGIN, measure: 4080 },
      ],
    }),
  );
  expect([startMeasure(course), courseLength(course)]).toEqual([0, expect.closeTo(4080, 0)]);
});

it('names of marks are read with blanks around them', () => {
  expect([measureOfName('  km 10 '), measureOfName(' 10 km  ')]).toEqual([10_000, 10_000]);
});
