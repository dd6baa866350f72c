import { describe, expect, it } from 'vitest';
import { analyse } from '../../analyse.ts';
import { courseLength } from '../../course/course.ts';
import { sharedStretches } from '../../course/shared.ts';
import type { GpxDocument, GpxWaypoint } from '../../gpx/document.ts';
import { readPlan } from '../read.ts';
import { startPlan } from '../start.ts';
import type { RaceAnswers, SetUpAnswers } from './answers.ts';
import { raceFaults } from './races.ts';
import { setUpPlan } from './setUp.ts';

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

/** A line through points in mid-ocean, with a vertex every hundredth of the way. */
function document(
  file: string,
  points: readonly (readonly [number, number])[],
  waypoints: GpxWaypoint[] = [],
): GpxDocument {
  const dense = points.flatMap(([lon, lat], k) => {
    const next = points[k + 1];
    if (next === undefined) return [[lon, lat] as const];
    return Array.from(
      { length: 50 },
      (_, i) => [lon + ((next[0] - lon) * i) / 50, lat + ((next[1] - lat) * i) / 50] as const,
    );
  });
  const lon = Float64Array.from(dense, ([x]) => x);
  return {
    file,
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
            lon,
            lat: Float64Array.from(dense, ([, y]) => y),
            ele: new Float64Array(dense.length),
          },
        ],
      },
    ],
  };
}

const TAP = waypoint(-17.38, -33.2001, 'Tap');
const FULL = document(
  'full.gpx',
  [
    [-17.4, -33.2],
    [-17.3, -33.2],
  ],
  [TAP, waypoint(-17.3785, -33.2, '2 km')],
);
/** Along the full for 4.66 km, then off to the north. */
const HALF = document(
  'sub/half.gpx',
  [
    [-17.39, -33.2],
    [-17.34, -33.2],
    [-17.34, -33.17],
  ],
  [TAP, waypoint(-17.3401, -33.18, 'Gate')],
);
const FILES = new Map([FULL, HALF].map((one) => [one.file, one]));
const BOTH: SetUpAnswers = {
  name: 'Two races',
  courses: [{ gpx: 'full.gpx' }, { gpx: 'sub/half.gpx', name: 'Half' }],
  races: [],
  marks: true,
  stations: { from: 'none' },
};

const textOf = (answers: SetUpAnswers): string => {
  const text = setUpPlan(answers, FILES);
  if (!text.ok) throw new Error(text.findings.map(({ message }) => message).join('\n'));
  return text.value;
};
const planOf = (answers: SetUpAnswers): ReturnType<typeof analysed> => analysed(textOf(answers));
function analysed(text: string): Extract<ReturnType<typeof analyse>, { ok: true }>['value'] {
  const read = readPlan(text, 'plan.json');
  if (!read.ok) throw new Error('does not read back');
  const found = analyse(read.value.plan, { gpx: FILES });
  if (!found.ok) throw new Error(found.findings[0]!.message);
  return found.value;
}

