/** The checks of what a plan leaves out, and of slips in it, each just inside its limit and just beyond. */
import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import type { Course } from '../course/course.ts';
import type { Finding, LonLat } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import { DEFAULT_SUPPLIES } from '../plan/defaults.ts';
import type { Plan, PlanRace, PlanStation, PlanZone, Practice } from '../plan/plan.ts';
import { ORIGIN, from, segmentThrough, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { factsOf, layoutOf, planRace, planned } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { dropFar } from './dropFar.ts';
import { farFromCourses } from './farFromCourses.ts';
import { distanceIn, nameDistance } from './nameDistance.ts';
import { noCaptain } from './noCaptain.ts';
import { noContacts } from './noContacts.ts';
import { noElevations } from './noElevations.ts';
import { noEntrants } from './noEntrants.ts';
import { noMedical } from './noMedical.ts';
import { noWater } from './noWater.ts';
import { noWidths } from './noWidths.ts';
import { reviewLayout } from './review.ts';
import { ruleLoose } from './ruleLoose.ts';
import { sameName } from './sameName.ts';
import { sharedContact } from './sharedContact.ts';
import { suppliesShort } from './suppliesShort.ts';

const H = 3600;
const road = turtle(ORIGIN, [[90, 12_000]], 200);
const on = (measure: number, keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  on: { course: 'c', measure, side: 'right', offset: 5 },
  ...keys,
});
const at = (along: number, right: number): LonLat => from(from(ORIGIN, 90, along), 180, right);
const race: PlanRace = {
  ...planRace('run', 'c'),
  waves: [{ time: 8 * H, entrants: 1000 }],
  finish: { median: H, spread: 0.2 },
  show: 1,
};
const layout = (stations: readonly Partial<PlanStation>[], keys: Partial<Plan> = {}, course: Course = road): Layout =>
  planned(layoutOf([course], stations), keys);
const found = (check: Check, of: Layout): readonly Finding[] =>
  check.find(of, of.plan.races.some(({ waves }) => waves.length > 0) ? factsOf(of) : null);
const messages = (check: Check, of: Layout): string[] => found(check, of).map(({ message }) => message);
const paramsOf = (check: Check, of: Layout): unknown[] => found(check, of).map(({ params }) => params);

it('tells a first user in at most ten lines what a bare plan of ten stations leaves out', () => {
  const { findings } = reviewLayout(layout(Array.from({ length: 10 }, (_, k) => on(1700 + 1000 * k))));
  const left = findings.filter(({ code }) => code.startsWith('no-'));
  expect(left.map(({ code, severity }) => `${code} ${severity}`)).toEqual([
    'no-entrants warning',
    'no-date note',
    'no-medical warning',
    'no-widths warning',
    'no-elevations note',
    'no-contacts warning',
    'no-captain warning',
  ]);
});

describe('no-medical', () => {
  const medical = (measure: number, right: number = 10): Partial<PlanStation> =>
    on(2000, { points: [{ kind: 'medical', at: at(measure, right) }] });

  it('is a warning where there is no medical point, or none in the second half of a course', () => {
    expect(paramsOf(noMedical, layout([on(8000)]))).toEqual([{ none: true, courses: [] }]);
    expect(paramsOf(noMedical, layout([medical(5990)]))).toEqual([{ none: false, courses: ['c'] }]);
    expect(noMedical.severity).toBe('warning');
    expect(found(noMedical, layout([medical(6010)]))).toEqual([]);
  });

  it('takes a point as one of the course to 250 m off it', () => {
    expect(found(noMedical, layout([medical(8000, 249)]))).toEqual([]);
    expect(found(noMedical, layout([medical(8000, 251)]))).toHaveLength(1);
  });

  it('asks for none in the second half of a course no longer than a leg may be', () => {
    const points = [{ kind: 'medical' as const, at: at(1000, 10) }];
    const short = (length: number): Layout => layout([on(1000, { points })], {}, turtle(ORIGIN, [[90, length]], 100));
    expect(found(noMedical, short(4999))).toEqual([]);
    expect(found(noMedical, short(5001))).toHaveLength(1);
  });
});

