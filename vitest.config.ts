import { defineConfig } from 'vitest/config';

const source = { resolve: { conditions: ['@halfcup/source'] }, ssr: { resolve: { conditions: ['@halfcup/source'] } } };

export default defineConfig({
  test: {
    // As many files at once as there are cores: by itself vitest leaves one core idle, which is half of a small machine.
    maxWorkers: '100%',
    projects: [
      // Fuzzing takes three times as long where coverage is counted.
      { ...source, test: { name: 'core', include: ['packages/core/**/*.test.ts'], testTimeout: 180_000 } },
      { ...source, test: { name: 'viewer', include: ['packages/viewer/src/**/*.test.ts'], testTimeout: 60_000 } },
      {
        ...source,
        test: { name: 'across', include: ['tests/**/*.test.ts'], testTimeout: 120_000, hookTimeout: 180_000 },
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
