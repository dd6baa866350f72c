/** Documents of plans that nobody would make: whatever is laid out, the JSON fits its schema and holds numbers. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../packages/core/src/analyse.ts';
import { layoutDocument } from '../packages/core/src/export/documents.ts';
import { toGeoJson } from '../packages/core/src/export/geojson.ts';
import { layoutSchema } from '../packages/core/src/export/schemas/layout.ts';
import { placeFindings } from '../packages/core/src/plan/placeFindings.ts';
import { readPlan } from '../packages/core/src/plan/read.ts';
import { planView } from '../packages/core/cli/findings.ts';
import { PAPER } from '../packages/core/cli/screen.ts';
import { layoutText } from '../packages/core/cli/text/layout.ts';
import { OCEAN, type Position, go, planText } from './support/courses.ts';
import { tries } from '../packages/core/src/testing/tries.ts';

const valid = new Ajv2020({ allErrors: true }).compile(layoutSchema);

const metres = (max: number): fc.Arbitrary<number> =>
  fc.oneof(fc.constantFrom(0, max), fc.double({ min: 0, max, noNaN: true }));

/** From 10 cm on: the least that the plan format takes of these. */
const some = (max: number): fc.Arbitrary<number> => metres(max).map((value) => value + 0.1);

/** A walk of a few steps, some of no length, some straight back. */
const line = fc
  .array(fc.tuple(fc.constantFrom(0, 45, 90, 180, 270, 359.9), fc.constantFrom(0, 5, 80, 400, 1500)), { maxLength: 12 })
  .map((steps) => {
    const walk: Position[] = [OCEAN, go(OCEAN, 90, 400)];
    for (const [azimuth, length] of steps) walk.push(length === 0 ? walk.at(-1)! : go(walk.at(-1)!, azimuth, length));
    return walk;
  });

const practice = fc.record(
  {
    signAhead: metres(500),
    gelAhead: metres(100),
    tableGap: metres(20),
    tableLength: some(10),
    trashFrom: metres(91),
    kerb: metres(30),
    setback: metres(5),
    snapRadius: some(2000),
    pinR95: some(50),
    courseR95: some(50),
    sideConfidence: fc.double({ min: 0.5, max: 1, noNaN: true }),
  },
  { requiredKeys: [] },
);

const station = fc.record(
  {
    on: fc.record({
      course: fc.constantFrom('c', 'd'),
      measure: metres(400),
      side: fc.constantFrom('left', 'right'),
      offset: metres(80),
    }),
    side: fc.constantFrom('left', 'right'),
    passes: fc.constantFrom('lead', 'all'),
    serves: fc.subarray(['gel', 'sportsDrink', 'water'], { minLength: 1 }),
    tables: fc.record({ gel: fc.nat(5), sportsDrink: fc.nat(5), water: fc.nat(5) }, { requiredKeys: [] }),
    boxes: fc.nat(9),
    width: fc.double({ min: 0.1, max: 40, noNaN: true }),
    practice,
  },
  { requiredKeys: ['on'] },
);

describe('any plan', () => {
  it('that can be analysed has a document that fits its schema, GeoJSON and a text', () => {
    let laid = 0;
    fc.assert(
      fc.property(line, fc.array(station, { maxLength: 4 }), practice, (walk, stations, rules) => {
        const text = planText(
          stations.map((one, k) => ({ id: `s${k}`, ...one })),
          {
            courses: [
              { id: 'c', line: walk },
              { id: 'd', parts: [{ of: 'c', from: 0 }], reverse: true },
            ],
            races: [
              { id: 'm', course: 'c' },
              { id: 'h', course: 'd' },
            ],
            practice: rules,
          },
        );
        const read = readPlan(text, 'p.json');
        if (!read.ok) return;
        const analysed = analyse(read.value.plan, { gpx: new Map() });
        if (!analysed.ok) return;
        laid += analysed.value.stations.length;
        const document = layoutDocument(analysed.value, placeFindings(analysed.value.findings, read.value));
        expect(valid(document) ? [] : valid.errors).toEqual([]);
        expect(JSON.stringify(toGeoJson(analysed.value))).not.toMatch(/\[null|,null/u);
        for (const units of ['metric', 'imperial'] as const)
          expect(layoutText(analysed.value, planView(PAPER, units, analysed.value.plan))).not.toMatch(
            /NaN|undefined|Infinity/u,
          );
      }),
      { seed: 7, numRuns: tries(400) },
    );
    expect(laid).toBeGreaterThan(300);
  });
});
