import { describe, expect, it } from 'vitest';
import { courseLength, rawLength } from '../course/course.ts';
import { passesOf } from '../course/passes.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { Finding, LonLat } from '../finding.ts';
import { chooseLine } from '../gpx/chooseLine.ts';
import type { GpxDocument, GpxLine } from '../gpx/document.ts';
import { ORIGIN, from, segmentThrough, turtlePoints, valueOf } from '../testing/courses.ts';
import { planCourse, planOf } from '../testing/plans.ts';
import { type CourseSources, coursesOf } from './courses.ts';
import type { PlanCourse } from './plan.ts';

const EAST = turtlePoints(ORIGIN, [[90, 1000]], 100);

const line = (
  kind: 'track' | 'route',
  name: string | null,
  segments: readonly (readonly LonLat[])[],
  at: number = 3,
): GpxLine => ({
  kind,
  name,
  segments: segments.map((points) => segmentThrough(points)),
  line: at,
  column: 5,
});

const gpx = (tracks: readonly GpxLine[], routes: readonly GpxLine[] = []): GpxDocument => ({
  file: 'races/a.gpx',
  version: '1.1',
  creator: null,
  name: null,
  tracks,
  routes,
  waypoints: [],
});

const sources = (...documents: (readonly [string, GpxDocument])[]): CourseSources => ({ gpx: new Map(documents) });
const none = sources();

const built = (courses: readonly PlanCourse[], files: CourseSources = none): readonly IndexedCourse[] =>
  valueOf(coursesOf(planOf({ courses }), files));
const findings = (courses: readonly PlanCourse[], files: CourseSources = none): readonly Finding[] =>
  coursesOf(planOf({ courses }), files).findings;
const errors = (courses: readonly PlanCourse[], files: CourseSources = none): readonly Finding[] => {
  const result = coursesOf(planOf({ courses }), files);
  expect(result.ok).toBe(false);
  return result.findings.filter((finding) => finding.severity === 'error');
};

