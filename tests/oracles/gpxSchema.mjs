/**
 * Exported GPX against the GPX 1.1 schema, by xmllint (libxml2): the courses and waypoints of every fixture, and a document
 * with every field of the writer and texts that XML cannot hold. Broken copies must be refused, else xmllint checks nothing.
 * Needs `pnpm run build` and, from Debian, libxml2-utils. Exits 1 if any file is not as it should be.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeGpx } from '@halfcup/core/gpx';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../..');

const TEXT =
  '<script>alert("1")</script> & \'x\' ]]> bell\u0007 nul\u0000 half\uD800 last\uFFFF \u202E🚰\r\n\t' + 'x'.repeat(200);

function everyField() {
  const time = Date.UTC(2031, 4, 4, 6);
  const said = { name: TEXT, comment: TEXT, description: TEXT, type: TEXT };
  const point = { ...said, lon: 180, lat: -90, ele: -0.0004, time, symbol: TEXT, hdop: 1e-7 };
  const segment = {
    lon: Float64Array.of(179.99999999, -180),
    lat: Float64Array.of(90, 1e-9),
    ele: Float64Array.of(NaN, 8848.86),
    time: Float64Array.of(time, NaN),
  };
  return writeGpx({
    creator: TEXT,
    name: TEXT,
    description: TEXT,
    time,
    waypoints: [point, { lon: 0, lat: 0 }],
    routes: [{ ...said, points: [point] }],
    tracks: [{ ...said, segments: [segment] }],
  });
}

function exported(name) {
  const call = [
    join(root, 'packages/core/dist/cli/main.js'),
    'export',
    join(root, 'fixtures', name, 'plan.json'),
    '--to',
    'gpx',
  ];
  const { status, stdout, stderr } = spawnSync(process.execPath, call, { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (status !== 0)
    throw new Error(`the built command line did not export ${name} (pnpm run build comes first):\n${stderr}`);
  return stdout;
}

function validates(path) {
  const { status, stderr, error } = spawnSync(
    'xmllint',
    ['--nonet', '--noout', '--schema', join(here, 'gpx.xsd'), path],
    { encoding: 'utf8' },
  );
  if (error !== undefined)
    throw new Error(`xmllint did not start (Debian: apt-get install libxml2-utils): ${error.message}`);
  return { good: status === 0, said: stderr.trim().split('\n').slice(0, 3).join('\n') };
}

const folder = mkdtempSync(join(tmpdir(), 'halfcup-gpx-'));
let wrong = 0;

/** Prints a line a file; `wanted`: whether the schema is to accept it. */
function hold(name, text, wanted) {
  const path = join(folder, 'one.gpx');
  writeFileSync(path, text);
  const { good, said } = validates(path);
  if (good !== wanted) wrong += 1;
  console.log(
    `${good === wanted ? 'agrees   ' : 'DISAGREES'} ${name}: ${good ? 'validates' : 'refused'}, by xmllint against GPX 1.1${good === wanted ? '' : `\n${said}`}`,
  );
}

try {
  const names = readdirSync(join(root, 'fixtures')).filter((name) =>
    existsSync(join(root, 'fixtures', name, 'plan.json')),
  );
  const files = new Map(names.map((name) => [name, exported(name)]));
  for (const [name, text] of files) hold(`export of ${name}`, text, true);
  const every = everyField();
  hold('a document with every field', every, true);
  hold('the same with an element out of order', every.replace(/(<cmt>.*?<\/cmt>)(<desc>.*?<\/desc>)/su, '$2$1'), false);
  hold('the same with a longitude of 180', every.replaceAll('lon="-180.0000000"', 'lon="180.0000000"'), false);
  hold(
    'a real recording of another program without a namespace',
    readFileSync(join(root, 'node_modules/gpxparser/test/test.xml'), 'utf8'),
    false,
  );
  console.log(`${files.size + 4} files held against the schema, ${wrong} not as expected`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = wrong > 0 ? 1 : 0;
