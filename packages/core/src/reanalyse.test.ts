import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Analysis, type Sources, analyse, analyseOn, courseStage } from './analyse.ts';
import { readGpx } from './gpx/read.ts';
import type { LonLat } from './finding.ts';
import type { Plan, PlanRace, PlanStation } from './plan/plan.ts';
import { readPlan } from './plan/read.ts';
import { withVariant } from './plan/variant.ts';
import { reanalyse } from './reanalyse.ts';
import { ORIGIN, from, turtlePoints, valueOf } from './testing/courses.ts';
import { planCourse, planOf, planRace, planStation } from './testing/plans.ts';
import { real } from './testing/numbers.ts';

interface Case {
  /** Chains of up to four changes each. */
  readonly chains: number;
  readonly plan: Plan;
  readonly sources: Sources;
}

const inDemo = (name: string): string =>
  readFileSync(new URL(`../../../fixtures/demo/${name}`, import.meta.url), 'utf8');

/** The demo's island: two courses from files, hand-placed items, zones, vehicles, a clock. */
const island: Case = {
  chains: 15,
  plan: valueOf(readPlan(inDemo('plan.json'), 'plan.json')).plan,
  sources: { gpx: new Map(['full.gpx', 'half.gpx'].map((file) => [file, valueOf(readGpx(inDemo(file), file))])) },
};

const past = Array.from(
  { length: 40 },
  (_, k) => `${k + 1},${1 + Math.floor(k / 20)}:${String(10 + k).padStart(2, '0')}:00`,
).join('\n');

/** Out and back by one way, a course of parts of it, past results, marks, a walk beside the run. */
const parts: Case = {
  chains: 60,
  plan: {
    ...planOf({
      courses: [
        planCourse('out', {
          line: turtlePoints(
            ORIGIN,
            [
              [80, 3000],
              [170, 2000],
              [350, 2000],
              [260, 3000],
            ],
            100,
          ),
          drawn: 'centre',
          length: 10_020,
          marks: [{ at: from(ORIGIN, 80, 1000), measure: 1001 }],
        }),
        planCourse('short', {
          parts: [
            { of: 'out', from: 0, to: 2500 },
            { of: 'out', from: 7520 },
          ],
        }),
      ],
      races: [
        {
          ...planRace('ten', 'out'),
          waves: [
            { time: 28_800, entrants: 90 },
            { time: 29_400, entrants: 60 },
          ],
          finish: { csv: 'past.csv', column: 'time' },
          cutoff: 28_800 + 7200,
          gradient: true,
        },
        {
          ...planRace('walk', 'short'),
          division: 'walk',
          waves: [{ time: 30_000, entrants: 40 }],
          finish: { median: 3600, spread: 0.2 },
        },
      ],
      stations: [
        planStation({
          id: 'a',
          name: 'A',
          on: { course: 'out', measure: 1200, side: 'left', offset: 4 },
          serves: ['gel', 'sportsDrink', 'water'],
        }),
        planStation({
          id: 'b',
          name: 'B',
          on: { course: 'short', measure: 2000, side: 'right', offset: 5 },
          side: 'right',
          passes: 'all',
          width: 8,
        }),
        planStation({ id: 'c', name: 'C', at: from(from(ORIGIN, 80, 3003), 170, 1000), races: ['ten'] }),
      ],
    }),
    clock: [
      { course: 'out', measure: 0, accessOpens: 18_000, closes: 27_000 },
      { course: 'out', measure: 10_000, sweep: 36_000, reopens: 37_000 },
    ],
    vehicles: [{ id: 'v', name: 'Van', kg: 600, places: 8, kmh: 30, stop: 600, from: 18_000 }],
    waivers: [
      { code: 'station-off-course', station: 'c', by: 'me', reason: 'seen' },
      { code: 'leg-short', by: 'me', reason: 'no station' },
    ],
  },
  sources: { gpx: new Map(), results: new Map([['past.csv', `place,time\n${past}\n`]]) },
};

type Change = (plan: Plan) => Plan;

const stationAt =
  (k: number, change: (station: PlanStation, plan: Plan) => Partial<PlanStation>): Change =>
  (plan) => {
    const index = k % Math.max(plan.stations.length, 1);
    const station = plan.stations[index];
    return station === undefined
      ? plan
      : { ...plan, stations: plan.stations.with(index, { ...station, ...change(station, plan) }) };
  };
