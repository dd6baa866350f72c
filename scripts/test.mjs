/**
 * `npx -y pnpm@12 test`: builds core and the viewer, runs every test (unit, command line, browser)
 * and ends with a line "N passed, N failed". Arguments go to vitest.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT, build } from './build.mjs';

const folder = mkdtempSync(join(tmpdir(), 'halfcup-test-'));
const report = join(folder, 'report.json');
try {
  build();
  const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
  const { status } = spawnSync(
    process.execPath,
    [vitest, 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...process.argv.slice(2)],
    { cwd: ROOT, stdio: 'inherit' },
  );
  const { numPassedTests, numFailedTests, numPendingTests, numFailedTestSuites } = JSON.parse(
    readFileSync(report, 'utf8'),
  );
  // A file that does not load has no tests to fail: it counts as one. A skipped test is a failure too.
  const failed = numFailedTests + numPendingTests + (numFailedTests === 0 ? numFailedTestSuites : 0);
  console.log(`${numPassedTests} passed, ${failed} failed`);
  process.exitCode = status !== 0 || failed > 0 || numPassedTests === 0 ? 1 : 0;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
