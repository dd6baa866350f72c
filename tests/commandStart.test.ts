/** `halfcup start`: a first plan that is complete and reads back. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setUpPlan } from '@halfcup/core/plan';
import { readGpx } from '@halfcup/core/gpx';
import { describe, expect, it } from 'vitest';
import { OCEAN, type Position, go, gpxText, straight } from './support/courses.ts';
import type { LayoutDocument } from './support/documents.ts';
import { documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const COURSE = straight(OCEAN, 90, 51, 100);
const beside = (measure: number, azimuthDeg: number, offset: number): Position =>
  go(go(OCEAN, 90, measure), azimuthDeg, offset);

describe('halfcup start', () => {
  const waypoints = [
    { at: beside(4000, 0, 8), name: 'Far' },
    { at: beside(2000, 0, 500), name: 'Aside' },
    { at: beside(1000, 180, 8) },
  ];
  const started = folderWith({
    'w.gpx': gpxText([COURSE], waypoints),
    'sub/c.gpx': gpxText([COURSE]),
    'm.gpx': gpxText(
      [COURSE],
      [
        { at: OCEAN, name: 'Start' },
        { at: beside(1990, 0, 1), name: '2 km' },
        { at: beside(3000, 0, 8), name: 'Tap' },
      ],
    ),
  });
  interface PlanFile {
    readonly units?: string;
    readonly practice?: Record<string, string>;
    readonly courses: readonly { readonly gpx: string }[];
    readonly stations: readonly {
      readonly id: string;
      readonly name: string;
      readonly at?: Position;
      readonly side?: string;
      readonly on?: { readonly measure: string | number; readonly side: string };
    }[];
  }
  const planOf = async (...args: string[]): Promise<PlanFile> =>
    JSON.parse((await halfcupIn(started, 'start', ...args)).out) as PlanFile;

  it('makes stations of waypoints in course order, leaves none out, and reads back', async () => {
    expect(await halfcupIn(started, 'start', 'First', 'w.gpx', '--out', 'first.json')).toEqual({
      exit: 0,
      out: '',
      err: '',
    });
    const text = readFileSync(join(started, 'first.json'), 'utf8');
    const plan = JSON.parse(text) as PlanFile;
    expect(plan.stations.map(({ id, name }) => [id, name])).toEqual([
      ['s1', '1.00 km'],
      ['s2', 'Far'],
      ['s3', 'Aside'],
    ]);
    expect(plan.stations[1]!.at).toEqual(waypoints[0]!.at.map((degrees) => Number(degrees.toFixed(7))));
    expect(text).toMatch(/\n {6}"at": \[-?\d+\.\d+, -?\d+\.\d+\]\n/u);
    expect(plan.practice).toMatchObject({ signAhead: '90 m', trashTo: '90 m' });
    const layout = (await documentIn(started, 'layout', 'first.json')) as LayoutDocument;
    expect(layout.stations.map(({ passes }) => passes.length)).toEqual([1, 1, 0]);
    expect(layout.findings.map(({ code }) => code)).toContain('station-off-course');
  });

  it('places stations along the course by distance, on the sides asked for', async () => {
    const { stations } = await planOf('Every', 'sub/c.gpx', '--every', '2km', '--side', 'alternate');
    expect(stations.map(({ name, on }) => [name, on?.measure, on?.side])).toEqual([
      ['2 km', '2 km', 'right'],
      ['4 km', '4 km', 'left'],
    ]);
    expect((await planOf('At', 'sub/c.gpx', '--at', '3mi,1mi')).stations.map(({ name }) => name)).toEqual([
      '1 mi',
      '3 mi',
    ]);
    expect((await planOf('Sides', 'w.gpx', '--side', 'left')).stations.map(({ side }) => side)).toEqual([
      'left',
      'left',
      'left',
    ]);
  });

  it('writes known length and marks, and says on stderr what became of waypoints that are no stations', async () => {
    const [course] = (await planOf('Known', 'm.gpx', '--every', '2km', '--length', '5.05km', '--mark', '2 km')).courses;
    expect(course).toMatchObject({ length: '5.05 km', marks: [{ measure: '2 km', name: '2 km' }] });
    const { exit, out, err } = await halfcupIn(started, 'start', 'Marked', 'm.gpx');
    expect(exit).toBe(0);
    expect((JSON.parse(out) as PlanFile).stations.map(({ name }) => name)).toEqual(['Tap']);
    expect(err).toMatch(/^m\.gpx:\d+:\d+: note: Waypoint “2 km” became a mark/mu);
    expect(err).toMatch(/^m\.gpx:\d+:\d+: note: Waypoint “Start” was left out/mu);
    expect((await halfcupIn(started, 'start', 'Twice', 'sub/c.gpx', '--at', '1km,1km')).err).toMatch(
      /note: The place at 1\.00 km was given more than once/u,
    );
    expect((await refusalIn(started, 'start', 'Lost', 'm.gpx', '--mark', 'Tab=1km')).join()).toContain(
      'Did you mean “Tap”?',
    );
  });

  it('writes the practice in round metres with --units metric', async () => {
    const plan = await planOf('Metric', 'w.gpx', '--units', 'metric');
    expect(plan.units).toBe('metric');
    expect(plan.practice).toEqual({
      signAhead: '90 m',
      signTolerance: '9 m',
      gelAhead: '8 m',
      tableGap: '3 m',
      tableLength: '1.8 m',
      trashFrom: '45 m',
      trashTo: '90 m',
    });
  });

  it('names the course as seen from the folder of the plan', async () => {
    expect((await planOf('Below', 'sub/c.gpx', '--every', '2km')).courses[0]!.gpx).toBe('sub/c.gpx');
    expect(
      (await halfcupIn(started, 'start', 'Beside', 'sub/c.gpx', '--every', '2km', '--out', 'sub/plan.json')).exit,
    ).toBe(0);
    expect(((await documentIn(started, 'layout', 'sub/plan.json')) as LayoutDocument).stations).toHaveLength(2);
    const elsewhere = await halfcupIn(join(started, 'sub'), 'start', 'Up', '../w.gpx');
    expect(elsewhere.err).toMatch(/keep this plan in the folder of w\.gpx/u);
    expect((JSON.parse(elsewhere.out) as PlanFile).courses[0]!.gpx).toBe('w.gpx');
    expect((await refusalIn(started, 'start', 'Up', 'w.gpx', '--out', 'sub/up.json'))[0]).toMatch(
      /^w\.gpx: error: .*copy the course there/u,
    );
  });

  it.each([
    [['sub/c.gpx'], /no waypoints/u],
    [['sub/c.gpx', '--at', '6km'], /6\.00 km, but the course is 5\.00 km long/u],
    [['sub/c.gpx', '--every', '6km'], /shorter than the course/u],
    [['sub/c.gpx', '--every', '0m'], /shorter than the course/u],
    [['sub/c.gpx', '--every', '1m'], /at most 500 stations/u],
    [['sub/c.gpx', '--every', '1km', '--at', '1km'], /Give one of them/u],
  ] as const)('refuses %j with the reason', async (args, message) => {
    expect((await refusalIn(started, 'start', 'Name', ...args))[0]).toMatch(message);
  });
});

describe('halfcup start with several courses, a list and races', () => {
  const folder = folderWith({
    'full.gpx': gpxText([straight(OCEAN, 90, 101, 100)], [{ at: beside(2000, 0, 8), name: 'Tap' }]),
    'half.gpx': gpxText([straight(OCEAN, 90, 51, 100)]),
    'short.csv': 'name,km,side\nMill,2,left\n',
    'list.csv':
      'Nombre;Recorrido;Distancia (km);Lado;Sirve\nMill;full;7,5;izquierda;agua\nPier;half;lejos;derecha;agua\n',
  });
  const FULL = 'name=Ganneth Ten, file=full.gpx, start=08:00, entrants=1200, finish=0:55, cutoff=1:45';
  const HALF = 'name=Five, file=half.gpx, start=08:30, entrants=300, finish=0:28:30, cutoff-at=09:30';
  const start = (...args: string[]): ReturnType<typeof halfcupIn> =>
    halfcupIn(folder, 'start', 'Ganneth', 'full.gpx', 'half.gpx', ...args);

  it('writes the plan that the same answers give the page, byte for byte, and tells the row that it left out', async () => {
    const made = await start('--race', FULL, '--race', HALF, '--stations', 'list.csv', '--units', 'metric');
    const documents = new Map(
      ['full.gpx', 'half.gpx'].map((name) => {
        const read = readGpx(readFileSync(join(folder, name)), name);
        if (!read.ok) throw new Error(read.findings[0]!.message);
        return [name, read.value];
      }),
    );
    const answers = setUpPlan(
      {
        name: 'Ganneth',
        units: 'metric',
        courses: [{ gpx: 'full.gpx' }, { gpx: 'half.gpx' }],
        races: [
          { name: 'Ganneth Ten', gpx: 'full.gpx', start: '08:00', entrants: '1200', finish: '0:55', cutoff: '1:45' },
          { name: 'Five', gpx: 'half.gpx', start: '08:30', entrants: '300', finish: '0:28:30', cutoffAt: '09:30' },
        ],
        marks: false,
        stations: { from: 'list', file: 'list.csv', text: readFileSync(join(folder, 'list.csv'), 'utf8') },
      },
      documents,
    );
    expect(made.exit).toBe(0);
    expect(answers.ok && answers.value).toBe(made.out);
    expect(made.err).toContain('list.csv:3:11: warning: Row 3, Distance: “lejos” is not a course distance.');
    expect((JSON.parse(made.out) as { stations: { name: string }[] }).stations.map(({ name }) => name)).toEqual([
      'Mill',
    ]);
  });

  it('writes a race there and back with its course, the day, and a list along the course that is named', async () => {
    const made = await start(
      '--race',
      FULL,
      '--race',
      'name=Walk, file=full.gpx, turn-at=2.5, start=09:00, entrants=1,000',
      '--date',
      '2027-09-12',
      '--emergency',
      '5550',
      '--stations',
      'short.csv',
      '--stations-on',
      'half.gpx',
    );
    expect(made.err).not.toContain('error');
    expect(JSON.parse(made.out)).toMatchObject({
      date: '2027-09-12',
      contacts: { emergency: '5550' },
      courses: [
        { id: 'full' },
        { id: 'half' },
        { id: 'walk', parts: [{ of: 'full', to: '2.5 km' }, { reverse: true }] },
      ],
      races: [{ course: 'full' }, { course: 'walk', waves: [{ entrants: 1000 }] }],
      stations: [{ on: { course: 'half' } }],
    });
    const refused = await start('--stations', 'short.csv', '--stations-on', 'hafl.gpx');
    expect(refused.err).toContain('--stations-on names the file "hafl.gpx", which is none of the courses');
    expect((await start('--date', 'soon')).err).toMatch(/“?soon.*2027/su);
  });

  it('makes stations of waypoints, or every so far, and a race for each course where none is said', async () => {
    const named = async (...args: string[]): Promise<string[]> =>
      (JSON.parse((await start(...args)).out) as { stations: { name: string }[] }).stations.map(({ name }) => name);
    expect(await named()).toEqual(['Tap']);
    expect(await named('--every', '2.5km')).toEqual(['2.5 km', '5 km', '7.5 km']);
    expect((JSON.parse((await start()).out) as { races: { id: string }[] }).races.map(({ id }) => id)).toEqual([
      'full',
      'half',
    ]);
  });

  it.each([
    [['--race', 'name=Half, file=hafl.gpx'], '--race names the file "hafl.gpx", which is none of the courses'],
    [['--race', 'Half at 8'], 'cannot be read; write it such as'],
    [['--race', 'name=Half'], 'has no file'],
    [['--race', 'file=half.gpx'], 'has no name'],
    [['--race', 'name=A, file=half.gpx, strat=8:00'], '--race has no "strat"; did you mean "start"?'],
    [['--race', 'name=A, name=B, file=half.gpx'], 'says name twice'],
    [['--race', 'name=A, file=half.gpx, start=soon'], '“soon” is not a start time.'],
    [['--at', '5km'], '--at cannot be used with several courses'],
    [['--stations', 'list.csv', '--every', '5km'], 'come from a list (--stations)'],
    [['--stations', 'none.csv'], 'file not found'],
  ] as const)('refuses %j in words', async (args, words) => {
    const { exit, err } = await start(...args);
    expect(exit).toBe(2);
    expect(err).toContain(words);
  });
});