describe('no-widths, no-captain', () => {
  it('are one finding each, with the stations that lack it', () => {
    const stations = [on(2000), on(4000, { width: 8, people: { captain: 'R. Gull', phone: '1' } }), on(6000)];
    expect(paramsOf(noWidths, layout(stations))).toEqual([{ all: false, stations: ['s1', 's3'] }]);
    expect(paramsOf(noCaptain, layout(stations))).toEqual([{ all: false, unnamed: ['s1', 's3'], unreached: [] }]);
    expect(messages(noWidths, layout([on(2000)]))[0]).toMatch(/^No station gives the width/u);
    expect(found(noWidths, layout([on(2000, { width: 8 })]))).toEqual([]);
    expect(noWidths.missing!(layout([]))).toBe('no-stations');
  });

  it('want a call sign or a telephone beside the captain’s name', () => {
    const one = (people: PlanStation['people']): Layout => layout([on(2000, { people })]);
    expect(paramsOf(noCaptain, one({ captain: 'R. Gull' }))).toEqual([{ all: false, unnamed: [], unreached: ['s1'] }]);
    expect(paramsOf(noCaptain, one({ captain: ' ', radio: 'Quay' }))).toEqual([
      { all: true, unnamed: ['s1'], unreached: [] },
    ]);
    expect(found(noCaptain, one({ captain: 'R. Gull', radio: 'Quay' }))).toEqual([]);
  });
});

describe('no-elevations, no-entrants, no-contacts', () => {
  it('are silent where the plan has them', () => {
    const points = turtlePoints(ORIGIN, [[90, 3000]], 100);
    const segments = [
      segmentThrough(
        points,
        points.map(() => 10),
      ),
    ];
    const level = valueOf(buildCourse({ id: 'c', name: 'c', segments }));
    expect(found(noElevations, layout([], {}, level))).toEqual([]);
    expect(found(noElevations, layout([]))).toEqual([
      expect.objectContaining({ severity: 'note', params: { courses: ['c'] } }),
    ]);
    const contacts = { emergency: '1', raceControl: '2', radioChannel: '3' };
    expect(found(noContacts, layout([], { contacts }))).toEqual([]);
    expect(paramsOf(noContacts, layout([], { contacts: { ...contacts, raceControl: ' ' } }))).toEqual([
      { missing: ['raceControl'] },
    ]);
    expect(found(noEntrants, layout([], { races: [race] }))).toEqual([]);
  });

  it('names the races without entrants once, and the day does not say it again', () => {
    const of = layout([on(2000)], { races: [race, planRace('walk', 'c')] });
    expect(paramsOf(noEntrants, of)).toEqual([{ races: ['walk'], all: false }]);
    expect(factsOf(of).day.findings.map(({ code }) => code)).not.toContain('race-without-waves');
  });
});

describe('shared-contact', () => {
  const two = (
    a: PlanStation['people'],
    b: PlanStation['people'],
    keys: Partial<Plan> = {},
    apart: number = 4000,
  ): Layout => layout([on(2000, { people: a }), on(2000 + apart, { people: b })], keys);

  it('is a warning where one captain, call sign or telephone stands at two stations', () => {
    expect(paramsOf(sharedContact, two({ captain: 'R. Gull' }, { captain: 'r.  gull ' }))).toEqual([
      { what: 'captain', value: 'R. Gull', stations: ['s1', 's2'] },
    ]);
    expect(paramsOf(sharedContact, two({ phone: '+1 555-01' }, { phone: '+155501' }))).toHaveLength(1);
    expect(paramsOf(sharedContact, two({ radio: 'Quay' }, { radio: 'Quay' }))).toHaveLength(1);
    expect(found(sharedContact, two({ captain: 'A', radio: '' }, { captain: 'B', radio: '' }))).toEqual([]);
  });

  it('is silent for stations beside each other, and where the call sign is the channel of all', () => {
    const channel = { contacts: { radioChannel: 'Channel 3' } };
    expect(found(sharedContact, two({ radio: 'channel 3' }, { radio: 'Channel 3' }, channel))).toEqual([]);
    expect(found(sharedContact, two({ captain: 'A' }, { captain: 'A' }, {}, 99))).toEqual([]);
    expect(found(sharedContact, two({ captain: 'A' }, { captain: 'A' }, {}, 101))).toHaveLength(1);
  });

  it('is silent where one station closes before the other’s crew comes', () => {
    const later = (time: number): Layout => {
      const races = [race, { ...race, id: 'late', name: 'late', waves: [{ time, entrants: 10 }] }];
      const people = { captain: 'A' };
      return planned(
        layoutOf([road], [on(2000, { people, races: ['run'] }), on(6000, { people, races: ['late'] })], { races }),
        {},
      );
    };
    expect(found(sharedContact, later(9 * H))).toHaveLength(1);
    expect(found(sharedContact, later(15 * H))).toEqual([]);
  });
});

