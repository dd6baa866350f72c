/**
 * The two steps of a release that a person should not do by hand.
 *   node scripts/release.mjs version        the changesets become a version and a section of the CHANGELOG, and the
 *                                           version goes to every place that tells it
 *   node scripts/release.mjs pack FOLDER    proves that the committed tree builds to the same bytes twice, and leaves
 *                                           core's packed file in FOLDER, with its SHA-256
 * Publishing and the tag stay with a person: see DEVELOPERS.md.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const CORE = 'packages/core/package.json';
/** Everything else that tells the version, with the place in it. Core's package.json is changed by changesets. */
const TOLD = [
  ['package.json', /(?<=^ {2}"version": ")[^"]+(?=",$)/mu],
  ['packages/viewer/package.json', /(?<=^ {2}"version": ")[^"]+(?=",$)/mu],
  ['packages/core/src/version.ts', /(?<=^export const VERSION: string = ')[^']+(?=';$)/mu],
];

const read = (file) => readFileSync(join(ROOT, file), 'utf8');
const version = () => JSON.parse(read(CORE)).version;

function take() {
  const changesets = join(ROOT, 'node_modules/@changesets/cli/bin.js');
  const { status } = spawnSync(process.execPath, [changesets, 'version'], { cwd: ROOT, stdio: 'inherit' });
  if (status !== 0) return `changeset version ended with ${status}`;
  for (const [file, place] of TOLD) {
    const text = read(file);
    if (!place.test(text)) return `${file}: found no version; expected one that matches ${place}`;
    writeFileSync(join(ROOT, file), text.replace(place, version()));
  }
  console.log(`This is ${version()} now. Read packages/core/CHANGELOG.md, run npx -y pnpm@12 test, commit.`);
  return null;
}

/** What keeps this tree from being a release. */
function obstacles() {
  const wrong = TOLD.filter(([file, place]) => place.exec(read(file))?.[0] !== version()).map(
    ([file]) => `${file} does not tell the version ${version()} of ${CORE}`,
  );
  const waiting = readdirSync(join(ROOT, '.changeset')).filter((name) => name.endsWith('.md') && name !== 'README.md');
  const dirty = execFileSync('git', ['status', '--porcelain'], { cwd: ROOT, encoding: 'utf8' }).trim();
  return [
    ...wrong,
    ...waiting.map((name) => `.changeset/${name} is in no version yet: run node scripts/release.mjs version`),
    ...(read('packages/core/CHANGELOG.md').includes(`\n## ${version()}\n`)
      ? []
      : [`packages/core/CHANGELOG.md has no section ${version()}`]),
    ...(dirty === '' ? [] : [`the tree has changes that are not committed:\n${dirty}`]),
  ];
}

async function pack(folder) {
  const found = obstacles();
  if (found.length > 0) return found.join('\n');
  const { buildTwice } = await import('./reproducible.mjs');
  const { differing, packed } = buildTwice(folder);
  if (differing.length > 0) return `two builds differ in ${differing.join(', ')}`;
  console.log(`${packed.file}\nsha256 ${packed.sha256}`);
  return null;
}

const [step, folder] = process.argv.slice(2);
const steps = {
  version: take,
  pack: () => (folder === undefined ? 'found no folder; expected one for the packed file' : pack(folder)),
};
const trouble = Object.hasOwn(steps, step ?? '')
  ? await steps[step]()
  : `found "${step ?? ''}"; expected version or pack FOLDER`;
if (trouble !== null) {
  console.error(`release: ${trouble}`);
  process.exitCode = 1;
}
