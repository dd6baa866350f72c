/** The tests that meet the mutants: those beside the sources of the four rooms, nearest to the changed file first. */
import { basename, dirname } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';

const source = ['@halfcup/source'];

/** In the order in which data flows. */
const ROOMS = ['geodesy', 'course', 'layout', 'review'];
const roomOf = (file) => ROOMS.indexOf(basename(dirname(file)));

/** Rooms downstream of the changed file; the test named as it comes first of all. */
const far = (test, changed) =>
  basename(test) === basename(changed).replace(/\.ts$/, '.test.ts') ? -1 : roomOf(test) - roomOf(changed);

/** Tests of the changed file's own room, then those of the next: what only a test farther off would notice counts as survived. */
class Nearest extends BaseSequencer {
  async sort(specifications) {
    const sorted = [...specifications].sort((a, b) => a.moduleId.localeCompare(b.moduleId));
    const [changed, ...more] = this.ctx.config.related ?? [];
    if (changed === undefined || more.length > 0) return sorted;
    return sorted
      .filter(({ moduleId }) => far(moduleId, changed) <= 1)
      .sort((a, b) => far(a.moduleId, changed) - far(b.moduleId, changed));
  }
}

export default defineConfig({
  resolve: { conditions: source },
  ssr: { resolve: { conditions: source } },
  test: {
    include: ['packages/core/src/{geodesy,course,layout,review}/*.test.ts'],
    setupFiles: ['scripts/mutants/fewerRuns.mjs'],
    sequence: { sequencer: Nearest },
    isolate: false,
    fileParallelism: false,
    testTimeout: 60_000,
  },
});
