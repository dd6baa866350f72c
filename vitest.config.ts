import { defineConfig } from 'vitest/config';

// Files share a worker and what it has imported: core is read once for all of them, and a browser is started once.
// A test therefore leaves nothing behind: no changed environment, no replaced global, no page that others count on.
const shared = {
  resolve: { conditions: ['@halfcup/source'] },
  ssr: { resolve: { conditions: ['@halfcup/source'] } },
};
const BROWSER = ['tests/viewer*.test.ts', 'tests/papersFit.test.ts', 'tests/examples.test.ts'];

export default defineConfig({
  test: {
    // As many files at once as there are cores: by itself vitest leaves one core idle, which is half of a small machine.
    maxWorkers: '100%',
    projects: [
      {
        ...shared,
        test: { name: 'core', include: ['packages/core/**/*.test.ts'], isolate: false, testTimeout: 180_000 },
      },
      {
        ...shared,
        test: { name: 'viewer', include: ['packages/viewer/src/**/*.test.ts'], isolate: false, testTimeout: 60_000 },
      },
      {
        ...shared,
        test: {
          name: 'across',
          include: ['tests/**/*.test.ts'],
          exclude: BROWSER,
          isolate: false,
          globalSetup: 'tests/support/setup.ts',
          testTimeout: 240_000,
          hookTimeout: 180_000,
        },
      },
      {
        ...shared,
        test: {
          name: 'browser',
          include: BROWSER,
          isolate: false,
          globalSetup: 'tests/support/setupBrowser.ts',
          // Plans are worked out beside the page, on a machine that may be busy.
          expect: { poll: { timeout: 15_000 } },
          testTimeout: 240_000,
          hookTimeout: 180_000,
        },
      },
    ],
    // Of core by its own tests: `npx vitest run --project core --coverage`. What `tests/` runs in other processes is not seen.
    coverage: {
      include: ['packages/core/src/**/*.ts'],
      exclude: ['**/*.test.ts', '**/testing/**'],
      reporter: ['text-summary', 'json'],
      thresholds: { lines: 95, branches: 95 },
    },
  },
});
