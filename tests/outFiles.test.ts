/** What is there already stays, whichever command writes to it, until somebody says --force; nothing long is told to who is no terminal. */
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../packages/core/cli/commands.ts';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import { folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const COURSE = gpxText([straight(OCEAN, 90, 51, 100)], [{ at: OCEAN, name: 'here' }]);
const races = [
  { id: 'm', course: 'c', waves: [{ time: '07:00', entrants: 100 }], finish: { median: '0:30:00', spread: 0.1 } },
];
const PLAN = planText([{ id: 's1', on: { course: 'c', measure: 2500, side: 'right' } }], {
  races,
  date: '2027-09-12',
  timeZone: 'Etc/UTC',
  variants: [{ name: 'other', stations: { s1: { side: 'right' } } }],
});
const GATE = `<osm version="0.6"><node id="1" lat="${OCEAN[1]}" lon="${OCEAN[0]}"><tag k="barrier" v="gate"/></node></osm>`;
const folder = folderWith({ 'c.gpx': COURSE, 'p.json': PLAN, 'town.osm': GATE });

/** A call of each command, of `export` one a format; `--out` takes a file unless told otherwise. */
const CALLS: { readonly [command: string]: readonly (readonly string[])[] } = {
  course: [['c.gpx']],
  snap: [['c.gpx']],
  start: [['X', 'c.gpx', '--every', '1km']],
  layout: [['p.json']],
  raceday: [['p.json']],
  compare: [['p.json', 'other']],
  improve: [['p.json']],
  review: [['p.json'], ['p.json', 'p.json', '--json-lines']],
  export: ['geojson', 'gpx', 'csv', 'ics', 'order', 'crew'].map((to) => ['p.json', '--to', to]),
  ground: [['town.osm', 'p.json']],
  sheets: [['p.json']],
  schema: [['plan']],
};

it('knows a call of every command that there is', () => {
  expect(Object.keys(CALLS).toSorted()).toEqual(COMMANDS.map(({ name }) => name).toSorted());
  const formats = COMMANDS.find(({ name }) => name === 'export')!.options.find(({ name }) => name === 'to')!.kind;
  expect(CALLS['export']!.map((call) => call.at(-1))).toEqual(formats);
});

const intoFiles = Object.entries(CALLS).flatMap(([command, calls]) =>
  command === 'sheets' ? [] : calls.map((call) => [command, ...call]),
);

describe.each(
  intoFiles.map((call, k) => ({
    call,
    shown: call.join(' '),
    file: `out-${k}.${call.at(-1) === 'gpx' ? 'gpx' : 'txt'}`,
  })),
)('halfcup $shown --out', ({ call, file }) => {
  const kept = 'kept';

  it('keeps the file that is there, says so, and replaces it with --force', async () => {
    writeFileSync(join(folder, file), kept);
    expect(await refusalIn(folder, ...call, '--out', file)).toEqual([
      expect.stringContaining(
        `${file}: error: this file exists already; choose another name, or replace it with --force`,
      ),
    ]);
    expect(readFileSync(join(folder, file), 'utf8')).toBe(kept);
    const { exit, err } = await halfcupIn(folder, ...call, '--out', file, '--force');
    expect([exit, err]).toEqual([0, '']);
    expect(readFileSync(join(folder, file), 'utf8')).not.toBe(kept);
  });

  it('never writes over the files that it reads, with --force neither', async () => {
    for (const input of call
      .filter((word) => word.endsWith('.gpx') || word.endsWith('.json'))
      .concat(call[1] === 'p.json' ? ['c.gpx'] : [])) {
      // A changed plan may take the place of the plan that it was made from.
      if (call[0] === 'improve' && input === 'p.json') continue;
      expect(await refusalIn(folder, ...call, '--out', input, '--force')).toHaveLength(1);
    }
    expect([readFileSync(join(folder, 'c.gpx'), 'utf8'), readFileSync(join(folder, 'p.json'), 'utf8')]).toEqual([
      COURSE,
      PLAN,
    ]);
  });
});

describe('halfcup sheets --out FOLDER', () => {
  it('keeps a paper that is there, and writes none of the others, until --force is said', async () => {
    expect((await halfcupIn(folder, 'sheets', 'p.json', '--out', 'first')).exit).toBe(0);
    const name = readdirSync(join(folder, 'first')).toSorted()[0]!;
    mkdirSync(join(folder, 'second'));
    writeFileSync(join(folder, 'second', name), 'kept');
    await refusalIn(folder, 'sheets', 'p.json', '--out', 'second');
    expect([readdirSync(join(folder, 'second')), readFileSync(join(folder, 'second', name), 'utf8')]).toEqual([
      [name],
      'kept',
    ]);
    expect((await halfcupIn(folder, 'sheets', 'p.json', '--out', 'second', '--force')).exit).toBe(0);
    expect(readFileSync(join(folder, 'second', name), 'utf8')).not.toBe('kept');
  });
});

describe('halfcup export --out', () => {
  it('writes GPX to a name that ends so, and nothing else', async () => {
    expect(await halfcupIn(folder, 'export', 'p.json', '--to', 'gpx', '--out', 'new.gpx')).toEqual({
      exit: 0,
      out: '',
      err: '',
    });
    expect(readFileSync(join(folder, 'new.gpx'), 'utf8')).toContain('<name>01A SIGN</name>');
    for (const to of ['geojson', 'csv', 'ics'])
      expect(await refusalIn(folder, 'export', 'p.json', '--to', to, '--out', 'other.gpx')).toEqual([
        expect.stringContaining('writes no GPX'),
      ]);
  });

  it('gives the bytes that are printed, line ends among them', async () => {
    for (const to of ['gpx', 'csv', 'geojson']) {
      const { out } = await halfcupIn(folder, 'export', 'p.json', '--to', to);
      await halfcupIn(folder, 'export', 'p.json', '--to', to, '--out', `same-${to}.txt`);
      expect(readFileSync(join(folder, `same-${to}.txt`), 'utf8')).toBe(out);
    }
  });

  it('lays a variant over the plan, and tells what has no place', async () => {
    const moved = planText([{ id: 's1', on: { course: 'c', measure: 2500, side: 'right' } }], {
      variants: [{ name: 'early', stations: { s1: { on: { course: 'c', measure: 50, side: 'right' } } } }],
    });
    writeFileSync(join(folder, 'v.json'), moved);
    const { exit, out, err } = await halfcupIn(folder, 'export', 'v.json', '--to', 'gpx', '--variant', 'early');
    expect([
      exit,
      out.includes('SIGN'),
      out.includes('TRASH FROM'),
      /<metadata><name>.* \(early\)<\/name>/u.test(out),
    ]).toEqual([0, false, true, true]);
    expect(err).toMatch(/^v\.json:\d+:\d+: note: These have no place on the ground: sign\./u);
    expect((await halfcupIn(folder, 'export', 'v.json', '--to', 'gpx')).err).toBe('');
  });
});
