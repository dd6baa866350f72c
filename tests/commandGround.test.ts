/** `halfcup ground`: the streets beside a plan's courses, cut out of street files of every format. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { readGround } from '@halfcup/core/ground';
import { groundSchema } from '@halfcup/core/schemas';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const STREETS = join(ROOT, 'fixtures/streets');
const PLAN = JSON.stringify({
  format: 'halfcup-plan',
  version: 1,
  courses: [
    {
      id: 'c',
      line: [
        [13.3508, 52.5145],
        [13.3528, 52.5145],
      ],
    },
  ],
  races: [{ id: 'r', course: 'c' }],
  stations: [],
});
const folder = folderWith({
  'plan.json': PLAN,
  'broken.osm': '<osm>\n<node id="1"</osm>',
  'far.osm': '<osm><node id="1" lat="1" lon="1"/></osm>',
});
cpSync(STREETS, folder, { recursive: true });
const xml = readFileSync(join(folder, 'streets.osm'));
// Named as it is not: what it is shows in its content.
writeFileSync(join(folder, 'named.pbf'), gzipSync(xml));

describe('halfcup ground', () => {
  it('prints what a file holds and what of it is kept, with the credit and the day', async () => {
    const { exit, out, err } = await halfcupIn(folder, 'ground', 'streets.osm', 'plan.json');
    expect([exit, err]).toEqual([0, '']);
    expect(out).toContain('streets.osm · OpenStreetMap XML');
    expect(out).toMatch(/Credit +© OpenStreetMap contributors, ODbL 1\.0/u);
    expect(out).toMatch(/Date of the data +2017-09-13/u);
    expect(out).toMatch(/nodes +353\nways +52\nrelations +1\n/u);
  });

  it('writes ground.geojson, the same of every format, which core reads', async () => {
    const texts: string[] = [];
    for (const file of ['streets.osm', 'streets.osm.pbf', 'named.pbf']) {
      const { exit, err } = await halfcupIn(folder, 'ground', file, 'plan.json', '--out', `${file}.geojson`);
      expect([exit, err]).toEqual([0, '']);
      texts.push(readFileSync(join(folder, `${file}.geojson`), 'utf8'));
    }
    expect(new Set(texts).size).toBe(1);
    const read = readGround(texts[0]!, 'ground.geojson');
    expect(read.ok && read.value.ways.length).toBeGreaterThan(20);
    const again = await halfcupIn(folder, 'ground', 'streets.osm.geojson', 'plan.json', '--out', 'again.geojson');
    expect(again.exit).toBe(0);
    expect(readFileSync(join(folder, 'again.geojson'), 'utf8')).toBe(texts[0]);
  });

  it('prints JSON by its schema', async () => {
    const { out } = await halfcupIn(folder, 'ground', 'streets.osm', 'plan.json', '--json');
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(groundSchema);
    expect(validate(JSON.parse(out)), JSON.stringify(validate.errors)).toBe(true);
    expect(JSON.parse(out)).toMatchObject({ format: 'xml', read: { nodes: 353 }, licence: 'ODbL 1.0' });
    expect(JSON.parse((await halfcupIn(folder, 'schema', 'ground')).out)).toEqual(groundSchema);
  });

  it('refuses what cannot be used, with the place', async () => {
    expect(await refusalIn(folder, 'ground', 'broken.osm', 'plan.json')).toEqual([
      expect.stringMatching(/^broken\.osm:2:\d+: error: /u),
    ]);
    expect(await refusalIn(folder, 'ground', 'far.osm', 'plan.json')).toEqual([
      expect.stringContaining('none lies within 300 m of a course'),
    ]);
    expect(await refusalIn(folder, 'ground', 'nowhere.osm', 'plan.json')).toHaveLength(1);
    expect(await refusalIn(folder, 'ground', 'streets.osm', 'nowhere.json')).toHaveLength(1);
    expect(await refusalIn(folder, 'ground', 'streets.osm')).toHaveLength(1);
  });

  it('never writes over what it reads, with --force neither', async () => {
    for (const input of ['streets.osm', 'plan.json'])
      expect((await refusalIn(folder, 'ground', 'streets.osm', 'plan.json', '--out', input, '--force'))[0]).toContain(
        'being read',
      );
    expect(readFileSync(join(folder, 'streets.osm')).equals(xml)).toBe(true);
  });
});
