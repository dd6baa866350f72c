import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { Plan, PlanClock, PlanVehicle } from '../plan/plan.ts';
import { planCourse, planOf, planRace, planStation } from '../testing/plans.ts';
import { timeAt, timelineOf } from './clockAlong.ts';
import type { Run, StationDay } from './day.ts';
import { supplyKey, totalPacks } from './packs.ts';
import { runsOf, type RunSite } from './runs.ts';
import { stationDay } from './stationDay.ts';
import { tries } from '../testing/tries.ts';

const HOUR = 3600;
const truck: PlanVehicle = { id: 'v1', name: 'Truck', kg: 1500, places: 6, kmh: 25, stop: 900, from: 2 * HOUR };
const clock: readonly PlanClock[] = [
  { course: 'c', measure: 0, accessOpens: 3 * HOUR, closes: 6.5 * HOUR, sweep: 9 * HOUR, reopens: 10 * HOUR },
  { course: 'c', measure: 20_000, accessOpens: 3 * HOUR, closes: 7.5 * HOUR, sweep: 12 * HOUR, reopens: 13 * HOUR },
];

interface Case {
  readonly plan: Plan;
  readonly days: readonly StationDay[];
  readonly sites: readonly RunSite[];
}

/** Stations at measures, each passed by so many runners within an hour from eight o'clock, later the farther along. */
function caseOf(
  measures: readonly number[],
  count: number,
  vehicles: readonly PlanVehicle[],
  entries: readonly PlanClock[] = clock,
): Case {
  const stations = measures.map((_, k) => planStation({ id: `s${k}`, name: `Station ${k}` }));
  const plan = {
    ...planOf({ courses: [planCourse('c')], races: [planRace('m', 'c')], stations }),
    vehicles,
    clock: entries,
  };
  const days = stations.map((station, k) => {
    const times = Float64Array.from({ length: count }, (_, n) => 8 * HOUR + measures[k]! / 4 + (HOUR * n) / count);
    return stationDay(plan, station, {
      station: station.id,
      races: [{ race: 'm', division: 'run', times, out: 0 }],
      sweep: 9 * HOUR + measures[k]! / 3,
    }).day;
  });
  return {
    plan,
    days,
    sites: measures.map((measure, k) => ({ station: `s${k}`, course: 'c', measure, side: 'right' })),
  };
}

const runsFor = ({ plan, days, sites }: Case): ReturnType<typeof runsOf> => runsOf(plan, days, sites);
/** Stations that findings of a code are about. */
const stationsOf = (findings: readonly Finding[], code: string): ReadonlySet<string> =>
  new Set(
    findings
      .filter((finding) => finding.code === code)
      .flatMap(({ where, params }) => (params?.['stations'] as readonly string[] | undefined) ?? [where.station ?? '']),
  );

const stopsOf = (runs: readonly Run[], kind: Run['kind']): { stop: Run['stops'][number]; run: Run }[] =>
  runs.filter((run) => run.kind === kind).flatMap((run) => run.stops.map((stop) => ({ stop, run })));