describe('a plan of several courses', () => {
  it('has them under ids of their files, a race for each, and its stations from the waypoints of all, each once', () => {
    const { plan, stations } = planOf({ ...BOTH, stations: { from: 'waypoints', side: 'alternate' } });
    expect(plan.courses.map(({ id, name, gpx }) => [id, name, gpx])).toEqual([
      ['full', 'full', 'full.gpx'],
      ['half', 'Half', 'sub/half.gpx'],
    ]);
    expect(plan.courses[0]!.marks.map(({ name }) => name)).toEqual(['2 km']);
    expect(plan.races.map(({ id, name, course }) => [id, name, course])).toEqual([
      ['full', 'full', 'full'],
      ['half', 'Half', 'half'],
    ]);
    expect(stations.map(({ name }) => name)).toEqual(['Tap', 'Gate']);
    expect(plan.stations.map(({ side }) => side)).toEqual(['right', 'left']);
    expect(planOf({ ...BOTH, marks: false }).plan.courses[0]!.marks).toEqual([]);
  });

  it('takes races as they are typed', () => {
    const races: readonly RaceAnswers[] = [
      { name: 'Long', gpx: 'full.gpx', start: '08:00', entrants: '1200', finish: '0:55', cutoff: '2:00' },
      { name: 'Short', gpx: 'sub/half.gpx', start: '8:30', entrants: '300', finish: '45 min', cutoffAt: '10:15' },
      { name: 'Fun', gpx: 'sub/half.gpx' },
    ];
    const [long, short, fun] = planOf({ ...BOTH, races }).plan.races;
    expect(long).toMatchObject({
      id: 'long',
      course: 'full',
      cutoff: 36e3,
      finish: {
        median: 3300,
        spread: 0.2,
      },
      waves: [
        {
          time: 28800,
          entrants: 1200,
        },
      ],
    });
    expect(short).toMatchObject({ id: 'short', course: 'half', cutoff: 36_900, finish: { median: 2700 } });
    expect(fun).toMatchObject({ id: 'fun', waves: [] });
  });

  it('makes a course of parts for a race there and back or of laps, one for two races on the same', () => {
    const five = { gpx: 'full.gpx', turnAt: '2,5' };
    const races = [
      { name: 'Long', gpx: 'full.gpx' },
      { name: 'Five', ...five, start: '09:00', entrants: '1,000', finish: '0:28' },
      { name: 'Walk', ...five, turnAt: '2.5 km' },
    ];
    const { plan, courses } = planOf({
      ...BOTH,
      courses: [BOTH.courses[0]!],
      races,
      date: '2027-09-12',
      emergency: '9',
    });
    expect(plan.races.map(({ course }) => course)).toEqual(['course', 'five', 'five']);
    expect(plan.races[1]!.waves[0]!.entrants).toBe(1000);
    expect([plan.date, plan.contacts.emergency]).toEqual(['2027-09-12', '9']);
    expect(plan.courses[1]).toMatchObject({
      id: 'five',
      name: 'Five',
      parts: [{ of: 'course', to: 2500 }, { to: 2500 }],
    });
    expect(courseLength(courses[1]!.course)).toBeCloseTo(5000, 3);
    // The list's distances are on the course that is named for it.
    const text = 'name,km,side\nMill,2,left\n';
    const list = planOf({ ...BOTH, stations: { from: 'list', text, file: 'l.csv', gpx: 'sub/half.gpx' } });
    expect(list.plan.stations[0]!.on!.course).toBe('half');
  });

  it('refuses laps that do not close, a turning place past the end, and both at once', () => {
    const told = (race: Partial<RaceAnswers>): string[] =>
      setUpPlan({ ...BOTH, races: [{ name: 'A', gpx: 'full.gpx', ...race }] }, FILES).findings.flatMap(
        ({ severity, where, message }) => (severity === 'error' ? [`${where.path} ${message}`] : []),
      );
    expect(told({ laps: '2' })[0]).toMatch(/^\/races\/0 .*begins .* from the end of the one before it/u);
    expect(told({ turnAt: '12 km' })[0]).toContain('/races/0/turnAt The race turns at 12.00 km, but its course is 9.3');
    expect(told({ turnAt: '2', laps: '1' })[0]).toContain('/races/0/laps The race has a turning place and laps.');
    expect(told({ turnAt: 'pier' })[0]).toContain('“pier” is not a turning place.');
  });

  it('puts stations at a spacing on each course, but where it runs along one before it', () => {
    const { plan } = planOf({ ...BOTH, stations: { from: 'every', every: 2000, side: 'left' } });
    // The full is 9.33 km long; of the half's 7.98 km the first 4.66 are on it.
    expect(plan.stations.map(({ on }) => [on!.course, on!.measure / 1000, on!.side])).toEqual([
      ...[2, 4, 6, 8].map((km) => ['full', km, 'left']),
      ['half', 6, 'left'],
    ]);
  });

  it('takes a list, leaves out its bad rows, and gives ids where the list has none', () => {
    const text = 'id,name,course,km,side\n,Mill,,2,left\ns1,Bay,half,6,right\n,Cape,half,60,left\ns1,Pier,,3,left\n';
    const made = setUpPlan({ ...BOTH, stations: { from: 'list', text, file: 'list.csv' } }, FILES);
    expect(made.findings.filter(({ code }) => code === 'list-row').map(({ where }) => where.line)).toEqual([4]);
    const { plan } = planOf({ ...BOTH, stations: { from: 'list', text, file: 'list.csv' } });
    expect(plan.stations.map(({ id, name, on }) => [id, name, on!.course])).toEqual([
      ['s2', 'Mill', 'full'],
      ['s1', 'Bay', 'half'],
      ['s3', 'Pier', 'full'],
    ]);
  });

  it('is, of one file, the plan that startPlan makes, byte for byte', () => {
    const name = 'One';
    const one: SetUpAnswers = { ...BOTH, name, courses: [{ gpx: 'full.gpx' }] };
    for (const units of ['metric', 'imperial'] as const) {
      const from = (options: object): unknown => startPlan(FULL, { name, gpx: 'full.gpx', units, ...options });
      expect(textOf({ ...one, units, stations: { from: 'waypoints', side: 'left' } })).toBe(
        (from({ side: 'left' }) as { value: string }).value,
      );
      expect(textOf({ ...one, units, marks: false, stations: { from: 'every', every: 1500 } })).toBe(
        (from({ every: 1500 }) as { value: string }).value,
      );
    }
  });

  it('is refused with every field that cannot be used, by its path', () => {
    const races = [
      { name: 'A', gpx: 'full.gpx', start: 'soon', entrants: '0', finish: '55:00', cutoff: '' },
      { name: ' ', gpx: 'other.gpx' },
    ];
    const made = setUpPlan({ ...BOTH, races }, FILES);
    expect(made.ok).toBe(false);
    expect(made.findings.map(({ where }) => where.path)).toEqual([
      '/races/0/start',
      '/races/0/entrants',
      '/races/0/finish',
      '/races/1/gpx',
    ]);
    const every = setUpPlan({ ...BOTH, stations: { from: 'every', every: 0 } }, FILES);
    expect(every.findings.map(({ code }) => code)).toEqual(expect.arrayContaining(['setup-every']));
    const missing = setUpPlan({ ...BOTH, courses: [{ gpx: 'none.gpx' }] }, FILES);
    expect(missing).toMatchObject({ ok: false, findings: [{ code: 'setup-file', where: { file: 'none.gpx' } }] });
  });
});

