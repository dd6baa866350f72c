/**
 * The package as it is published: packed, put into an empty project with nothing but the dependencies that
 * its own manifest names (links into this workspace, so no network), imported, type-checked and run.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CORE, ROOT } from './support/build.ts';
import { OUT_AND_BACK } from './support/courses.ts';

interface Manifest {
  readonly version: string;
  readonly bin: { readonly halfcup: string };
  readonly exports: Readonly<Record<string, string | { readonly types: string; readonly default: string }>>;
  readonly dependencies: Readonly<Record<string, string>>;
}

const project = mkdtempSync(join(tmpdir(), 'halfcup-project-'));
const installed = join(project, 'node_modules/@halfcup/core');
afterAll(() => rmSync(project, { recursive: true, force: true }));

function must(command: string, args: readonly string[], cwd: string): string {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd, encoding: 'utf8' });
  expect(status, `${command} ${args.join(' ')}\n${stdout}${stderr}`).toBe(0);
  return stdout;
}

const manifest = (): Manifest => JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8')) as Manifest;

/** Files beside it that a text leads to. */
const linkedFrom = (file: string): string[] =>
  [...readFileSync(join(installed, file), 'utf8').matchAll(/\]\((?!https?:|#)([^)#]+)/gu)].map(([, link]) => link!);

/** Libraries that an installed module and all that it imports at once load; Node's own are not counted. */
function librariesBehind(module: string, seen = new Set<string>()): Set<string> {
  const file = join(installed, 'dist/packed', module);
  if (seen.has(file)) return new Set();
  seen.add(file);
  const paths = [
    ...readFileSync(file, 'utf8').matchAll(/^(?:import|export) (?:[^;'"]* from )?["']([^"']+)["'];$/gmu),
  ].map(([, path]) => path!);
  return new Set(
    paths.flatMap((path) =>
      path.startsWith('.')
        ? [...librariesBehind(join(dirname(module), path), seen)]
        : path.startsWith('node:')
          ? []
          : [path],
    ),
  );
}

function runModule(source: string): unknown {
  writeFileSync(join(project, 'use.mjs'), source);
  return JSON.parse(must(process.execPath, ['use.mjs'], project)) as unknown;
}

beforeAll(() => {
  // pnpm puts real versions in the place of its catalog; npx has it at hand wherever the tests were started with it.
  must('npx', ['--yes', '--prefer-offline', 'pnpm@12', 'pack', '--pack-destination', project], CORE);
  const tarball = readdirSync(project).find((name) => name.endsWith('.tgz'));
  mkdirSync(installed, { recursive: true });
  must('tar', ['-xzf', join(project, tarball!), '-C', installed, '--strip-components=1'], project);
  for (const name of Object.keys(manifest().dependencies)) {
    mkdirSync(dirname(join(project, 'node_modules', name)), { recursive: true });
    symlinkSync(join(CORE, 'node_modules', name), join(project, 'node_modules', name));
  }
  writeFileSync(join(project, 'package.json'), '{ "type": "module", "private": true }');
});

describe('the packed package', () => {
  it('names every dependency by a version that a registry knows, and brings its licence and no sources', () => {
    for (const version of Object.values(manifest().dependencies)) expect(version).toMatch(/^\d+\.\d+\.\d+$/u);
    const files = readdirSync(installed, { recursive: true, encoding: 'utf8' });
    for (const file of ['LICENSE', 'README.md', ...linkedFrom('README.md')]) expect(files).toContain(file);
    expect(files.filter((file) => /\.test\.|\.tsbuildinfo$|(?<!\.d)\.ts$/u.test(file))).toEqual([]);
  });

  it('gives out by each entry point all that the workspace does', async () => {
    for (const [entry, paths] of Object.entries(manifest().exports)) {
      if (typeof paths === 'string') continue;
      const packed = runModule(
        `import * as face from '@halfcup/core${entry.slice(1)}'; console.log(JSON.stringify(Object.keys(face)));`,
      );
      const own = (await import(join(CORE, 'src', basename(paths.default).replace(/js$/u, 'ts')))) as object;
      expect(packed, entry).toEqual(Object.keys(own).sort());
      expect(readFileSync(join(installed, paths.types), 'utf8'), entry).toMatch(/^export /mu);
    }
  });

  it('loads by each entry point no library but those that its work needs', () => {
    expect(librariesBehind('src/geometry.js')).toEqual(new Set(['d3-array']));
    expect(librariesBehind('src/gpx.js')).toEqual(new Set(['saxes']));
    expect(librariesBehind('cli/main.js')).toEqual(new Set([]));
  });

  it('analyses a plan from its face', () => {
    const analysed = runModule(`
      import { analyse, readPlan } from '@halfcup/core';
      import { readGpx } from '@halfcup/core/gpx';
      import { readFileSync } from 'node:fs';
      const folder = ${JSON.stringify(join(ROOT, 'fixtures/demo'))};
      const read = readPlan(readFileSync(folder + '/plan.json', 'utf8'), 'plan.json');
      const gpx = new Map(read.value.plan.courses.filter((course) => course.gpx).map((course) => [course.gpx, readGpx(readFileSync(folder + '/' + course.gpx), course.gpx).value]));
      const { ok, value } = analyse(read.value.plan, { gpx });
      console.log(JSON.stringify({ ok, stations: value.stations.map(({ id, passes }) => [id, passes.length > 0]) }));
    `);
    const plan = JSON.parse(readFileSync(join(ROOT, 'fixtures/demo/plan.json'), 'utf8')) as {
      stations: { id: string }[];
    };
    expect(analysed).toEqual({ ok: true, stations: plan.stations.map(({ id }) => [id, true]) });
  });

  it('measures and snaps from ./geometry and ./gpx alone', () => {
    const used = runModule(`
      import { buildCourse, courseLength, indexCourse, passesOf } from '@halfcup/core/geometry';
      import { readGpx } from '@halfcup/core/gpx';
      import { readFileSync } from 'node:fs';
      const document = readGpx(readFileSync(${JSON.stringify(OUT_AND_BACK)}), 'run.gpx').value;
      const course = buildCourse({ id: 'run', name: 'Run', segments: document.tracks[0].segments }).value;
      const passes = passesOf(indexCourse(course), [-118.514418, 34.081782]);
      console.log(JSON.stringify({ km: Math.round(courseLength(course) / 100) / 10, sides: passes.map(({ side }) => side) }));
    `);
    expect(used).toEqual({ km: 5.8, sides: ['left', 'right'] });
  });

  it('has types that a strict project compiles against', () => {
    const consumer = `
      import { type Analysis, type Finding, type Plan, type Result, analyse } from '@halfcup/core';
      import { type Course, courseLength } from '@halfcup/core/geometry';
      import { type GpxDocument, readGpx } from '@halfcup/core/gpx';
      export const length = (course: Course): number => courseLength(course);
      export const read = (bytes: Uint8Array): Result<GpxDocument> => readGpx(bytes, 'c.gpx');
      export const run = (plan: Plan, gpx: ReadonlyMap<string, GpxDocument>): Analysis | readonly Finding[] => {
        const result = analyse(plan, { gpx });
        return result.ok ? result.value : result.findings;
      };
      // @ts-expect-error A length is a number, so that this file does not compile where types are missing.
      export const wrong: string = courseLength({} as Course);
    `;
    writeFileSync(join(project, 'consumer.ts'), consumer);
    const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
    const options = [
      '--noEmit',
      '--strict',
      '--exactOptionalPropertyTypes',
      '--module',
      'nodenext',
      '--target',
      'es2023',
      '--lib',
      'es2023',
      '--types',
      '',
      'consumer.ts',
    ];
    expect(must(process.execPath, [tsc, ...options], project)).toBe('');
  });

  it('brings the command halfcup', () => {
    const { version, bin } = manifest();
    const main = join(installed, bin.halfcup);
    expect(readFileSync(main, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/u);
    expect(must(process.execPath, [main, '--version'], project)).toBe(`${version}\n`);
    const course = JSON.parse(must(process.execPath, [main, 'course', OUT_AND_BACK, '--json'], project)) as {
      points: number;
    };
    expect(course.points).toBe(1919);
  });
});