describe('Runs', () => {
  it('drop in course order from when access opens, by hand', () => {
    const { runs, findings } = runsFor(caseOf([15_000, 5000], 200, [truck]));
    expect(findings).toEqual([]);
    const [drop, collect] = runs;
    // 5 km at 25 km/h are 12 min, 15 min for each stop, 24 min for the 10 km between.
    expect(drop!.stops.map(({ station, arrive, leave }) => [station, arrive, leave])).toEqual([
      ['s1', 3 * HOUR + 720, 3 * HOUR + 1620],
      ['s0', 3 * HOUR + 3060, 3 * HOUR + 3960],
    ]);
    expect(drop!.stops[0]).toMatchObject({ measure: 5000, side: 'right' });
    expect(drop!.kg).toBeCloseTo(
      drop!.stops.flatMap(({ load }) => load).reduce((sum, { kg }) => sum + kg, 0),
      9,
    );
    // Reopens at 10:45 and 12:15 there: linear between 10:00 at the start and 13:00 at 20 km.
    expect(collect!.stops.map(({ station, arrive }) => [station, arrive])).toEqual([
      ['s1', 10.75 * HOUR],
      ['s0', 12.25 * HOUR],
    ]);
  });

  it('split a load over the capacity and come back for the rest', () => {
    const { runs } = runsFor(caseOf([5000], 200, [{ ...truck, kg: 60 }]));
    const drops = runs.filter(({ kind }) => kind === 'drop');
    expect(drops.length).toBeGreaterThan(1);
    expect(drops[1]!.stops[0]!.arrive - drops[0]!.stops[0]!.leave).toBeCloseTo(2 * 720 + 900, 6);
  });

  it('wait at a stop until the way on is open, and leave it then', () => {
    const opens = [
      { course: 'c', measure: 5000, accessOpens: 0, closes: 8 * HOUR, reopens: 9 * HOUR },
      { course: 'c', measure: 5001, accessOpens: 4 * HOUR },
    ];
    const stops = runsFor(caseOf([5000, 10_000], 100, [truck], opens)).runs[0]!.stops;
    // One metre on at 04:00.
    expect(stops[0]!.leave).toBeCloseTo(4 * HOUR - 0.144, 6);
    expect(stops[1]!.arrive).toBeCloseTo(4 * HOUR + 720 - 0.144, 6);
  });

  it('share the loads between vehicles, the one that is free first taking the next', () => {
    const drops = runsFor(
      caseOf([4000, 8000, 12_000], 100, [
        { ...truck, places: 1 },
        { ...truck, id: 'v2', places: 1, from: 2.1 * HOUR },
      ]),
    ).runs.filter(({ kind }) => kind === 'drop');
    expect(drops.map(({ vehicle, stops }) => [vehicle, stops[0]!.station])).toEqual([
      ['v1', 's0'],
      ['v2', 's1'],
      ['v1', 's2'],
    ]);
  });

  it('leave out a drop that would stand on closed course, and say by how long', () => {
    const { runs, findings } = runsFor(caseOf([5000], 200, [{ ...truck, from: 6.5 * HOUR }]));
    expect(stopsOf(runs, 'drop')).toEqual([]);
    const [finding] = findings;
    // Unloaded at 06:57; the course closes there at 06:45.
    expect(finding).toMatchObject({ code: 'drop-closed', severity: 'error', where: { station: 's0', measure: 5000 } });
    expect(finding!.measured).toBeCloseTo(720, 6);
    expect(finding!.message).toContain('for 12 min');
    // However many loads the station takes, one finding, with all of their mass.
    const many = runsFor(caseOf([5000], 200, [{ ...truck, kg: 60, from: 6.5 * HOUR }]));
    expect(many.findings.map(({ message }) => message)).toEqual([finding!.message]);
    expect(finding!.message).toContain(`${Math.round(runsFor(caseOf([5000], 200, [truck])).runs[0]!.kg)} kg`);
  });

  it('tell how late a drop is for its crew', () => {
    const open = caseOf(
      [5000],
      200,
      [truck],
      [{ course: 'c', measure: 0, accessOpens: 3 * HOUR, closes: 20 * HOUR, reopens: 20 * HOUR }],
    );
    const due = open.days[0]!.crewAt!;
    const { findings } = runsFor({ ...open, plan: { ...open.plan, vehicles: [{ ...truck, from: due }] } });
    expect(findings).toMatchObject([{ code: 'drop-late', measured: due + 1620, limit: due }]);
    expect(findings[0]!.message).toContain('27 min late');
    const at = (from: number): string[] =>
      runsFor({ ...open, plan: { ...open.plan, vehicles: [{ ...truck, from }] } }).findings.map(({ code }) => code);
    expect(at(due - 1620)).toEqual([]);
    expect(at(due - 1619)).toEqual(['drop-late']);
  });

  it('tell of one station both what comes late and what cannot come', () => {
    const one = caseOf(
      [5000],
      200,
      [{ ...truck, kg: 30, from: 5 * HOUR }],
      [{ course: 'c', measure: 0, accessOpens: 0, closes: 6.5 * HOUR, reopens: 9 * HOUR }],
    );
    const early = { ...one, days: one.days.map((day) => ({ ...day, crewAt: 5 * HOUR })) };
    const { runs, findings } = runsFor(early);
    const dropped = runs.filter(({ kind }) => kind === 'drop').reduce((sum, { kg }) => sum + kg, 0);
    const all = runsFor(caseOf([5000], 200, [truck])).runs[0]!.kg;
    expect(findings.map(({ code }) => code)).toEqual(['drop-closed', 'drop-late']);
    expect(dropped).toBeGreaterThan(0);
    expect(findings[0]!.message).toContain(`${Math.round(all - dropped)} kg cannot be dropped`);
    expect(findings[1]!.measured).toBe(Math.max(...stopsOf(runs, 'drop').map(({ stop }) => stop.leave)));
  });

  it('say what no vehicle carries, what has no place, and what the clock lacks', () => {
    expect(runsFor(caseOf([5000], 200, [])).findings.map(({ code }) => code)).toEqual(['vehicles-missing']);
    const none = caseOf([5000], 200, [truck]);
    expect(runsFor({ ...none, sites: [] }).findings.map(({ code }) => code)).toEqual(['drop-nowhere']);
    const heavy = runsFor(caseOf([5000], 200, [{ ...truck, kg: 6 }]));
    expect(heavy.findings.find(({ code }) => code === 'load-too-heavy')!.message).toContain(
      'One table weighs 9 kg, and the strongest vehicle carries only 6 kg.',
    );
    const timeless = runsFor(caseOf([5000], 200, [truck], [{ course: 'c', measure: 0, accessOpens: 0 }]));
    expect(timeless.findings.map(({ message }) => message)).toEqual([
      'Road times do not say when the road closes or when the road reopens on c. Runs are planned as if there were no limit. Add the times that the road authority grants.',
    ]);
  });

  it('take one course after the other, and each by its own clock', () => {
    const one = caseOf(
      [5000, 2000],
      100,
      [truck],
      [
        { course: 'c', measure: 0, accessOpens: 0, closes: 8 * HOUR, reopens: 9 * HOUR },
        { course: 'd', measure: 0, accessOpens: 4 * HOUR, closes: 8 * HOUR, reopens: 9 * HOUR },
      ],
    );
    const plan = { ...one.plan, courses: [planCourse('c'), planCourse('d')] };
    const { runs } = runsFor({ ...one, plan, sites: [one.sites[0]!, { ...one.sites[1]!, course: 'd' }] });
    // Unloads on c until 02:27, is back at 02:54, and waits for d to open at 04:00.
    expect(
      runs.filter(({ kind }) => kind === 'drop').map(({ stops }) => [stops[0]!.station, stops[0]!.arrive]),
    ).toEqual([
      ['s0', 2 * HOUR + 720],
      ['s1', 4 * HOUR + 288],
    ]);
  });

  it('need nothing where nobody comes', () => {
    expect(runsFor(caseOf([5000], 0, [truck]))).toEqual({ runs: [], findings: [] });
  });

  const vehicles = fc
    .array(
      fc.record({
        kg: fc.integer({ min: 40, max: 2000 }),
        places: fc.integer({ min: 1, max: 6 }),
        kmh: fc.integer({ min: 8, max: 50 }),
        stop: fc.integer({ min: 0, max: 1500 }),
        from: fc.integer({ min: 0, max: 6 * HOUR }),
      }),
      { minLength: 1, maxLength: 3 },
    )
    .map((all) => all.map((one, k): PlanVehicle => ({ ...one, id: `v${k}`, name: `Vehicle ${k}` })));
  const measures = fc.uniqueArray(fc.integer({ min: 100, max: 25_000 }), { minLength: 1, maxLength: 6 });
  const entries = fc
    .array(
      fc.record({
        measure: fc.integer({ min: 0, max: 25_000 }),
        accessOpens: fc.integer({ min: 0, max: 4 * HOUR }),
        closes: fc.integer({ min: 4 * HOUR, max: 8 * HOUR }),
        reopens: fc.integer({ min: 9 * HOUR, max: 15 * HOUR }),
      }),
      { maxLength: 4 },
    )
    .map((all) => all.map((one): PlanClock => ({ ...one, course: 'c' })));
  const cases = fc
    .tuple(measures, fc.integer({ min: 1, max: 400 }), vehicles, entries)
    .map(([at, count, all, times]) => caseOf(at, count, all, times));

  it('drop what is needed in all, piece for piece, but for what is said to be left out', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const { runs, findings } = runsFor(one);
        const left = stationsOf(findings, 'drop-closed');
        for (const day of one.days) {
          const dropped = stopsOf(runs, 'drop')
            .filter(({ stop }) => stop.station === day.id)
            .flatMap(({ stop }) => stop.load);
          for (const pack of totalPacks([day])) {
            const { count } = pack;
            const same = dropped.filter((load) => supplyKey(load) === supplyKey(pack));
            const carried = same.reduce((sum, load) => sum + load.count, 0);
            if (left.has(day.id)) expect(carried).toBeLessThanOrEqual(count);
            else expect(carried).toBe(count);
          }
        }
      }),
      { seed: 49, numRuns: tries(300) },
    );
  });

  it('drop before the crew comes, or say so; and put nothing negative or overweight on the road', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const { runs, findings } = runsFor(one);
        const late = stationsOf(findings, 'drop-late');
        for (const { stop, run } of [...stopsOf(runs, 'drop'), ...stopsOf(runs, 'collect')]) {
          const vehicle = one.plan.vehicles.find(({ id }) => id === run.vehicle)!;
          const day = one.days.find(({ id }) => id === stop.station)!;
          if (run.kind === 'drop' && !late.has(stop.station))
            expect(stop.arrive + vehicle.stop!).toBeLessThanOrEqual(day.crewAt! + 1e-3);
          if (run.kind === 'collect') expect(stop.arrive).toBeGreaterThanOrEqual(day.openUntil! - 1e-3);
          expect(stop.arrive).toBeGreaterThanOrEqual(vehicle.from);
          expect(stop.leave - stop.arrive).toBeGreaterThanOrEqual(vehicle.stop! - 1e-3);
          for (const { count, kg } of stop.load) expect(count > 0 && kg >= 0).toBe(true);
          expect(run.kg).toBeLessThanOrEqual(vehicle.kg + 1e-6);
          expect(run.stops.length).toBeLessThanOrEqual(vehicle.places);
        }
      }),
      { seed: 50, numRuns: tries(300) },
    );
  });

  it('keep every vehicle off the course before access opens, once it closes, and until it reopens', () => {
    fc.assert(
      fc.property(cases, (one) => {
        for (const { vehicle, kind, stops } of runsFor(one).runs) {
          const speed = one.plan.vehicles.find(({ id }) => id === vehicle)!.kmh / 3.6;
          const opens = timelineOf(one.plan.clock, 'c', kind === 'drop' ? 'accessOpens' : 'reopens');
          const closes = timelineOf(kind === 'drop' ? one.plan.clock : [], 'c', 'closes');
          const allowed = (measure: number, time: number): void => {
            expect(time).toBeGreaterThanOrEqual((timeAt(opens, measure) ?? -Infinity) - 1e-3);
            expect(time).toBeLessThanOrEqual((timeAt(closes, measure) ?? Infinity) + 1e-3);
          };
          let at = 0;
          for (const { measure, arrive, leave } of stops) {
            // A hundred places on the way: where it is, when.
            for (let k = 0; k <= 100; k++)
              allowed(at + ((measure - at) * k) / 100, arrive - ((measure - at) * (1 - k / 100)) / speed);
            allowed(measure, leave);
            at = measure;
          }
        }
      }),
      { seed: 51, numRuns: tries(300) },
    );
  });

  it('have each vehicle in one place at a time', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const { runs } = runsFor(one);
        for (const { id } of one.plan.vehicles) {
          const times = runs
            .filter(({ vehicle }) => vehicle === id)
            .flatMap(({ stops }) => stops.flatMap(({ arrive, leave }) => [arrive, leave]));
          for (let k = 1; k < times.length; k++) expect(times[k]!).toBeGreaterThanOrEqual(times[k - 1]! - 1e-6);
        }
      }),
      { seed: 52, numRuns: 200 },
    );
  });
});
