/** When a check can run: as soon as one station, course or race of the plan gives what it needs. */
import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import type { Course } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { Plan, PlanRace, PlanStation, PlanVehicle, PlanWave, PlanZone } from '../plan/plan.ts';
import { ORIGIN, from, segmentThrough, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { layoutOf, planCourse, planRace } from '../testing/plans.ts';
import { CHECKS } from './checks.ts';
import { reviewLayout } from './review.ts';
import { STAGE_RULES } from './stageRules.ts';

const road = turtle(ORIGIN, [[90, 9000]], 100);
const at = (k: number): Partial<PlanStation> => ({
  on: { course: 'c', measure: 2000 + 2000 * k, side: 'right', offset: 5 },
});
const place: LonLat = from(from(ORIGIN, 90, 4000), 180, 8);

/** Three stations, of which the middle one has what a check needs. */
const among = (keys: Partial<PlanStation>): Layout => layoutOf([road], [at(0), { ...at(1), ...keys }, at(2)]);
const missing = (code: string, layout: Layout): string | null | undefined =>
  [...STAGE_RULES, ...CHECKS].find((rule) => rule.code === code)!.missing?.(layout);

const hilly = (id: string): Course => {
  const points = turtlePoints(ORIGIN, [[90, 3000]], 100);
  return valueOf(
    buildCourse({
      id,
      name: id,
      segments: [
        segmentThrough(
          points,
          points.map(() => 10),
        ),
      ],
    }),
  );
};

describe('a check runs', () => {
  it('where one of several stations has a road width, gel, or points of the kind that it is about', () => {
    const medical = [{ kind: 'medical', at: place }] as const;
    const cases: [code: string, keys: Partial<PlanStation>][] = [
      ['clear-width', { width: 9 }],
      ['responders-width', { width: 9, points: medical }],
      ['gel-without-water', { serves: ['water', 'gel'] }],
      [
        'drop-side',
        {
          points: [
            { kind: 'toilets', at: place },
            { kind: 'drop', at: place },
          ],
        },
      ],
      ['medical-without-access', { points: [{ kind: 'drop', at: place }, ...medical] }],
      ['trash-blocks-medical', { points: [...medical, { kind: 'access', at: place }] }],
      ['access-missing', { points: [{ kind: 'toilets', at: place }] }],
    ];
    for (const [code, keys] of cases) {
      expect([code, missing(code, among(keys))]).toEqual([code, null]);
      expect([code, missing(code, among({}))]).toEqual([code, expect.stringMatching(/^no-/u)]);
    }
  });

  it('not for widths and points of different stations: the width of one says nothing of the way by another', () => {
    const layout = layoutOf(
      [road],
      [
        { ...at(0), width: 9 },
        { ...at(1), points: [{ kind: 'medical', at: place }] },
      ],
    );
    expect(missing('responders-width', layout)).toBe('no-responders-width');
    expect(
      missing(
        'trash-blocks-medical',
        layoutOf(
          [road],
          [
            { ...at(0), points: [{ kind: 'access', at: place }] },
            { ...at(1), points: [{ kind: 'medical', at: place }] },
          ],
        ),
      ),
    ).toBe('no-medical-with-access');
  });

  it('where one of several courses has elevations, and wheels run on it', () => {
    const courses = [turtle(ORIGIN, [[90, 3000]], 100, 'a'), hilly('b'), turtle(ORIGIN, [[90, 3000]], 100, 'd')];
    const stations = [{ at: from(from(ORIGIN, 90, 1500), 180, 5) }];
    const wheels = (...ids: string[]): PlanRace[] =>
      courses.map(({ id }) => ({ ...planRace(id, id), division: ids.includes(id) ? 'wheels' : 'run' }));
    expect(missing('grade-at-tables', layoutOf(courses, stations))).toBeNull();
    expect(missing('grade-at-tables', layoutOf([courses[0]!], stations))).toBe('no-elevations');
    expect(missing('descent-with-wheels', layoutOf(courses, stations, { races: wheels('a', 'b') }))).toBeNull();
    expect(missing('descent-with-wheels', layoutOf(courses, stations, { races: wheels('a') }))).toBe(
      'no-wheels-elevations',
    );
    expect(missing('descent-with-wheels', layoutOf(courses, stations, { races: wheels() }))).toBe('no-wheels');
  });

  it('where one of several courses states its length, and finds that one alone', () => {
    const courses = [turtle(ORIGIN, [[90, 3000]], 100, 'a'), turtle(ORIGIN, [[90, 2000]], 100, 'b')];
    const layout = layoutOf(courses, [{ at: from(from(ORIGIN, 90, 1500), 180, 5) }]);
    const stated: Layout = {
      ...layout,
      plan: { ...layout.plan, courses: [planCourse('a'), planCourse('b', { length: 2030 })] },
    };
    expect(missing('length-differs', stated)).toBeNull();
    expect(missing('length-differs', layout)).toBe('no-length');
    const found = reviewLayout(stated).findings.filter(({ code }) => code === 'length-differs');
    expect(found).toEqual([
      expect.objectContaining({ measured: expect.closeTo(2000, 2), where: { path: '/courses/1/length', course: 'b' } }),
    ]);
  });

  it('where one of several zones has its rule and encloses something', () => {
    const square: LonLat[] = [0, 90, 180, 270].map((azimuth) => from(place, azimuth, 20));
    const zones: PlanZone[] = [
      { name: 'line', rule: 'keep-clear', polygon: square.slice(0, 2) },
      { name: 'a', rule: 'allowed', polygon: square },
      { name: 'b', rule: 'keep-clear', polygon: square },
    ];
    const layout = among({});
    const zoned = (of: readonly PlanZone[]): Layout => ({ ...layout, plan: { ...layout.plan, zones: of } });
    for (const code of ['item-in-zone', 'item-outside-allowed']) {
      expect(missing(code, zoned(zones))).toBeNull();
      expect(missing(code, zoned(zones.slice(0, 1)))).toMatch(/^no-(keep-clear|allowed)-zone$/u);
    }
  });

  it('where there are two stations to overlap', () => {
    expect(missing('items-overlap', layoutOf([road], [at(0), at(1)]))).toBeNull();
    expect(missing('items-overlap', layoutOf([road], [at(0)]))).toBe('one-station');
  });
});

describe('what race day says is asked', () => {
  const wave: PlanWave = { time: 28_800, entrants: 100 };
  const vehicle: PlanVehicle = { id: 'v', name: 'v', kg: 1500, places: 9, kmh: 30, stop: 600, from: 0 };
  const races = (...of: Partial<PlanRace>[]): PlanRace[] =>
    of.map((keys, k) => ({ ...planRace(`r${k}`, 'c'), ...keys }));
  const planned = (keys: Partial<Plan>): Layout => {
    const layout = among({});
    return { ...layout, plan: { ...layout.plan, ...keys } };
  };

  it('where one of several races has waves', () => {
    expect(missing('heat-assumed', planned({ races: races({}, { waves: [wave] }, {}) }))).toBeNull();
    expect(missing('heat-assumed', planned({ races: races({}, {}) }))).toBe('no-waves');
  });

  it('of past results where one of several races, or a wave of it, takes its times from a file', () => {
    const csv = { csv: 'results.csv', column: 'time' };
    expect(missing('results-unread', planned({ races: races({}, { finish: csv }) }))).toBeNull();
    expect(
      missing('results-unread', planned({ races: races({}, { waves: [wave, { ...wave, finish: csv }] }) })),
    ).toBeNull();
    expect(
      missing(
        'results-unread',
        planned({ races: races({ finish: { median: 9000, spread: 0.2 } }, { waves: [wave] }) }),
      ),
    ).toBe('no-results');
  });

  it('of gradients where a race that has waves takes them into account', () => {
    expect(missing('gradient-unknown', planned({ races: races({}, { gradient: true, waves: [wave] }) }))).toBeNull();
    for (const without of [{ gradient: true }, { waves: [wave] }])
      expect(missing('gradient-unknown', planned({ races: races(without) }))).toBe('no-gradients');
  });

  it('of vehicles where there are waves and vehicles', () => {
    expect(missing('load-too-heavy', planned({ races: races({ waves: [wave] }), vehicles: [vehicle] }))).toBeNull();
    expect(missing('load-too-heavy', planned({ races: races({ waves: [wave] }) }))).toBe('no-vehicles');
    expect(missing('load-too-heavy', planned({ vehicles: [vehicle] }))).toBe('no-waves');
  });
});

describe('a review', () => {
  it('says of each check whether it ran, and why not', () => {
    const { checks } = reviewLayout(among({ width: 9 }));
    expect(checks.map(({ code }) => code)).toEqual([...STAGE_RULES, ...CHECKS].map(({ code }) => code));
    expect(checks.find(({ code }) => code === 'clear-width')).toMatchObject({ ran: true, found: 0, cannotTell: 0 });
    expect(checks.find(({ code }) => code === 'clear-width')).not.toHaveProperty('reason');
    expect(checks.find(({ code }) => code === 'drop-side')).toMatchObject({
      ran: false,
      reason: 'no station has a drop point',
      reasonCode: 'no-drop',
      found: 0,
    });
    expect(checks.find(({ code }) => code === 'mark-factor')).toMatchObject({ ran: true });
  });

  it('counts findings, and among them those that cannot be told', () => {
    const drop = (right: number): Partial<PlanStation> => ({
      points: [{ kind: 'drop', at: from(from(ORIGIN, 90, 4000), right < 0 ? 0 : 180, Math.abs(right)) }],
    });
    const layout = layoutOf(
      [road],
      [
        { ...at(0), points: [{ kind: 'drop', at: from(from(ORIGIN, 90, 2000), 0, 8) }] },
        { ...at(1), ...drop(1) },
        at(2),
      ],
    );
    expect(reviewLayout(layout).checks.find(({ code }) => code === 'drop-side')).toMatchObject({
      ran: true,
      found: 2,
      cannotTell: 1,
    });
  });

  it('takes over what it knows of the very same stations on the very same courses, and of no others', () => {
    const layout = layoutOf([road], [{ ...at(0), side: 'left' }, at(1)]);
    const made = reviewLayout(layout);
    const marked = {
      ...layout,
      atStations: made.atStations.map((of) => ({
        ...of,
        'tables-hidden': [{ code: 'tables-hidden', severity: 'note' as const, message: 'kept', where: {} }],
      })),
    };
    const kept = (next: Layout): number =>
      reviewLayout(next, [], marked).findings.filter(({ message }) => message === 'kept').length;
    expect(kept(layout)).toBe(2);
    expect(kept({ ...layout, stations: [layout.stations[0]!, { ...layout.stations[1]! }] })).toBe(1);
    expect(kept({ ...layout, courses: [...layout.courses] })).toBe(0);
    expect(
      reviewLayout(layout, [{ code: 'gap-joined', severity: 'note', message: 'before', where: {} }]).findings[0]!
        .message,
    ).toBe('before');
  });
});
