/**
 * What a page pays for core: bundles of the installed package, tree-shaken and minified by Vite, gzip.
 * `node scripts/proof/sizes.mjs [--record]` prints them; ends with 1 over a hard limit or more than 10 % over the size
 * recorded in sizes.json, which `--record` writes anew. 1 kB is 1,000 bytes.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { expect, proven, readJson, runAlone } from './project.mjs';

const RECORDED = fileURLToPath(new URL('sizes.json', import.meta.url));
const SLACK = 1.1;
const FACES = ['', '/geometry', '/gpx', '/geojson', '/raceday', '/sheets'];

/** What needs neither Turf nor zod, which read plans and GeoJSON. Review is apart: its checks of zones load two modules of Turf. */
const PURE = [
  "export * from '@halfcup/core/geometry';",
  "export * from '@halfcup/core/gpx';",
  "export * from '@halfcup/core/raceday';",
  "export { courseStage, dayStage, layoutStage, passStage, findingLine } from '@halfcup/core';",
  "export { formatClock, formatDuration, formatLength, formatMass, formatMeasure, formatMinute, formatVolume, lengthIn, metres, parseClock, parseDuration, parseLength, parseMass, parseVolume } from '@halfcup/core';",
].join('\n');
const REVIEW =
  "export { analyse, analyseOn, reanalyse, CHECKS, STAGE_RULES, reviewLayout, reviewPlaced } from '@halfcup/core';";

/** `limit`: most bytes, absent where a size is only told and held to its record. `without`: what is not counted; absent: nothing is left out. */
const CASES = [
  {
    name: 'snapping only',
    what: 'buildCourse, indexCourse, passesOf, with geographiclib-geodesic, d3-array',
    limit: 21_000,
    source: "export { buildCourse, indexCourse, passesOf } from '@halfcup/core/geometry';",
  },
  {
    name: 'all pure parts',
    what: 'faces ./geometry, ./gpx, ./raceday whole, the stages from courses to layout, units; with saxes and all else that they load',
    limit: 68_000,
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

/** The minified bundle of a module's exports, and the names of what it leaves to be loaded from elsewhere. */
async function bundled(folder, { name, source, without }) {
  const input = join(folder, 'sizes', `${name.replaceAll(/\W+/gu, '-')}.js`);
  mkdirSync(join(folder, 'sizes'), { recursive: true });
  writeFileSync(input, source);
  const { output } = await build({
    root: folder,
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      target: 'es2023',
      modulePreload: false,
      rolldownOptions: { input, external: without ?? [], preserveEntrySignatures: 'strict', output: { format: 'es' } },
    },
  });
  const code = output.map((chunk) => chunk.code).join('\n');
  return {
    code,
    left: [...new Set(output.flatMap((chunk) => chunk.imports.filter((from) => !from.endsWith('.js'))))].toSorted(
      (a, b) => (a < b ? -1 : 1),
    ),
  };
}

const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

export async function proveSizes({ folder }) {
  const record = process.argv.includes('--record');
  const recorded = record ? {} : readJson(RECORDED);
  const found = {};
  for (const one of CASES) {
    const { code, left } = await bundled(folder, one);
    const size = gzipSync(code, { level: 9 }).length;
    found[one.name] = size;
    expect(code.length > 1000, `the bundle "${one.name}" holds ${code.length} bytes: nothing was bundled`);
    expect(one.without !== undefined || left.length === 0, `the bundle "${one.name}" leaves out ${left.join(', ')}`);
    expect(size <= (one.limit ?? Infinity), `"${one.name}" is ${kB(size)} gz; expected at most ${kB(one.limit)}`);
    const most = (recorded[one.name] ?? (record ? size : 0)) * SLACK;
    expect(
      size <= most,
      `"${one.name}" is ${kB(size)} gz; recorded are ${kB(recorded[one.name] ?? 0)}, and 10 % over that are allowed. Where it must grow: node scripts/proof/sizes.mjs --record`,
    );
    const limits = one.limit === undefined ? '' : `, limit ${kB(one.limit)}`;
    proven(
      `size of ${one.name}`,
      `${kB(size)} gz, ${kB(code.length)} minified${limits} (${one.what}; ${left.length === 0 ? 'nothing left out' : `not counted: ${left.join(', ')}`})`,
    );
  }
  if (record) writeFileSync(RECORDED, `${JSON.stringify(found, null, 2)}\n`);
}

await runAlone(import.meta.url, proveSizes);