describe('no-water', () => {
  it('is an error where no station of a race that is served has plain water', () => {
    const dry = [on(2000, { serves: ['sportsDrink'] }), on(6000, { serves: ['gel'] })];
    expect(found(noWater, layout(dry))).toEqual([
      expect.objectContaining({ code: 'no-water', severity: 'error', where: { path: '/stations', race: 'c' } }),
    ]);
    expect(paramsOf(noWater, layout([...dry, on(9000)]))).toEqual([
      { races: ['c'], dry: { length: expect.closeTo(9000, 0), end: expect.closeTo(9000, 0), limit: 5000 } },
    ]);
    expect(found(noWater, layout([on(2000, { tables: { water: 0 } })]))).toHaveLength(1);
    expect(found(noWater, layout([]))).toEqual([]);
  });
});

describe('no-water for longer than a leg may be', () => {
  const dry = { serves: ['sportsDrink'] } as const;
  const told = (...stations: readonly Partial<PlanStation>[]): string[] => messages(noWater, layout(stations));

  it('is a warning from water to water, from the start or to the finish, where only other stations part the way', () => {
    expect(told(on(2500), on(5000, dry), on(7501), on(9800))).toEqual([
      'c runs 5.001 km without plain water (to 7.50 km). It should be at most 5.000 km. Serve water at a station between.',
    ]);
    expect(told(on(2500), on(5000, dry), on(7499), on(9800))).toEqual([]);
    expect(told(on(2500, dry), on(5001), on(9000))).toHaveLength(1);
    expect(told(on(3000), on(6990), on(9000, dry))).toEqual([
      'c runs 5.01 km without plain water (to 12.00 km). It should be at most 5.00 km. Serve water at a station between.',
    ]);
    expect(found(noWater, layout([on(2500), on(5000, dry), on(7600), on(9800)]))[0]).toMatchObject({
      severity: 'warning',
      measured: expect.closeTo(5100, 0) as number,
      limit: 5000,
      where: { race: 'c', measure: expect.closeTo(7600, 0) as number },
    });
  });

  it('is told once a race, of the longest way, and leaves one leg that is too long to leg-long', () => {
    expect(told(on(2000), on(4000, dry), on(7100), on(9000, dry), on(11_900))).toHaveLength(1);
    expect(told(on(2000), on(7100), on(10_000))).toEqual([]);
    expect(told(on(1300), on(2000, dry), on(7100), on(10_000))).toEqual([]);
    expect(told(on(500), on(5600, dry), on(11_000))).toHaveLength(1);
  });
});

describe('same-name', () => {
  it('is a warning where two stations have one name, whatever its letters', () => {
    const named = (...names: readonly string[]): Layout =>
      layout(names.map((name, k) => on(2000 + 3000 * k, { name })));
    expect(found(sameName, named('Kelp Quay', 'kelp  quay', 'Dune'))).toEqual([
      expect.objectContaining({
        severity: 'warning',
        params: { name: 'Kelp Quay', count: 2 },
        where: { path: '/stations/1/name' },
      }),
    ]);
    expect(found(sameName, named('Kelp Quay', 'Kelp Quay 2'))).toEqual([]);
  });
});

