import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import type { Course } from '../course/course.ts';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanStation, PlanZone } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, segmentThrough, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { factsOf, layoutOf, planCourse, planRace, planned } from '../testing/plans.ts';
import { CHECKS } from './checks.ts';
import { reviewLayout } from './review.ts';

/** What every plan of these tests leaves out: who runs, first aid, widths, elevations, whom to call. */
const LEFT_OUT = ['no-entrants', 'no-date', 'no-medical', 'no-widths', 'no-elevations', 'no-contacts', 'no-captain'];

it('every check has a code of its own, a title and a source', () => {
  expect(new Set(CHECKS.map((check) => check.code)).size).toBe(CHECKS.length);
  for (const { code, title, source } of CHECKS) {
    expect(code).toMatch(/^[a-z]+(-[a-z]+)+$/);
    expect(title.length).toBeGreaterThan(15);
    expect(source.length).toBeGreaterThan(5);
  }
});

it('findings carry the code, severity and source of their check, in the order of the list', () => {
  const layout = layoutOf(
    [turtle(ORIGIN, [[90, 9000]])],
    [{ at: from(from(ORIGIN, 90, 50), 180, 1) }, { at: from(ORIGIN, 0, 700) }],
  );
  const { findings } = reviewLayout(layout);
  expect(findings.map((finding) => finding.code)).toEqual([
    'station-off-course',
    'side-unclear',
    'item-outside',
    'leg-long',
    'near-start',
    ...LEFT_OUT,
  ]);
  for (const finding of findings) {
    const check = CHECKS.find(({ code }) => code === finding.code)!;
    expect(finding).toMatchObject({ severity: check.severity, source: check.source });
  }
});

it('a good plan has no finding', () => {
  const points = turtlePoints(ORIGIN, [[90, 6000]]);
  const level = buildCourse({
    id: 'c',
    name: 'c',
    segments: [
      segmentThrough(
        points,
        points.map(() => 3),
      ),
    ],
  });
  const station = (measure: number, name: string): Partial<PlanStation> => ({
    name,
    on: { course: 'c', measure, side: 'right', offset: 5 },
    width: 9,
    points: (['drop', 'access', 'medical'] as const).map((kind, k) => ({
      kind,
      at: from(from(ORIGIN, 90, measure - 20 - 5 * k), 180, 9),
    })),
    people: { captain: `Captain of ${name}`, radio: name },
  });
  const race = {
    ...planRace('run', 'c'),
    waves: [{ time: 8 * 3600, entrants: 500 }],
    finish: { median: 2000, spread: 0.2 },
    cutoff: 10 * 3600,
  };
  const at = { accessOpens: 4 * 3600, closes: 7 * 3600 };
  const layout = planned(
    layoutOf([valueOf(level)], [station(2000, 'Kelp'), station(4000, 'Dune')], { races: [race] }),
    {
      date: '2027-05-02',
      contacts: { emergency: '1', raceControl: '2', radioChannel: '3' },
      clock: [
        { course: 'c', measure: 0, ...at, reopens: 9 * 3600 },
        { course: 'c', measure: 6000, ...at, reopens: 10.5 * 3600 },
      ],
    },
  );
  expect(reviewLayout(layout, [], undefined, factsOf(layout)).findings).toEqual([]);
});

