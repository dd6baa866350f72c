/**
 * What a page pays for core: bundles of the installed package, tree-shaken and minified by Vite and by esbuild, gzip.
 * `node scripts/proof/sizes.mjs [--record]` prints them; ends with 1 over a hard limit or more than 10 % over the size
 * recorded in sizes.json, which `--record` writes anew, and where a bundle has languages of zod that nobody asked for.
 * 1 kB is 1,000 bytes.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import * as esbuild from 'esbuild';
import { build } from 'vite';
import { expect, proven, readJson, runAlone } from './project.mjs';

const RECORDED = fileURLToPath(new URL('sizes.json', import.meta.url));
const SLACK = 1.1;
const FACES = ['', '/geometry', '/gpx', '/geojson', '/ground', '/raceday', '/papers'];

/** What needs neither Turf nor zod, which read plans and GeoJSON. Review is apart: its checks of zones load two modules of Turf. */
const PURE = [
  "export * from '@halfcup/core/geometry';",
  "export * from '@halfcup/core/gpx';",
  "export * from '@halfcup/core/raceday';",
  "export { courseStage, dayStage, layoutStage, passStage } from '@halfcup/core/stages';",
  "export { findingLine } from '@halfcup/core';",
  "export { formatClock, formatDuration, formatLength, formatMass, formatMeasure, formatMinute, formatVolume, lengthIn, metres, parseClock, parseDuration, parseLength, parseMass, parseVolume } from '@halfcup/core/units';",
].join('\n');
const REVIEW =
  "export { analyse, reanalyse, reviewBuilt, reviewPlaced } from '@halfcup/core';\nexport { analyseOn, CHECKS, STAGE_RULES, reviewLayout } from '@halfcup/core/stages';";

/** As esbuild wants them named. */
const TURF = ['@turf/*'];

/** `limit`: most bytes by bundler, the figures of BENCHMARKS.md with a small margin; absent where a size is only told and held to its record. `without`: what is not counted; absent: nothing is left out. */
const CASES = [
  {
    name: 'snapping only',
    what: 'buildCourse, indexCourse, passesOf, with geographiclib-geodesic, d3-array',
    limit: { Vite: 24_600, esbuild: 29_200 },
    source: "export { buildCourse, indexCourse, passesOf } from '@halfcup/core/geometry';",
  },
  {
    name: 'all pure parts',
    what: 'faces ./geometry, ./gpx, ./raceday whole, the stages from courses to layout, units; with saxes and all else that they load',
    limit: { Vite: 106_000, esbuild: 111_000 },
    source: PURE,
  },
  {
    name: 'pure parts and review',
    what: 'the same with analyse, every check and the review of placed points',
    without: /^@turf\//u,
    source: `${PURE}\n${REVIEW}`,
  },
  ...FACES.map((face) => ({
    name: `@halfcup/core${face}`,
    what: 'whole',
    source: `export * from '@halfcup/core${face}';`,
  })),
];

/** The module whose exports are bundled, as a file of the project. */
function inputOf(folder, { name, source }) {
  const input = join(folder, 'sizes', `${name.replaceAll(/\W+/gu, '-')}.js`);
  mkdirSync(join(folder, 'sizes'), { recursive: true });
  writeFileSync(input, source);
  return input;
}

const sorted = (names) => [...new Set(names)].toSorted((a, b) => (a < b ? -1 : 1));

/** The minified bundle of a module's exports, and the names of what it leaves to be loaded from elsewhere. */
async function byVite(folder, one) {
  const { output } = await build({
    root: folder,
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      target: 'es2023',
      modulePreload: false,
      rolldownOptions: {
        input: inputOf(folder, one),
        external: one.without ?? [],
        preserveEntrySignatures: 'strict',
        output: { format: 'es' },
      },
    },
  });
  return {
    code: output.map((chunk) => chunk.code).join('\n'),
    left: sorted(output.flatMap((chunk) => chunk.imports.filter((from) => !from.endsWith('.js')))),
    modules: output.flatMap((chunk) =>
      Object.entries(chunk.modules).flatMap(([module, { renderedLength }]) => (renderedLength > 0 ? [module] : [])),
    ),
  };
}

/** The same by esbuild, which shakes a namespace out of a bundle only where it is imported as one. */
async function byEsbuild(folder, one) {
  const { outputFiles, metafile } = await esbuild.build({
    entryPoints: [inputOf(folder, one)],
    absWorkingDir: folder,
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    format: 'esm',
    target: 'es2023',
    charset: 'utf8',
    logLevel: 'error',
    external: one.without === undefined ? [] : TURF,
  });
  const [output] = Object.values(metafile.outputs);
  return {
    code: outputFiles[0].text,
    left: sorted(output.imports.flatMap(({ path, external }) => (external ? [path] : []))),
    modules: Object.entries(output.inputs).flatMap(([module, { bytesInOutput }]) =>
      bytesInOutput > 0 ? [module] : [],
    ),
  };
}

/** Of the languages in which zod can speak, its default alone. */
const languagesIn = (modules) => modules.filter((name) => /zod\/v4\/locales\/(?!en\.)/u.test(name));

const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

export async function proveSizes({ folder }) {
  const record = process.argv.includes('--record');
  const recorded = record ? {} : readJson(RECORDED);
  const found = {};
  for (const one of CASES) {
    found[one.name] = {};
    for (const [bundler, bundled] of [
      ['Vite', byVite],
      ['esbuild', byEsbuild],
    ]) {
      const size = held(
        one,
        bundler,
        await bundled(folder, one),
        record ? Infinity : (recorded[one.name]?.[bundler] ?? 0),
      );
      found[one.name][bundler] = size;
    }
  }
  if (record) writeFileSync(RECORDED, `${JSON.stringify(found, null, 2)}\n`);
}

/** The size of a bundle, gzip; throws where it is too large or not what it should be. */
function held({ name, what, limit: limits, without }, bundler, { code, left, modules }, before) {
  const size = gzipSync(code, { level: 9 }).length;
  const limit = limits?.[bundler];
  const bundle = `the bundle "${name}" by ${bundler}`;
  expect(code.length > 1000, `${bundle} holds ${code.length} bytes: nothing was bundled`);
  expect(without !== undefined || left.length === 0, `${bundle} leaves out ${left.join(', ')}`);
  const languages = languagesIn(modules);
  expect(languages.length === 0, `${bundle} holds ${languages.length} languages of zod, such as ${languages[0]}`);
  expect(size <= (limit ?? Infinity), `${bundle} is ${kB(size)} gz; expected at most ${kB(limit)}`);
  expect(
    size <= before * SLACK,
    `${bundle} is ${kB(size)} gz; recorded are ${kB(before)}, and 10 % over that are allowed. Where it must grow: node scripts/proof/sizes.mjs --record`,
  );
  const most = limit === undefined ? '' : `, limit ${kB(limit)}`;
  proven(
    `size of ${name} by ${bundler}`,
    `${kB(size)} gz, ${kB(code.length)} minified${most} (${what}; ${left.length === 0 ? 'nothing left out' : `not counted: ${left.join(', ')}`})`,
  );
  return size;
}

await runAlone(import.meta.url, proveSizes);