describe('name-distance', () => {
  const named = (name: string, measure: number): readonly Finding[] =>
    found(nameDistance, layout([on(measure, { name })]));

  it('reads the distances that people write', () => {
    const read = (name: string): number | null => {
      const said = distanceIn(name);
      return said === null ? null : Math.round(said.measure);
    };
    expect(
      [
        'Mile 12',
        '10 km',
        'km 30',
        'Quay (7,5 km)',
        'Aid – K5',
        '3 miles',
        'Milla 2',
        '10 km water',
        'KM. 8',
        'Km 15 Whaler',
        'K15',
        'PK 12',
        'KP 3,5 Quay',
        'Mile 2 Pier',
      ].map(read),
    ).toEqual([19_312, 10_000, 30_000, 7500, 5000, 4828, 3219, 10_000, 8000, 15_000, 15_000, 12_000, 3500, 3219]);
    expect(
      [
        '10 Mile Road',
        'Mile 12 Road',
        'Km 4 House',
        'Mile End',
        'Station 5',
        'Pier 30',
        '5k/10k split',
        'Kelp 3 Kings',
        'Route km',
      ].map(read),
    ).toEqual(Array.from({ length: 9 }, () => null));
  });

  it('is a warning where no race comes by within three quarters of the unit', () => {
    expect(named('Km 5', 5740)).toEqual([]);
    expect(named('Km 5', 5760)).toEqual([
      expect.objectContaining({
        severity: 'warning',
        where: expect.objectContaining({ station: 's1', path: '/stations/0/name' }),
      }),
    ]);
    expect(named('Mile 3', 4828 + 1200)).toEqual([]);
    expect(named('Mile 3', 4828 + 1215)).toHaveLength(1);
  });

  it('leaves the name of a race alone', () => {
    expect(named('Water 12 km', 6000)).toEqual([]);
    expect(named('Water 11 km', 6000)).toHaveLength(1);
  });
});

describe('far-from-courses', () => {
  const zoneAt = (centre: LonLat, half: number = 20): PlanZone => ({
    name: 'Hydrant',
    rule: 'keep-clear',
    polygon: [45, 135, 225, 315].map((azimuth) => from(centre, azimuth, half)),
  });
  const zones = (...all: readonly PlanZone[]): readonly Finding[] =>
    found(farFromCourses, layout([on(2000)], { zones: all }));

  it('is a warning where a zone or a point lies over 1 km from every course, all in one', () => {
    expect(zones(zoneAt(at(6000, 1000)))).toEqual([]);
    expect(zones(zoneAt(at(6000, 1030)))).toEqual([
      expect.objectContaining({ severity: 'warning', where: expect.objectContaining({ path: '/zones/0' }) }),
    ]);
    const points = [{ kind: 'medical' as const, at: at(6000, 1001), name: 'Tent' }];
    const both = found(farFromCourses, layout([on(2000, { points })], { zones: [zoneAt(at(6000, 3000))] }));
    expect(both.map(({ params }) => (params as { things: unknown[] }).things.length)).toEqual([2]);
    const near = [{ kind: 'medical' as const, at: at(6000, 999) }];
    expect(found(farFromCourses, layout([on(2000, { points: near })]))).toEqual([]);
  });

  it('asks whether longitude and latitude are swapped where that would do', () => {
    const [lon, lat] = at(6000, 20) as readonly [number, number];
    const points = [{ kind: 'drop' as const, at: [lat, lon] as const }];
    expect(messages(farFromCourses, layout([on(2000, { points })]))).toEqual([
      expect.stringContaining('the two numbers may be swapped'),
    ]);
    expect(zones(zoneAt(at(6000, 3000)))[0]!.message).not.toContain('swapped');
  });

  it('tells of an outline of 50,000 corners how far it is within 500 m, and that a short spike of it comes near', () => {
    const [west, east] = [at(5000, 3000), at(7000, 3000)];
    const far: LonLat[] = Array.from({ length: 50_000 }, (_, k) => [
      west[0] + (k / 50_000) * (east[0] - west[0]),
      west[1],
    ]);
    const [{ measured } = { measured: 0 }] = zones({ ...zoneAt(ORIGIN), polygon: [...far, at(6000, 4000)] });
    expect(measured).toBeGreaterThan(2990);
    expect(measured).toBeLessThan(3500);
    const spike = [at(7000, 1300), at(7000, 990), at(7001, 1300)];
    expect(zones({ ...zoneAt(ORIGIN), polygon: [...far, ...spike, at(6000, 4000)] })).toEqual([]);
  });

  it('is silent about a zone that holds a whole town, or whose edge comes by between far corners', () => {
    expect(zones({ ...zoneAt(at(6000, 0), 30_000), rule: 'allowed' })).toEqual([]);
    const long: PlanZone = { ...zoneAt(ORIGIN), polygon: [at(-9000, 900), at(21_000, 900), at(6000, 9000)] };
    expect(zones(long)).toEqual([]);
  });
});