const raceAt =
  (k: number, change: (race: PlanRace) => Partial<PlanRace>): Change =>
  (plan) => {
    const index = k % plan.races.length;
    return { ...plan, races: plan.races.with(index, { ...plan.races[index]!, ...change(plan.races[index]!) }) };
  };
const practice = fc.record(
  {
    signAhead: fc.integer({ min: 20, max: 200 }),
    tableGap: fc.integer({ min: 0, max: 9 }),
    snapRadius: fc.integer({ min: 10, max: 90 }),
    clearWidth: fc.integer({ min: 1, max: 9 }),
  },
  { requiredKeys: [] },
);
const side = fc.constantFrom('left' as const, 'right' as const);
const nth = fc.nat(20);

/** A station without its place, so that `at` or `on` can be given. */
const unplaced = ({ at: _at, on: _on, ...station }: PlanStation): PlanStation => station;
const replaced =
  (k: number, place: Pick<PlanStation, 'at' | 'on'>): Change =>
  (plan) => {
    const index = k % Math.max(plan.stations.length, 1);
    return plan.stations.length === 0
      ? plan
      : { ...plan, stations: plan.stations.with(index, { ...unplaced(plan.stations[index]!), ...place }) };
  };

/** Somewhere near a station that there is, or where the plan's first stands. */
const near = (station: PlanStation | undefined, azimuthDeg: number, length: number): LonLat =>
  from(station?.at ?? ORIGIN, azimuthDeg, length);

const stationChange: fc.Arbitrary<Change> = fc.oneof(
  fc.tuple(nth, real(0, 360), real(0, 400)).map(
    ([k, azimuthDeg, length]): Change =>
      (plan) =>
        replaced(k, { at: near(plan.stations[k % Math.max(plan.stations.length, 1)], azimuthDeg, length) })(plan),
  ),
  fc.tuple(nth, nth, fc.integer({ min: 0, max: 9900 }), side, fc.integer({ min: 0, max: 9 })).map(
    ([k, of, measure, which, offset]): Change =>
      (plan) =>
        replaced(k, { on: { course: plan.courses[of % plan.courses.length]!.id, measure, side: which, offset } })(plan),
  ),
  fc.tuple(nth, side).map(([k, which]) => stationAt(k, () => ({ side: which }))),
  fc
    .tuple(nth, fc.subarray(['gel', 'sportsDrink', 'water'] as const, { minLength: 1 }))
    .map(([k, serves]) => stationAt(k, () => ({ serves }))),
  fc
    .tuple(nth, fc.record({ water: fc.nat(6), sportsDrink: fc.nat(6) }, { requiredKeys: [] }))
    .map(([k, tables]) => stationAt(k, () => ({ tables }))),
  fc.tuple(nth, practice).map(([k, own]) => stationAt(k, () => ({ practice: own }))),
  fc
    .tuple(nth, fc.constantFrom('lead' as const, 'all' as const))
    .map(([k, passes]) => stationAt(k, () => ({ passes }))),
  fc.tuple(nth, nth).map(([k, race]) => stationAt(k, (_, { races }) => ({ races: [races[race % races.length]!.id] }))),
  fc
    .tuple(nth, fc.constantFrom('cool' as const, 'hot' as const), fc.nat(5))
    .map(([k, heat, pourers]) => stationAt(k, () => ({ supplies: { heat }, crew: { pourers } }))),
  fc.tuple(nth, fc.string()).map(([k, note]) => stationAt(k, () => ({ name: `Stop ${k}`, note }))),
);

const listChange: fc.Arbitrary<Change> = fc.oneof(
  nth.map((k): Change => (plan) => ({
    ...plan,
    stations: plan.stations.filter((_, index) => index !== k % plan.stations.length),
  })),
  fc.tuple(nth, fc.integer({ min: 0, max: 9000 })).map(([k, measure]): Change => (plan) => ({
    ...plan,
    stations: plan.stations.toSpliced(
      k % (plan.stations.length + 1),
      0,
      planStation({
        id: `new-${plan.stations.length}-${measure}`,
        on: { course: plan.courses[0]!.id, measure, side: 'left', offset: 4 },
      }),
    ),
  })),
  fc.constant<Change>((plan) => ({ ...plan, stations: plan.stations.toReversed() })),
);

