/** The tests that meet the mutants: those beside the sources of the four rooms, nearest to the changed file first, properties at reduced runs. */
import { basename, dirname } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';

const source = ['@halfcup/source'];

/** 0 beside the changed file and named as it, 1 in its folder, 2 elsewhere. */
const far = (test, changed) => (dirname(test) !== dirname(changed) ? 2 : basename(test) === basename(changed).replace(/\.ts$/, '.test.ts') ? 0 : 1);

class NearestFirst extends BaseSequencer {
  async sort(specifications) {
    const changed = this.ctx.config.related ?? [];
    const sorted = [...specifications].sort((a, b) => a.moduleId.localeCompare(b.moduleId));
    return changed.length === 1 ? sorted.sort((a, b) => far(a.moduleId, changed[0]) - far(b.moduleId, changed[0])) : sorted;
  }
}

export default defineConfig({
  resolve: { conditions: source },
  ssr: { resolve: { conditions: source } },
  test: {
    include: ['packages/core/src/{geodesy,course,layout,review}/*.test.ts'],
    setupFiles: ['scripts/mutants/fewerRuns.mjs'],
    sequence: { sequencer: NearestFirst },
    isolate: false,
    fileParallelism: false,
    testTimeout: 60_000,
  },
});
