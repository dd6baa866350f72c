/** `halfcup raceday`: what it prints, what it takes from files, what it feeds into the layout. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { RaceDayDocument } from '../packages/core/src/export/raceDayDocument.ts';
import { raceDaySchema } from '../packages/core/src/export/schemas/raceDay.ts';
import { ROOT } from './support/build.ts';
import { OCEAN, gpxText, straight } from './support/courses.ts';
import type { LayoutDocument } from './support/documents.ts';
import { documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const DEMO = join(ROOT, 'fixtures/demo');
const ajv = new Ajv2020({ strict: true, strictTuples: false, allErrors: true });

const plan = (races: object, more: object = {}): string =>
  JSON.stringify({
    format: 'halfcup-plan',
    version: 1,
    name: 'Shore run',
    courses: [{ id: 'c', gpx: 'c.gpx', drawn: 'centre' }],
    races: [{ id: 'r', course: 'c', ...races }],
    stations: [
      { id: 's1', name: 'Kittiwake Corner', on: { course: 'c', measure: '2 km', side: 'right', offset: '5 m' } },
    ],
    ...more,
  });
const gpx = gpxText([straight(OCEAN, 90, 51, 100)]);
const waves = [{ time: '09:00', entrants: 400 }];
const finish = { median: '0:30:00', spread: 0.2 };
const dayIn = async (folder: string, ...call: string[]): Promise<RaceDayDocument> =>
  (await documentIn(folder, 'raceday', 'plan.json', ...call)) as RaceDayDocument;

describe('halfcup raceday', () => {
  it('prints a document of its schema for the demo, whose early, bunched stations pour a larger share than its late, spread ones', async () => {
    const document = (await documentIn(DEMO, 'raceday', 'plan.json')) as RaceDayDocument;
    expect(ajv.validate(raceDaySchema, document) ? [] : ajv.errors).toEqual([]);
    const share = (id: string): number => document.stations.find((station) => station.id === id)!.prePour.water!.share;
    expect(share('s4')).toBeGreaterThan(share('s7') + 0.2);
    expect(share('s1')).toBeGreaterThan(share('s8') + 0.1);
    for (const { prePour } of document.stations) {
      for (const one of Object.values(prePour))
        expect(one.room === null ? one.cups >= one.floor : one.cups <= one.room || one.cups >= one.floor).toBe(true);
    }
    expect(
      document.runs.some(({ kind }) => kind === 'drop') && document.runs.some(({ kind }) => kind === 'collect'),
    ).toBe(true);
  });

  it('shows the weather that the plan expects with its level, notes it, and takes the heat from it', async () => {
    const weather = [
      { at: '08:00', wbgtC: 17 },
      { at: '09:30', airC: 30, humidity: 0.6, windKmh: 45 },
    ];
    const folder = folderWith({ 'plan.json': plan({ waves, finish }, { weather }), 'c.gpx': gpx });
    const document = await dayIn(folder);
    expect(ajv.validate(raceDaySchema, document) ? [] : ajv.errors).toEqual([]);
    expect(document.weather).toEqual([
      { at: '08:00:00', wbgtC: 17, level: 'green' },
      { at: '09:30:00', airC: 30, humidity: 0.6, windKmh: 45, level: 'black' },
    ]);
    expect(document.findings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['weather-level', 'weather-wind']),
    );
    expect(document.findings.some(({ code }) => code === 'heat-assumed')).toBe(false);
    const { out } = await halfcupIn(folder, 'raceday', 'plan.json');
    expect(out).toMatch(/09:30\s+about 30\.9 °C\s+30 °C\s+60 %\s+45 km\/h\s+black/u);
    expect(out).toContain('The medical director decides');
  });

  it('takes slowing from splits of past results, and says which', async () => {
    const times = Array.from({ length: 20 }, (_, k) => 1500 + 40 * k);
    const results = ['1 mile,net', ...times.map((time) => `${(time * 0.3).toFixed(1)},${time}`)].join('\n');
    const races = { waves, finish: { csv: 'past.csv', column: 'net' } };
    const folder = folderWith({ 'plan.json': plan(races), 'c.gpx': gpx, 'past.csv': results });
    const document = await dayIn(folder);
    expect(ajv.validate(raceDaySchema, document) ? [] : ajv.errors).toEqual([]);
    expect(document.fitted).toEqual([{ race: 'r', csv: 'past.csv', splits: ['1 mile'], runners: 20 }]);
  });

  it('is a table for people, with the caution', async () => {
    const { exit, out } = await halfcupIn(DEMO, 'raceday', 'plan.json');
    expect(exit).toBe(0);
    for (const text of [
      'Arrivals',
      'Crew',
      'To order',
      'Jugs of water',
      'Drop run: Truck one, town and west',
      'Strand Road',
      'local codes',
    ])
      expect(out).toContain(text);
  });

  it('counts every starter at a station that all pass', async () => {
    const folder = folderWith({ 'c.gpx': gpx, 'plan.json': plan({ waves, finish, show: 1 }) });
    const [station] = (await dayIn(folder)).stations;
    expect(station!.arrivals).toBe(400);
    expect(station!.perMinute.reduce((sum, [, counts]) => sum + counts['r']!, 0)).toBe(400);
    expect(station!.first! >= '09:00:00' && station!.first! < station!.p50! && station!.p50! < station!.last!).toBe(
      true,
    );
  });

  it('takes finish times from a results file, and says how many rows it left out', async () => {
    const csv = 'bib;"net"\r\n1;0:25:00\r\n2;31:30\r\n3;DNF\r\n4;2100\r\n';
    const folder = folderWith({
      'c.gpx': gpx,
      'results.csv': csv,
      'plan.json': plan({ waves, show: 1, finish: { csv: 'results.csv', column: 'net' } }),
    });
    const document = await dayIn(folder);
    expect(document.stations[0]!.arrivals).toBe(400);
    expect(document.findings).toContainEqual(expect.objectContaining({ code: 'results-left-out', severity: 'note' }));
  });

  it('names the place of a time that cannot be read, and the columns there are', async () => {
    const bad = folderWith({
      'c.gpx': gpx,
      'results.csv': 'bib,net\n1,0:25:00\n2,soon\n',
      'plan.json': plan({ waves, finish: { csv: 'results.csv', column: 'net' } }),
    });
    expect((await dayIn(bad)).findings).toContainEqual(
      expect.objectContaining({ code: 'results-unread', where: expect.objectContaining({ line: 3, column: 3 }) }),
    );
    const other = folderWith({
      'c.gpx': gpx,
      'results.csv': 'bib,gun\n1,0:25:00\n',
      'plan.json': plan({ waves, finish: { csv: 'results.csv', column: 'net' } }),
    });
    expect((await dayIn(other)).findings.find(({ code }) => code === 'results-column')!.message).toContain('gun');
  });

  it('refuses a plan whose races have no waves', async () => {
    const folder = folderWith({ 'c.gpx': gpx, 'plan.json': plan({}) });
    expect((await refusalIn(folder, 'raceday', 'plan.json')).join('\n')).toContain('waves');
  });

  it('prints the take rates that a counted day teaches', async () => {
    const learnt = (await documentIn(DEMO, 'raceday', 'plan.json', '--learn')) as {
      readonly take: object;
      readonly drinkRate: number;
      readonly basis: readonly object[];
    };
    expect(learnt.basis.length).toBeGreaterThan(0);
    expect(Object.keys(learnt.take)).toContain('run');
    expect(learnt.drinkRate).toBeGreaterThan(0);
    expect((await halfcupIn(DEMO, 'raceday', 'plan.json', '--learn')).out).toContain('"take"');
  });

  const crowd = { waves: [{ time: '09:00', entrants: 3000 }], finish, show: 1 };
  const itemsIn = async (folder: string): Promise<(kind: string) => { from: number; to: number }> => {
    const { items } = ((await documentIn(folder, 'layout', 'plan.json')) as LayoutDocument).stations[0]!.directions[0]!;
    return (kind) => items.find((item) => item.kind === kind)!;
  };

  it('feeds the tables into the layout', async () => {
    const folder = folderWith({ 'c.gpx': gpx, 'plan.json': plan(crowd) });
    const of = await itemsIn(folder);
    const { tables } = (await dayIn(folder)).stations[0]!;
    expect(tables.water).toBeGreaterThan(1);
    expect(of('water').to - of('water').from).toBeCloseTo(tables.water * 1.8288, 4);
    // Those who hand out stand in front of the tables, and beyond them where they are more.
    expect(of('handOut').from).toBeLessThanOrEqual(of('sportsDrink').from);
    expect(of('handOut').to).toBeGreaterThanOrEqual(of('water').to);
  });

  it('measures sign and trash from the hand-out line where it reaches farther than the tables, and so does the check', async () => {
    const stations = [
      {
        id: 's1',
        on: { course: 'c', measure: '2 km', side: 'right', offset: '5 m' },
        tables: { sportsDrink: 1, water: 1 },
      },
    ];
    const folder = folderWith({ 'c.gpx': gpx, 'plan.json': plan(crowd, { stations }) });
    const of = await itemsIn(folder);
    expect(of('handOut').from).toBeLessThan(of('sportsDrink').from);
    expect(of('handOut').to - of('handOut').from).toBeCloseTo(
      (await dayIn(folder)).stations[0]!.crew.handOut * 1.8288,
      4,
    );
    expect(of('handOut').from - of('sign').from).toBeCloseTo(91.44, 4);
    expect(of('trash').from - of('handOut').to).toBeCloseTo(45.72, 4);
    expect(
      ((await documentIn(folder, 'review', 'plan.json')) as RaceDayDocument).findings.map(({ code }) => code),
    ).not.toContain('sign-distance');
    // Two tables and nobody waits: pourers make up for what does not stand ready.
    expect((await dayIn(folder)).stations[0]!.crew.pour).toBeGreaterThan(1);
    const alone = folderWith({ 'c.gpx': gpx, 'plan.json': plan(crowd, { stations, crew: { pourers: 1 } }) });
    expect((await dayIn(alone)).findings.map(({ code }) => code)).toContain('cups-run-out');
  });

  it('leaves the tables that a plan fixes as they are', async () => {
    const plain = JSON.parse(readFileSync(join(DEMO, 'plan.json'), 'utf8')) as {
      stations: { id: string; tables?: Record<string, number> }[];
    };
    const { stations } = (await documentIn(DEMO, 'raceday', 'plan.json')) as RaceDayDocument;
    for (const { id, tables } of plain.stations)
      if (tables !== undefined) expect(stations.find((station) => station.id === id)!.tables).toMatchObject(tables);
  });
});