const planChange: fc.Arbitrary<Change> = fc.oneof(
  practice.map((over): Change => (plan) => ({ ...plan, practice: { ...plan.practice, ...over } })),
  fc.tuple(nth, fc.nat(500)).map(([k, entrants]) =>
    raceAt(k, ({ waves }) => ({
      waves: entrants % 5 === 0 ? [] : [...waves.slice(0, 1), { time: 31_000, entrants }],
    })),
  ),
  fc
    .tuple(nth, fc.constantFrom('run' as const, 'walk' as const, 'wheels' as const))
    .map(([k, division]) => raceAt(k, () => ({ division }))),
  fc.tuple(nth, fc.integer({ min: -30, max: 30 })).map(([k, more]): Change => (plan) => ({
    ...plan,
    courses: plan.courses.map((course, index) =>
      index === k % plan.courses.length && course.length !== undefined
        ? { ...course, length: course.length + more }
        : course,
    ),
  })),
  fc.integer({ min: -9, max: 9 }).map((more): Change => (plan) => ({
    ...plan,
    courses: plan.courses.map((course) => ({
      ...course,
      marks: course.marks.map((mark) =>
        mark.measure === undefined ? mark : { ...mark, measure: mark.measure + more },
      ),
    })),
  })),
  fc.tuple(nth, fc.integer({ min: 27_000, max: 45_000 })).map(
    ([k, sweep]): Change =>
      (plan) =>
        plan.clock.length === 0
          ? plan
          : {
              ...plan,
              clock: plan.clock.with(k % plan.clock.length, { ...plan.clock[k % plan.clock.length]!, sweep }),
            },
  ),
  fc.constantFrom('cool' as const, 'hot' as const).map((heat): Change => (plan) => ({
    ...plan,
    supplies: { ...plan.supplies, heat },
  })),
  fc
    .record({ handRate: fc.integer({ min: 1, max: 20 }), handSpacing: real(1, 4) }, { requiredKeys: [] })
    .map((over): Change => (plan) => ({ ...plan, crew: { ...plan.crew, ...over } })),
  fc.constantFrom('en', 'es').map((language): Change => (plan) => ({ ...plan, language })),
  fc.constantFrom('metric' as const, 'imperial' as const).map((units): Change => (plan) => ({ ...plan, units })),
  fc.constant<Change>((plan) => ({ ...plan, races: plan.races.toReversed() })),
  fc.constant<Change>((plan) => ({ ...plan, vehicles: [], waivers: [], zones: [] })),
  // As an edit of the text: other objects that say the same.
  fc.constant<Change>((plan) => structuredClone(plan)),
);

const changes = fc.array(
  fc.oneof(
    { weight: 5, arbitrary: stationChange },
    { weight: 2, arbitrary: listChange },
    { weight: 4, arbitrary: planChange },
  ),
  { minLength: 1, maxLength: 4 },
);

const analysed = ({ plan, sources }: Case): Analysis => valueOf(analyse(plan, sources));

