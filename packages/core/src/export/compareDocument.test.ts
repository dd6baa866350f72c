/** Comparisons and improvements as JSON: rounded, `null` where a version has nothing, and as they were otherwise. */
import { expect, it } from 'vitest';
import type { Improvement } from '../improve/improve.ts';
import type { Standing } from '../improve/standing.ts';
import type { Comparison } from '../improve/compare.ts';
import { AT_1500, STRAIGHT, analysisOf } from '../testing/analyses.ts';
import { compareDocument } from './compareDocument.ts';
import { improveDocument } from './improveDocument.ts';

const third = 1 / 3;
const rounded = 0.333_333;

it('a comparison has its lengths to a millionth of a metre, its places to a billionth of a degree, and null where one version has nothing', () => {
  const comparison: Comparison = {
    variants: ['a', 'b'],
    stations: [{ id: 's1', name: 'One', moved: third, from: [third, third], to: [third, third] }],
    spacing: [
      {
        race: 'm',
        legs: [
          { from: 'start', to: 's1', length: [third, null] },
          { from: 's1', to: 'finish', length: [null, third] },
        ],
        longest: [third, third],
        shortest: [third, third],
        mean: [third, third],
      },
    ],
    items: [
      {
        station: 's1',
        item: 'sign',
        lead: true,
        race: 'm',
        along: [third, null],
        wheel: [null, third],
        alongEnd: [third, third],
        wheelEnd: [null, null],
        side: ['left', null],
      },
    ],
    findings: { gained: [{ code: 'x', severity: 'note', message: 'm', where: {}, measured: third }], lost: [] },
  };
  expect(compareDocument(comparison)).toEqual({
    variants: ['a', 'b'],
    stations: [
      {
        id: 's1',
        name: 'One',
        moved: rounded,
        from: [0.333_333_333, 0.333_333_333],
        to: [0.333_333_333, 0.333_333_333],
      },
    ],
    spacing: [
      {
        race: 'm',
        legs: [
          { from: 'start', to: 's1', length: [rounded, null] },
          { from: 's1', to: 'finish', length: [null, rounded] },
        ],
        longest: [rounded, rounded],
        shortest: [rounded, rounded],
        mean: [rounded, rounded],
      },
    ],
    items: [
      {
        station: 's1',
        item: 'sign',
        lead: true,
        race: 'm',
        along: [rounded, null],
        wheel: [null, rounded],
        alongEnd: [rounded, rounded],
        wheelEnd: [null, null],
        side: ['left', null],
      },
    ],
    findings: { gained: [{ code: 'x', severity: 'note', message: 'm', where: {}, measured: rounded }], lost: [] },
  });
});

it('an improvement has its legs, moves and bound rounded, and neither the plan nor its analysis', () => {
  const analysis = analysisOf(STRAIGHT, [AT_1500]);
  const standing: Standing = {
    error: 1,
    warning: 2,
    note: 3,
    waived: 4,
    idle: 5,
    longest: [{ race: 'm', from: 'start', to: 's1', length: third }],
  };
  const improvement: Improvement = {
    before: standing,
    after: standing,
    proof: { bound: { error: 0, warning: 1, longest: third } },
    plan: analysis.plan,
    analysis,
    tried: 7,
    step: 25,
    stepBeyond: 50,
    stays: [{ station: 's2', why: 'fixed' }],
    stopped: false,
    moves: [
      {
        station: 's1',
        name: 'One',
        from: [third, third],
        to: [third, third],
        measure: third,
        course: 'c',
        shift: -third,
        moved: third,
        dropped: ['sign'],
        walked: true,
      },
    ],
  };
  const document = improveDocument(improvement);
  const place = [0.333_333_333, 0.333_333_333];
  expect(document).toEqual({
    before: { ...standing, longest: [{ race: 'm', from: 'start', to: 's1', length: rounded }] },
    after: { ...standing, longest: [{ race: 'm', from: 'start', to: 's1', length: rounded }] },
    moves: [
      {
        station: 's1',
        name: 'One',
        from: place,
        to: place,
        measure: rounded,
        course: 'c',
        shift: -rounded,
        moved: rounded,
        dropped: ['sign'],
        walked: true,
      },
    ],
    proof: { bound: { error: 0, warning: 1, longest: rounded } },
    tried: 7,
    step: 25,
    stepBeyond: 50,
    stays: [{ station: 's2', why: 'fixed' }],
  });
  expect(improveDocument({ ...improvement, proof: 'optimal' }).proof).toBe('optimal');
});
