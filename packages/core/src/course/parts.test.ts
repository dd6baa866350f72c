import { describe, expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import { inverse } from '../geodesy/karney.ts';
import { ORIGIN, courseOfSegments, from, segmentThrough, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { buildCourse } from './build.ts';
import { type Course, courseLength, rawLength } from './course.ts';
import { elevationAt, pointAt } from './locate.ts';
import { type PartsInput, courseOfParts } from './parts.ts';

type Part = readonly [course: Course, from: number, to: number];

const input = (parts: readonly Part[], reverse: boolean = false): PartsInput => ({
  id: 'p',
  name: 'p',
  drawn: 'recorded',
  reverse,
  where: { path: '/courses/1' },
  stretches: parts.map(([course, start, end], k) => ({
    course,
    from: start,
    to: end,
    where: { path: `/courses/1/parts/${k}` },
  })),
});

const refusal = (...parts: Part[]): readonly Finding[] => {
  const result = courseOfParts(input(parts));
  expect(result.ok).toBe(false);
  return result.findings;
};

const apart = (a: LonLat, b: LonLat): number => inverse(a[0], a[1], b[0], b[1]).length;
const loop = (): Course =>
  turtle(
    ORIGIN,
    [
      [90, 1000],
      [0, 700],
      [270, 1000],
      [180, 690],
    ],
    30,
  );

/** The same loop with its first 900 m known to be 918 m, the rest as it is. */
const calibrated = (): Course => {
  const course = loop();
  return { ...course, scale: { raw: [0, 900, rawLength(course)], measure: [0, 918, rawLength(course) + 18] } };
};

describe('a course of parts', () => {
  it('has a measure of its own that starts at 0, and the same ground under it', () => {
    const whole = loop();
    const part = valueOf(courseOfParts(input([[whole, 812.5, 2310]])));
    expect(part.raw[0]).toBe(0);
    expect(courseLength(part)).toBeCloseTo(1497.5, 5);
    for (const measure of [0, 100, 187.5, 900, 1497])
      expect(apart(pointAt(part, measure)!.at, pointAt(whole, measure + 812.5)!.at)).toBeLessThan(1e-4);
  });

  it('joins neighbours whose ends are up to 50 m apart by a straight line, which counts as it is', () => {
    const [a, b] = [turtle(ORIGIN, [[90, 500]]), turtle(from(ORIGIN, 90, 549.9), [[90, 400]])];
    const joined = valueOf(
      courseOfParts(
        input([
          [a, 0, 500],
          [b, 0, 300],
        ]),
      ),
    );
    expect(courseLength(joined)).toBeCloseTo(500 + 49.9 + 300, 4);
    expect(apart(pointAt(joined, 525)!.at, from(ORIGIN, 90, 525))).toBeLessThan(1e-4);
  });

  it('refuses neighbours whose ends are over 50 m apart', () => {
    const [a, b] = [turtle(ORIGIN, [[90, 500]]), turtle(from(ORIGIN, 90, 550.1), [[90, 400]])];
    expect(refusal([a, 0, courseLength(a)], [b, 0, 300])).toEqual([
      expect.objectContaining({
        code: 'parts-apart',
        severity: 'error',
        measured: expect.closeTo(50.1, 3),
        limit: 50,
        unit: 'm',
        where: { path: '/courses/1/parts/1' },
      }),
    ]);
  });

  it('refuses a part that ends beyond its course, and takes a length that somebody rounded to 0.1 mm', () => {
    const a = turtle(ORIGIN, [[90, 500]], 20, 'a');
    const length = courseLength(a);
    const [finding] = refusal([a, 100, length + 0.001]);
    expect(finding).toMatchObject({
      code: 'measure-beyond-course',
      severity: 'error',
      measured: length + 0.001,
      limit: length,
      unit: 'm',
      where: { path: '/courses/1/parts/0' },
    });
    expect(finding!.message).toContain('0.50 km long');
    expect(courseLength(valueOf(courseOfParts(input([[a, 100, length + 0.00009]]))))).toBeCloseTo(400, 3);
  });

  it('refuses a part that begins before its course: nothing is clamped', () => {
    expect(refusal([turtle(ORIGIN, [[90, 500]]), -0.001, 300])).toEqual([
      expect.objectContaining({ code: 'measure-beyond-course', measured: -0.001, limit: 0, unit: 'm' }),
    ]);
  });

  it('refuses a part that runs backwards or has no length', () => {
    const a = turtle(ORIGIN, [[90, 500]]);
    for (const end of [200, 300])
      expect(refusal([a, 300, end])[0]).toMatchObject({ code: 'part-backwards', severity: 'error' });
  });

  it('says what is wrong with every part, not only with the first', () => {
    const a = turtle(ORIGIN, [[90, 500]]);
    expect(refusal([a, 300, 200], [a, 0, 900]).map((finding) => finding.code)).toEqual([
      'part-backwards',
      'measure-beyond-course',
    ]);
  });

  it('runs the other way where it is reversed: measures mirror', () => {
    const whole = loop();
    const parts: Part[] = [
      [whole, 200, 1200],
      [whole, 1230, 1900],
    ];
    const [ahead, back] = [valueOf(courseOfParts(input(parts))), valueOf(courseOfParts(input(parts, true)))];
    const length = courseLength(ahead);
    expect(courseLength(back)).toBeCloseTo(length, 6);
    for (const measure of [0, 400, 1015, length])
      expect(apart(pointAt(back, length - measure)?.at ?? [0, 0], pointAt(ahead, measure)!.at)).toBeLessThan(1e-4);
  });

  it('keeps the calibrated measure of the course it is taken from', () => {
    const whole = calibrated();
    const part = valueOf(courseOfParts(input([[whole, 510, 1500]])));
    expect(courseLength(part)).toBeCloseTo(990, 5);
    expect(rawLength(part)).toBeCloseTo(900 - 500 + (1500 - 918), 4);
    for (const measure of [0, 300, 408, 700])
      expect(apart(pointAt(part, measure)!.at, pointAt(whole, measure + 510)!.at)).toBeLessThan(1e-4);
  });

  it('keeps it also over a join, and where it is reversed', () => {
    const whole = calibrated();
    // The straight line between the ends is not calibrated: it counts as it is.
    const parts: Part[] = [
      [whole, 510, 816],
      [whole, 852, 1500],
    ];
    const join = apart(pointAt(whole, 816)!.at, pointAt(whole, 852)!.at);
    const ahead = valueOf(courseOfParts(input(parts)));
    const back = valueOf(courseOfParts(input(parts, true)));
    const length = 306 + join + 648;
    expect(courseLength(ahead)).toBeCloseTo(length, 5);
    expect(courseLength(back)).toBeCloseTo(length, 5);
    for (const measure of [100, 306 + join + 20, 306 + join + 300]) {
      const truth = pointAt(whole, measure < 306 ? 510 + measure : 852 + measure - 306 - join)!.at;
      expect(apart(pointAt(ahead, measure)!.at, truth)).toBeLessThan(1e-4);
      expect(apart(pointAt(back, length - measure)!.at, truth)).toBeLessThan(1e-4);
    }
  });

  it('may take one stretch twice: laps', () => {
    const whole = loop();
    const length = courseLength(whole);
    const laps = valueOf(
      courseOfParts(
        input([
          [whole, 0, length],
          [whole, 0, length],
        ]),
      ),
    );
    const closing = apart(pointAt(whole, length)!.at, ORIGIN);
    expect(closing).toBeGreaterThan(5);
    expect(courseLength(laps)).toBeCloseTo(2 * length + closing, 4);
  });

  it('carries elevations over, also to ends between vertices', () => {
    const whole = valueOf(
      buildCourse({
        id: 'c',
        name: 'c',
        segments: [segmentThrough(turtlePoints(ORIGIN, [[90, 300]], 100), [0, 10, 30, 60])],
      }),
    );
    const part = valueOf(courseOfParts(input([[whole, 50, 250]])));
    expect([...part.ele!]).toEqual([5, 10, 30, 45].map((ele) => expect.closeTo(ele, 4)));
    expect(elevationAt(part, 100)).toBeCloseTo(20, 4);
  });

  it('skips the gaps that its own course skips: they add no measure', () => {
    const far = from(from(ORIGIN, 90, 300), 0, 500);
    const whole = courseOfSegments(
      [turtlePoints(ORIGIN, [[90, 300]], 100), turtlePoints(far, [[90, 200]], 100)],
      'skip',
    );
    const part = valueOf(courseOfParts(input([[whole, 100, 450]])));
    expect(courseLength(part)).toBeCloseTo(350, 4);
    expect(part.skips).toEqual([{ vertex: 2, raw: expect.closeTo(200, 4), length: expect.closeTo(500, 3) }]);
    expect(apart(pointAt(part, 300)!.at, from(far, 90, 100))).toBeLessThan(1e-4);
    const [before, after] = [
      valueOf(courseOfParts(input([[whole, 100, whole.skips[0]!.raw]]))),
      valueOf(courseOfParts(input([[whole, whole.skips[0]!.raw, 450]]))),
    ];
    expect([before, after].map((course) => [Math.round(courseLength(course)), course.skips.length])).toEqual([
      [200, 0],
      [150, 0],
    ]);
  });
});

describe('what is said of parts', () => {
  it('is where a part ends or begins, how long its course is, and what was expected', () => {
    const a = turtle(ORIGIN, [[90, 500]], 20, 'a');
    const messages = (...parts: Part[]): string[] => refusal(...parts).map(({ message }) => message);
    expect(messages([a, 100, 600])).toEqual([
      'The end of this part is at 0.60 km, but a is 0.50 km long. It should be on the course.',
    ]);
    expect(messages([a, -10, 300])).toEqual([
      'The beginning of this part is at -0.01 km, but a begins at 0.00 km. It should be on the course.',
    ]);
    expect(messages([a, 300, 200])).toEqual([
      'This part of a runs from 0.30 km to 0.20 km. It should end after it begins.',
    ]);
    expect(messages([a, 0, 200], [a, 300, 400])).toEqual([
      'This part begins 100 m from the end of the one before it. They should be at most 50 m apart.',
    ]);
  });

  it('begins at the start’s own measure where a mark gives it one', () => {
    const marked = turtle(ORIGIN, [[90, 500]]);
    const shifted = {
      ...marked,
      scale: { raw: marked.scale.raw, measure: marked.scale.measure.map((measure) => measure + 100) },
    };
    expect(refusal([shifted, 50, 300])[0]).toMatchObject({ code: 'measure-beyond-course', measured: 50, limit: 100 });
    expect(courseLength(valueOf(courseOfParts(input([[shifted, 100, 300]]))))).toBeCloseTo(200, 4);
    expect(courseLength(valueOf(courseOfParts(input([[shifted, 99.99995, 300]]))))).toBeCloseTo(200, 3);
  });

  it('carries name, id and how it is drawn, and the joins that were made as findings', () => {
    const [a, b] = [turtle(ORIGIN, [[90, 500]]), turtle(from(ORIGIN, 90, 530), [[90, 400]])];
    const made = courseOfParts({
      ...input([
        [a, 0, 500],
        [b, 0, 300],
      ]),
      drawn: 'centre',
      name: 'Both',
    });
    expect(valueOf(made)).toMatchObject({ id: 'p', name: 'Both', drawn: 'centre', skips: [] });
    expect(made.findings).toEqual([expect.objectContaining({ code: 'gap-joined', measured: expect.closeTo(30, 3) })]);
    expect(courseOfParts(input([[a, 0, 500]])).findings).toEqual([]);
  });

  it('tells the join of a lap that does not close once, by its place', () => {
    const lap = turtle(ORIGIN, [
      [90, 500],
      [0, 300],
      [270, 500],
      [180, 290],
    ]);
    const length = courseLength(lap);
    const laps = [0, 1, 2].map((): [Course, number, number] => [lap, 0, length]);
    for (const [reverse, measure] of [
      [false, length],
      [true, length],
    ] as const) {
      const { findings } = courseOfParts(input(laps, reverse));
      expect(findings).toHaveLength(1);
      const [joined] = findings;
      expect(joined).toMatchObject({
        code: 'gap-joined',
        measured: expect.closeTo(10, 1),
        params: { seam: { times: 2 } },
      });
      expect(joined!.where.measure).toBeCloseTo(measure, 3);
      expect(joined!.message).toBe(
        'Two parts of the course meet 10 m apart at 1.59 km, twice in all. They are joined by a straight line.',
      );
    }
  });

  it('hits each knot of a calibrated course, and its own ends', () => {
    const part = valueOf(courseOfParts(input([[calibrated(), 510, 1500]])));
    expect(part.scale.raw).toEqual([0, expect.closeTo(400, 4), rawLength(part)]);
    expect(part.scale.measure).toEqual([0, expect.closeTo(408, 4), expect.closeTo(990, 4)]);
    const back = valueOf(courseOfParts(input([[calibrated(), 510, 1500]], true)));
    expect(back.scale.measure).toEqual([0, expect.closeTo(582, 4), expect.closeTo(990, 4)]);
    expect(back.scale.raw[0]).toBe(0);
  });
});

it('a part that ends at a skipped gap is joined by the next like every part', () => {
  const end = from(ORIGIN, 90, 300);
  const gapped = courseOfSegments(
    [turtlePoints(ORIGIN, [[90, 300]], 100), turtlePoints(from(end, 0, 500), [[90, 200]], 100)],
    'skip',
  );
  const on = turtle(from(end, 90, 10), [[90, 400]]);
  const made = valueOf(
    courseOfParts(
      input([
        [gapped, 100, gapped.skips[0]!.raw],
        [on, 0, 300],
      ]),
    ),
  );
  expect(courseLength(made)).toBeCloseTo(200 + 10 + 300, 3);
  expect(made.skips).toEqual([]);
});

it('three parts follow each other with all their knots, which ascend', () => {
  const whole = calibrated();
  const made = valueOf(
    courseOfParts(
      input([
        [whole, 300, 1000],
        [whole, 1000, 1200],
        [whole, 1230, 1500],
      ]),
    ),
  );
  const join = apart(pointAt(whole, 1200)!.at, pointAt(whole, 1230)!.at);
  expect(courseLength(made)).toBeCloseTo(700 + 200 + join + 270, 4);
  expect(made.scale.measure).toEqual(
    [0, 618, 700, 900, 900 + join, 1170 + join].map((measure) => expect.closeTo(measure, 4) as number),
  );
  made.scale.raw.forEach((raw, k) => expect(raw).toBeGreaterThan(k === 0 ? -1 : made.scale.raw[k - 1]!));
});