describe.each([
  ['the demo', island],
  ['parts of a course', parts],
] as const)('a changed plan: %s', (_, start) => {
  it('has the analysis that it would have afresh, change after change', () => {
    const first = analysed(start);
    let compared = 0;
    fc.assert(
      fc.property(changes, (chain) => {
        let before = first;
        for (const change of chain) {
          const plan = change(before.plan);
          const afresh = analyse(plan, start.sources);
          const again = reanalyse(before, plan, start.sources);
          expect(again).toStrictEqual(afresh);
          compared++;
          if (again.ok) before = again.value;
        }
      }),
      { seed: 20_270_912, numRuns: start.chains },
    );
    expect(compared).toBeGreaterThan(start.chains);
  });

  it('keeps its courses and the stations that stand, where one is moved', () => {
    const before = analysed(start);
    const moved = stationAt(0, ({ on }) => ({ on: { ...on!, measure: on!.measure + 40 } }))(before.plan);
    const after = valueOf(reanalyse(before, moved, start.sources));
    expect(after.courses).toBe(before.courses);
    // The next station's runners have gone without a drink for longer or shorter: it may need other tables or boxes.
    expect(after.stations.slice(2).every((station, k) => station === before.stations[k + 2])).toBe(true);
    expect(after.stations[0]).not.toBe(before.stations[0]);
    expect(after.stations[0]!.passes[0]!.measure - before.stations[0]!.passes[0]!.measure).toBeCloseTo(40, 3);
    const kept = after.day!.stations.filter((day, k) => day === before.day!.stations[k]);
    expect(kept.length).toBeGreaterThanOrEqual(before.day!.stations.length - 3);
  });

  it('keeps them too where its text has been read again', () => {
    const before = analysed(start);
    const again = structuredClone(before.plan);
    const after = valueOf(
      reanalyse(
        before,
        { ...again, stations: again.stations.with(1, { ...again.stations[1]!, note: 'other' }) },
        start.sources,
      ),
    );
    expect(after.plan).not.toBe(before.plan);
    expect(after.courses).toBe(before.courses);
    expect(after.stations.map((station, k) => station === before.stations[k])).toEqual(
      before.stations.map((_station, k) => k !== 1),
    );
  });

  it('keeps no course where one is calibrated anew, and no layout on them', () => {
    const before = analysed(start);
    const longer = {
      ...before.plan,
      courses: before.plan.courses.map((course) =>
        course.length === undefined ? course : { ...course, length: course.length + 5 },
      ),
    };
    const after = valueOf(reanalyse(before, longer, start.sources));
    expect(after.courses.every((course) => !before.courses.includes(course))).toBe(true);
    expect(after.stations.every((station) => !before.stations.includes(station))).toBe(true);
  });

  it('is not looked at again where it is the very same', () => {
    const before = analysed(start);
    expect(valueOf(reanalyse(before, before.plan, start.sources))).toBe(before);
  });

  it('is analysed afresh where nothing was kept of the analysis before', () => {
    const { kept: _kept, ...bare } = analysed(start);
    expect(reanalyse(bare, structuredClone(start.plan), start.sources)).toStrictEqual(
      analyse(start.plan, start.sources),
    );
  });
});

it('says what is wrong with a plan that cannot be used, and the next that can is the same as ever', () => {
  const before = analysed(parts);
  const beyond = stationAt(0, ({ on }) => ({ on: { ...on!, measure: 99_000 } }))(before.plan);
  const refused = reanalyse(before, beyond, parts.sources);
  expect(refused).toStrictEqual(analyse(beyond, parts.sources));
  expect(refused.findings.map(({ code }) => code)).toContain('measure-beyond-course');
});

it("keeps the stations of a plan that its variant leaves as they are, and the demo's courses", () => {
  const document = valueOf(readPlan(inDemo('plan.json'), 'plan.json'));
  const before = valueOf(analyse(document.plan, island.sources));
  expect(document.plan.variants.length).toBeGreaterThan(0);
  for (const { name, stations } of document.plan.variants) {
    const { plan } = valueOf(withVariant(document, name));
    const after = valueOf(reanalyse(before, plan, island.sources));
    expect(after).toStrictEqual(valueOf(analyse(plan, island.sources)));
    expect(after.courses).toBe(before.courses);
    expect(
      after.stations
        .filter((station) => !before.stations.includes(station))
        .map(({ id }) => id)
        .sort(),
    ).toEqual(expect.arrayContaining(Object.keys(stations)));
    expect(after.stations.filter((station) => before.stations.includes(station)).length).toBeGreaterThanOrEqual(
      before.stations.length - 2 * Object.keys(stations).length,
    );
  }
});

describe('analyseOn', () => {
  it('gives what analyse gives, on courses that were made before, with their findings', () => {
    for (const { plan, sources } of [island, parts]) {
      expect(analyseOn(courseStage(plan, sources), plan, sources)).toEqual(analyse(plan, sources));
    }
    const missing = courseStage(island.plan, { gpx: new Map() });
    expect(analyseOn(missing, island.plan, island.sources)).toEqual({ ok: false, findings: missing.findings });
  });

  it('makes no course itself', () => {
    const courses = courseStage(island.plan, island.sources);
    const made = valueOf(analyseOn(courses, island.plan, { gpx: new Map() }));
    expect(made.courses).toBe(valueOf(courses));
  });
});
