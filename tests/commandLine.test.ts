/** The command line as its users meet it: what it prints, what it refuses, and that it says the truth. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CORE, ROOT } from './support/build.ts';
import { OCEAN, OUT_AND_BACK, RUN_21K, geodesicLength, go, gpxText, straight, trackPoints } from './support/courses.ts';
import type { SnapDocument } from './support/documents.ts';
import { MAIN, documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const COURSE = straight(OCEAN, 90, 51, 100);
const folder = folderWith({ 'c.gpx': gpxText([COURSE]) });

describe('halfcup', () => {
  it('lists its commands and common options in its help', async () => {
    const { exit, out, err } = await halfcupIn(folder, '--help');
    expect([exit, err]).toEqual([0, '']);
    for (const name of ['course', 'snap', 'start', 'layout', 'export', '--json', '--units', '--out', '--force'])
      expect(out).toContain(name);
  });

  it.each(['course', 'snap', 'start', 'layout', 'export'])('explains %s with all its options', async (name) => {
    const { exit, out, err } = await halfcupIn(folder, name, '--help');
    expect([exit, err]).toEqual([0, '']);
    expect(out).toMatch(new RegExp(`^Usage: npx halfcup ${name} `, 'u'));
    expect(out).toContain('--json');
  });

  it('prints the version of the package', async () => {
    const { version } = JSON.parse(readFileSync(join(CORE, 'package.json'), 'utf8')) as { version: string };
    expect(await halfcupIn(folder, '--version')).toEqual({ exit: 0, out: `${version}\n`, err: '' });
  });

  it('loads nothing but its own light files, and Node, before a command is called', () => {
    const reached = new Set([join(CORE, 'dist/cli/main.js')]);
    const packages = new Set<string>();
    for (const file of reached) {
      for (const [, name] of readFileSync(file, 'utf8').matchAll(
        /^(?:import|export) (?:[^=('"]*? from )?'([^']+)'/gmu,
      )) {
        if (name!.startsWith('.')) reached.add(join(dirname(file), name!));
        else packages.add(name!);
      }
    }
    expect([...packages].filter((name) => !name.startsWith('node:'))).toEqual([]);
    expect(
      [...reached]
        .map((file) => relative(join(CORE, 'dist'), file))
        .filter((file) => file.startsWith('src'))
        .sort(),
    ).toEqual([
      'src/finding.js',
      'src/plan/nearest.js',
      'src/text/caution.js',
      'src/text/found.js',
      'src/units.js',
      'src/version.js',
      'src/wants.js',
    ]);
  });

  it.each([
    [[], /^halfcup: error: no command given$/u],
    [['cuorse'], /^halfcup: error: unknown command "cuorse"; did you mean "course"\?$/u],
    [['xyzzy'], /"xyzzy".*commands: "course", "snap"/u],
    [['course'], /needs a GPX file/u],
    [['course', ''], /argument is empty/u],
    [['course', 'c.gpx', 'd.gpx'], /too many arguments: "d\.gpx"/u],
    [['course', 'c.gpx', '--jsn'], /unknown option "--jsn".*did you mean "--json"\?/u],
    [['course', 'c.gpx', '-j'], /"-j"/u],
    [['course', 'c.gpx', '--json=yes'], /--json takes no value/u],
    [['course', 'c.gpx', '--track'], /--track needs a value, such as --track NAME/u],
    [['course', 'c.gpx', '--track', '--json'], /--track needs a value, such as --track NAME/u],
    [['course', 'c.gpx', '--gaps', 'joins'], /"joins" is no value for --gaps; did you mean "join"\?/u],
    [['course', 'c.gpx', '--units', 'imperial', '--units', 'metric'], /--units is given twice/u],
    [['snap', 'c.gpx', '-17.4,-33.2', '--radius', '60'], /“60” has no unit/u],
    [['snap', 'c.gpx', '-17.4,-33.2', '--radius', '-5m'], /“-5m”/u],
    [['snap', 'c.gpx', '-17.4'], /"-17\.4".*LON,LAT/u],
    [['snap', 'c.gpx', '-17.4,north'], /"-17\.4,north".*LON,LAT/u],
    [['snap', 'c.gpx', '-33.2,-117.4'], /latitude -117\.4.*may be swapped/u],
    [['snap', 'c.gpx', '-190,33'], /longitude -190/u],
    [['export', 'p.json'], /--to geojson/u],
    [['export', 'p.json', '--to', 'shape'], /"shape" is no value for --to; accepted: "geojson"/u],
  ] as const)('refuses the call %j in plain words', async (args, message) => {
    expect((await refusalIn(folder, ...args))[0]).toMatch(message);
  });

  it('tells every fault of a call at once', async () => {
    expect(await refusalIn(folder, 'course', '--trak', 'x', '--gaps', 'y', '--units', 'feet')).toHaveLength(3);
  });

  it('ends quietly where its reader has seen enough', () => {
    const { status, stderr } = spawnSync(
      'sh',
      ['-c', `"${process.execPath}" "${MAIN}" export fixtures/demo/plan.json --to geojson | head -c 10 >/dev/null`],
      { cwd: ROOT, encoding: 'utf8' },
    );
    expect([status, stderr]).toEqual([0, '']);
  });

  it('writes to a file with --out, never over another without --force', async () => {
    const target = join(folder, 'out.json');
    expect(await halfcupIn(folder, 'course', 'c.gpx', '--json', '--out', 'out.json')).toEqual({
      exit: 0,
      out: '',
      err: '',
    });
    expect(JSON.parse(readFileSync(target, 'utf8'))).toMatchObject({ points: 51 });
    writeFileSync(target, 'precious');
    expect(await refusalIn(folder, 'course', 'c.gpx', '--out', 'out.json')).toEqual([
      expect.stringMatching(/^out\.json: error: .*exists already.*--force/u),
    ]);
    expect(readFileSync(target, 'utf8')).toBe('precious');
    expect((await halfcupIn(folder, 'course', 'c.gpx', '--json', '--out', 'out.json', '--force')).exit).toBe(0);
    expect(JSON.parse(readFileSync(target, 'utf8'))).toMatchObject({ points: 51 });
    expect((await refusalIn(folder, 'course', 'c.gpx', '--out', 'no/such/out.txt'))[0]).toMatch(
      /^no\/such\/out\.txt: error: folder not found/u,
    );
  });
});

describe('halfcup course', () => {
  it.each([
    ['gpx-parse 0.10.4', RUN_21K],
    ['stoplight 0.0.7', OUT_AND_BACK],
  ])('measures the run of package %s as Karney does, to 0.1 mm', async (_, file) => {
    const points = trackPoints(file);
    const truth = points.slice(1).reduce((sum, point, k) => sum + geodesicLength(points[k]!, point), 0);
    const course = (await documentIn(folder, 'course', file)) as {
      raw: number;
      length: number;
      points: number;
      factors: object[];
    };
    expect(Math.abs(course.raw - truth)).toBeLessThan(1e-4);
    expect(course.length).toBe(course.raw);
    expect(course.points).toBe(points.length);
    expect(course.factors).toEqual([{ from: 0, to: course.raw, factor: 1 }]);
  });

  it('measures the straight course of 5 km that GeographicLib drew, and prints it in both units', async () => {
    const course = (await documentIn(folder, 'course', 'c.gpx')) as {
      raw: number;
      gaps: object[];
      ascent: null;
      duplicates: number;
      name: string;
    };
    expect(Math.abs(course.raw - 5000)).toBeLessThan(1e-6);
    expect(course).toMatchObject({ name: 'c', gaps: [], ascent: null, duplicates: 0 });
    expect((await halfcupIn(folder, 'course', 'c.gpx')).out).toMatch(/Course distance +5\.000 km \(3\.107 mi\)/u);
    expect((await halfcupIn(folder, 'course', 'c.gpx', '--units', 'imperial')).out).toMatch(
      /Course distance +3\.107 mi \(5\.000 km\)/u,
    );
  });

  it('gives bounds whose west is larger than their east across the antimeridian', async () => {
    const across = folderWith({ 'a.gpx': gpxText([straight([179.99, -17], 90, 30, 100)]) });
    const { bounds } = (await documentIn(across, 'course', 'a.gpx')) as { bounds: [number, number, number, number] };
    const [last] = go([179.99, -17], 90, 2900);
    expect(bounds[0]).toBeCloseTo(179.99, 8);
    expect(bounds[2]).toBeCloseTo(last, 8);
    expect(bounds[0]).toBeGreaterThan(bounds[2]);
  });

  it('refuses a gap of over 50 m by its points, unless it is to join or skip it', async () => {
    const gap = folderWith({ 'g.gpx': gpxText([COURSE.slice(0, 11), COURSE.slice(12, 21)]) });
    const [line] = await refusalIn(gap, 'course', 'g.gpx');
    expect(line).toMatch(/^g\.gpx:\d+:\d+: error: Two segments are 200 m apart, between points 11 and 12\./u);
    const joined = (await documentIn(gap, 'course', 'g.gpx', '--gaps', 'join')) as {
      raw: number;
      gaps: { after: number; length: number }[];
    };
    const skipped = (await documentIn(gap, 'course', 'g.gpx', '--gaps', 'skip')) as {
      raw: number;
      gaps: { after: number; length: number }[];
    };
    expect(joined.raw - skipped.raw).toBeCloseTo(200, 5);
    expect(joined.gaps).toEqual([{ after: 10, length: expect.closeTo(200, 5) as number }]);
  });
});

describe('halfcup snap', () => {
  it.each([
    [-118.511715, 34.077286],
    [-118.514418, 34.081782],
    [-118.517671, 34.085472],
  ] as const)(
    'shows both passes of the out-and-back by the invented pin %d,%d, on opposite sides',
    async (lon, lat) => {
      const { points } = (await documentIn(folder, 'snap', OUT_AND_BACK, `${lon},${lat}`)) as SnapDocument;
      const [out, back] = points[0]!.passes;
      expect(points[0]).toMatchObject({ at: [lon, lat], name: null });
      expect(points[0]!.passes).toHaveLength(2);
      expect([out!.side, back!.side]).toEqual(['left', 'right']);
      expect(Math.sign(out!.offset) * Math.sign(back!.offset)).toBe(-1);
      for (const pass of [out!, back!])
        expect(Math.abs(geodesicLength([lon, lat], pass.foot) - pass.distance)).toBeLessThan(1e-3);
      expect(Math.cos(((out!.azimuthDeg - back!.azimuthDeg) * Math.PI) / 180)).toBeLessThan(0);
    },
  );

  it('takes the waypoints of the file where no point is given', async () => {
    const { points } = (await documentIn(folder, 'snap', OUT_AND_BACK)) as SnapDocument;
    expect(points.map(({ name }) => name)).toEqual(['Start', 'Lap 1']);
  });

  it('finds nothing but the nearest place beyond the radius, and a pass within it', async () => {
    const beside = go(go(OCEAN, 90, 1000), 0, 80).join(',');
    const [far] = ((await documentIn(folder, 'snap', 'c.gpx', beside)) as SnapDocument).points;
    expect(far!.passes).toEqual([]);
    expect(far!.nearest.distance).toBeCloseTo(80, 3);
    const [near] = ((await documentIn(folder, 'snap', 'c.gpx', beside, '--radius', '90m')) as SnapDocument).points;
    expect(near!.passes).toEqual([
      expect.objectContaining({
        side: 'left',
        measure: expect.closeTo(1000, 1) as number,
        offset: expect.closeTo(80, 3) as number,
      }),
    ]);
    expect((await halfcupIn(folder, 'snap', 'c.gpx', beside)).out).toMatch(/not within 60 m/u);
  });

  it('tells a distance of kilometres to ten metres', async () => {
    const astray = go(OCEAN, 0, 1740).join(',');
    expect((await halfcupIn(folder, 'snap', 'c.gpx', astray)).out).toMatch(/ 1\.74 km /u);
    expect((await halfcupIn(folder, 'snap', 'c.gpx', astray, '--units', 'imperial')).out).toMatch(/ 1\.08 mi /u);
  });

  it('says that longitude comes first where a far point would be near the other way round, and only there', async () => {
    const [lon, lat] = OCEAN;
    const { exit, err } = await halfcupIn(folder, 'snap', 'c.gpx', `${lat},${lon}`);
    expect(exit).toBe(0);
    expect(err).toContain(`longitude comes first: the two may be swapped (${lon},${lat})`);
    for (const point of [`${lon},${lat}`, '40,40', '-170,10', go(OCEAN, 0, 50_000).join(',')])
      expect((await halfcupIn(folder, 'snap', 'c.gpx', point)).err).toBe('');
  });

  it('is less sure of the side where positions are worse', async () => {
    const beside = go(go(OCEAN, 90, 1000), 180, 4).join(',');
    const sure = ((await documentIn(folder, 'snap', 'c.gpx', beside)) as SnapDocument).points[0]!.passes[0]!;
    const unsure = (
      (await documentIn(folder, 'snap', 'c.gpx', beside, '--r95', '15m', '--course-r95', '10m')) as SnapDocument
    ).points[0]!.passes[0]!;
    expect([sure.side, unsure.side]).toEqual(['right', 'unclear']);
    expect(unsure.confidence).toBeLessThan(sure.confidence);
    const exact = (await documentIn(
      folder,
      'snap',
      'c.gpx',
      beside,
      OCEAN.join(','),
      '--r95',
      '0m',
      '--course-r95',
      '0m',
    )) as SnapDocument;
    expect(exact.points.map(({ passes }) => [passes[0]!.side, passes[0]!.confidence])).toEqual([
      ['right', 1],
      ['unclear', 0.5],
    ]);
  });
});
