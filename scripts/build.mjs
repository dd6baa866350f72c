/** Builds core, its command line and the viewer. Needs no tool but Node and what is installed. */
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');

function run(program, args, folder) {
  const { status } = spawnSync(process.execPath, [join(ROOT, 'node_modules', program), ...args], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (status !== 0) throw new Error(`${program} ${args.join(' ')} ended with ${status}`);
}

/** Throws where a part does not build; what is wrong is on stderr by then. */
export function build() {
  run('typescript/bin/tsc', ['-b', 'packages/core', 'packages/core/cli', '--pretty'], ROOT);
  run('vite/bin/vite.js', ['build', '--logLevel', 'warn'], join(ROOT, 'packages/viewer'));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) build();
