import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import type { Finding, LonLat } from '../finding.ts';
import { inverse } from '../geodesy/karney.ts';
import {
  ORIGIN,
  courseOfSegments,
  courseThrough,
  from,
  segmentThrough,
  turtlePoints,
  valueOf,
} from '../testing/courses.ts';
import { type CourseInput, buildCourse } from './build.ts';
import { rawLength } from './course.ts';
import { real } from '../testing/numbers.ts';

const input = (segments: CourseInput['segments'], more: Partial<CourseInput> = {}): CourseInput => ({
  id: 'c',
  name: 'c',
  segments,
  ...more,
});

/** Two segments eastwards, 300 m each, with `gap` metres between. */
const withGap = (gap: number): LonLat[][] => {
  const second = from(ORIGIN, 90, 300 + gap);
  return [turtlePoints(ORIGIN, [[90, 300]], 100), turtlePoints(second, [[90, 300]], 100)];
};

const refusal = (course: CourseInput): readonly Finding[] => {
  const built = buildCourse(course);
  expect(built.ok).toBe(false);
  return built.findings;
};

describe('building a course', () => {
  it('drops points that stand where the one before stands, and counts them', () => {
    const there = from(ORIGIN, 90, 100);
    const course = courseThrough([ORIGIN, ORIGIN, there, there, there, from(there, 90, 100), there]);
    expect(course).toMatchObject({ points: 7, duplicates: 3 });
    expect([...course.raw].map((raw) => Math.round(raw))).toEqual([0, 100, 200, 300]);
  });

  it('counts a point at 180° east after the same at 180° west as the same', () => {
    const course = courseThrough([
      [179.999, 10],
      [180, 10],
      [-180, 10],
      [-179.999, 10],
    ]);
    expect(course.duplicates).toBe(1);
    expect(course.lon).toHaveLength(3);
  });

  it('keeps longitudes continuous across the antimeridian, both ways', () => {
    expect([
      ...courseThrough([
        [179.9995, 10],
        [-179.9995, 10],
        [179.9995, 10.001],
      ]).lon,
    ]).toEqual([179.9995, 180.0005, 179.9995].map((lon) => expect.closeTo(lon, 10)));
    expect([
      ...courseThrough([
        [-179.9995, 10],
        [179.9995, 10],
      ]).lon,
    ]).toEqual([-179.9995, expect.closeTo(-180.0005, 10)]);
    // Against Karney, which knows nothing of continuity.
    expect(
      rawLength(
        courseThrough([
          [179.9995, 10],
          [-179.9995, 10],
        ]),
      ),
    ).toBeCloseTo(inverse(179.9995, 10, -179.9995, 10).length, 6);
  });

  it('joins a gap of up to 50 m whatever the rule, counts it and notes it', () => {
    for (const gaps of ['refuse', 'join', 'skip'] as const) {
      const built = buildCourse(
        input(
          withGap(49.9).map((points) => segmentThrough(points)),
          { gaps },
        ),
      );
      expect(built.findings).toEqual([
        expect.objectContaining({ code: 'gap-joined', severity: 'note', unit: 'm', limit: 50 }),
      ]);
      const course = valueOf(built);
      expect(course.gaps).toEqual([{ after: 3, length: expect.closeTo(49.9, 4) }]);
      expect(course.skips).toEqual([]);
      expect(rawLength(course)).toBeCloseTo(649.9, 4);
    }
  });

  it('refuses a gap of over 50 m, naming both of its ends', () => {
    const segments = withGap(50.1);
    const [finding] = refusal(
      input(
        segments.map((points) => segmentThrough(points)),
        { where: { file: 'a.gpx' } },
      ),
    );
    expect(finding).toMatchObject({
      code: 'gap-refused',
      severity: 'error',
      measured: expect.closeTo(50.1, 4),
      limit: 50,
      unit: 'm',
      where: { file: 'a.gpx' },
    });
    expect(finding!.params).toMatchObject({ from: segments[0]!.at(-1)!, to: segments[1]![0]! });
    expect(finding!.message).toContain('between points 4 and 5');
    for (const way of ['join (a straight line)', 'skip (adds no distance)']) expect(finding!.message).toContain(way);
  });

  it('names every gap that it refuses, not only the first', () => {
    const [a, b] = withGap(80);
    const far = turtlePoints(from(ORIGIN, 90, 2000), [[90, 100]]);
    expect(
      refusal(input([a!, b!, far].map((points) => segmentThrough(points)))).map((finding) => finding.code),
    ).toEqual(['gap-refused', 'gap-refused']);
  });

  it('joins a larger gap by a straight line where asked, and says so', () => {
    const built = buildCourse(
      input(
        withGap(120).map((points) => segmentThrough(points)),
        { gaps: 'join' },
      ),
    );
    expect(built.findings).toEqual([expect.objectContaining({ code: 'gap-joined', severity: 'warning' })]);
    expect(rawLength(valueOf(built))).toBeCloseTo(720, 4);
  });

  it('skips a larger gap where asked: the jump adds no measure and both ends stand at the same one', () => {
    const built = buildCourse(
      input(
        withGap(120).map((points) => segmentThrough(points)),
        { gaps: 'skip' },
      ),
    );
    expect(built.findings).toEqual([expect.objectContaining({ code: 'gap-skipped', severity: 'warning' })]);
    const course = valueOf(built);
    expect(rawLength(course)).toBeCloseTo(600, 4);
    expect(course.skips).toEqual([{ vertex: 3, raw: course.raw[3], length: expect.closeTo(120, 4) }]);
    expect(course.raw[4]).toBe(course.raw[3]);
  });

  it('says nothing of segments that meet at one point', () => {
    const built = buildCourse(input(withGap(0).map((points) => segmentThrough(points))));
    expect(built.findings).toEqual([]);
    expect(valueOf(built)).toMatchObject({ gaps: [], duplicates: 1 });
  });

  it('reads over empty segments', () => {
    const [a, b] = withGap(30);
    const course = courseOfSegments([[], a!, [], b!, []], 'refuse');
    expect(course.gaps).toEqual([{ after: 3, length: expect.closeTo(30, 4) }]);
  });

  it('reverses a course: measures mirror, and gaps keep the numbers of the points as given', () => {
    const segments = withGap(40).map((points) => segmentThrough(points));
    // Unequal legs, so that mirrored and unmirrored differ.
    segments.push(
      segmentThrough(
        turtlePoints(
          from(ORIGIN, 90, 660),
          [
            [10, 130],
            [95, 20],
          ],
          50,
        ),
      ),
    );
    const ahead = valueOf(buildCourse(input(segments)));
    const back = valueOf(buildCourse(input(segments, { reverse: true })));
    const total = rawLength(ahead);
    expect(rawLength(back)).toBeCloseTo(total, 7);
    [...back.raw].reverse().forEach((raw, k) => expect(raw).toBeCloseTo(total - ahead.raw[k]!, 6));
    expect([...back.lat].reverse()).toEqual([...ahead.lat]);
    expect(back.gaps.map((gap) => gap.after)).toEqual(ahead.gaps.map((gap) => gap.after));
    // The input is not turned itself.
    expect(segments[0]!.lon[0]).toBe(ORIGIN[0]);
  });

  it('names the points of a refused gap as the file has them, also where the course is reversed', () => {
    const segments = [turtlePoints(ORIGIN, [[90, 300]], 100), turtlePoints(from(ORIGIN, 90, 400), [[90, 600]], 100)];
    const [finding] = refusal(
      input(
        segments.map((points) => segmentThrough(points)),
        { reverse: true },
      ),
    );
    expect(finding!.message).toContain('points 4 and 5');
  });

  it('cuts long segments along the geodesic to at most 200 m, and the total is that of geographiclib to 0.1 mm', () => {
    const place = fc.record({ lon: real(-180, 180), lat: real(-85, 85) });
    const legs = fc.array(fc.tuple(real(0, 360), real(0.5, 4000)), { minLength: 1, maxLength: 21 });
    fc.assert(
      fc.property(place, legs, ({ lon, lat }, ways) => {
        const points = turtlePoints([lon, lat], ways, Infinity);
        const course = courseThrough(points);
        const truth = points
          .slice(1)
          .reduce((sum, to, k) => sum + inverse(points[k]![0], points[k]![1], to[0], to[1]).length, 0);
        expect(Math.abs(rawLength(course) - truth)).toBeLessThan(1e-4);
        for (let i = 1; i < course.raw.length; i++) {
          const step = inverse(course.lon[i - 1]!, course.lat[i - 1]!, course.lon[i]!, course.lat[i]!).length;
          expect(step).toBeLessThan(200 + 1e-6);
          // Every vertex stands on the geodesic: the pieces add up to it.
          expect(Math.abs(course.raw[i]! - course.raw[i - 1]! - step)).toBeLessThan(1e-6);
        }
      }),
      { seed: 20261125, numRuns: 200 },
    );
  });

  it('stays 3 cm truer in the middle of 1.4 km than a line drawn straight in longitude and latitude', () => {
    const [a, b] = [
      [10, 60],
      [10.0252, 60],
    ] as [LonLat, LonLat];
    const course = courseThrough([a, b]);
    const middle = course.raw.findIndex((raw) => Math.abs(raw - rawLength(course) / 2) < 1e-6);
    expect(course.lon).toHaveLength(Math.ceil(rawLength(course) / 200) + 1);
    const index = middle === -1 ? (course.lon.length - 1) >> 1 : middle;
    expect((course.lat[index]! - 60) * 111_412).toBeGreaterThan(0.02);
  });

  it('interpolates elevations on the vertices that it adds', () => {
    const course = valueOf(buildCourse(input([segmentThrough([ORIGIN, from(ORIGIN, 90, 1000)], [10, 60])])));
    expect([...course.ele!]).toEqual([10, 20, 30, 40, 50, 60].map((ele) => expect.closeTo(ele, 9)));
  });

  it('has no elevations unless every given point has one', () => {
    const points = turtlePoints(ORIGIN, [[90, 300]], 100);
    expect(valueOf(buildCourse(input([segmentThrough(points, [1, 2, 3, 4])]))).ele).toEqual(
      Float64Array.of(1, 2, 3, 4),
    );
    expect(valueOf(buildCourse(input([segmentThrough(points, [1, 2, NaN, 4])]))).ele).toBeNull();
    expect(courseThrough(points).ele).toBeNull();
  });

  it('refuses a course without points, with one, or with all of them at one place', () => {
    for (const [points, words] of [
      [[], 'no points'],
      [[ORIGIN], 'at one place'],
      [[ORIGIN, ORIGIN, ORIGIN], 'at one place'],
    ] as [LonLat[], string][]) {
      const findings = refusal(input([segmentThrough(points)], { where: { file: 'a.gpx' } }));
      expect(findings).toEqual([
        expect.objectContaining({
          code: 'course-too-short',
          severity: 'error',
          where: { file: 'a.gpx' },
          message: expect.stringContaining(words),
        }),
      ]);
    }
  });

  it.each([
    [[[ORIGIN, [NaN, 12], from(ORIGIN, 90, 100)]], 'The longitude of point 2 is not a number, its latitude is 12.'],
    [
      [
        [ORIGIN, from(ORIGIN, 90, 100)],
        [from(ORIGIN, 90, 110), [12.2, 130.1]],
      ],
      'The longitude of point 4 is 12.2, its latitude is 130.1.',
    ],
    [[[[Infinity, 12], ORIGIN]], 'The longitude of point 1 is a number too large to hold, its latitude is 12.'],
  ] as [LonLat[][], string][])('refuses a point that is no position, and says which: %j', (segments, words) => {
    const findings = refusal(
      input(
        segments.map((points) => segmentThrough(points)),
        { where: { file: 'a.gpx' } },
      ),
    );
    expect(findings.at(-1)).toMatchObject({
      code: 'position',
      severity: 'error',
      where: { file: 'a.gpx' },
      message: expect.stringContaining(words),
    });
  });

  it('refuses a column of latitudes that is too short', () => {
    const [finding] = refusal(
      input([{ lon: Float64Array.of(1, 2), lat: Float64Array.of(1), ele: new Float64Array(2) }]),
    );
    expect(finding).toMatchObject({
      code: 'position',
      message: expect.stringContaining('The longitude of point 2 is 2, its latitude is missing.'),
    });
  });

  it('refuses a course of over 10,000 km at once, naming its longest step, however far its points lie about the globe', () => {
    const points = Array.from({ length: 20_000 }, (_, k): LonLat => [k % 2 === 0 ? -17.4 : k === 701 ? 2 : 1, -33.2]);
    const findings = refusal(input([segmentThrough(points)], { where: { file: 'a.gpx' } }));
    expect(findings).toEqual([
      expect.objectContaining({
        code: 'course-too-long',
        severity: 'error',
        limit: 1e7,
        unit: 'm',
        where: { file: 'a.gpx', at: [-17.4, -33.2] },
      }),
    ]);
    expect(findings[0]!.message).toContain('between points 701 and 702');
    expect(
      rawLength(
        courseThrough([
          [0, 0],
          [0, 89],
        ]),
      ),
    ).toBeGreaterThan(9.8e6);
  });

  it('refuses a course of which everything is skipped', () => {
    const built = refusal(
      input(
        [[ORIGIN], [from(ORIGIN, 90, 400)]].map((points) => segmentThrough(points)),
        { gaps: 'skip' },
      ),
    );
    expect(built.at(-1)!.message).toContain('has no length');
  });
});

