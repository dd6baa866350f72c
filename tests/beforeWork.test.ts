/** What a call cannot write to is refused before any work is done for it; race day is not made of results that cannot be read. */
import { execFileSync } from 'node:child_process';
import { lstatSync, readdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import { folderWith, halfcupIn, halfcupWith, refusalIn } from './support/halfcup.ts';

const COURSE = gpxText([straight(OCEAN, 90, 51, 100)]);
const STATION = { id: 's1', on: { course: 'c', measure: 2500, side: 'right' } };
const wave = { time: '07:00', entrants: 100 };
const race = { id: 'm', course: 'c', waves: [wave], finish: { median: '0:30:00', spread: 0.1 } };
const past = { id: 'p', course: 'c', waves: [wave], finish: { csv: 'r.csv', column: 'net' } };
const files = (races: readonly unknown[], results: string): Readonly<Record<string, string>> => ({
  'c.gpx': COURSE,
  'p.json': planText([STATION], { races }),
  'r.csv': results,
  'kept.txt': 'kept',
});

describe('a file that cannot be written to', () => {
  // The course is missing: whoever began with the work would say that.
  const folder = folderWith({ 'p.json': planText([STATION]), 'kept.txt': 'kept', 'kept.html': 'kept' });
  execFileSync('mkfifo', [join(folder, 'pipe')]);
  symlinkSync('nowhere', join(folder, 'link'));

  it.each([
    ['kept.txt', /^kept\.txt: error: this file exists already/u],
    ['.', /^\.: error: this is a folder/u],
    ['no/better.json', /^no\/better\.json: error: folder not found/u],
    ['pipe', /^pipe: error: this is a pipe/u],
    ['link', /^link: error: this link leads nowhere/u],
  ])('is refused before the plan is worked out: %s', async (out, said) => {
    for (const call of ['layout', 'improve', 'raceday'])
      expect(await refusalIn(folder, call, 'p.json', '--out', out)).toEqual([expect.stringMatching(said)]);
  });

  it('is refused as a report and as a folder in the same way', async () => {
    expect(await refusalIn(folder, 'review', 'p.json', '--report', 'kept.html')).toEqual([
      expect.stringMatching(/^kept\.html: error: this file exists already/u),
    ]);
    expect(await refusalIn(folder, 'sheets', 'p.json', '--out', 'kept.txt')).toEqual([
      expect.stringMatching(/^kept\.txt: error: this is a file; give a folder/u),
    ]);
  });

  it('stays the link that it is, with --force too', async () => {
    const plan = folderWith(files([race], ''));
    symlinkSync('nowhere', join(plan, 'link'));
    const before = readdirSync(plan);
    expect(await refusalIn(plan, 'layout', 'p.json', '--out', 'link', '--force')).toEqual([
      expect.stringMatching(/this link leads nowhere/u),
    ]);
    expect(lstatSync(join(plan, 'link')).isSymbolicLink()).toBe(true);
    expect(readdirSync(plan)).toEqual(before);
  });
});

describe('results that cannot be read', () => {
  const folder = folderWith(files([race, past], 'net\n"0:30:00\n'));

  it.each(['order', 'crew'])('make no %s, which would lack a race', async (to) => {
    const said = await refusalIn(folder, 'export', 'p.json', '--to', to);
    expect(said[0]).toMatch(/^r\.csv:2:1: error: A quote is never closed/u);
  });

  it('are told where papers are made without them', async () => {
    const { exit, err } = await halfcupIn(folder, 'sheets', 'p.json', '--out', 'papers');
    expect(exit).toBe(0);
    expect(err).toMatch(/r\.csv:2:1: error: A quote is never closed/u);
  });

  it('are not asked for where they can be read', async () => {
    const good = folderWith(files([race, past], 'net\n0:30:00\n0:40:00\n'));
    const { exit, err } = await halfcupIn(good, 'export', 'p.json', '--to', 'order');
    expect([exit, err]).toEqual([0, '']);
  });
});

it('a plan is not started from what has no name', async () => {
  expect(await refusalIn(folderWith({ 'c.gpx': COURSE }), 'start', 'Quay run', '-')).toEqual([
    expect.stringMatching(/^halfcup: error: a plan names the files of its courses/u),
  ]);
});

it('data show their marks as numbers on a terminal, and go as they are anywhere else', async () => {
  const folder = folderWith({
    'c.gpx': COURSE,
    'p.json': planText([{ ...STATION, name: 'Pier \u202egel' }], { races: [race] }),
  });
  const terminal = { isTTY: true, columns: 200 };
  const shown = await halfcupWith({ terminal }, folder, 'export', 'p.json', '--to', 'csv');
  expect(shown.out).toContain(String.raw`Pier \u{202e}gel`);
  const given = await halfcupIn(folder, 'export', 'p.json', '--to', 'csv');
  expect(given.out).toContain('Pier \u202egel');
});
