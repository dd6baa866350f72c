import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import type { GpxDocument, GpxWaypoint } from '../gpx/document.ts';
import { placeFindings } from './placeFindings.ts';
import { readPlan } from './read.ts';
import { type StartOptions, startPlan } from './start.ts';

const waypoint = (lon: number, lat: number, name: string | null): GpxWaypoint => ({
  lon,
  lat,
  name,
  ele: null,
  comment: null,
  description: null,
  symbol: null,
  type: null,
  hdop: null,
  line: 1,
  column: 1,
});

/** Some 5 km due east in mid-ocean. */
const document = (waypoints: readonly GpxWaypoint[]): GpxDocument => ({
  file: 'c.gpx',
  version: '1.1',
  creator: null,
  name: null,
  routes: [],
  waypoints,
  tracks: [
    {
      kind: 'track',
      name: null,
      line: 3,
      column: 1,
      segments: [
        {
          lon: Float64Array.from({ length: 54 }, (_, k) => -17.4 + k * 0.001),
          lat: new Float64Array(54).fill(-33.2),
          ele: new Float64Array(54),
        },
      ],
    },
  ],
});

const OPTIONS: StartOptions = { name: 'First', gpx: 'c.gpx' };

function textOf(from: GpxDocument, options: StartOptions): string {
  const started = startPlan(from, options);
  if (!started.ok) throw new Error(started.findings.map(({ message }) => message).join('\n'));
  return started.value;
}

function readBack(
  from: GpxDocument,
  options: StartOptions,
): { readonly text: string; readonly stations: readonly { readonly id: string; readonly name: string }[] } {
  const text = textOf(from, options);
  const read = readPlan(text, 'plan.json');
  if (!read.ok) throw new Error('does not read back');
  const analysed = analyse(read.value.plan, { gpx: new Map([[options.gpx, from]]) });
  if (!analysed.ok) throw new Error('does not analyse');
  return { text, stations: read.value.plan.stations };
}

/** Names of stations along the course. */
const names = (options: Partial<StartOptions>): string[] =>
  readBack(document([]), { ...OPTIONS, ...options }).stations.map(({ name }) => name);

