/**
 * Lists what an install of core brings: every package of its dependency tree with its size on disk and its licence.
 * `node scripts/proof/dependencies.mjs`; ends with 1 at a licence that is not known to be permissive, or is missing.
 */
import { dirname, join } from 'node:path';
import { expect, proven, runAlone } from './project.mjs';
import { packagesIn } from './packages.mjs';

/** SPDX names of licences that ask for no more than their own text to be kept: https://spdx.org/licenses/; EDL-1.0 is Eclipse's name for BSD-3-Clause. */
const PERMISSIVE = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  'EDL-1.0',
  'ISC',
  'MIT',
  'MIT-0',
  'Unlicense',
  'Zlib',
]);

/** Misnamed in the manifest; the text in the package was read and is BSD-3-Clause. */
const READ = new Set(['arc: BSD', 'splaytree-ts: BDS-3-Clause']);

/** An SPDX expression of names with OR and AND; any other is not known. */
export const isPermissive = (license) =>
  typeof license === 'string' &&
  license
    .replaceAll(/[()]/gu, '')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((name) => PERMISSIVE.has(name)));

const kB = (bytes) => `${(bytes / 1000).toFixed(bytes < 10_000 ? 1 : 0)} kB`;

/** The package that another finds by a name, as Node looks for it: nearest folder first. */
function foundFrom(path, name, byPath) {
  const found = byPath.get(join(path, 'node_modules', name));
  return found !== undefined || dirname(path) === path ? found : foundFrom(dirname(path), name, byPath);
}

/** Lines of the tree below a package: each package where it is first met. */
function treeLines(one, byPath, met, depth = 0) {
  met.add(one);
  const line = `    ${`${'  '.repeat(depth)}${one.name} ${one.version}`.padEnd(52)} ${kB(one.bytes).padStart(10)}  ${one.license}`;
  const lines = one.dependencies.flatMap((name) => {
    const below = foundFrom(one.path, name, byPath);
    return below === undefined || met.has(below) ? [] : treeLines(below, byPath, met, depth + 1);
  });
  return [line, ...lines];
}

export function proveDependencies({ folder, core }) {
  const installed = packagesIn(folder);
  const byPath = new Map(installed.map((one) => [one.path, one]));
  const own = byPath.get(core);
  const met = new Set();
  for (const line of treeLines(own, byPath, met)) console.log(line);
  const unseen = installed.filter((one) => !met.has(one));
  expect(unseen.length === 0, `installed, but not in the tree: ${unseen.map(({ name }) => name).join(', ')}`);
  const refused = installed.filter(({ name, license }) => !isPermissive(license) && !READ.has(`${name}: ${license}`));
  expect(
    refused.length === 0,
    `not known to be permissive: ${refused.map(({ name, license }) => `${name} (${license})`).join(', ')}`,
  );
  const total = installed.reduce((sum, { bytes }) => sum + bytes, 0);
  proven(
    'every licence is permissive',
    `${installed.length} packages with core, ${(total / 1e6).toFixed(1)} MB on disk, ${(own.bytes / 1e6).toFixed(1)} MB of it core's own`,
  );
}

await runAlone(import.meta.url, proveDependencies);
