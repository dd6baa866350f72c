import { describe, expect, it } from 'vitest';
import { type Analysis, analyse, layoutStage } from '../analyse.ts';
import { courseTable } from '../station/seeStation.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { LonLat } from '../finding.ts';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import { reviewLayout } from '../review/review.ts';
import { ORIGIN, type TurtleLeg, from, generator, turtlePoints, valueOf } from '../testing/courses.ts';
import { type PlanKeys, planCourse, planOf, planRace, planStation } from '../testing/plans.ts';
import { isOfPlaces } from './costs.ts';
import { type ImproveOptions, improve } from './improve.ts';
import { type Place, placeAt, placedByHand, presentPlace, whyStays } from './places.ts';

const lone = { gpx: new Map() };
const analysed = (plan: Plan): Analysis => valueOf(analyse(plan, lone));

/** One straight course of `km`, one race, stations on it. */
function straight(
  km: number,
  stations: readonly Partial<PlanStation>[],
  keys: PlanKeys & Partial<Pick<Plan, 'zones' | 'waivers'>> = {},
): Analysis {
  const line = turtlePoints(ORIGIN, [[80, km * 1000]], 100);
  const plan = planOf({
    races: [planRace('m', 'c')],
    ...keys,
    courses: [planCourse('c', { line })],
    stations: stations.map((station, k) => planStation({ id: `s${k + 1}`, name: `Stop ${k + 1}`, ...station })),
  });
  return analysed({ ...plan, zones: keys.zones ?? [], waivers: keys.waivers ?? [] });
}
const on = (measure: number, side: 'left' | 'right' = 'right'): Partial<PlanStation> => ({
  on: { course: 'c', measure, side, offset: 5 },
  side,
});
const shifts = (analysis: Analysis, options: ImproveOptions = {}): number[] => {
  const { moves } = improve(analysis, options);
  return analysis.stations.map(({ id }) => moves.find(({ station }) => station === id)?.shift ?? 0);
};

/** What is to be least, in this order; of findings, those that the search weighs. */
type Score = readonly [error: number, warning: number, longest: number, dropped: number, movement: number];

function scoreOf({ findings, spacing }: Analysis, places: readonly Pick<Place, 'shift' | 'dropped'>[]): Score {
  const count = (severity: string): number =>
    findings.filter(
      (finding) =>
        finding.severity === severity &&
        finding.waived === undefined &&
        isOfPlaces(finding) &&
        !finding.code.startsWith('waiver-'),
    ).length;
  const longest = spacing.reduce((sum, race) => sum + Math.round(race.longest), 0);
  const sum = (value: (place: Pick<Place, 'shift' | 'dropped'>) => number): number =>
    places.reduce((all, place) => all + value(place), 0);
  return [
    count('error'),
    count('warning'),
    longest,
    sum(({ dropped }) => dropped.length),
    sum(({ shift }) => Math.abs(shift)),
  ];
}

const less = (a: Score, b: Score): boolean => {
  const k = a.findIndex((value, index) => value !== b[index]);
  return k >= 0 && a[k]! < b[k]!;
};

const orderOf = ({ spacing }: Pick<Analysis, 'spacing'>): string =>
  JSON.stringify(spacing.map(({ legs }) => legs.map(({ to }) => to)));

/** The best score over all combinations of places, each analysed as a whole. */
function bruteForce(analysis: Analysis, within: number, step: number): { best: Score; tried: number } {
  const { plan, courses, stations } = analysis;
  const table = courseTable(courses);
  const lists = stations.map((station) => {
    const places = [presentPlace(station)];
    if (whyStays(station) !== null) return places;
    for (let shift = -within; shift <= within; shift += step) {
      for (const drop of placedByHand(station.station).length > 0 ? [false, true] : [false]) {
        const place = shift === 0 ? null : placeAt(shift, drop, station, plan, table);
        if (place !== null) places.push(place);
      }
    }
    return places;
  });
  const combinations = lists.reduce<Place[][]>(
    (all, list) => all.flatMap((one) => list.map((place) => [...one, place])),
    [[]],
  );
  let best = scoreOf(analysis, []);
  for (const places of combinations) {
    const layout = valueOf(layoutStage({ ...plan, stations: places.map(({ station }) => station) }, courses));
    if (orderOf(layout) !== orderOf(analysis)) continue;
    const score = scoreOf({ ...layout, day: null, ...reviewLayout(layout) }, places);
    if (less(score, best)) best = score;
  }
  return { best, tried: combinations.length };
}