describe('another course of the plan, listed first and far from every station', () => {
  interface Case {
    readonly courses: readonly Course[];
    readonly stations: readonly Partial<PlanStation>[];
    /** Ids of races on wheels. */
    readonly wheels?: readonly string[];
    readonly zones?: readonly PlanZone[];
  }
  const centre = (course: Course): Course => ({ ...course, drawn: 'centre' });
  const place = (along: number, right: number): LonLat =>
    from(from(ORIGIN, 90, along), right < 0 ? 0 : 180, Math.abs(right));
  const pin = (along: number, keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
    at: place(along, 5),
    side: 'right',
    ...keys,
  });
  const steep = turtlePoints(ORIGIN, [[90, 3000]], 50);
  const hill = (id: string): Course =>
    valueOf(
      buildCourse({
        id,
        name: id,
        segments: [
          segmentThrough(
            steep,
            steep.map((_, k) => 400 - 3 * k),
          ),
        ],
      }),
    );
  const road = turtle(ORIGIN, [[90, 3000]], 50);
  const CASES: readonly Case[] = [
    { courses: [hill('c')], stations: [pin(1500)], wheels: ['c'] },
    {
      courses: [road],
      stations: [
        pin(1500, { items: { sign: { at: place(1410, 61) } } }),
        pin(40),
        pin(2960),
        { at: place(600, 400) },
        pin(1640),
      ],
    },
    {
      courses: [road],
      stations: [
        pin(1500, {
          points: [
            { kind: 'drop', at: place(1450, -8) },
            { kind: 'medical', at: place(1530, 10) },
            { kind: 'access', at: place(1620, 10) },
          ],
        }),
      ],
    },
    {
      courses: [
        centre(
          turtle(
            ORIGIN,
            [
              [90, 1000],
              [0, 5.9],
              [60, 1000],
            ],
            20,
          ),
        ),
      ],
      stations: [{ on: { course: 'c', measure: 1050, side: 'left', offset: 6 } }],
    },
    {
      courses: [
        turtle(
          ORIGIN,
          [
            [90, 1000],
            [40, 1000],
          ],
          20,
        ),
      ],
      stations: [{ on: { course: 'c', measure: 1022, side: 'right', offset: 5 }, side: 'left' }],
    },
    {
      courses: [centre(road), centre(courseThrough(turtlePoints(place(3000, 4), [[270, 3000]], 50), 'd'))],
      stations: [pin(1500, { passes: 'all' })],
    },
    {
      courses: [centre(road), centre(turtle(place(0, 2), [[90, 3000]], 50, 'd'))],
      stations: [pin(1500, { width: 7 })],
    },
    {
      courses: [
        road,
        turtle(
          from(place(1460, 0), 180, 600),
          [
            [0, 600],
            [90, 1000],
          ],
          20,
          'd',
        ),
      ],
      stations: [pin(1500, { side: 'left', at: place(1500, -5) })],
    },
    {
      courses: [road],
      stations: [pin(1500)],
      zones: [
        {
          name: 'a',
          rule: 'keep-clear',
          polygon: [place(1540, -20), place(1620, -20), place(1620, 20), place(1540, 20)],
        },
        { name: 'b', rule: 'allowed', polygon: [place(1400, -20), place(1520, -20), place(1520, 20), place(1400, 20)] },
      ],
    },
  ];
  /** 9 km north, level, of another length. */
  const decoy = valueOf(
    buildCourse({
      id: 'decoy',
      name: 'decoy',
      segments: [
        segmentThrough(
          turtlePoints(
            from(ORIGIN, 0, 9000),
            [
              [40, 700],
              [90, 4300],
            ],
            90,
          ),
          Array.from({ length: 57 }, () => 10),
        ),
      ],
    }),
  );

  const found = ({ courses, stations, wheels = [], zones = [] }: Case, first: readonly Course[]): Finding[] => {
    const races = [...first, ...courses].map(({ id }) => ({
      ...planRace(id, id),
      division: wheels.includes(id) ? ('wheels' as const) : ('run' as const),
    }));
    const layout = layoutOf(
      [...first, ...courses],
      stations.map((station) => ({ ...station, races: courses.map(({ id }) => id) })),
      { races },
    );
    const plan = {
      ...layout.plan,
      zones,
      courses: [...first, ...courses].map(({ id }) => planCourse(id, id === 'c' ? { length: 3100 } : {})),
    };
    // Findings on races and courses themselves name their place in the plan, which moves, or list the other course too.
    const ofCourses = new Set(['race-unserved', 'length-differs', ...LEFT_OUT]);
    return reviewLayout({ ...layout, plan }).findings.filter(
      ({ code, where }) => !ofCourses.has(code) && where.race !== 'decoy',
    );
  };

  it('changes nothing of what is found', () => {
    for (const each of CASES) expect(found(each, [decoy])).toEqual(found(each, []));
  });

  it('is put before cases in which most checks find something', () => {
    const codes = new Set(CASES.flatMap((each) => found(each, []).map(({ code }) => code)));
    expect([...codes].sort()).toEqual([
      'bend-near-tables',
      'courses-disagree',
      'crosses-flow',
      'descent-with-wheels',
      'drop-side',
      'flows-share-width',
      'grade-at-tables',
      'item-in-zone',
      'item-off-course',
      'item-outside',
      'item-outside-allowed',
      'items-overlap',
      'leg-short',
      'medical-without-access',
      'served-both-ways',
      'side-contradicted',
      'side-unclear',
      'sign-missed',
      'station-off-course',
      'tables-hidden',
      'trash-blocks-medical',
      'two-way-road',
      'wheel-folds',
    ]);
  });
});
