/** `halfcup raceday` around the day: the leftover form and what comes back, the roster. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Learnt } from '../packages/core/src/raceday/learn.ts';
import { ROOT } from './support/build.ts';
import { documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const DEMO = join(ROOT, 'fixtures/demo');
const demo = (): string =>
  folderWith(
    Object.fromEntries(
      ['plan.json', 'full.gpx', 'half.gpx', 'context.geojson', 'ground.geojson'].map((name) => [
        name,
        readFileSync(join(DEMO, name)),
      ]),
    ),
  );

interface PlanText {
  readonly stations: readonly { readonly id: string; readonly used?: { readonly water: number } }[];
  readonly people?: { readonly crew: readonly object[] };
}

describe('the leftover form', () => {
  it('is printed empty in the language asked for, and comes back as counts in the plan, with what they teach', async () => {
    const folder = demo();
    const form = (await halfcupIn(folder, 'raceday', 'plan.json', '--left-form')).out;
    expect(form.split('\r\n').slice(0, 2)).toEqual([
      'station,name,water jugs full,water jugs empty,sports drink jugs full,sports drink jugs empty,packs of cups left,loose cups left,boxes of gels left,loose gels left',
      's1,Strand Road,,,,,,,,',
    ]);
    expect((await halfcupIn(folder, 'raceday', 'plan.json', '--left-form', '--lang', 'es')).out).toMatch(/^puesto,/u);
    writeFileSync(join(folder, 'left.csv'), form.replace('s4,Norra Slip,,,,,,', 's4,Norra Slip,4,,2,,3,'));
    const { out, exit } = await halfcupIn(
      folder,
      'raceday',
      'plan.json',
      '--left',
      'left.csv',
      '--out',
      'counted.json',
    );
    expect(exit).toBe(0);
    expect(out).toMatch(/± +Lowest to highest/u);
    expect(out).toContain('Norra Slip');
    const before = readFileSync(join(folder, 'plan.json'), 'utf8');
    const counted = JSON.parse(readFileSync(join(folder, 'counted.json'), 'utf8')) as PlanText;
    expect(counted.stations.find(({ id }) => id === 's4')!.used!.water).toBeGreaterThan(1000);
    expect(counted.stations.filter(({ used }) => used !== undefined)).toHaveLength(4);
    expect(readFileSync(join(folder, 'plan.json'), 'utf8')).toBe(before);
    const learnt = (await documentIn(folder, 'raceday', 'counted.json', '--learn')) as Learnt;
    expect(learnt.basis.find(({ kind }) => kind === 'water')!.spread!.error).toBeGreaterThan(0);
  });

  it('with rows that cannot be read uses the others, says which, and ends with 1; with none it is refused', async () => {
    const folder = demo();
    writeFileSync(join(folder, 'left.csv'), 'station,boxes of gels left\ns3,9\ns6,many\n');
    const ended = await halfcupIn(folder, 'raceday', 'plan.json', '--left', 'left.csv');
    expect(ended.exit).toBe(1);
    expect(ended.err).toContain('left.csv:3:4: ');
    expect(ended.err).toContain('“many” is no number of boxes of gels left.');
    writeFileSync(join(folder, 'left.csv'), 'station,boxes of gels left\ns6,many\n');
    expect((await refusalIn(folder, 'raceday', 'plan.json', '--left', 'left.csv')).join('\n')).toContain(
      'left.csv:2:4',
    );
    expect((await refusalIn(folder, 'raceday', 'plan.json', '--left', 'gone.csv')).join('\n')).toContain('not found');
  });

  it('is not written over', async () => {
    const folder = demo();
    writeFileSync(join(folder, 'left.csv'), 'station,boxes of gels left\ns3,9\n');
    const call = ['raceday', 'plan.json', '--left', 'left.csv', '--out', 'left.csv', '--force'];
    expect((await refusalIn(folder, ...call)).join('\n')).toContain('being read');
  });
});

describe('the roster', () => {
  it('is read into the plan, and shows who is missing at each station', async () => {
    const folder = demo();
    writeFileSync(join(folder, 'crew.csv'), 'name;station;until\nAda Tern;Strand Road;\nIvo Skua;s2;09:00\n');
    const { out, exit } = await halfcupIn(folder, 'raceday', 'plan.json', '--roster', 'crew.csv', '--out', 'new.json');
    expect(exit).toBe(0);
    expect(out).toMatch(/Strand Road +1 +2 +\d\d:\d\d +\d+ +\d+/u);
    expect(out).not.toContain('Ada Tern');
    const plan = JSON.parse(readFileSync(join(folder, 'new.json'), 'utf8')) as PlanText;
    expect(plan.people!.crew).toEqual([
      { name: 'Ada Tern', station: 's1' },
      { name: 'Ivo Skua', station: 's2', until: '09:00' },
    ]);
    const review = await halfcupIn(folder, 'review', 'new.json');
    expect(review.out).toMatch(/people of the roster are there at \d\d:\d\d: \d+ are\s+missing/u);
  });

  it('names nobody in exports for others', async () => {
    const folder = demo();
    writeFileSync(join(folder, 'crew.csv'), 'name;station;role;phone\nAda Ternquist;s1;Pourmaster;5550199\n');
    await halfcupIn(folder, 'raceday', 'plan.json', '--roster', 'crew.csv', '--out', 'new.json');
    for (const call of [
      ['export', 'new.json', '--to', 'geojson'],
      ['export', 'new.json', '--to', 'gpx'],
      ['export', 'new.json', '--to', 'csv'],
      ['export', 'new.json', '--to', 'ics'],
      ['raceday', 'new.json', '--json'],
      ['layout', 'new.json', '--json'],
      ['review', 'new.json', '--json'],
    ]) {
      const { out } = await halfcupIn(folder, ...call);
      expect(out.length, call.join(' ')).toBeGreaterThan(100);
      expect(out, call.join(' ')).not.toMatch(/Ternquist|Pourmaster|5550199/u);
    }
  });
});
