/** `halfcup review --placed`: points recorded on the ground, from the file to the verdict. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { reviewSchema } from '../packages/core/src/export/schemas/review.ts';
import { OCEAN, type Position, go, gpxText, planText, straight } from './support/courses.ts';
import { type Ended, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

interface Reviewed {
  readonly built?: readonly {
    readonly station: string;
    readonly distance: number;
    readonly along: number | null;
    readonly verdict: string;
  }[];
  readonly placed?: readonly {
    readonly station: string;
    readonly item: string;
    readonly verdict: string;
    readonly measured: number;
    readonly limit: readonly number[];
    readonly margin: number;
    readonly move: number;
    readonly at: Position;
  }[];
  readonly checks: readonly { readonly code: string; readonly ran: boolean }[];
  readonly findings: readonly {
    readonly code: string;
    readonly severity: string;
    readonly built?: true;
    readonly where: {
      readonly file?: string;
      readonly line?: number;
      readonly column?: number;
      readonly station?: string;
    };
  }[];
}

/** A point at a measure of the course, which runs due east, so many metres to its right (GeographicLib). */
const beside = (measure: number, right: number = 5): Position => go(go(OCEAN, 90, measure), 180, right);

const point = (name: string, [lon, lat]: Position, hdop: number): string =>
  `  <wpt lat="${lat}" lon="${lon}"><name>${name}</name><hdop>${hdop}</hdop></wpt>`;
const recorded = (...points: readonly string[]): string =>
  [
    '<gpx version="1.1" creator="halfcup tests" xmlns="http://www.topografix.com/GPX/1/1">',
    ...points,
    '</gpx>',
    '',
  ].join('\n');

/** The sign and the water of a station whose pin was recorded there. */
const whole = (name: string, measure: number, right?: number): string[] => [
  point(`${name} sign`, beside(measure - 91.44), 0.2),
  point(`${name} water`, beside(measure, right), 0.2),
];

// 100 yd before the first table, 10 yd more or less: the house's rule, common practice, no source.
const folder = folderWith({
  'c.gpx': gpxText([straight(OCEAN, 90, 51, 100)]),
  'p.json': planText([{ id: 's1', name: 'Gannet Point', at: beside(2500), side: 'right', serves: ['water'] }]),
  'good.gpx': recorded(
    point('s1 sign', beside(2500 - 91.44), 0.2),
    point('s1 water', beside(2500), 0.2),
    point('s1 trash', beside(2580), 0.2),
  ),
  'near.gpx': recorded(
    point('s1 sign', beside(2500 - 71.44), 0.2),
    point('s1 water', beside(2500), 0.2),
    point('lost', beside(900), 0.2),
  ),
  'two.json': planText(
    [
      { id: 's1', name: 'Gannet Point', at: beside(1500), side: 'right', serves: ['water'] },
      { id: 's2', name: 'Cable Wharf', at: beside(3500), side: 'right', serves: ['water'] },
    ],
    {
      zones: [
        {
          name: 'Boat yard',
          rule: 'keep-clear',
          polygon: [beside(3480, 9), beside(3530, 9), beside(3530, 40), beside(3480, 40)],
        },
      ],
    },
  ),
  'built.gpx': recorded(...whole('s1', 1500), ...whole('s2', 3500)),
  'far.gpx': recorded(...whole('s1', 1500), ...whole('s2', 3620)),
  'yard.gpx': recorded(...whole('s1', 1500), ...whole('s2', 3500, 14)),
  'swapped.gpx': recorded(...whole('s2', 1500), ...whole('s1', 3500)),
  'broken.gpx': '<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">\n  <wpt lat="north" lon="1"/>\n</gpx>\n',
  'empty.gpx': recorded(),
});

const review = async (...args: readonly string[]): Promise<Ended> => halfcupIn(folder, 'review', 'p.json', ...args);
const documentOf = ({ out }: Ended): Reviewed => JSON.parse(out) as Reviewed;