describe('a race as it is typed', () => {
  const said = (race: Partial<RaceAnswers>, length?: number): string[] =>
    raceFaults({ name: 'Five', gpx: 'full.gpx', ...race }, length).map(
      ({ where, message }) => `${where.path} ${message}`,
    );

  it('may be left empty, and needs both or neither of start and runners', () => {
    expect(said({})).toEqual([]);
    expect(said({ start: '', entrants: ' ' })).toEqual([]);
    expect(said({ start: '08:00' })[0]).toContain('/entrants The race has a start time but no runners.');
    expect(said({ entrants: '20' })[0]).toContain('/start The race has runners but no start time.');
    expect(said({ cutoff: '1:00' })[0]).toContain('/start A time limit counts from a start time.');
  });

  it('says which times nobody runs, and a cutoff that is not after the start', () => {
    expect(said({ finish: '28:30' }, 5000)).toEqual([
      '/finish “28:30” is 28:30:00 for 5.00 km, which nobody takes. With one colon a time is hours and minutes. Write minutes and seconds as 0:28:30.',
    ]);
    expect(said({ finish: '0:28:30' }, 5000)).toEqual([]);
    expect(said({ start: '08:00', entrants: '2', cutoffAt: '07:00' })[0]).toContain('not after the start at 08:00');
    expect(said({ start: '08:00', entrants: '2', cutoffAt: '09:00', cutoff: '1:00' })[0]).toContain('one of them');
  });
});

describe('shared stretches', () => {
  it('are found by the distances of the course that is asked about, with their way', () => {
    const { courses } = planOf(BOTH);
    const [full, half] = courses;
    const [shared, ...more] = sharedStretches(half!, full!);
    expect(more).toEqual([]);
    // 0.05° of longitude at 33.2° south, 4.66 km (WGS 84).
    expect(shared!.from).toBe(0);
    expect(Math.abs(shared!.to - 4663)).toBeLessThan(40);
    expect(shared!.against).toBeUndefined();
    expect(courseLength(half!.course)).toBeGreaterThan(7900);
    const back = analysed(textOf({ ...BOTH, courses: [BOTH.courses[0]!, { gpx: 'sub/half.gpx', reverse: true }] }));
    expect(sharedStretches(back.courses[1]!, back.courses[0]!)[0]!.against).toBe(true);
  });
});
