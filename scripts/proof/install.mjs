/**
 * Proves that the packed and installed core works where it is used: `node scripts/proof/install.mjs`. Needs the npm
 * registry and a Chromium (`CHROMIUM_PATH`, else /usr/bin/chromium). Prints a line a proof; ends with 1 at the first that fails.
 */
import { cpSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isDeepStrictEqual } from 'node:util';
import { inBrowser } from './browser.mjs';
import { provePackage } from './package.mjs';
import { DEMO, ROOT, expect, proven, readJson, runAlone, said } from './project.mjs';

const CONSUMER = fileURLToPath(new URL('consumer', import.meta.url));
const FILES = ['plan.json', 'full.gpx', 'half.gpx'];

/** Figures of the demo as one release of Node works them out in the project. */
function figuresIn(folder, release) {
  const printed =
    release === undefined
      ? said(process.execPath, ['node.js', DEMO], folder)
      : said('npx', ['--yes', `node@${release}`, 'node.js', DEMO], folder);
  return JSON.parse(printed);
}

/** Both releases must come to the same; returns what it is. */
function proveNode(folder) {
  const own = Number(process.versions.node.split('.')[0]);
  const old = figuresIn(folder, own === 20 ? undefined : '20');
  const current = figuresIn(folder, 'latest');
  const [oldest, newest] = [old, current].map(({ node }) => Number(node.slice(1).split('.')[0]));
  expect(
    oldest === 20 && newest >= 24,
    `found Node ${old.node} and ${current.node}; expected 20 and the current release`,
  );
  expect(
    old.figures.length > 42_000 && old.figures.passes.length > 0 && old.figures.stations.length > 0,
    `the figures of the demo are ${JSON.stringify(old.figures)}`,
  );
  expect(
    isDeepStrictEqual(old.figures, current.figures),
    `Node ${old.node} comes to ${JSON.stringify(old.figures)}, Node ${current.node} to ${JSON.stringify(current.figures)}`,
  );
  const { points, length, papers } = old.figures;
  proven(
    'every entry point as ESM in Node',
    `${old.node} and ${current.node} agree on ${points} points, ${length.toFixed(3)} m, ${old.figures.stations.length} stations, ${papers.length} papers`,
  );
  return old.figures;
}

/** This workspace's compiler, and the one before it, which most projects still have. */
const COMPILERS = ['node_modules/typescript', 'scripts/api/node_modules/typescript'];
const RESOLUTIONS = [
  ['nodenext', 'nodenext', 'es2023'],
  ['bundler', 'esnext', 'es2023,dom'],
];

function proveTypes(folder) {
  const strict = [
    '--noEmit',
    '--strict',
    '--exactOptionalPropertyTypes',
    '--noUncheckedIndexedAccess',
    '--verbatimModuleSyntax',
    '--skipLibCheck',
    'false',
    '--target',
    'es2023',
  ];
  for (const compiler of COMPILERS) {
    const { version } = readJson(join(ROOT, compiler, 'package.json'));
    for (const [resolution, module, lib] of RESOLUTIONS) {
      said(
        process.execPath,
        [
          join(ROOT, compiler, 'bin/tsc'),
          ...strict,
          '--module',
          module,
          '--moduleResolution',
          resolution,
          '--lib',
          lib,
          'consumer.ts',
        ],
        folder,
      );
      proven(
        'types in a strict project that checks libraries too',
        `TypeScript ${version}, moduleResolution ${resolution}, lib ${lib}`,
      );
    }
  }
}

async function proveBrowser(folder, expected) {
  mkdirSync(join(folder, 'public'));
  for (const file of FILES) cpSync(join(DEMO, file), join(folder, 'public', file));
  const shown = await inBrowser(folder, ['page', 'worker']);
  for (const [where, figures] of Object.entries(shown)) {
    expect(
      isDeepStrictEqual(figures, expected),
      `the ${where} shows ${JSON.stringify(figures)}; Node came to ${JSON.stringify(expected)}`,
    );
  }
  proven('built by Vite, in a page and in a web worker of Chromium', 'the same figures as in Node, to the last digit');
}

function proveCommand({ folder, tarball, core }) {
  const { version } = readJson(join(core, 'package.json'));
  expect(
    said('npx', ['--no-install', 'halfcup', '--version'], folder) === `${version}\n`,
    'halfcup --version does not print the version of package.json',
  );
  const plan = join(DEMO, 'plan.json');
  // The demo holds one error on purpose, for which a review ends with 1.
  const review = JSON.parse(said('npx', ['--no-install', 'halfcup', 'review', plan, '--json'], folder, 1));
  expect(review.checks.length > 20, `halfcup review gave ${JSON.stringify(review).slice(0, 300)}`);
  const lines = said('npx', ['--no-install', 'halfcup', 'review', plan, plan, plan, '--json-lines'], folder, 1)
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(
    lines.length === 3 && lines.every(({ file, checks }) => file === plan && checks.length === review.checks.length),
    'halfcup review --json-lines did not print a review a plan',
  );
  proven(
    'npx halfcup in the project',
    `version ${version}; review of the demo: ${review.checks.length} checks; 3 plans as JSON lines`,
  );
  const empty = mkdtempSync(join(folder, 'empty-'));
  writeFileSync(join(empty, 'package.json'), '{}');
  expect(
    said('npx', ['--yes', '--package', tarball, 'halfcup', '--version'], empty) === `${version}\n`,
    'npx from the packed file does not print the version',
  );
  proven('npx halfcup straight from the packed file');
}

export async function proveInstall(project) {
  const { folder } = project;
  cpSync(CONSUMER, folder, { recursive: true });
  provePackage(project);
  const figures = proveNode(folder);
  proveTypes(folder);
  await proveBrowser(folder, figures);
  proveCommand(project);
}

await runAlone(import.meta.url, proveInstall);
