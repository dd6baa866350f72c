/** Courses made in one call, and passes of courses that nobody has indexed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { readGpx } from '../gpx/read.ts';
import { ORIGIN, segmentThrough, turtlePoints, valueOf } from '../testing/courses.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';
import { buildCourse } from './build.ts';
import { courseLength } from './course.ts';
import { courseFromGpx } from './fromGpx.ts';
import { courseFromLine } from './fromLine.ts';
import { indexedOnce } from './indexed.ts';
import { nearestOn, passesOf } from './passes.ts';
import { indexCourse } from './segmentIndex.ts';

const LINE = turtlePoints(ORIGIN, [
  [90, 2000],
  [270, 2000],
]);
const gpxOf = (points: readonly LonLat[], name = 'Shore', kind: 'trk' | 'rte' = 'trk'): string => {
  const tag = kind === 'trk' ? 'trkpt' : 'rtept';
  const inside = points.map(([lon, lat]) => `<${tag} lat="${lat}" lon="${lon}"/>`).join('');
  const body = kind === 'trk' ? `<trkseg>${inside}</trkseg>` : inside;
  return `<${kind}><name>${name}</name>${body}</${kind}>`;
};
const file = (...lines: readonly string[]): string => `<gpx version="1.1" creator="me">${lines.join('')}</gpx>`;

describe('a course from GPX', () => {
  it('is that of the reader and the builder, from text as from bytes', () => {
    const text = file(gpxOf(LINE));
    const segments = valueOf(readGpx(text, 'a.gpx')).tracks[0]!.segments;
    const built = valueOf(buildCourse({ id: 'course', name: 'Shore', segments }));
    expect(valueOf(courseFromGpx(text))).toEqual(built);
    expect(valueOf(courseFromGpx(new TextEncoder().encode(text)))).toEqual(built);
  });

  it('takes the line, the id and the direction that are asked for', () => {
    const text = file(gpxOf(LINE), gpxOf(LINE.slice(0, 20), 'Pier & back'.replace('&', '&amp;'), 'rte'));
    const course = valueOf(courseFromGpx(text, { track: 'Pier & back', id: 'p', reverse: true }));
    expect([course.id, course.name, course.lon[0]]).toEqual(['p', 'Pier & back', LINE[19]![0]]);
  });

  it('says what is wrong with the file, its name in front, and never throws for its content', () => {
    const bad = courseFromGpx('<gpx', { file: 'run.gpx' });
    expect([bad.ok, bad.findings[0]?.where.file]).toEqual([false, 'run.gpx']);
    expect(courseFromGpx(file()).findings[0]?.code).toBe('track-unknown');
    expect(courseFromGpx(file(gpxOf([ORIGIN]))).findings[0]).toMatchObject({
      code: 'course-too-short',
      where: { file: 'course.gpx' },
    });
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.uint8Array()), (content) => {
        expect(courseFromGpx(content).findings.length).toBeGreaterThan(0);
      }),
      { numRuns: tries(300), seed: 14 },
    );
  });
});

describe('a course from a line', () => {
  it('is that of the builder, with elevations where every point has one', () => {
    const heights = LINE.map((_, k) => k / 2);
    const built = valueOf(buildCourse({ id: 'c', name: 'c', segments: [segmentThrough(LINE, heights)] }));
    expect(
      valueOf(
        courseFromLine(
          LINE.map(([lon, lat], k) => [lon, lat, heights[k]!]),
          { id: 'c' },
        ),
      ),
    ).toEqual(built);
    expect(valueOf(courseFromLine(LINE)).ele).toBeNull();
  });

  it('says which points are no positions, and that longitude comes first', () => {
    const lines: unknown[] = [[-17.4, -33.2], [-33.2, -117.4], 'three', [NaN, 1], [1]];
    const { ok, findings } = courseFromLine(lines as number[][]);
    expect(ok).toBe(false);
    expect(findings.map(({ code, params, where }) => [code, params?.['point'], where.path])).toEqual([
      ['position', 2, '/1'],
      ['position', 3, '/2'],
      ['position', 4, '/3'],
      ['position', 5, '/4'],
    ]);
    expect(findings[0]!.message).toMatch(/point 2.*swapped/isu);
  });

  it('refuses what is too short, and throws only where no list is given', () => {
    expect(courseFromLine([]).ok).toBe(false);
    expect(courseFromLine([[1, 2]]).findings[0]?.code).toBe('course-too-short');
    expect(() => courseFromLine(null as unknown as [])).toThrow('courseFromLine takes a list of points');
  });
});

describe('a course that nobody has indexed', () => {
  const course = valueOf(courseFromLine(LINE));
  const index = indexCourse(course);

  it('is indexed once', () => {
    expect(indexedOnce(course)).toBe(indexedOnce(course));
    expect(indexedOnce(index)).toBe(index);
  });

  it('has the same passes as with its index, at every point near it', () => {
    fc.assert(
      fc.property(real(-0.001, 0.025), real(-0.001, 0.001), (east, north) => {
        const at: LonLat = [ORIGIN[0] + east, ORIGIN[1] + north];
        expect(passesOf(course, at)).toEqual(passesOf(index, at));
        expect(nearestOn(course, at)).toEqual(nearestOn(index, at));
      }),
      { numRuns: tries(200), seed: 14 },
    );
    expect(passesOf(course, [ORIGIN[0] + 0.01, ORIGIN[1]])).toHaveLength(2);
    expect(courseLength(course)).toBeCloseTo(4000, 3);
  });
});
