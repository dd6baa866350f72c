/** Where things lie, and core's command line as it is built. */
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT: string = join(dirname(fileURLToPath(import.meta.url)), '../..');
export const CORE: string = join(ROOT, 'packages/core');

/** Compiles what changed; throws with the compiler's words where it does not compile. */
export function buildCommandLine(): void {
  const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
  const { status, stdout, stderr } = spawnSync(process.execPath, [tsc, '-b', 'packages/core', 'packages/core/cli'], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`the command line does not compile:\n${stdout}${stderr}`);
}
