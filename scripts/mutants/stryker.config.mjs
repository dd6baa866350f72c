/**
 * Stryker's settings for the sample of mutants that run.mjs counts; every path is from the root of the repository.
 * Texts for people are not changed (StringLiteral): tests hold what findings measure, not each word of them.
 */
import { fileURLToPath } from 'node:url';

const here = (name) => fileURLToPath(import.meta.resolve(name));

/** @type {import('@stryker-mutator/core').PartialStrykerOptions} */
export default {
  packageManager: 'npm',
  plugins: [here('@stryker-mutator/vitest-runner'), here('./sample.mjs')],
  mutate: ['packages/core/src/{geodesy,course,layout,review}/*.ts', '!**/*.test.ts'],
  mutator: { excludedMutations: ['StringLiteral'] },
  ignorePatterns: ['**', '!packages/core/src/**', '!scripts/mutants/*'],
  checkers: ['sample'],
  testRunner: 'vitest',
  vitest: { configFile: 'scripts/mutants/vitest.config.mjs' },
  coverageAnalysis: 'perTest',
  concurrency: 1,
  timeoutMS: 20_000,
  disableTypeChecks: false,
  reporters: ['json', 'progress-append-only'],
  logLevel: 'warn',
  warnings: { slow: false },
  jsonReporter: { fileName: 'node_modules/.cache/mutants/report.json' },
  allowConsoleColors: false,
};