describe('rule-loose', () => {
  const loose = (
    practice: Partial<Practice>,
    stations: readonly Partial<PlanStation>[] = [on(2000), on(7000)],
  ): Layout => layoutOf([road], stations, { practice });
  const told = (of: Layout): [string, boolean][] =>
    found(ruleLoose, of).map(({ severity, params }) => [severity, (params as { hidden: number }).hidden > 0]);

  it('is a note that lists all looser rules, plan-wide and of stations, with the usual value', () => {
    expect(
      found(
        ruleLoose,
        loose({ maxSpacing: 8000, bendClear: 10 }, [on(2000), on(6900, { practice: { maxGrade: 0.1 } })]),
      ),
    ).toEqual([
      expect.objectContaining({
        severity: 'warning',
        params: { rules: [{ rule: 'maxSpacing', station: null, value: 8000, usual: 5000 }], hidden: 1 },
      }),
      expect.objectContaining({
        severity: 'note',
        params: {
          rules: [
            { rule: 'maxGrade', station: 's2', value: 0.1, usual: 0.04 },
            { rule: 'bendClear', station: null, value: 10, usual: 30 },
          ],
          hidden: 0,
        },
      }),
    ]);
  });

  it('is a warning of a kerb or a setback that no road has, and says nothing of others', () => {
    expect(told(loose({ kerb: 15, setback: 15 }))).toEqual([]);
    expect(messages(ruleLoose, loose({ kerb: 40 }))).toEqual([
      'Unlikely: distance from the course to the kerb 40 m (usually 4 m). No road is like that: correct it.',
    ]);
    expect(told(loose({ setback: 15.1 }))).toEqual([['warning', false]]);
    expect(told(loose({}, [on(2000, { practice: { kerb: 40 } }), on(6900)]))).toEqual([['warning', false]]);
  });

  it('takes rounding for no looseness', () => {
    // The metric plan's own figures: 90 m for 100 yd, 9 m, 3 m, 45 to 90 m.
    expect(told(loose({ signAhead: 90, signTolerance: 9, trashTo: 90, maxSpacing: 5240 }))).toEqual([]);
    expect(told(loose({ maxSpacing: 5260 }, [on(4000), on(8000)]))).toEqual([['note', false]]);
  });

  it('is a warning where the usual value would find more', () => {
    const narrow = (width: number): [string, boolean][] =>
      told(loose({}, [on(2000, { width, practice: { clearWidth: 2 } }), on(6900)]));
    // Tables and crew take 1.262 m.
    expect(narrow(4.25)).toEqual([['warning', true]]);
    expect(narrow(4.27)).toEqual([['note', false]]);
    const far = (right: number): [string, boolean][] =>
      told(loose({ snapRadius: 100 }, [{ at: at(2000, right), side: 'right' }, on(6900)]));
    expect(far(61)).toEqual([['warning', true]]);
    expect(far(59)).toEqual([['note', false]]);
    const unsure = (right: number): [string, boolean][] =>
      told(loose({ sideConfidence: 0.6 }, [{ at: at(2000, right) }, on(6900)]));
    expect(unsure(2)).toEqual([['warning', true]]);
    expect(unsure(8)).toEqual([['note', false]]);
    expect(told(loose({ signAhead: 20 }))).toEqual([['warning', true]]);
  });

  it('is silent where every rule is the usual one or stricter', () => {
    expect(told(loose({}))).toEqual([]);
    expect(
      told(loose({ maxSpacing: 3000, clearWidth: 4, snapRadius: 30, sideConfidence: 0.99, bendClear: 60 })),
    ).toEqual([]);
  });
});

