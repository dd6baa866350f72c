/** The JSON documents: what is rounded, what is left out where there is nothing, and the words that stand for it. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf } from '../testing/analyses.ts';
import { ORIGIN, courseOfSegments, from, turtle, turtlePoints } from '../testing/courses.ts';
import { courseDocument, findingDocument, layoutDocument, snapDocument } from './documents.ts';

describe('a finding', () => {
  it('is rounded to a millionth of a metre and a billionth of a degree, and keeps its order of keys', () => {
    const finding: Finding = {
      source: 'common practice',
      limit: [1 / 3, 2 / 3],
      code: 'x',
      severity: 'note',
      message: 'm',
      measured: 0.123_456_789,
      where: { at: [1 / 3, -1 / 3], measure: 2 / 3, station: 's1' },
    };
    const document = findingDocument(finding);
    expect(document).toEqual({
      code: 'x',
      severity: 'note',
      message: 'm',
      where: { station: 's1', measure: 0.666_667, at: [0.333_333_333, -0.333_333_333] },
      measured: 0.123_457,
      limit: [0.333_333, 0.666_667],
      source: 'common practice',
    });
    expect(Object.keys(document)).toEqual(['code', 'severity', 'message', 'where', 'measured', 'limit', 'source']);
  });

  it('has one limit as a number, and no keys for what it does not say', () => {
    expect(findingDocument({ code: 'x', severity: 'note', message: 'm', where: {}, limit: 1 / 3 })).toEqual({
      code: 'x',
      severity: 'note',
      message: 'm',
      where: {},
      limit: 0.333_333,
    });
  });
});

describe('a course', () => {
  it('without calibration has one factor of 1, no marks and no ascent', () => {
    const document = courseDocument(turtle(ORIGIN, [[90, 1000]], 100), []);
    expect(document).toMatchObject({
      name: 'c',
      points: 11,
      duplicates: 0,
      gaps: [],
      ascent: null,
      marks: [],
      findings: [],
    });
    expect(document.length).toBeCloseTo(1000, 5);
    expect(document.factors).toEqual([{ from: 0, to: document.length, factor: 1 }]);
  });

  it('says its ascent, its gaps, its factor between marks, and the marks by name or none', () => {
    const course = courseOfSegments(
      [turtlePoints(ORIGIN, [[90, 500]], 100), turtlePoints(from(ORIGIN, 90, 700), [[90, 500]], 100)],
      'join',
    );
    const raised = {
      ...course,
      ele: Float64Array.from(course.lon, (_, i) => (i % 2 === 0 ? 0 : 1)),
      scale: { raw: [0, 1200], measure: [0, 1212] },
    };
    const at = ORIGIN;
    const document = courseDocument(
      raised,
      [{ code: 'x', severity: 'note', message: 'm', where: {} }],
      [
        { at, measure: 1000, name: '1 km' },
        { at, measure: 1212.000_000_4 },
      ],
    );
    expect(document.gaps).toEqual([{ after: 5, length: expect.closeTo(200, 5) as number }]);
    expect(document.ascent).toBe(Math.floor(course.lon.length / 2));
    expect(document.factors).toEqual([{ from: 0, to: 1212, factor: 1.01 }]);
    expect(document.marks).toEqual([
      { name: '1 km', measure: 1000 },
      { name: null, measure: 1212 },
    ]);
    expect(document.findings).toHaveLength(1);
  });
});

describe('a point held against a course', () => {
  const pass = {
    measure: 1 / 3,
    distance: 2 / 3,
    offset: -2 / 3,
    side: 'right',
    confidence: 0.987_654_321,
    azimuthDeg: 90,
    foot: [1 / 3, 1],
  } as const;

  it('keeps its name or null, and says of a pass beyond an end which end', () => {
    const { points } = snapDocument([
      {
        at: [0, 1],
        name: null,
        passes: [pass, { ...pass, end: 'finish' }],
        nearest: { measure: 1, distance: 2, offset: 3 },
      },
    ]);
    expect(points).toEqual([
      {
        at: [0, 1],
        name: null,
        passes: [0, 1].map((k) => ({
          measure: 0.333_333,
          distance: 0.666_667,
          offset: -0.666_667,
          side: 'right',
          confidence: 0.987_654,
          azimuthDeg: 90,
          foot: [0.333_333_333, 1],
          ...(k === 1 ? { end: 'finish' } : {}),
        })),
        nearest: { measure: 1, distance: 2, offset: 3 },
      },
    ]);
    expect(Object.keys(points[0]!.passes[0]!)).not.toContain('end');
  });
});

describe('a layout', () => {
  it('has null for an end without a place and for a wheel that cannot run, and says what was placed by hand', () => {
    const sign = from(from(ORIGIN, 90, 1400), 180, 5);
    const layout = analysisOf(STRAIGHT, [
      { on: { course: 'c', measure: 50, side: 'right', offset: 5 }, serves: ['water'] },
      { ...AT_1500, boxes: 2, items: { sign: { at: sign } } },
    ]);
    const [first, second] = layoutDocument(layout, []).stations;
    const [lost] = first!.directions[0]!.items;
    expect([lost!.at, lost!.wheel, lost!.from]).toEqual([[null, null], null, -41.44]);
    const items = second!.directions[0]!.items;
    expect(items.map(({ kind, byHand = false }) => [kind, byHand])).toEqual([
      ['sign', true],
      ['sportsDrink', false],
      ['water', false],
      ['trash', false],
    ]);
    expect(items[0]!.at[0]).toEqual([expect.closeTo(sign[0], 9), expect.closeTo(sign[1], 9)]);
    expect(items[1]).not.toHaveProperty('byHand');
    expect(items[1]).not.toHaveProperty('wording');
    expect(items[3]!.boxes!.map(({ measure }) => measure)).toEqual([items[3]!.from, items[3]!.to]);
  });

  it('has each race’s legs, and courses with their raw length', () => {
    const { courses, spacing, findings } = layoutDocument(analysisOf(OUT_AND_BACK, [AT_1500]), [
      { code: 'x', severity: 'note', message: 'm', where: {} },
    ]);
    expect(courses).toEqual([
      { id: 'c', length: expect.closeTo(6000, 4) as number, raw: expect.closeTo(6000, 4) as number },
    ]);
    expect(spacing[0]!.legs.map(({ from: a, to, length }) => [a, to, Math.round(length)])).toEqual([
      ['start', 's1', 1500],
      ['s1', 'finish', 4500],
    ]);
    expect(findings).toHaveLength(1);
  });
});