/** An invented plan: winding roads, a second race that leaves the first or runs laps, stations near one another, some with a sign placed by hand, waivers, zones. */
function randomPlan(seed: number): Plan {
  const random = generator(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const pick = <T>(...options: readonly T[]): T => options[Math.floor(random() * options.length)]!;
  const legs = Array.from({ length: 4 }, (): TurtleLeg => [between(40, 120), between(500, 1500)]);
  const shared = turtlePoints(ORIGIN, legs, 50);
  const full = [
    ...shared,
    ...turtlePoints(
      shared.at(-1)!,
      [
        [between(0, 180), 1200],
        [between(0, 180), 900],
      ],
      50,
    ).slice(1),
  ];
  const half = [
    ...shared.slice(0, Math.ceil(shared.length * 0.7)),
    from(shared[Math.ceil(shared.length * 0.7)]!, 10, 800),
  ];
  const lap = turtlePoints(
    ORIGIN,
    [
      [90, 900],
      [180, 700],
      [270, 900],
      [0, 690],
    ],
    50,
  );
  const laps = [...lap, ...lap];
  const kind = pick('one', 'two', 'laps');
  const courses =
    kind === 'laps'
      ? [planCourse('c', { line: laps })]
      : [planCourse('c', { line: full }), ...(kind === 'two' ? [planCourse('d', { line: half })] : [])];
  const length = kind === 'laps' ? 3100 : 4200;
  const stations = Array.from({ length: 2 + Math.floor(random() * 3) }, (_, k): PlanStation => {
    const measure = between(250, length);
    const side = pick('left', 'right');
    const place = { on: { course: 'c', measure: Math.round(measure), side, offset: 5 }, side } as const;
    const station = planStation({
      id: `s${k + 1}`,
      name: `s${k + 1}`,
      ...place,
      serves: pick(['gel'], ['water'], ['sportsDrink', 'water'], ['gel', 'water']),
      fixed: random() < 0.1,
    });
    return random() < 0.4 ? withSign(station, courses, Math.round(between(70, 150))) : station;
  });
  const practice = { maxSpacing: Math.round(between(900, 2200)), minSpacing: 500 };
  const plan = planOf({ courses, races: courses.map(({ id }) => planRace(id, id)), stations, practice });
  const waivers =
    random() < 0.3
      ? [
          {
            code: pick('sign-distance', 'items-overlap', 'leg-long'),
            station: 's1',
            by: 'R. Gull',
            reason: 'a driveway',
            date: '2027-08-01',
          },
        ]
      : [];
  return { ...plan, waivers };
}

/** With its sign placed by hand, so many metres before where its pin's foot is. */
function withSign(station: PlanStation, courses: Plan['courses'], ahead: number): PlanStation {
  const measure = station.on!.measure - ahead;
  const plan = planOf({
    courses,
    races: courses.map(({ id }) => planRace(id, id)),
    stations: [planStation({ id: 'sign', on: { ...station.on!, measure } })],
  });
  return { ...station, items: { sign: { at: analysed(plan).stations[0]!.at } } };
}

describe('improve', () => {
  it('finds what trying all combinations through the whole analysis finds', { timeout: 400_000 }, () => {
    const seen = { cases: 0, places: 0, moved: 0, mended: 0, dropped: 0 };
    for (let seed = 1; seed <= 48; seed++) {
      const analysis = analysed(randomPlan(seed));
      const step = [0, 0, 25, 100, 200][analysis.stations.length]!;
      const { best, tried } = bruteForce(analysis, 200, step);
      const found = improve(analysis, { within: 200, step, finest: step });
      const score = scoreOf(found.analysis, found.moves);
      expect({ seed, score, proof: found.proof }).toEqual({ seed, score: best, proof: 'optimal' });
      expect(found.after.error).toBeLessThanOrEqual(found.before.error);
      seen.cases++;
      seen.places = Math.max(seen.places, found.tried);
      seen.moved += Math.min(found.moves.length, 1);
      seen.mended += found.after.error + found.after.warning < found.before.error + found.before.warning ? 1 : 0;
      seen.dropped += best[3];
      expect(tried).toBeGreaterThan(0);
    }
    // The cases are of every sort.
    expect(seen.cases).toBe(48);
    expect(seen.places).toBeGreaterThan(40);
    expect(seen.moved).toBeGreaterThan(20);
    expect(seen.mended).toBeGreaterThan(15);
    expect(seen.dropped).toBeGreaterThan(0);
  });

  it('knows what two stations have only together, and what one that serves nobody excuses', () => {
    const road = { width: 5 };
    const cases = [
      straight(5, [
        { ...on(2000), ...road },
        { ...on(2003, 'left'), ...road },
      ]),
      straight(8, [on(2000), { at: from(from(ORIGIN, 80, 4000), 170, 300), side: 'right' }, on(7200)]),
    ];
    expect(cases.map(({ findings }) => findings.map(({ code }) => code))).toEqual([
      expect.arrayContaining(['stations-face']),
      expect.not.arrayContaining(['leg-long']),
    ]);
    for (const analysis of cases) {
      const { best } = bruteForce(analysis, 50, 25);
      const found = improve(analysis, { within: 50, step: 25, finest: 25 });
      expect({ score: scoreOf(found.analysis, found.moves), proof: found.proof }).toEqual({
        score: best,
        proof: 'optimal',
      });
    }
  });

  it('gives the same answer each time', () => {
    const analysis = analysed(randomPlan(7));
    const { plan: _, analysis: _other, ...one } = improve(analysis);
    const { plan: _plan, analysis: _analysis, ...other } = improve(analysed(randomPlan(7)));
    expect(other).toEqual(one);
  });

  it('evens out the legs of a straight course, to the metre and not beyond what is allowed', () => {
    expect(shifts(straight(12, [on(3900), on(7700)]), { within: 500 })).toEqual([100, 300]);
    expect(shifts(straight(12, [on(3900), on(7700)]), { within: 150 })).toEqual([0, 150]);
  });

  it('tries places farther off at wider steps, and finds nothing worse for that', () => {
    const analysis = straight(24, [on(3900), on(7700), on(9000)], {
      practice: { ...DEFAULT_PRACTICE, maxSpacing: 9000 },
    });
    const [near, far] = [improve(analysis), improve(analysis, { within: 4500 })];
    expect(near).toMatchObject({ step: 25, stepBeyond: 25 });
    expect(far).toMatchObject({ step: 25, stepBeyond: 200, proof: 'optimal' });
    expect(far.after.longest[0]!.length).toBeLessThan(near.after.longest[0]!.length);
    expect(far.moves.some(({ shift }) => Math.abs(shift) > 500)).toBe(true);
    expect(far.moves.every(({ shift }) => Math.abs(shift) <= 4500)).toBe(true);
  });

  it('moves nothing where nothing is the better for it, and says that this is optimal', () => {
    const { moves, proof, before, after } = improve(straight(12, [on(4000), on(8000)]));
    expect({ moves, proof }).toEqual({ moves: [], proof: 'optimal' });
    expect(after).toEqual(before);
  });

  it('leaves fixed stations, those not asked for, and those off the course, and says which cannot move', () => {
    const analysis = straight(12, [{ ...on(3900), fixed: true }, on(7700), { at: from(ORIGIN, 0, 5000) }]);
    const { moves, stays } = improve(analysis);
    expect(moves.map(({ station }) => station)).toEqual(['s2']);
    expect(stays).toEqual([
      { station: 's1', why: 'fixed' },
      { station: 's3', why: 'off the course' },
    ]);
    expect(improve(analysis, { only: ['s1'] })).toMatchObject({ moves: [], stays: [{ station: 's1', why: 'fixed' }] });
    expect(shifts(straight(12, [on(3900), on(7700)]), { only: ['s2'] })).toEqual([0, 250]);
  });

  it('moves a station along its course at its own offset and side, and serves the same passes', () => {
    const at = from(from(ORIGIN, 80, 3900), 170, 6.5);
    const analysis = straight(12, [{ at, side: 'right' }, on(8000)]);
    const { moves, analysis: after } = improve(analysis);
    const [lead, present] = [after.stations[0]!.passes[0]!, analysis.stations[0]!.passes[0]!];
    expect(moves).toHaveLength(1);
    expect(moves[0]).toMatchObject({ station: 's1', from: at, course: 'c', shift: 100 });
    expect(moves[0]!.measure).toBeCloseTo(lead.measure, 9);
    expect(lead.measure).toBeCloseTo(present.measure + 100, 2);
    expect(lead.offset).toBeCloseTo(present.offset, 2);
    expect(moves[0]!.moved).toBeCloseTo(inverseLength(at[0], at[1], moves[0]!.to[0], moves[0]!.to[1]), 9);
  });

  it('stays inside allowed zones', () => {
    const square = (measure: number, reach: number): readonly LonLat[] =>
      [45, 135, 225, 315].map((azimuth) => from(from(ORIGIN, 80, measure), azimuth, reach * Math.SQRT2));
    // Its whole stretch is allowed, but the pin no farther than 60 m down the course.
    const zones = [
      { name: 'verge', rule: 'allowed' as const, polygon: square(3760, 200) },
      { name: 'far', rule: 'allowed' as const, polygon: square(7900, 900) },
    ];
    const { moves, analysis } = improve(straight(12, [on(3900), on(7900)], { zones }));
    const near = analysis.stations[0]!;
    expect(moves.every(({ shift }) => Math.abs(shift) <= 500)).toBe(true);
    expect(near.passes[0]!.measure).toBeLessThanOrEqual(3965);
  });

  describe('with a sign that a hand has placed', () => {
    /** Tables at 3000 m, the sign so many metres before them; the usual practice wants 82.3 to 100.6 m. */
    const signed = (ahead: number): Analysis =>
      straight(
        12,
        [
          { ...on(3000), items: { sign: { at: from(from(ORIGIN, 80, 3000 - ahead), 170, 5) } } },
          { ...on(6000), fixed: true },
        ],
        { practice: { maxSpacing: 9000 } },
      );

    it('moves the tables along, by the least whole metre, where the sign is what keeps the distance wrong', () => {
      // The way to the finish is the longest leg whatever happens here.
      const { moves, before, after, plan } = improve(signed(70), { within: 100 });
      expect(before.error - after.error).toBe(1);
      expect(moves).toMatchObject([{ station: 's1', shift: 13, dropped: [] }]);
      expect(plan.stations[0]!.items).toHaveProperty('sign');
    });

    it('gives the sign back to the practice where the station must move farther, and says so', () => {
      const { moves, after, plan } = improve(signed(91), { within: 100 });
      expect(moves).toEqual([]);
      expect(after).toMatchObject({ error: 0 });
      const far = straight(6.4, [{ ...on(3000), items: { sign: { at: from(from(ORIGIN, 80, 2909), 170, 5) } } }]);
      const moved = improve(far);
      expect(moved.moves).toMatchObject([{ station: 's1', shift: 200, dropped: ['sign'] }]);
      expect(moved.plan.stations[0]!.items).toEqual({});
      expect(moved.after.error).toBe(moved.before.error);
      expect(plan.stations[0]!.items).toHaveProperty('sign');
    });
  });

  it('gives a bound instead of a proof where it may not try all combinations, and still betters the plan', () => {
    const analysis = straight(16, [on(3900), on(7700), on(11_000)]);
    const whole = improve(analysis, { step: 50, finest: 50 });
    const { proof, before, after } = improve(analysis, { step: 50, finest: 50, steps: 100 });
    expect(whole.proof).toBe('optimal');
    expect(proof).not.toBe('optimal');
    const { bound } = proof as Exclude<typeof proof, string>;
    expect(bound.longest).toBeLessThanOrEqual(Math.round(whole.after.longest[0]!.length));
    // What the plan leaves out (entrants, first aid, widths, contacts, captains) does not hang on places.
    expect(bound).toMatchObject({ error: 0, warning: 0 });
    expect(after.longest[0]!.length).toBeLessThan(before.longest[0]!.length);
  });

  it('tells its progress up to the whole, and stops where it is told to, with the plan as it is', () => {
    const shares: number[] = [];
    const analysis = straight(12, [on(3900), on(7700)]);
    expect(improve(analysis, { onProgress: (share) => shares.push(share) }).stopped).toBe(false);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    expect(shares.length).toBeGreaterThan(3);
    const stopped = improve(analysis, { stop: () => true });
    expect(stopped).toMatchObject({ stopped: true, moves: [] });
    expect(stopped.proof).toHaveProperty('bound');
  });

  it('gives what it has where it is stopped while it looks closer', () => {
    const analysis = straight(12, [on(3900), on(7707)]);
    let asked = 0;
    const counting = (): boolean => (asked++, false);
    improve(analysis, { step: 25, finest: 25, stop: counting });
    const most = asked + 1;
    let left = most;
    const { stopped, moves, proof } = improve(analysis, { stop: () => left-- <= 0 });
    expect({ stopped, proof }).toEqual({ stopped: true, proof: 'optimal' });
    expect(moves.map(({ shift }) => shift)).toEqual([100, 300]);
  });
});