describe('supplies-short', () => {
  // 1,000 arrivals × 1.2 × 1.15 = 1,380 cups of water without a reserve; 800 gels.
  const of = (station: Partial<PlanStation>, supplies: Partial<Plan['supplies']> = {}): Layout =>
    planned(layoutOf([road], [on(6000, station)], { races: [race] }), {
      supplies: { ...DEFAULT_SUPPLIES, heat: 'warm', reserve: 0, take: { run: { water: 1.2 } }, ...supplies },
    });

  it('is a warning where by over a tenth more was used before than is ordered', () => {
    expect(found(suppliesShort, of({ used: { water: 1534 } }))).toEqual([
      expect.objectContaining({
        severity: 'warning',
        params: { by: 'used', short: [{ station: 's1', item: 'water', ordered: 1380, asked: 1534 }] },
        where: { path: '/supplies', station: 's1', item: 'water' },
      }),
    ]);
    expect(found(suppliesShort, of({ used: { water: 1533 } }))).toEqual([]);
    const gels = (gel: number): Layout => of({ serves: ['gel'], used: { gel } });
    expect([found(suppliesShort, gels(890)).length, found(suppliesShort, gels(888)).length]).toEqual([1, 0]);
  });

  it('is a warning where the plan’s own rates, with waste, stay below those of its heat', () => {
    const take = (water: number): Partial<Plan['supplies']> => ({ heat: 'hot', take: { run: { water } } });
    const of15 = (water: number): Layout => of({}, take(water));
    const leg = factsOf(of15(1)).day.stations[0]!.races[0]!.sinceDrink!;
    // Half an hour or so at 0.8 l/h, two thirds of it water, in half cups of 7 fl oz.
    const asked = Math.ceil((1000 * (0.8 * (leg / 3600) * 2)) / 3 / (0.2070147 / 2));
    expect(asked).toBeGreaterThan(2500);
    const enough = asked / 1150;
    expect(found(suppliesShort, of15(enough + 0.001))).toEqual([]);
    expect(paramsOf(suppliesShort, of15(enough - 0.002))).toMatchObject([
      { by: 'heat', short: [{ station: 's1', item: 'water', asked }] },
    ]);
    expect(found(suppliesShort, of({ used: { water: 1500 } }, take(1.4)))).toEqual([]);
    // A level that is cooler than the temperature says.
    const cool = { heat: 'cool' as const, wbgtC: 31, take: {} };
    expect(found(suppliesShort, of({}, { ...cool, heatSteps: [18, 25] }))).toHaveLength(1);
    expect(found(suppliesShort, of({}, { ...cool, heatSteps: [32, 35] }))).toEqual([]);
  });
});

describe('drop-far', () => {
  const drop = (along: number, right: number, zones: readonly PlanZone[] = []): readonly Finding[] =>
    found(dropFar, layout([on(2000, { points: [{ kind: 'drop', at: at(along, right), name: 'Yard' }] })], { zones }));

  it('is a warning where supplies are set down over 100 m from the tables', () => {
    expect(drop(2000 - 99, 5)).toEqual([]);
    expect(drop(2000 - 101, 5)).toEqual([
      expect.objectContaining({
        severity: 'warning',
        limit: 100,
        where: expect.objectContaining({ path: '/stations/0/points/0' }),
      }),
    ]);
    // The tables reach on for 4.88 m and one table: 1.83 m.
    expect(drop(2000 + 106, 5)).toEqual([]);
    expect(drop(2000 + 108, 5)).toHaveLength(1);
  });

  it('is a warning in a keep-clear zone, and leaves what is nowhere near to far-from-courses', () => {
    const zone = (rule: PlanZone['rule']): PlanZone => ({
      name: 'Gate',
      rule,
      polygon: [at(1980, 10), at(1990, 10), at(1990, 30), at(1980, 30)],
    });
    expect(drop(1985, 20, [zone('keep-clear')]).map(({ message }) => message)).toEqual([
      '“Yard” lies in the keep-clear zone “Gate”. Nothing may stand there, nor a truck. Move it.',
    ]);
    expect(drop(1979, 20, [zone('keep-clear')])).toEqual([]);
    expect(drop(1985, 20, [zone('allowed')])).toEqual([]);
    expect(drop(2000, 1100)).toEqual([]);
    // Far along the course no other check tells it.
    expect(drop(9000, 5)).toHaveLength(1);
    expect(dropFar.missing!(layout([on(2000)]))).toBe('no-drop');
  });
});
