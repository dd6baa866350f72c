/**
 * An empty project with core installed in it as anybody would: packed, and the tarball given to `npm install`, which
 * fetches the dependencies. Every script of this folder runs in one; `all.mjs` gives one to all of them.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Where a tool of the workspace lies. */
export const tool = (path) => join(ROOT, 'node_modules', path);
/** A demo plan for what is installed to work on. */
export const DEMO = join(ROOT, 'fixtures/demo');

/** What a command prints; throws with all that it said where it does not end with `exit`. */
export function said(command, args, cwd, exit = 0) {
  const { status, stdout, stderr, error } = spawnSync(command, args, { cwd, encoding: 'utf8', maxBuffer: 2 ** 28 });
  if (status === exit) return stdout;
  throw new Error(
    `${[command, ...args].join(' ')} ended with ${status ?? error?.message}; expected ${exit}\n${stdout}${stderr}`,
  );
}

/** One line a proof, its figures with it. */
export function proven(what, figures = '') {
  console.log(`ok  ${what}${figures === '' ? '' : `: ${figures}`}`);
}

export function expect(holds, what) {
  if (!holds) throw new Error(what);
}

export const readJson = (path) => JSON.parse(readFileSync(path, 'utf8'));

/** Packs, installs and hands over the project; takes it away afterwards, whatever happens. */
export async function inProject(work) {
  // The folder's real name: through a link the bundler would take the project's files for strangers.
  const top = mkdtempSync(join(realpathSync(tmpdir()), 'halfcup-proof-'));
  try {
    said('npx', ['--yes', 'pnpm@12', 'pack', '--pack-destination', top], join(ROOT, 'packages/core'));
    const tarball = join(
      top,
      readdirSync(top).find((name) => name.endsWith('.tgz')),
    );
    writeFileSync(
      join(top, 'package.json'),
      '{ "name": "empty-project", "version": "1.0.0", "private": true, "type": "module" }\n',
    );
    said('npm', ['install', '--no-audit', '--no-fund', tarball], top);
    await work({ folder: top, tarball, core: join(top, 'node_modules/@halfcup/core') });
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
}

/** Runs a script's own proof where it is the one that Node was started with. */
export async function runAlone(url, prove) {
  if (process.argv[1] !== undefined && fileURLToPath(url).split(sep).join('/') === process.argv[1].split(sep).join('/'))
    await inProject(prove);
}