describe('a first plan', () => {
  it('reads back and analyses whatever the waypoints are called and wherever they stand, and leaves none out', () => {
    const name = fc.option(fc.string({ unit: 'grapheme', maxLength: 30 }));
    const point = fc.tuple(
      fc.double({ min: -17.41, max: -17.34, noNaN: true }),
      fc.double({ min: -33.201, max: -33.199, noNaN: true }),
      name,
    );
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 1, maxLength: 12 }),
        fc.constantFrom('left', 'right', 'alternate', undefined),
        (points, side) => {
          const { text, stations } = readBack(
            document(points.map(([lon, lat, called]) => waypoint(lon, lat, called))),
            { ...OPTIONS, ...(side === undefined ? {} : { side }) },
          );
          expect(stations.map(({ id }) => id)).toEqual(points.map((_, k) => `s${k + 1}`));
          for (const station of stations) expect(station.name.trim()).not.toBe('');
          expect(JSON.stringify(JSON.parse(text), null, 2).replaceAll(/\s/gu, '')).toBe(text.replaceAll(/\s/gu, ''));
        },
      ),
      { seed: 6 },
    );
  });

  it('puts stations in course order by their first pass, those off the course last in the order of the file', () => {
    const points = [
      waypoint(-17.3, -33.2, 'east of it'),
      waypoint(-17.36, -33.2001, 'late'),
      waypoint(-17.5, -33.2, 'west of it'),
      waypoint(-17.39, -33.2001, 'early'),
    ];
    expect(readBack(document(points), OPTIONS).stations.map(({ name }) => name)).toEqual([
      'early',
      'late',
      'east of it',
      'west of it',
    ]);
  });

  it('names places along the course by their distance, in the unit that tells it shortest', () => {
    expect(names({ every: 1250 })).toEqual(['1.25 km', '2.5 km', '3.75 km']);
    expect(names({ every: 1609.344 })).toEqual(['1 mi', '2 mi', '3 mi']);
    expect(names({ at: [4000, 1000, 4000], units: 'imperial' })).toEqual(['1 km', '4 km']);
    expect(names({ at: [1234.56789] })).toEqual(['1.235 km']);
  });

  const SEEN = [
    waypoint(-17.4, -33.2, 'Start'),
    waypoint(-17.379, -33.2, '2 km'),
    waypoint(-17.37, -33.2001, 'Well'),
    waypoint(-17.358, -33.1, '4 km'),
    waypoint(-17.3472, -33.2, 'finish line'),
  ];
  const told = (
    from: GpxDocument,
    options: Partial<StartOptions> = {},
  ): { readonly code: string; readonly severity: string; readonly message: string }[] => {
    const { ok, findings } = startPlan(from, { ...OPTIONS, ...options });
    expect(ok).toBe(true);
    return findings.map(({ code, severity, message }) => ({ code, severity, message }));
  };
  const planOf = (
    from: GpxDocument,
    options: Partial<StartOptions> = {},
  ): {
    readonly courses: readonly [{ readonly marks?: readonly object[]; readonly length?: unknown }];
    readonly stations: readonly { readonly name: string }[];
  } => JSON.parse(readBack(from, { ...OPTIONS, ...options }).text) as ReturnType<typeof planOf>;

  it('makes marks of waypoints that say a distance, leaves out start and finish, and says each', () => {
    const { courses, stations } = planOf(document(SEEN));
    expect(courses[0].marks).toEqual([{ at: [-17.379, -33.2], measure: '2 km', name: '2 km' }]);
    // The one that is off the course calibrates nothing.
    expect(stations.map(({ name }) => name)).toEqual(['Well', '4 km']);
    const said = told(document(SEEN));
    for (const name of ['Start', '2 km', '4 km', 'finish line'])
      expect(said.filter(({ message }) => message.includes(`“${name}”`))).toHaveLength(1);
    expect(said.find(({ message }) => message.includes('“4 km”'))).toMatchObject({
      severity: 'warning',
      message: expect.stringContaining('the course does not pass it') as string,
    });
    expect(said.filter(({ message }) => message.includes('“Well”'))).toEqual([]);
  });

  it('keeps a start that stands elsewhere, and distances without order, as stations', () => {
    const points = [waypoint(-17.38, -33.2, 'Start'), waypoint(-17.39, -33.2, '4 km'), waypoint(-17.36, -33.2, '1 km')];
    const { courses, stations } = planOf(document(points));
    expect(courses[0].marks).toBeUndefined();
    expect(stations.map(({ name }) => name)).toEqual(['4 km', 'Start', '1 km']);
    expect(
      told(document(points)).filter(({ message }) => message.includes('do not rise along the course')),
    ).toHaveLength(2);
  });

  it('opens a file in which no waypoint is a station, and says so', () => {
    const only = document([waypoint(-17.4, -33.2, 'START')]);
    expect(planOf(only).stations).toEqual([]);
    expect(
      told(only)
        .map(({ message }) => message)
        .join(),
    ).toContain('No waypoint of the file became a station');
  });

  it('writes a known length and marks into the plan, and measures places by them', () => {
    const mark = { at: [-17.379, -33.2], measure: 2000, name: '2 km' } as const;
    const { courses, stations } = planOf(document(SEEN), { length: 5000, marks: [mark], at: [5000] });
    expect(courses[0]).toMatchObject({ length: '5 km', marks: [{ ...mark, measure: '2 km' }] });
    expect(stations.map(({ name }) => name)).toEqual(['5 km']);
    expect(startPlan(document([]), { ...OPTIONS, at: [5000] }).ok).toBe(false);
    expect(startPlan(document([]), { ...OPTIONS, length: 1500, marks: [mark], at: [1000] })).toMatchObject({
      ok: false,
      findings: [{ code: 'marks-no-order' }],
    });
    expect(planOf(document(SEEN), { marks: [{ ...mark, measure: 1980 }] }).courses[0].marks).toEqual([
      { ...mark, measure: '1.98 km' },
    ]);
  });

  it('says a place that is asked for twice, and marks of the file that places along the course leave unused', () => {
    expect(told(document([]), { at: [1000, 2000, 1000] })).toEqual([
      expect.objectContaining({
        severity: 'note',
        message: expect.stringContaining('1.00 km was given more than once') as string,
      }),
    ]);
    expect(told(document(SEEN), { every: 1000 })).toEqual([
      expect.objectContaining({
        severity: 'note',
        message: expect.stringContaining('were not used: “2 km” and “4 km”.') as string,
      }),
    ]);
  });

  it('is refused with a name of a file that a plan cannot hold', () => {
    expect(startPlan(document([]), { ...OPTIONS, gpx: '../c.gpx', every: 1000 })).toMatchObject({
      ok: false,
      findings: [{ message: expect.stringContaining('own folder') as string }],
    });
  });
});