describe('what is said of gaps and lengths', () => {
  const two = (gap: number): CourseInput['segments'] => withGap(gap).map((points) => segmentThrough(points));
  const said = (built: ReturnType<typeof buildCourse>): string => built.findings[0]!.message;

  it('is how wide a gap is, between which points, and what was done', () => {
    expect(said(buildCourse(input(two(30))))).toBe(
      'Two segments are 30 m apart, between points 4 and 5. They are joined by a straight line.',
    );
    expect(said(buildCourse(input(two(120), { gaps: 'join' })))).toBe(
      'Two segments are 120 m apart, between points 4 and 5. They are joined by a straight line, as asked.',
    );
    expect(said(buildCourse(input(two(120), { gaps: 'skip' })))).toBe(
      'Two segments are 120 m apart, between points 4 and 5. The gap is skipped, as asked, and adds no distance.',
    );
    expect(buildCourse(input(two(120), { gaps: 'skip', where: { course: 'c' } })).findings[0]).toMatchObject({
      measured: expect.closeTo(120, 4),
      limit: 50,
      unit: 'm',
      where: { course: 'c', at: withGap(120)[0]!.at(-1) },
    });
  });

  it('is that all points are at one place, or that nothing but a jump is left', () => {
    expect(refusal(input([]))[0]!.message).toBe(
      'The course has no points. It should have at least two different points.',
    );
    expect(refusal(input([segmentThrough([ORIGIN])]))[0]!.message).toBe(
      'All points of the course are at one place. It should have at least two different points.',
    );
    expect(
      refusal(
        input(
          [[ORIGIN], [from(ORIGIN, 90, 400)]].map((points) => segmentThrough(points)),
          { gaps: 'skip' },
        ),
      ).map(({ code }) => code),
    ).toEqual(['gap-skipped', 'course-too-short']);
  });

  it('is how long a course would be, and its longest step', () => {
    const [finding] = refusal(
      input([
        segmentThrough([
          [0, 0],
          [60, 0],
          [-50, 0],
        ]),
      ]),
    );
    expect(finding!.message).toBe(
      'The course would be 18,924 km long, 12,245 km of it between points 2 and 3. It should be at most 10,000 km. Delete the points that are not part of the race.',
    );
    expect(finding).toMatchObject({ measured: expect.closeTo(18_924_313, -2), where: { at: [60, 0] } });
  });
});

