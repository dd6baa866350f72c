/** Builds core and its command line once for all test files of a run; those that run side by side wait for one another. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

export const ROOT: string = join(dirname(fileURLToPath(import.meta.url)), '../..');
export const CORE: string = join(ROOT, 'packages/core');

const LOCK = join(ROOT, 'node_modules/.cache/halfcup-build.lock');
/** A lock older than this was left behind by a run that was killed. */
const STALE = 120_000;

async function lock(): Promise<void> {
  mkdirSync(dirname(LOCK), { recursive: true });
  for (;;) {
    try {
      mkdirSync(LOCK);
      return;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      const held = statSync(LOCK, { throwIfNoEntry: false });
      if (held !== undefined && Date.now() - held.mtimeMs > STALE) rmSync(LOCK, { recursive: true, force: true });
      await sleep(50);
    }
  }
}

/** Compiles what changed; throws with the compiler's words where it does not compile. */
export async function buildCommandLine(): Promise<void> {
  await lock();
  try {
    const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
    const { status, stdout, stderr } = spawnSync(process.execPath, [tsc, '-b', 'packages/core', 'packages/core/cli'], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    if (status !== 0) throw new Error(`the command line does not compile:\n${stdout}${stderr}`);
  } finally {
    rmSync(LOCK, { recursive: true, force: true });
  }
}
