/** Units and the order of coordinates in the types: what mixes them up does not compile, what keeps them does. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { CORE, ROOT } from './support/build.ts';

const HEAD = `
import { type LonLat } from '@halfcup/core';
import { type Metres } from '@halfcup/core/plan';
import { formatDuration, formatLength, parseDuration, parseLength } from '@halfcup/core/units';
import { type Course, type IndexedCourse, type Pass, courseLength, passesOf, pointAt, segmentLength } from '@halfcup/core/geometry';
declare const course: Course;
declare const indexed: IndexedCourse;
declare const pass: Pass;
declare const at: LonLat;
const far = parseLength('60 yd');
const long = parseDuration('4:25:00');
`;

const MIXED_UP: Readonly<Record<string, string>> = {
  'a position turned round': 'passesOf(indexed, [at[1], at[0]]);',
  'a foot taken apart and put together the other way':
    'const [lon, lat] = pass.foot; const swapped: LonLat = [lat, lon];',
  'latitude given for longitude': 'segmentLength(at[1], at[0], at[1], at[0]);',
  'an azimuth for a course distance': 'pointAt(course, pass.azimuthDeg);',
  'a duration for a length': "if (long.ok) formatLength(long.value, 'metric', 'long');",
  'a length for a duration': 'formatDuration(courseLength(course));',
  'a duration for a snap radius':
    'if (long.ok) passesOf(indexed, at, { snapRadius: long.value, pinR95: 5, courseR95: 3, sideConfidence: 0.95 });',
  'a length not known to be one': 'pointAt(course, far.value);',
  'a text for a length': "pointAt(course, '5 km');",
  'an elevation in the position': 'passesOf(indexed, [at[0], at[1], 12]);',
};

const KEPT: readonly string[] = [
  'passesOf(indexed, [-17.4, -33.2]);',
  'passesOf(indexed, [at[0] + 0.001, at[1]]);',
  'segmentLength(at[0], at[1], pass.foot[0], pass.foot[1]);',
  'pointAt(course, pass.measure - 54.8, pass.offset);',
  'if (far.ok) passesOf(indexed, at, { snapRadius: far.value, pinR95: 5, courseR95: 3, sideConfidence: 0.95 });',
  'const measure: Metres = courseLength(course) / 2; const plain: number = measure;',
  'if (long.ok) formatDuration(long.value);',
];

const folder = mkdtempSync(join(tmpdir(), 'halfcup-types-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

beforeAll(async () => {
  mkdirSync(join(folder, 'node_modules/@halfcup'), { recursive: true });
  symlinkSync(CORE, join(folder, 'node_modules/@halfcup/core'));
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
});

/** Names of the files that do not compile. */
function refusedOf(files: Readonly<Record<string, string>>): readonly string[] {
  for (const [name, text] of Object.entries(files))
    writeFileSync(join(folder, name), `${HEAD}{ ${text} }\nexport {};\n`);
  const options = [
    '--noEmit',
    '--strict',
    '--skipLibCheck',
    '--module',
    'nodenext',
    '--target',
    'es2023',
    '--lib',
    'es2023',
    '--types',
    '',
    '--pretty',
    'false',
  ];
  const { stdout } = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules/typescript/bin/tsc'), ...options, ...Object.keys(files)],
    { cwd: folder, encoding: 'utf8' },
  );
  expect(stdout).not.toContain('Cannot find module');
  return [...new Set([...stdout.matchAll(/^([\w-]+\.ts)\(/gmu)].map(([, name]) => name!))].toSorted();
}

it('refuses each call that mixes up units or the order of coordinates', () => {
  const files = Object.fromEntries(
    Object.entries(MIXED_UP).map(([what, text]) => [`${what.replaceAll(' ', '-')}.ts`, text]),
  );
  expect(refusedOf(files)).toEqual(Object.keys(files).toSorted());
});

it('takes plain numbers, sums of quantities, and quantities of the right unit', () => {
  expect(refusedOf(Object.fromEntries(KEPT.map((text, k) => [`kept-${k}.ts`, text])))).toEqual([]);
});
