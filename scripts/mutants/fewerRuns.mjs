/**
 * Makes the tests quick enough to meet every mutant: properties run the first cases of their seed only,
 * and the tests that gather statistics of thousands of cases are left out. Both can only spare a mutant, never kill one.
 */
import { beforeEach, vi } from 'vitest';

const RUNS = 60;
const STATISTICS = [
  'equals the offset line walked by a reference',
  'of 0.8 m leaves two passes at a U-turn',
  'of 2 m while it stands still',
  'of 1,000 random placements',
  'the same within 2 m outside and inside of the limits',
];

vi.mock('fast-check', async (load) => {
  const real = await load();
  const assert = (property, parameters = {}) =>
    real.assert(property, { ...parameters, numRuns: Math.min(parameters.numRuns ?? RUNS, RUNS), endOnFailure: true });
  return { ...real, assert, default: { ...real.default, assert } };
});

beforeEach(({ task, skip }) => {
  if (STATISTICS.some((start) => task.name.startsWith(start))) skip();
});