describe('the columns of a course', () => {
  it('hold every point once, be it one of many, and the course says how it is drawn', () => {
    const points = turtlePoints(ORIGIN, [[90, 9000]], 10);
    const course = valueOf(buildCourse(input([segmentThrough(points)], { drawn: 'centre' })));
    expect(course).toMatchObject({ drawn: 'centre', points: 901, duplicates: 0 });
    expect(course.lon).toHaveLength(901);
    expect(courseThrough(points).drawn).toBe('recorded');
    // Cut into pieces: more vertices than points were given, and all columns grow alike.
    const cut = valueOf(buildCourse(input([segmentThrough([ORIGIN, from(ORIGIN, 90, 9000)], [0, 450])])));
    expect([cut.lon, cut.lat, cut.raw, cut.ele!].map((column) => column.length)).toEqual([46, 46, 46, 46]);
    cut.raw.forEach((raw, k) => {
      expect(raw).toBeCloseTo(200 * k * (rawLength(cut) / 9000), 3);
      expect(cut.ele![k]).toBeCloseTo(10 * k, 6);
    });
    expect(cut.raw.at(-1)).toBe(rawLength(cut));
    expect(cut.scale).toEqual({ raw: [0, rawLength(cut)], measure: [0, rawLength(cut)] });
  });

  it('end a step of just 200 m uncut, and cut one that is longer', () => {
    expect(courseThrough([ORIGIN, from(ORIGIN, 90, 199.999)]).lon).toHaveLength(2);
    expect(courseThrough([ORIGIN, from(ORIGIN, 90, 200.001)]).lon).toHaveLength(3);
    expect(courseThrough([ORIGIN, from(ORIGIN, 90, 400.001)]).lon).toHaveLength(4);
  });

  it('skip only between segments: a long step within one is a part of the course', () => {
    const far = from(ORIGIN, 90, 500);
    const built = valueOf(
      buildCourse(
        input([segmentThrough([ORIGIN, far]), segmentThrough([from(far, 90, 100), from(far, 90, 700)])], {
          gaps: 'skip',
        }),
      ),
    );
    expect(built.skips).toHaveLength(1);
    expect(rawLength(built)).toBeCloseTo(500 + 600, 3);
  });
});

it('elevations run backwards with a course that is reversed, and the input keeps its own', () => {
  const segment = segmentThrough(turtlePoints(ORIGIN, [[90, 300]], 100), [1, 2, 3, 4]);
  expect(valueOf(buildCourse(input([segment], { reverse: true }))).ele).toEqual(Float64Array.of(4, 3, 2, 1));
  expect(segment.ele).toEqual(Float64Array.of(1, 2, 3, 4));
});