describe('the courses of a plan', () => {
  it('are built from a GPX file, from a line in the plan, or from parts, in the plan’s order; parts are drawn as what they are parts of', () => {
    const courses = built(
      [
        planCourse('b', { parts: [{ of: 'a', from: 200 }] }),
        planCourse('a', { gpx: 'a.gpx', drawn: 'centre' }),
        planCourse('c', { line: EAST.slice(0, 3) }),
      ],
      sources(['a.gpx', gpx([line('track', 'A', [EAST])])]),
    );
    expect(courses.map(({ course }) => [course.id, Math.round(courseLength(course)), course.drawn])).toEqual([
      ['b', 800, 'centre'],
      ['a', 1000, 'centre'],
      ['c', 200, 'recorded'],
    ]);
  });

  it('take elevations from the third number of a line, where every point has one', () => {
    const [with3, without] = built([
      planCourse('a', {
        line: [
          [...ORIGIN, 7],
          [...from(ORIGIN, 90, 100), 9],
        ],
      }),
      planCourse('b', { line: [[...ORIGIN, 7], from(ORIGIN, 90, 100)] }),
    ]);
    expect(with3!.course.ele).toEqual(Float64Array.of(7, 9));
    expect(without!.course.ele).toBeNull();
  });

  it('are calibrated by their length, and so are the parts taken from them', () => {
    const [whole, part] = built([
      planCourse('a', { line: EAST, length: 1010 }),
      planCourse('b', { parts: [{ of: 'a', from: 505 }] }),
    ]);
    expect(courseLength(whole!.course)).toBeCloseTo(1010, 9);
    expect(rawLength(whole!.course)).toBeCloseTo(1000, 4);
    expect(courseLength(part!.course)).toBeCloseTo(505, 6);
    expect(rawLength(part!.course)).toBeCloseTo(500, 4);
  });

  it('are refused where a mark names no waypoint, or marks have no order, at the mark’s or the course’s own place', () => {
    expect(errors([planCourse('a', { line: EAST, marks: [{ name: '1 km' }] })])).toEqual([
      expect.objectContaining({ code: 'mark-unknown', where: { path: '/courses/0/marks/0', course: 'a' } }),
    ]);
    const marks = [
      { at: from(ORIGIN, 90, 200), measure: 600 },
      { at: from(ORIGIN, 90, 500), measure: 300 },
    ];
    expect(errors([planCourse('a', { line: EAST, marks })])).toEqual([
      expect.objectContaining({ code: 'marks-no-order' }),
    ]);
    // Of a course that cannot be built no part can, and nothing more is said.
    expect(
      errors([planCourse('a', { line: EAST, marks }), planCourse('b', { parts: [{ of: 'a', from: 0 }] })]),
    ).toHaveLength(1);
  });

  it('made of parts that are drawn unlike each other are recordings; a plan that says how they are drawn rules', () => {
    const whole = [
      planCourse('a', { line: EAST, drawn: 'centre' }),
      planCourse('b', { line: turtlePoints(EAST.at(-1)!, [[0, 500]], 100), drawn: 'shortest' }),
    ];
    const parts = [
      { of: 'a', from: 0 },
      { of: 'b', from: 0 },
    ];
    const drawn = (keys: Partial<PlanCourse>): string =>
      built([...whole, planCourse('c', { parts, ...keys })])[2]!.course.drawn;
    expect([drawn({}), drawn({ drawn: 'centre' }), drawn({ parts: [parts[0]!] })]).toEqual([
      'recorded',
      'centre',
      'centre',
    ]);
  });

  it('may run a part backwards: there and back is twice as long, and meets its road both ways', () => {
    const parts = [
      { of: 'a', from: 100, to: 400 },
      { of: 'a', from: 100, to: 400, reverse: true },
    ];
    const [, back] = built([planCourse('a', { line: EAST }), planCourse('b', { parts })]);
    expect(courseLength(back!.course)).toBeCloseTo(600, 3);
    // 250 m along the line: 150 m on the way out, and 150 m before the end on the way back.
    const measures = passesOf(back!, from(ORIGIN, 90, 250)).map(({ measure }) => measure);
    expect(measures.map(Math.round)).toEqual([150, 450]);
    const [first] = errors([
      planCourse('a', { line: EAST }),
      planCourse('b', { parts: [{ of: 'a', from: 0, to: 5000, reverse: true }] }),
    ]);
    expect(first).toMatchObject({ code: 'measure-beyond-course', where: { path: '/courses/1/parts/0' } });
  });

  it('may be parts of parts', () => {
    const courses = built([
      planCourse('c', { parts: [{ of: 'b', from: 100, to: 300 }] }),
      planCourse('b', { parts: [{ of: 'a', from: 400 }] }),
      planCourse('a', { line: EAST }),
    ]);
    expect(courseLength(courses[0]!.course)).toBeCloseTo(200, 5);
    expect(courses[0]!.course.lon[0]).toBeCloseTo(from(ORIGIN, 90, 500)[0], 9);
  });

  it('run the other way where the plan reverses them', () => {
    const [course] = built([planCourse('a', { line: EAST, reverse: true })]);
    expect([course!.course.lon[0], course!.course.lon.at(-1)]).toEqual([EAST.at(-1)![0], EAST[0]![0]]);
  });

  it('are refused with the place in the plan: a missing file, one point, a gap, a part beyond its course', () => {
    expect(errors([planCourse('a', { gpx: 'b.gpx' })], sources(['a.gpx', gpx([])]))).toEqual([
      expect.objectContaining({
        code: 'gpx-missing',
        where: { path: '/courses/0/gpx', course: 'a' },
        message: 'The file “b.gpx” was not found beside the plan. Put it there, or correct its name in the plan.',
      }),
    ]);
    expect(errors([planCourse('a', { line: [ORIGIN] })])).toEqual([
      expect.objectContaining({ code: 'course-too-short', where: { path: '/courses/0/line', course: 'a' } }),
    ]);
    const apart = [EAST, turtlePoints(from(ORIGIN, 90, 1080), [[90, 200]])];
    const files = sources(['a.gpx', gpx([line('track', 'A', apart)])]);
    expect(errors([planCourse('a', { gpx: 'a.gpx' })], files)).toEqual([
      expect.objectContaining({
        code: 'gap-refused',
        where: expect.objectContaining({ path: '/courses/0', course: 'a' }),
        measured: expect.closeTo(80, 3),
      }),
    ]);
    expect(built([planCourse('a', { gpx: 'a.gpx', gaps: 'skip' })], files)[0]!.course.skips).toHaveLength(1);
    expect(
      errors([
        planCourse('a', { line: EAST }),
        planCourse('b', {
          parts: [
            { of: 'a', from: 0, to: 400 },
            { of: 'a', from: 400, to: 1001 },
          ],
        }),
      ]),
    ).toEqual([
      expect.objectContaining({ code: 'measure-beyond-course', where: { path: '/courses/1/parts/1', course: 'b' } }),
    ]);
  });

  it('say what is wrong once, however many parts are taken from the course', () => {
    const parts = [{ of: 'a', from: 0, to: 100 }];
    const found = errors([planCourse('b', { parts }), planCourse('c', { parts }), planCourse('a', { gpx: 'a.gpx' })]);
    expect(found.map((finding) => [finding.code, finding.where.course])).toEqual([['gpx-missing', 'a']]);
  });

  it('say what is wrong with each of them', () => {
    expect(
      errors([planCourse('a', { gpx: 'a.gpx' }), planCourse('b', { line: [ORIGIN] })]).map((finding) => finding.code),
    ).toEqual(['gpx-missing', 'course-too-short']);
  });
});

