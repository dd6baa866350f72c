/** Marks of a plan as points on the ground: by place, by the name of a waypoint, and what is said where neither tells. */
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import type { GpxDocument } from '../gpx/document.ts';
import { placedDocument } from '../testing/placed.ts';
import { valueOf } from '../testing/courses.ts';
import { type MarkText, marksOfWaypoints, nearlyMarks, resolveMarks } from './marks.ts';

const here: LonLat = [-17.4, -33.2];
const there: LonLat = [-17.3, -33.1];
const file = (...names: readonly (string | null)[]): GpxDocument =>
  placedDocument(names.map((name, k) => ({ name, at: k === 0 ? here : there })));
const resolved = (mark: MarkText, document?: GpxDocument): unknown =>
  valueOf(resolveMarks([mark], document, (k) => ({ path: `/marks/${k}` })));
function refusal(mark: MarkText, document?: GpxDocument): string {
  const result = resolveMarks([mark], document, (k) => ({ path: `/marks/${k}` }));
  expect(result.ok).toBe(false);
  expect(result.findings).toEqual([
    expect.objectContaining({ code: 'mark-unknown', severity: 'error', where: { path: '/marks/0' } }),
  ]);
  return result.findings[0]!.message;
}

describe('a mark', () => {
  it('with its place and its distance is taken as it is, with a name or without', () => {
    expect(resolved({ at: here, measure: 1000 })).toEqual([{ at: here, measure: 1000, where: { path: '/marks/0' } }]);
    expect(resolved({ at: here, measure: 1000, name: 'post' })).toEqual([
      { at: here, measure: 1000, name: 'post', where: { path: '/marks/0' } },
    ]);
  });

  it('with a place and a name that says a distance needs no measure; a measure rules over the name', () => {
    // 1 mi is 1,609.344 m exactly (NIST Handbook 44, appendix C).
    expect(resolved({ at: here, name: 'mile 6' })).toEqual([expect.objectContaining({ measure: 6 * 1609.344 })]);
    expect(resolved({ at: here, name: '10 km', measure: 9990 })).toEqual([expect.objectContaining({ measure: 9990 })]);
  });

  it('that names a waypoint stands where the waypoint does', () => {
    expect(resolved({ name: '10 km' }, file('10 km', 'Well'))).toEqual([
      { at: here, measure: 10_000, name: '10 km', where: { path: '/marks/0' } },
    ]);
    expect(resolved({ name: 'Well', measure: 12_000 }, file('10 km', 'Well'))).toEqual([
      { at: there, measure: 12_000, name: 'Well', where: { path: '/marks/0' } },
    ]);
  });

  it('whose name says no distance is refused, with the waypoint that may have been meant', () => {
    expect(refusal({ at: here, name: 'post' })).toBe(
      'Mark “post” gives no course distance. It should have one, or a name such as “10 km” or “mile 6”.',
    );
    expect(refusal({ name: '10 kn' }, file('10 km'))).toBe(
      'Mark “10 kn” gives no course distance. It should have one, or a name such as “10 km” or “mile 6”. Did you mean “10 km”?',
    );
    expect(refusal({ at: here })).toContain('A mark gives no course distance.');
  });

  it('that names no waypoint, or two, is refused, and all that there are are said where none is near', () => {
    expect(refusal({ name: '12 km' }, file('Well', 'Tap', null))).toBe(
      'Mark “12 km” has no place: “placed.gpx” has no waypoint of that name. It should be the name of exactly one waypoint, or have a place. Waypoints: “Well” and “Tap”.',
    );
    expect(refusal({ name: '12 km' }, file('12 km', '12 km'))).toBe(
      'Mark “12 km” has no place: “placed.gpx” has 2 waypoints of that name. It should be the name of exactly one waypoint, or have a place.',
    );
    expect(refusal({ name: '12 km' }, file())).toBe(
      'Mark “12 km” has no place: “placed.gpx” has no waypoint of that name. It should be the name of exactly one waypoint, or have a place.',
    );
  });

  it('without a place on a course without a file is refused', () => {
    expect(refusal({ name: '12 km' })).toBe(
      'Mark “12 km” has no place: the course has no GPX file of its own. It should be the name of exactly one waypoint, or have a place.',
    );
    expect(refusal({ measure: 12_000 })).toContain('A mark has no place');
    // A waypoint without a name is not meant by a mark without one.
    expect(refusal({ measure: 12_000 }, file(null))).toContain('no waypoint of that name');
  });

  it('that is refused does not hide another that is', () => {
    const result = resolveMarks([{ name: 'a' }, { at: here, measure: 1 }, { name: 'b' }], undefined, (k) => ({
      path: `/marks/${k}`,
    }));
    expect(result.findings.map(({ where }) => where.path)).toEqual(['/marks/0', '/marks/2']);
  });
});

it('waypoints whose names are distances are marks with their place in the file; others are not', () => {
  expect(marksOfWaypoints(file('5 km', 'Well', null, 'km 10'))).toEqual([
    { at: here, measure: 5000, name: '5 km', where: { file: 'placed.gpx', line: 2, column: 3 } },
    { at: there, measure: 10_000, name: 'km 10', where: { file: 'placed.gpx', line: 5, column: 3 } },
  ]);
});

it('names that speak of a distance among other words are neither marks nor none', () => {
  expect(
    nearlyMarks(file('KM 40 water', '5 km', 'Well', null, 'at mile 6.5', 'Tap 12')).map(({ name }) => name),
  ).toEqual(['KM 40 water', 'at mile 6.5']);
});