describe('a first plan is refused', () => {
  const refusal = (
    from: GpxDocument,
    options: Partial<StartOptions>,
  ): readonly (readonly [code: string, message: string])[] => {
    const { ok, findings } = startPlan(from, { ...OPTIONS, ...options });
    expect(ok).toBe(false);
    return findings.map(({ code, message }) => [code, message]);
  };
  const POINTS = document([waypoint(-17.37, -33.2, 'Well')]);
  const [line] = document([]).tracks;

  it('without waypoints and places, and with both kinds of places', () => {
    expect(refusal(document([]), {})).toEqual([
      ['start-places', expect.stringContaining('no waypoints to make stations of. Give a spacing')],
    ]);
    expect(refusal(POINTS, { every: 1000, at: [500] })).toEqual([
      ['start-places', expect.stringContaining('Both a spacing and course distances were given.')],
    ]);
  });

  it('at a distance that is none, is longer than the course, or makes hundreds of stations', () => {
    // 53 steps of 0.001° at 33.2° south, 93.2 m each (WGS 84): 4.94 km.
    for (const every of [0, -5, 4990, 1, NaN])
      expect(refusal(document([]), { every })).toEqual([
        [
          'start-places',
          expect.stringMatching(
            /^(?:A station was asked for every (?:-?\d+ m|\d+\.\d\d km) on a course of 4\.9\d km|The spacing is not a number; the course is 4\.9\d km long)\. The spacing should be shorter than the course, for at most 500 stations\.$/u,
          ),
        ],
      ]);
  });

  it('at places before the start or past the finish', () => {
    expect(refusal(document([]), { at: [1000, 6000] })).toEqual([
      ['measure-beyond-course', expect.stringMatching(/ is at 6\.00 km, but the course is 4\.9\d km long\./u)],
    ]);
    const mark = { at: [-17.4, -33.2], measure: 100, name: 'start' } as const;
    expect(refusal(document([]), { at: [50], marks: [mark] })).toEqual([
      ['measure-beyond-course', expect.stringContaining(' is at 0.05 km, but the course begins at 0.10 km.')],
    ]);
    expect(names({ at: [150], marks: [mark] })).toEqual(['0.15 km']);
    // Multiples from nought on, of which those before the start are left out.
    expect(names({ every: 1000, marks: [{ ...mark, measure: 1200 }] }).slice(0, 2)).toEqual(['2 km', '3 km']);
  });

  it('where the line that is asked for is not there, is too short, or its marks have no order', () => {
    expect(refusal(POINTS, { track: 'Half' })[0]![1]).toContain('“Half”');
    const short = {
      ...line!,
      segments: [{ lon: Float64Array.of(1), lat: Float64Array.of(1), ele: Float64Array.of(NaN) }],
    };
    expect(refusal({ ...POINTS, tracks: [short] }, {})[0]![0]).toBe('course-too-short');
    const marks = [
      { at: [-17.379, -33.2], measure: 3000 },
      { at: [-17.36, -33.2], measure: 1000 },
    ] as const;
    expect(refusal(POINTS, { marks })[0]![0]).toBe('marks-no-order');
    expect(refusal(document([]), { marks, every: 1000 })[0]![0]).toBe('marks-no-order');
  });
});