describe('the line of a GPX file', () => {
  const north = turtlePoints(ORIGIN, [[0, 500]], 100);
  const document = gpx(
    [line('track', 'long', [EAST], 3), line('track', null, [], 7), line('track', 'twice', [north], 9)],
    [line('route', 'twice', [north], 12), line('route', 'way', [north], 15)],
  );
  const chosen = (track?: string | number): string => {
    const result = chooseLine(document, track, { file: 'a.gpx' });
    return result.ok ? `line ${result.value.line}` : result.findings[0]!.message;
  };

  it('is the first with points where nothing is said, with a note that there are others', () => {
    const result = chooseLine(gpx([line('track', 'empty', []), ...document.tracks], document.routes), undefined, {});
    expect(valueOf(result).name).toBe('long');
    expect(result.findings).toEqual([
      expect.objectContaining({
        code: 'track-chosen',
        severity: 'note',
        where: { file: 'races/a.gpx', line: 3, column: 5 },
        message: expect.stringContaining('Number 1 is taken as the course.'),
      }),
    ]);
    expect(chooseLine(gpx([line('track', 'only', [EAST])]), undefined, {}).findings).toEqual([]);
  });

  it('is chosen by name, or by index over tracks and then routes', () => {
    expect([chosen('long'), chosen('way'), chosen(0), chosen(2), chosen('3'), chosen(4)]).toEqual([
      'line 3',
      'line 15',
      'line 3',
      'line 9',
      'line 12',
      'line 15',
    ]);
  });

  it('is the one of that name before the one of that index', () => {
    const numbered = gpx([line('track', '1', [EAST], 3), line('track', 'x', [north], 9)]);
    expect(valueOf(chooseLine(numbered, '1', {})).line).toBe(3);
    expect(valueOf(chooseLine(numbered, 1, {})).line).toBe(9);
  });

  it('is refused where none, two or an empty one is meant, with what there is', () => {
    expect(chosen('twice')).toMatch(
      /2 tracks or routes named “twice”\. Choose one by its number: 0\W+long.*1\W+a track without a name.*2\W+twice.*3\W+twice.*4\W+way/,
    );
    expect(chosen('short')).toMatch(/no track or route “short”\. Choose one of these: 0: “long”/);
    expect(chosen(5)).toContain('no track or route “5”');
    expect(chosen(-1)).toContain('no track or route “-1”');
    expect(chosen(1)).toContain('has no points');
    const empty = chooseLine(gpx([line('track', 'empty', [])]), undefined, { file: 'a.gpx' });
    expect(empty).toMatchObject({
      ok: false,
      findings: [{ code: 'track-unknown', severity: 'error', where: { file: 'a.gpx' } }],
    });
  });

  it('is refused by the file’s name where the finding points into a plan, and says that there is none to take', () => {
    const said = (track: string | undefined, from: GpxDocument): string =>
      chooseLine(from, track, { path: '/courses/0' }).findings[0]!.message;
    expect(said('Half', gpx([]))).toBe('races/a.gpx has no track or route “Half”, nor any other.');
    expect(said('empty', gpx([line('track', 'empty', [])]))).toBe(
      'The track or route “empty” in races/a.gpx has no points.',
    );
    expect(said(undefined, gpx([]))).toBe(
      'races/a.gpx has no track or route with points. It should have one to be the course.',
    );
  });

  it('is the one that the plan names', () => {
    const files = sources(['a.gpx', document]);
    expect(Math.round(courseLength(built([planCourse('a', { gpx: 'a.gpx', track: 'way' })], files)[0]!.course))).toBe(
      500,
    );
    expect(errors([planCourse('a', { gpx: 'a.gpx', track: 'nowhere' })], files)).toEqual([
      expect.objectContaining({ code: 'track-unknown', where: { path: '/courses/0/track', course: 'a' } }),
    ]);
    expect(findings([planCourse('a', { gpx: 'a.gpx' })], files).map((finding) => finding.code)).toContain(
      'track-chosen',
    );
  });
});
