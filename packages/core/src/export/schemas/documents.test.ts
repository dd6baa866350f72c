/** Each document that core makes against its schema (JSON Schema, draft 2020-12, by ajv 8), and broken ones refused. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../analyse.ts';
import { nearestOn, passesOf } from '../../course/passes.ts';
import { compareAnalyses } from '../../improve/compare.ts';
import { improve } from '../../improve/improve.ts';
import { DEFAULT_PRACTICE } from '../../plan/defaults.ts';
import { reviewBuilt } from '../../asBuilt.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf, runners } from '../../testing/analyses.ts';
import { ORIGIN, from } from '../../testing/courses.ts';
import { eastward, placedDocument } from '../../testing/placed.ts';
import { compareDocument } from '../compareDocument.ts';
import { courseDocument, layoutDocument, snapDocument } from '../documents.ts';
import { improveDocument } from '../improveDocument.ts';
import { raceDayDocument } from '../raceDayDocument.ts';
import { reviewDocument } from '../reviewDocument.ts';
import { compareSchema } from './compare.ts';
import { courseSchema } from './course.ts';
import { improveSchema } from './improve.ts';
import { layoutSchema } from './layout.ts';
import { raceDaySchema } from './raceDay.ts';
import { reviewSchema } from './review.ts';
import type { JsonSchema } from './shared.ts';
import { snapSchema } from './snap.ts';

const ajv = new Ajv2020({ strict: true, strictTuples: false, strictRequired: true, allErrors: true });
const errorsOf = (schema: JsonSchema, document: unknown): unknown =>
  ajv.validate(schema, JSON.parse(JSON.stringify(document))) ? [] : ajv.errors;

const van = { id: 'v1', name: 'Van', kg: 1500, places: 6, kmh: 25, stop: 900, from: 4 * 3600 };
const analysis: Analysis = analysisOf(
  OUT_AND_BACK,
  [
    { ...AT_1500, serves: ['gel', 'water'], passes: 'all' },
    { on: { course: 'c', measure: 30, side: 'left', offset: 5 } },
    { at: [-10, -30] },
    { at: from(ORIGIN, 90, 2500) },
  ],
  {
    races: [runners(300)],
    vehicles: [van],
    waivers: [{ code: 'side-unclear', station: 's4', by: 'Ada', reason: 'seen', date: '2027-08-01' }],
  },
);
const straight = analysisOf(STRAIGHT, [AT_1500, { ...AT_1500, on: { ...AT_1500.on!, measure: 1700 } }]);
const { verdicts, stations: built } = reviewBuilt(
  straight,
  placedDocument([
    { name: 's1 sign', at: eastward(1408) },
    { name: 's1 trash to', at: eastward(1600) },
    { name: 's1', at: eastward(1540) },
    { name: 's2', at: eastward(1700, 300) },
  ]),
);
const indexed = analysis.courses[0]!;
const snapped = [AT_1500.on!.measure, 2500]
  .map((measure) => from(ORIGIN, 90, measure))
  .map((at, k) => ({
    at,
    name: k === 0 ? null : 'Tap',
    passes: passesOf(indexed, at, DEFAULT_PRACTICE),
    nearest: nearestOn(indexed, at),
  }));

/** Each with a key of it that no such document may lack. */
const DOCUMENTS = {
  course: [courseSchema, courseDocument(indexed.course, analysis.findings), 'factors'],
  snap: [snapSchema, snapDocument(snapped), 'points'],
  layout: [layoutSchema, layoutDocument(analysis, analysis.findings), 'spacing'],
  'race day': [raceDaySchema, raceDayDocument(analysis, analysis.day!, analysis.findings), 'runs'],
  review: [
    reviewSchema,
    reviewDocument(straight, {
      sha256: 'ab'.repeat(32),
      inputs: [{ file: 'c.gpx', sha256: 'cd'.repeat(32) }],
      placed: verdicts,
      built,
    }),
    'checks',
  ],
  comparison: [compareSchema, compareDocument(compareAnalyses(['plan', 'b'], straight, analysis)), 'items'],
  improvement: [improveSchema, improveDocument(improve(straight, { within: 50 })), 'proof'],
} as const satisfies Record<string, readonly [JsonSchema, object, string]>;

describe.each(Object.entries(DOCUMENTS))('the document of a %s', (_, [schema, document, key]) => {
  it('fits its schema', () => {
    expect(errorsOf(schema, document)).toEqual([]);
  });

  it('may gain keys, but is refused without one that it has, or with a text for a record', () => {
    expect(errorsOf(schema, { ...document, more: true })).toEqual([]);
    expect(errorsOf(schema, { ...document, [key]: undefined })).toMatchObject([
      { keyword: 'required', params: { missingProperty: key } },
    ]);
    expect(errorsOf(schema, 'text')).toMatchObject([{ keyword: 'type' }]);
  });
});

it('positions beyond the degrees that there are, sides that are none, and negative counts are refused', () => {
  const {
    points: [first],
  } = snapDocument(snapped);
  const withPoint = (keys: object): unknown => errorsOf(snapSchema, { points: [{ ...first, ...keys }] });
  expect(withPoint({ at: [181, 0] })).toMatchObject([{ keyword: 'maximum' }]);
  expect(withPoint({ at: [0, 0, 0] })).toMatchObject([{ keyword: 'maxItems' }]);
  expect(withPoint({ passes: [{ ...first!.passes[0], side: 'middle' }] })).toMatchObject([{ keyword: 'enum' }]);
  expect(withPoint({ nearest: { ...first!.nearest, distance: -1 } })).toMatchObject([{ keyword: 'minimum' }]);
});

it('the documents held against their schemas have something in every list', () => {
  const { passes, directions } = layoutDocument(analysis, []).stations[0]!;
  expect(
    [
      verdicts,
      passes,
      directions,
      analysis.day!.runs,
      analysis.findings,
      improve(straight, { within: 50 }).before.longest,
    ].map((list) => list.length > 0),
  ).toEqual(Array.from({ length: 6 }, () => true));
  expect(analysis.findings.some(({ waived }) => waived !== undefined)).toBe(true);
});
