/** What the command line shows of hostile names, values and file names: no control character but a line's end. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cleanText } from '../packages/core/cli/clean.ts';
import { COMMANDS } from '../packages/core/cli/commands.ts';
import { halfcupIn } from './support/halfcup.ts';

/** Escape and string terminators, C1 controls, turns of the reading order, a carriage return, a bell. */
const HOSTILE = 'A\u001b[2J\u001b]0;owned\u0007B\u009b31mC\u202eD\u2066E\rF\u0000G\u200fH\u2028I';
// oxlint-disable-next-line no-control-regex
const CONTROL = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069\u2028\u2029]/u;

/** Formats for other programs, whose lines end as they ask and which keep names as they are, but for controls. */
const DATA = new Set(['gpx', 'csv', 'ics', 'order', 'crew', '--left-form']);
// oxlint-disable-next-line no-control-regex
const CONTROL_OF_DATA = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]|\r(?!\n)/u;

/** As an argument: the system allows no NUL there. */
const NAMED = HOSTILE.replaceAll('\u0000', '');
const NAMED_GPX = `${NAMED}.gpx`;

const FILE = 'pl\u001b[31man\u202e.json';
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfcup-clean-'));
  const gpx = `<gpx version="1.1" creator="t"><trk><name>x</name><trkseg>${[0, 1, 2].map((k) => `<trkpt lat="-33.2" lon="${-17.4 + k / 100}"/>`).join('')}</trkseg></trk></gpx>`;
  writeFileSync(join(folder, 'c.gpx'), gpx);
  const plan = {
    format: 'halfcup-plan',
    version: 1,
    name: HOSTILE,
    revision: HOSTILE,
    date: '2027-09-12',
    timeZone: 'Etc/UTC',
    courses: [{ id: 'c', name: HOSTILE, gpx: 'c.gpx' }],
    races: [
      {
        id: 'r',
        name: HOSTILE,
        course: 'c',
        waves: [{ time: '08:00', entrants: 300 }],
        finish: { median: '15 min', spread: 0.2 },
      },
    ],
    stations: [
      {
        id: 's1',
        name: HOSTILE,
        on: { course: 'c', measure: '0.6 km', side: 'right' },
        note: HOSTILE,
        people: { captain: HOSTILE },
        points: [{ kind: 'drop', at: [-17.394, -33.2], name: HOSTILE, street: HOSTILE, note: HOSTILE }],
      },
    ],
    vehicles: [{ id: 'v', name: HOSTILE, from: '05:00' }],
    contacts: { emergency: HOSTILE, raceControl: HOSTILE },
    variants: [{ name: HOSTILE, stations: { s1: { side: 'left' } } }],
    waivers: [{ code: 'no-contacts', by: HOSTILE, reason: HOSTILE }],
  };
  for (const name of ['p.json', FILE]) writeFileSync(join(folder, name), JSON.stringify(plan));
  writeFileSync(
    join(folder, 'bad.json'),
    `{ "format": "halfcup-plan", "version": 1, "${HOSTILE.replaceAll(/\p{Cc}/gu, '')}": 1 }`,
  );
  writeFileSync(join(folder, NAMED_GPX), '<gpx>');
  // What XML allows of it: no C0 but tab and line ends.
  // oxlint-disable-next-line no-control-regex
  const inXml = HOSTILE.replaceAll(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/gu, '');
  writeFileSync(
    join(folder, 'names.gpx'),
    gpx
      .replace('<name>x</name>', `<name>${inXml}</name>`)
      .replace('</trk>', `</trk><trk><name>${inXml} 2</name></trk>`)
      .replace('<trk>', `<wpt lat="-33.2" lon="-17.394"><name>s1 ${inXml}</name><cmt>${inXml}</cmt></wpt><trk>`),
  );
  const geometry = { type: 'LineString', coordinates: [[-17.4, -33.2], [-17.39, -33.2]] }; // prettier-ignore
  const properties = { highway: 'residential', name: HOSTILE, '@id': HOSTILE };
  writeFileSync(
    join(folder, 'streets.geojson'),
    JSON.stringify({ type: 'FeatureCollection', features: [{ type: 'Feature', id: 'way/1', geometry, properties }] }),
  );
  writeFileSync(
    join(folder, 'list.csv'),
    `name,distance,side,${HOSTILE.replaceAll('\r', '')}\n"${HOSTILE}","${HOSTILE}",left,1\nx,0.5,"${HOSTILE}",1\n`,
  );
  writeFileSync(
    join(folder, 'crew.csv'),
    `name,station,from\n"${HOSTILE}","${HOSTILE}",1\n"${HOSTILE}",s1,"${HOSTILE}"\n`,
  );
  writeFileSync(join(folder, 'left.csv'), `station,packs of cups left\n"${HOSTILE}","${HOSTILE}"\ns1,"${HOSTILE}"\n`);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a hostile name', () => {
  const calls: readonly (readonly string[])[] = [
    ['review', 'p.json'],
    ['review', 'p.json', '--all'],
    ['review', FILE],
    ['review', 'p.json', '--json'],
    ['review', 'p.json', FILE, '--json-lines'],
    ['layout', 'p.json'],
    ['raceday', 'p.json'],
    ['raceday', 'p.json', '--json'],
    ['course', 'c.gpx'],
    ['course', NAMED_GPX],
    ['compare', 'p.json', NAMED],
    ['improve', 'p.json', '--only', 's1'],
    ['improve', 'p.json', '--only', NAMED],
    ['compare', 'p.json', 'none'],
    ['snap', 'c.gpx', '-17.394,-33.2'],
    ['snap', NAMED_GPX],
    ['snap', NAMED],
    ['course', 'names.gpx', '--track', NAMED],
    ['course', 'names.gpx', '--mark', NAMED],
    ['snap', 'names.gpx'],
    ['start', NAMED, 'c.gpx'],
    ['start', NAMED, 'names.gpx', '--json'],
    ['start', 'x', 'c.gpx', '--race', NAMED],
    ['start', 'x', 'c.gpx', '--stations', 'list.csv'],
    ['review', 'p.json', '--placed', 'names.gpx'],
    ['raceday', 'p.json', '--roster', 'crew.csv'],
    ['raceday', 'p.json', '--left', 'left.csv'],
    ['raceday', 'p.json', '--left-form'],
    ['raceday', 'p.json', '--learn'],
    ['sheets', 'p.json', '--out', NAMED],
    ['sheets', 'p.json'],
    ['export', 'p.json', '--to', 'geojson'],
    ['export', 'p.json', '--to', 'gpx'],
    ['export', 'p.json', '--to', 'csv'],
    ['export', 'p.json', '--to', 'ics'],
    ['export', 'p.json', '--to', 'order'],
    ['export', 'p.json', '--to', 'crew'],
    ['export', 'p.json', '--to', NAMED],
    ['schema', NAMED],
    ['schema', 'plan'],
    ['layout', 'p.json', '--variant', NAMED],
    ['layout', 'p.json', `--${NAMED}`],
    ['layout', 'p.json', '--json'],
    ['ground', 'streets.geojson', 'p.json'],
    ['ground', 'streets.geojson', 'p.json', '--json'],
    ['ground', NAMED_GPX, 'p.json'],
    ['ground', NAMED, 'p.json'],
    ['--limits'],
    ['review', 'bad.json'],
    [NAMED],
    ['review', '--out', NAMED],
  ];

  it.each(calls)('leaves no control in what is printed: %j %j', async (...call) => {
    const { out, err } = await halfcupIn(folder, ...call.filter((part) => typeof part === 'string'));
    const control = call.some((part) => DATA.has(part)) ? CONTROL_OF_DATA : CONTROL;
    expect(out.length + err.length).toBeGreaterThan(0);
    for (const text of [out, err]) {
      const found = control.exec(text);
      expect(found === null ? null : JSON.stringify(text.slice(found.index - 30, found.index + 10))).toBeNull();
    }
  });

  it('is tried with every command', () => {
    expect(COMMANDS.map(({ name }) => name).filter((name) => !calls.some(([first]) => first === name))).toEqual([]);
  });

  it('stays what it is in JSON', async () => {
    const { out } = await halfcupIn(folder, 'review', 'p.json', '--json');
    expect(JSON.stringify(JSON.parse(out))).toContain('\u202e');
  });
});

it('keeps Halfcup’s own colours on a screen that has them, and no other sequence', () => {
  expect(cleanText('\u001b[1mHead\u001b[22m \u001b[31mx\u001b[39m\n', true)).toBe(
    '\u001b[1mHead\u001b[22m \u001b[31mx\u001b[39m\n',
  );
  expect(cleanText('\u001b[2J\u001b[1mx', true)).toBe('\\u{1b}[2J\u001b[1mx');
  expect(cleanText('\u001b[1mx', false)).toBe('\\u{1b}[1mx');
});