describe('halfcup review --placed', () => {
  it('gives a verdict for each recorded sign and trash drop, as the contract has it', async () => {
    const document = documentOf(await review('--placed', 'good.gpx', '--json'));
    const { placed = [], checks } = document;
    expect(placed.map(({ station, item, verdict, move }) => [station, item, verdict, move])).toEqual([
      ['s1', 'sign', 'holds', 0],
      ['s1', 'trash', 'holds', 0],
    ]);
    expect(placed[0]).toMatchObject({
      measured: expect.closeTo(91.44, 2),
      limit: [82.296, 100.584],
      at: beside(2500 - 91.44).map((degrees) => expect.closeTo(degrees, 8)),
    });
    expect(checks).toContainEqual(expect.objectContaining({ code: 'placed-distance', ran: true }));
    expect(new Ajv2020({ strict: true, strictTuples: false }).validate(reviewSchema, document)).toBe(true);
  });

  it('a sign 20 m too near is an error at its place in the file, and ends with 1; a point that nobody knows is a warning', async () => {
    const ended = await review('--placed', 'near.gpx', '--json');
    expect(ended.exit).toBe(1);
    const { placed = [], findings } = documentOf(ended);
    expect(placed).toEqual([
      expect.objectContaining({
        item: 'sign',
        verdict: 'fails',
        measured: expect.closeTo(71.44, 2),
        move: expect.closeTo(-20, 2),
      }),
    ]);
    expect(findings).toContainEqual(
      expect.objectContaining({
        code: 'placed-distance',
        severity: 'error',
        where: expect.objectContaining({ file: 'near.gpx', line: 2, column: 3 }),
      }),
    );
    expect(findings).toContainEqual(
      expect.objectContaining({
        code: 'placed-unknown',
        severity: 'warning',
        where: expect.objectContaining({ file: 'near.gpx', line: 4 }),
      }),
    );
  });

  it('prints the verdicts as a table', async () => {
    const { out } = await review('--placed', 'near.gpx');
    expect(out).toMatch(/Gannet Point\s+Sign\s+out of place\s+71\.4 m\s+1(?:\.\d)? m/u);
    expect(out).toMatch(/20 m upstream/u);
  });

  it('the report shows the verdicts, and names the file of the points among what was reviewed', async () => {
    expect((await review('--placed', 'near.gpx', '--report', 'r.html')).exit).toBe(1);
    const report = readFileSync(join(folder, 'r.html'), 'utf8');
    expect(report).toMatch(/<h2>As built<\/h2>/u);
    expect(report).toMatch(/<b>out of place<\/b>/u);
    expect(report).toContain('near.gpx');
  });

  it('without recorded points there are no verdicts', async () => {
    expect(documentOf(await review('--json')).placed).toBeUndefined();
  });

  it('refuses a file that cannot be used, with file, line and column', async () => {
    expect(await refusalIn(folder, 'review', 'p.json', '--placed', 'broken.gpx')).toEqual([
      expect.stringMatching(/^broken\.gpx:2:3: error: /u),
    ]);
    expect(await refusalIn(folder, 'review', 'p.json', '--placed', 'empty.gpx')).toEqual([
      expect.stringMatching(/^empty\.gpx:1:1: error: The file has no waypoints\. Record one/u),
    ]);
    expect(await refusalIn(folder, 'review', 'p.json', '--json-lines', '--placed', 'good.gpx')).toEqual([
      expect.stringMatching(/--placed and --json-lines do not go together/u),
    ]);
    expect(await refusalIn(folder, 'review', 'p.json', '--placed', 'none.gpx')).toEqual([
      expect.stringMatching(/^none\.gpx: error: file not found/u),
    ]);
  });
});

describe('halfcup review --placed, as built', () => {
  const two = async (...args: readonly string[]): Promise<Ended> => halfcupIn(folder, 'review', 'two.json', ...args);
  const grave = ({ findings }: Reviewed, known: Reviewed): string[] =>
    findings
      .filter(({ severity, code }) => severity !== 'note' && known.findings.every((one) => one.code !== code))
      .map(({ severity, code, where }) => `${severity} ${code} ${where.station}`);

  it('finds nothing new where all stands as planned, and ends as the plan alone does', async () => {
    const [alone, ended] = [await two('--json'), await two('--placed', 'built.gpx', '--json')];
    expect([alone.exit, ended.exit]).toEqual([0, 0]);
    const document = documentOf(ended);
    expect(grave(document, documentOf(alone))).toEqual([]);
    expect(document.findings.filter(({ built }) => built === true)).toEqual([]);
    expect(document.built!.map(({ station, verdict }) => [station, verdict])).toEqual([
      ['s1', 'holds'],
      ['s2', 'holds'],
    ]);
    expect(documentOf(alone).built).toBeUndefined();
    expect(new Ajv2020({ strict: true, strictTuples: false }).validate(reviewSchema, document)).toBe(true);
  });

  it('ends with 1 for a station 120 m from its plan, by name, in text, JSON and report', async () => {
    const alone = documentOf(await two('--json'));
    const ended = await two('--placed', 'far.gpx', '--json', '--report', 'far.html');
    expect(ended.exit).toBe(1);
    expect(grave(documentOf(ended), alone)).toEqual(['error placed-far s2']);
    expect(documentOf(ended).built).toContainEqual(
      expect.objectContaining({
        station: 's2',
        distance: expect.closeTo(120, 2),
        along: expect.closeTo(120, 2),
        verdict: 'fails',
      }),
    );
    const { out } = await two('--placed', 'far.gpx');
    expect(out).toMatch(/Cable Wharf: The tables are 120 m from their planned place, too far forward\./u);
    expect(out).toMatch(/Cable Wharf\s+3\.500 km\s+3\.620 km\s+120 m\s+3\.4 m\s+out of place/u);
    const report = readFileSync(join(folder, 'far.html'), 'utf8');
    expect(report).toContain('What changes');
    expect(report).toContain('3.620 km');
  });

  it('ends with 1 for tables recorded in a keep-clear zone, marked as built', async () => {
    const ended = await two('--placed', 'yard.gpx', '--json');
    expect(ended.exit).toBe(1);
    expect(documentOf(ended).findings).toContainEqual(
      expect.objectContaining({
        code: 'item-in-zone',
        severity: 'error',
        built: true,
        where: expect.objectContaining({ file: 'yard.gpx', line: 5, station: 's2' }),
      }),
    );
    const { out } = await two('--placed', 'yard.gpx');
    expect(out).toMatch(/yard\.gpx:5:3 · as built · item-in-zone/u);
    expect(out).toMatch(/Cable Wharf\s+3\.500 km\s+3\.500 km\s+9 m\s+3\.4 m\s+OK\s+1 new finding/u);
  });

  it('warns once of names that look swapped', async () => {
    const ended = await two('--placed', 'swapped.gpx', '--json');
    expect(ended.exit).toBe(0);
    expect(grave(documentOf(ended), documentOf(await two('--json')))).toEqual(['warning placed-swapped s1']);
    const { out } = await two('--placed', 'swapped.gpx');
    expect(out).toContain('The points of Gannet Point are where Cable Wharf is planned');
  });
});