describe('what was asked of the course', () => {
  interface Written {
    readonly courses: readonly [Readonly<Record<string, unknown>>];
    readonly practice?: Readonly<Record<string, string>>;
  }
  const written = (from: GpxDocument, options: Partial<StartOptions>): Written =>
    JSON.parse(textOf(from, { ...OPTIONS, every: 1000, ...options })) as Written;
  const [line] = document([]).tracks;

  it('stands in the plan: track, gaps, direction, and nothing of it that was not asked', () => {
    const two = {
      ...document([]),
      tracks: [
        { ...line!, name: 'Full' },
        { ...line!, name: 'Half' },
      ],
    };
    expect(written(two, { track: 'Half', gaps: 'join', reverse: true }).courses[0]).toEqual({
      id: 'course',
      name: 'Half',
      gpx: 'c.gpx',
      track: 'Half',
      gaps: 'join',
      reverse: true,
    });
    expect(Object.keys(written(document([]), { reverse: false }).courses[0])).toEqual(['id', 'name', 'gpx']);
  });

  it('has the practice in round metres, but where imperial units are asked for', () => {
    expect(written(document([]), {}).practice).toEqual(written(document([]), { units: 'metric' }).practice);
    expect(written(document([]), { units: 'metric' }).practice).toEqual({
      signAhead: '90 m',
      signTolerance: '9 m',
      gelAhead: '8 m',
      tableGap: '3 m',
      tableLength: '1.8 m',
      trashFrom: '45 m',
      trashTo: '90 m',
    });
    expect(written(document([]), { units: 'imperial' }).practice).toBeUndefined();
  });

  it('keeps lengths that are no round number of kilometres or miles as plain metres', () => {
    const mark = { at: [-17.379, -33.2], measure: 2000.123_456 } as const;
    expect(written(document([]), { length: 4987.654_321, marks: [mark] }).courses[0]).toMatchObject({
      length: 4987.654_321,
      marks: [{ at: [-17.379, -33.2], measure: 2000.123_456 }],
    });
    const { findings } = startPlan(document([]), { ...OPTIONS, at: [1234.567_89, 1234.567_89] });
    expect(findings.map(({ message }) => message)).toEqual([
      'The place at 1.23 km was given more than once. It became one station.',
    ]);
  });

  it('names at most five of the file’s distances that were not used', () => {
    const many = document(Array.from({ length: 7 }, (_, k) => waypoint(-17.4 + k * 0.005, -33.2, `${k + 1} km`)));
    const { findings } = startPlan(many, { ...OPTIONS, every: 2000 });
    expect(findings.map(({ message }) => message)).toEqual([
      expect.stringContaining('were not used: “1 km”, “2 km”, “3 km”, “4 km”, “5 km” and 2 more.'),
    ]);
  });

  it('leaves out a start beside the road, in quotation marks, and a Spanish finish', () => {
    const { findings } = startPlan(
      document([
        // 111 m north of the first point, farther than the course is looked for.
        waypoint(-17.4, -33.199, '“Start”'),
        waypoint(-17.347, -33.2, 'Meta'),
        waypoint(-17.37, -33.2, 'Well'),
      ]),
      OPTIONS,
    );
    expect(findings.map(({ message }) => /was left out: it is at the (\w+)/u.exec(message)?.[1])).toEqual([
      'start',
      'finish',
    ]);
  });

  it('calls a finish that is at the start of the file’s waypoints by where it stands', () => {
    const loop = [
      waypoint(-17.4, -33.2, 'Start / Finish'),
      waypoint(-17.347, -33.2, 'finish'),
      waypoint(-17.347, -33.2, 'start'),
      waypoint(-17.37, -33.2, 'Well'),
    ];
    const { findings } = startPlan(document(loop), OPTIONS);
    expect(findings.map(({ message }) => /“(.*)” was left out: it is at the (\w+)/u.exec(message)?.slice(1))).toEqual([
      ['Start / Finish', 'start'],
      ['finish', 'finish'],
      ['start', 'finish'],
    ]);
  });
});

describe('findings about a plan', () => {
  it('get the place of what they point at, and keep one that they have', () => {
    const read = readPlan(textOf(document([]), { ...OPTIONS, every: 2000 }), 'dir/plan.json');
    if (!read.ok) throw new Error('does not read back');
    const shared = { code: 'probe', severity: 'note', message: 'here' } as const;
    const placed = placeFindings(
      [
        { ...shared, where: { path: '/stations/0/on/measure' } },
        { ...shared, where: { path: '/name', line: 7 } },
        { ...shared, where: { course: 'c' } },
      ],
      read.value,
    );
    const line =
      read.value.text.split('\n').findIndex((text) => text.includes('"2 km",') && text.includes('measure')) + 1;
    expect(placed.map(({ where }) => where)).toEqual([
      { path: '/stations/0/on/measure', file: 'dir/plan.json', line, column: 20 },
      { path: '/name', line: 7 },
      { course: 'c' },
    ]);
  });
});
