/**
 * Builds core, its command line and the viewer twice from the same sources, packs core, and compares every byte.
 * The two builds differ in all that must not matter: folder, day, time zone, locale, mask of new files, age of the sources.
 * Prints one line, or the files that differ and exit 1. The dependencies come from pnpm's own store.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const BUILT = ['packages/core/dist', 'packages/viewer/dist', 'packed'];
const DAY = 86_400_000;

const HERE = { folder: 'one', shift: 0, mask: 0o022, env: { TZ: 'UTC', LC_ALL: 'C.UTF-8' } };
/** Sweden's alphabet ends in its own order and Tonga's day begins first. */
const ELSEWHERE = {
  folder: 'another/far from the first',
  shift: 400 * DAY,
  mask: 0o077,
  env: { TZ: 'Pacific/Tongatapu', LC_ALL: 'sv_SE.UTF-8' },
};

/** A module that moves the clock of a Node process; loaded into every one that builds. */
const clock = (shift) => `const Real = Date;
globalThis.Date = class extends Real {
  constructor(...given) { super(...(given.length === 0 ? [Real.now() + ${shift}] : given)); }
  static now() { return Real.now() + ${shift}; }
};\n`;

/** What git would commit: no built file, nothing installed. */
const sources = () =>
  execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], { cwd: ROOT, encoding: 'utf8' })
    .split('\0')
    .filter((file) => file !== '' && existsSync(join(ROOT, file)));

function must(program, args, cwd, env) {
  const { status, stdout, stderr } = spawnSync(program, args, {
    cwd,
    env: { ...process.env, CI: 'true', ...env },
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (status !== 0) throw new Error(`${program} ${args.join(' ')} in ${cwd} ended with ${status}:\n${stdout}${stderr}`);
  return stdout;
}

const pnpm = (args, cwd, env) => must('npx', ['--yes', '--prefer-offline', 'pnpm@12', ...args], cwd, env);

function copySources(to, age) {
  const then = new Date(Date.now() - age);
  for (const file of sources()) {
    const copy = join(to, file);
    mkdirSync(dirname(copy), { recursive: true });
    copyFileSync(join(ROOT, file), copy);
    utimesSync(copy, then, then);
  }
}

/** Every file that a build writes, by its path inside, with the SHA-256 of its bytes. */
function digestsOf(folder) {
  const files = BUILT.flatMap((part) =>
    readdirSync(join(folder, part), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name)),
  );
  return new Map(
    files
      .map((file) => [
        relative(folder, file).split(sep).join('/'),
        createHash('sha256').update(readFileSync(file)).digest('hex'),
      ])
      .toSorted(([a], [b]) => (a < b ? -1 : 1)),
  );
}

function build(scratch, { folder, shift, mask, env }, store) {
  const to = join(scratch, folder);
  process.umask(mask);
  copySources(to, shift);
  pnpm(['install', '--frozen-lockfile', '--prefer-offline', '--ignore-scripts', '--store-dir', store], to, env);
  const moved = join(scratch, `${basename(folder)}.mjs`);
  writeFileSync(moved, clock(shift));
  const shifted = { ...env, NODE_OPTIONS: `--import=${pathToFileURL(moved).href}` };
  must(process.execPath, ['scripts/build.mjs'], to, shifted);
  mkdirSync(join(to, 'packed'));
  pnpm(['pack', '--pack-destination', join(to, 'packed')], join(to, 'packages/core'), shifted);
  return digestsOf(to);
}

/** Names of files that are in one only, or in both with other bytes. */
export const differences = (one, other) =>
  [...new Set([...one.keys(), ...other.keys()])]
    .filter((file) => one.get(file) !== other.get(file))
    .toSorted((a, b) => (a < b ? -1 : 1));

/** Builds twice; gives the digests of the first, the names of what differs, and core's packed file, which is left in `keep` where that is given. */
export function buildTwice(keep) {
  const scratch = mkdtempSync(join(tmpdir(), 'halfcup-builds-'));
  const mask = process.umask();
  try {
    const store = pnpm(['store', 'path'], ROOT, {}).trim();
    const [digests, other] = [HERE, ELSEWHERE].map((where) => build(scratch, where, store));
    const [file, sha256] = [...digests].find(([name]) => name.endsWith('.tgz'));
    process.umask(mask);
    if (keep !== undefined) copyFileSync(join(scratch, HERE.folder, file), join(made(keep), basename(file)));
    return { digests, differing: differences(digests, other), packed: { file: basename(file), sha256 } };
  } finally {
    process.umask(mask);
    rmSync(scratch, { recursive: true, force: true });
  }
}

function made(folder) {
  mkdirSync(folder, { recursive: true });
  return folder;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { digests, differing, packed } = buildTwice();
  if (differing.length > 0)
    console.error(
      `Two builds of the same sources differ in ${differing.length} of ${digests.size} files:\n${differing.map((file) => `  ${file}`).join('\n')}`,
    );
  else
    console.log(
      `Two builds in other folders, on other days, in other time zones and locales: ${digests.size} files, the same bytes; ${packed.file} sha256 ${packed.sha256}`,
    );
  process.exitCode = differing.length > 0 ? 1 : 0;
}
