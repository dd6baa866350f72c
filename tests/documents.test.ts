/** Every JSON document that the command line prints, against the schema that ships with core. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { courseSchema } from '../packages/core/src/export/schemas/course.ts';
import { findingSchema } from '../packages/core/src/export/schemas/finding.ts';
import { layoutSchema } from '../packages/core/src/export/schemas/layout.ts';
import { reviewSchema } from '../packages/core/src/export/schemas/review.ts';
import type { JsonSchema } from '../packages/core/src/export/schemas/shared.ts';
import { snapSchema } from '../packages/core/src/export/schemas/snap.ts';
import { ROOT } from './support/build.ts';
import { OCEAN, OUT_AND_BACK, RUN_21K, go, gpxText, planText, straight } from './support/courses.ts';
import { documentIn, folderWith, halfcupIn } from './support/halfcup.ts';

const ajv = new Ajv2020({ strict: true, strictTuples: false, strictRequired: true, allErrors: true });

function expectValid(schema: JsonSchema, document: unknown): void {
  const valid = ajv.validate(schema, document);
  expect(valid ? [] : ajv.errors).toEqual([]);
}

const points = straight(OCEAN, 90, 51, 100);
const stations = [
  { id: 'early', on: { course: 'c', measure: 50, side: 'right' }, serves: ['gel', 'water'] },
  { id: 'away', at: go(points[10]!, 0, 900) },
  { id: 'line', at: points[30]! },
  { id: 'beyond', at: go(points[50]!, 90, 20) },
];
const folder = folderWith({
  'c.gpx': gpxText([points, [go(points[50]!, 90, 30)]], [{ at: points[3]!, name: 'Tap' }, { at: go(OCEAN, 0, 5000) }]),
  'p.json': planText(stations),
});

/** The keys of contract.md; more may be added, none may go. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  course: ['name', 'points', 'duplicates', 'length', 'raw', 'bounds', 'gaps', 'ascent', 'factors', 'findings'],
  layout: ['courses', 'stations', 'spacing', 'findings'],
  pass: ['race', 'course', 'measure', 'distance', 'offset', 'side', 'confidence', 'azimuthDeg', 'foot', 'served'],
  direction: ['lead', 'course', 'measure', 'azimuthDeg', 'side', 'passes', 'items'],
  item: ['kind', 'from', 'to', 'along', 'wheel', 'wheelMargin', 'side', 'at'],
  review: ['plan', 'inputs', 'checks', 'findings', 'counts'],
  check: ['code', 'severity', 'title', 'source', 'ran', 'found'],
  verdict: ['station', 'item', 'verdict', 'measured', 'limit', 'margin', 'move', 'at'],
  counts: ['error', 'warning', 'note', 'waived'],
  spacing: ['race', 'legs', 'longest', 'shortest', 'mean'],
};
const required = (schema: unknown): readonly string[] => (schema as { required: readonly string[] }).required;
const inside = (schema: unknown, ...keys: readonly string[]): unknown =>
  keys.reduce(
    (one, key) =>
      key === '[]'
        ? (one as { items: unknown }).items
        : (one as { properties: Record<string, unknown> }).properties[key],
    schema,
  );

describe('the schemas', () => {
  it('require every key of the contract', () => {
    expect(required(courseSchema)).toEqual(KEYS['course']);
    expect(required(layoutSchema)).toEqual(KEYS['layout']);
    expect(required(inside(layoutSchema, 'stations', '[]', 'passes', '[]'))).toEqual(
      expect.arrayContaining([...KEYS['pass']!]),
    );
    expect(required(inside(layoutSchema, 'stations', '[]', 'directions', '[]'))).toEqual(
      expect.arrayContaining([...KEYS['direction']!]),
    );
    expect(required(inside(layoutSchema, 'stations', '[]', 'directions', '[]', 'items', '[]'))).toEqual(
      expect.arrayContaining([...KEYS['item']!]),
    );
    expect(required(inside(layoutSchema, 'spacing', '[]'))).toEqual(expect.arrayContaining([...KEYS['spacing']!]));
    expect(required(reviewSchema)).toEqual(KEYS['review']);
    expect(required(inside(reviewSchema, 'checks', '[]'))).toEqual(KEYS['check']);
    expect(required(inside(reviewSchema, 'placed', '[]'))).toEqual(KEYS['verdict']);
    expect(required(inside(reviewSchema, 'counts'))).toEqual(KEYS['counts']);
    expect(required(inside(reviewSchema, 'plan'))).toEqual(['name', 'sha256']);
    expect(required(inside(reviewSchema, 'inputs', '[]'))).toEqual(['file', 'sha256']);
    expect(required(findingSchema)).toEqual(['code', 'severity', 'message', 'where']);
    expect(required(inside(snapSchema, 'points', '[]', 'passes', '[]'))).toEqual(
      KEYS['pass']!.filter((key) => !['race', 'course', 'served'].includes(key)),
    );
    expect(required(inside(snapSchema, 'points', '[]'))).toEqual(['at', 'name', 'passes', 'nearest']);
  });

  it('refuse a document without one of them', async () => {
    const course = (await documentIn(folder, 'course', 'c.gpx')) as Record<string, unknown>;
    for (const key of KEYS['course']!) expect(ajv.validate(courseSchema, { ...course, [key]: undefined })).toBe(false);
    expect(ajv.validate(courseSchema, { ...course, more: true })).toBe(true);
  });
});

describe('the documents', () => {
  it.each([RUN_21K, OUT_AND_BACK, 'c.gpx'])('of halfcup course fit their schema: %s', async (file) => {
    expectValid(courseSchema, await documentIn(folder, 'course', file));
  });

  it('of halfcup snap fit their schema, with points, waypoints and nothing near', async () => {
    expectValid(snapSchema, await documentIn(folder, 'snap', 'c.gpx'));
    expectValid(snapSchema, await documentIn(folder, 'snap', 'c.gpx', '-17.4,-33.2', '17.4,33.2'));
    expectValid(snapSchema, await documentIn(folder, 'snap', OUT_AND_BACK, '-118.517671,34.085472'));
  });

  it('of halfcup layout fit their schema, for the demo and for stations without a place', async () => {
    expectValid(layoutSchema, await documentIn(ROOT, 'layout', 'fixtures/demo/plan.json'));
    const odd = (await documentIn(folder, 'layout', 'p.json')) as {
      findings: { code: string }[];
      stations: { passes: { end?: string }[] }[];
    };
    expectValid(layoutSchema, odd);
    expect(odd.findings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['station-off-course', 'item-outside', 'side-unclear']),
    );
  });

  it('of halfcup review fit their schema, with findings, waivers and checks that could not run', async () => {
    const waivers = [
      {
        code: 'item-outside',
        station: 'early',
        by: 'R. Gull',
        reason: 'a sign in the start area',
        date: '2027-08-01',
      },
    ];
    writeFileSync(join(folder, 'w.json'), planText(stations, { waivers }));
    for (const [at, file] of [
      [ROOT, 'fixtures/demo/plan.json'],
      [folder, 'p.json'],
      [folder, 'w.json'],
    ] as const) {
      expectValid(reviewSchema, JSON.parse((await halfcupIn(at, 'review', file, '--json')).out));
    }
    const document = JSON.parse((await halfcupIn(folder, 'review', 'w.json', '--json')).out) as Record<
      string,
      unknown
    > & {
      checks: { ran: boolean }[];
      findings: { waived?: object }[];
    };
    expect(document.checks.some(({ ran }) => !ran)).toBe(true);
    expect(document.findings.some(({ waived }) => waived !== undefined)).toBe(true);
    for (const key of KEYS['review']!)
      expect(ajv.validate(reviewSchema, { ...document, [key]: undefined })).toBe(false);
    const verdict = {
      station: 's1',
      item: 'sign',
      verdict: 'cannot tell',
      measured: 90.1,
      limit: [82.296, 100.584],
      margin: 9,
      move: 1.3,
      at: [-17.4, -33.2],
    };
    expectValid(reviewSchema, { ...document, placed: [verdict] });
    expect(ajv.validate(reviewSchema, { ...document, placed: [{ ...verdict, verdict: 'maybe' }] })).toBe(false);
  });

  it('hold no number that is no number, and no negative nought', async () => {
    const text = JSON.stringify([
      await documentIn(folder, 'layout', 'p.json'),
      await documentIn(ROOT, 'layout', 'fixtures/demo/plan.json'),
      await documentIn(folder, 'snap', 'c.gpx'),
    ]);
    expect(text).not.toMatch(/[[:,]-0[,\]}]/u);
    for (const [number] of text.matchAll(/-?\d+\.\d+/gu)) expect(number.split('.')[1]!.length).toBeLessThanOrEqual(9);
  });
});
