/** The day by the clock on random race days: nobody and no cup is lost or made at any minute. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Analysis, analyse } from './analyse.ts';
import { clockSpan, crowdAlong, stateAt, sweepsAt, vehiclesAt } from './clock.ts';
import { runnersAt } from './questions.ts';
import { planFrom } from './testing/plans.ts';
import { tries } from './testing/tries.ts';

const analysisOf = (keys: Readonly<Record<string, unknown>>): Analysis => {
  const analysed = analyse(planFrom(keys), { gpx: new Map() });
  if (!analysed.ok) throw new Error(analysed.findings[0]!.message);
  return analysed.value;
};
const sum = (values: Iterable<number>): number => [...values].reduce((total, one) => total + one, 0);

const race = fc.record({
  entrants: fc.integer({ min: 5, max: 400 }),
  minutes: fc.integer({ min: 60, max: 200 }),
  spread: fc.constantFrom(0.1, 0.25),
  cutoff: fc.option(fc.integer({ min: 2, max: 5 })),
  late: fc.constantFrom('out', 'served'),
  waves: fc.integer({ min: 1, max: 3 }),
});
const cases = fc.record({
  races: fc.array(race, { minLength: 1, maxLength: 2 }),
  stations: fc.array(fc.integer({ min: 3, max: 150 }), { minLength: 1, maxLength: 3 }),
  every: fc.constantFrom(100, 333.3, 1000, 40_000),
});

function planKeys({
  races,
  stations,
}: typeof cases extends fc.Arbitrary<infer T> ? T : never): Record<string, unknown> {
  return {
    courses: [
      {
        id: 'c',
        line: [
          [-30.2, 12.2],
          [-30.061, 12.2],
        ],
        drawn: 'centre',
      },
    ],
    races: races.map(({ entrants, minutes, spread, cutoff, late, waves }, k) => ({
      id: `r${k}`,
      course: 'c',
      waves: Array.from({ length: waves }, (_, w) => ({ time: `08:${String(w * 7 + k).padStart(2, '0')}`, entrants })),
      finish: { median: `${minutes} min`, spread },
      late,
      ...(cutoff === null ? {} : { cutoff: `${8 + cutoff}:00`.padStart(5, '0') }),
    })),
    stations: stations.map((tenths, k) => ({
      id: `s${k}`,
      on: { course: 'c', measure: `${tenths / 10} km`, side: 'right' },
    })),
  };
}

describe('The clock', () => {
  it('counts every starter once at every minute, and as many along the road as are on it', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 0, max: 40 }), (one, step) => {
        const analysis = analysisOf(planKeys(one));
        for (let time = 7.9 * 3600 + step * 11; time < 14 * 3600; time += 23 * 60) {
          const along = crowdAlong(analysis, time, one.every);
          for (const [k, counted] of runnersAt(analysis, time).entries()) {
            expect(counted.started).toBe(counted.onRoad + counted.finished + counted.stopped);
            expect(sum(along[k]!.runners)).toBe(counted.onRoad);
            const { race: id, onRoad, finished, stopped, waiting } = along[k]!;
            expect([id, onRoad, finished, stopped, waiting]).toEqual([
              counted.race,
              counted.onRoad,
              counted.finished,
              counted.stopped,
              counted.waiting,
            ]);
          }
        }
      }),
      { seed: 81, numRuns: tries(200) },
    );
  });

  it('loses no cup: what is poured has been taken or stands, what was sent is poured or left', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 0, max: 59 }), (one, second) => {
        const analysis = analysisOf(planKeys(one));
        for (const { id, arrivals, races } of analysis.day!.stations) {
          let before = { poured: 0, taken: 0, arrived: 0 };
          for (let time = 5 * 3600 + second; time < 15 * 3600; time += 7 * 60) {
            const state = stateAt(analysis, id, time)!;
            const arrived = sum(Object.values(state.arrived));
            const drinks = Object.values(state.drinks);
            for (const { sent, poured, taken, standing, left, jugs } of drinks) {
              expect(jugs!.full).toBeLessThanOrEqual(jugs!.sent);
              if (left < 1) expect(jugs!.full).toBeLessThan(jugs!.sent);
              expect(poured).toBeCloseTo(taken + standing, 6);
              expect(sent).toBeCloseTo(poured + left, 6);
              expect(Math.min(standing, left, taken)).toBeGreaterThanOrEqual(-1e-6);
            }
            const now = { poured: sum(drinks.map((d) => d.poured)), taken: sum(drinks.map((d) => d.taken)), arrived };
            expect(now.poured).toBeGreaterThanOrEqual(before.poured - 1e-6);
            expect(now.taken).toBeGreaterThanOrEqual(before.taken - 1e-6);
            expect(now.arrived).toBeGreaterThanOrEqual(before.arrived);
            before = now;
          }
          expect(before.arrived).toBe(arrivals);
          expect(Object.keys(stateAt(analysis, id, 0)!.arrived)).toEqual(races.map((own) => own.race));
        }
      }),
      { seed: 82, numRuns: tries(100) },
    );
  });

  it('goes through the phases of a station in their order', () => {
    const analysis = analysisOf({
      courses: [
        {
          id: 'c',
          line: [
            [-30.2, 12.2],
            [-30.061, 12.2],
          ],
          drawn: 'centre',
        },
      ],
      races: [
        { id: 'r', course: 'c', waves: [{ time: '08:00', entrants: 300 }], finish: { median: '75 min', spread: 0.2 } },
      ],
      stations: [{ id: 's', on: { course: 'c', measure: '5 km', side: 'right' } }],
    });
    const [own] = analysis.day!.stations;
    const at = (time: number): string => stateAt(analysis, 's', time)!.phase;
    expect(
      [own!.crewAt! - 1, own!.crewAt!, own!.openFrom!, own!.quantiles!.first, own!.openUntil! + 1, own!.packedAt!].map(
        at,
      ),
    ).toEqual(['before', 'settingUp', 'ready', 'open', 'breakingDown', 'packed']);
    // Ready: all that is poured ahead stands on the tables.
    const ready = stateAt(analysis, 's', own!.openFrom!)!;
    expect(ready.drinks.water!.standing).toBe(own!.prePour.water!.cups);
    const busiest = stateAt(analysis, 's', own!.peak!.at)!;
    expect(busiest.handsBusy).toBeGreaterThan(0);
    expect(busiest.handsBusy).toBeLessThanOrEqual(own!.crew.handOut);
  });

  it('has every vehicle at its stops when its run says so, the sweep where runners are stopped, and a span that holds all', () => {
    const analysis = analysisOf({
      courses: [
        {
          id: 'c',
          line: [
            [-30.2, 12.2],
            [-30.061, 12.2],
          ],
          drawn: 'centre',
        },
      ],
      races: [
        {
          id: 'r',
          course: 'c',
          cutoff: '10:00',
          waves: [{ time: '08:00', entrants: 300 }],
          finish: { median: '75 min', spread: 0.2 },
        },
      ],
      stations: [3, 9].map((km, k) => ({ id: `s${k}`, on: { course: 'c', measure: `${km} km`, side: 'right' } })),
      vehicles: [{ id: 'v', name: 'Truck', kg: 4000, places: 4, kmh: 30, from: '04:30' }],
    });
    const [from, to] = clockSpan(analysis)!;
    for (const run of analysis.day!.runs) {
      for (const { station, arrive, leave, measure } of run.stops) {
        for (const time of [arrive, (arrive + leave) / 2, leave]) {
          const found = vehiclesAt(analysis, time).find(({ kind }) => kind === run.kind);
          expect(found).toMatchObject({ vehicle: 'v', course: 'c', measure: expect.closeTo(measure, 3) });
          expect([found!.at, found!.next]).toContain(station);
          expect(time >= from && time <= to).toBe(true);
        }
      }
    }
    expect(analysis.day!.runs.map(({ kind }) => kind)).toEqual(['drop', 'collect']);
    expect(from).toBe(4.5 * 3600);
    expect(to).toBe(analysis.day!.runs[1]!.stops.at(-1)!.leave);
    expect(sweepsAt(analysis, 8 * 3600 - 60)).toEqual([]);
    expect(sweepsAt(analysis, 10 * 3600 + 1)).toEqual([]);
    for (let time = 8.2 * 3600; time < 10 * 3600; time += 600) {
      const [sweep] = sweepsAt(analysis, time);
      // Behind the sweep nobody is on the road.
      const [{ runners, every }] = crowdAlong(analysis, time, 10) as [ReturnType<typeof crowdAlong>[number]];
      expect(sum(runners.slice(0, Math.max(0, Math.floor(sweep!.measure / every))))).toBe(0);
    }
  });

  it('has no state without a race day, and refuses a station that is not there', () => {
    const bare = analysisOf({
      courses: [
        {
          id: 'c',
          line: [
            [-30.2, 12.2],
            [-30.1, 12.2],
          ],
          drawn: 'centre',
        },
      ],
      races: [{ id: 'r', course: 'c' }],
      stations: [{ id: 's', on: { course: 'c', measure: '5 km', side: 'right' } }],
    });
    expect(stateAt(bare, 's', 0)).toBeNull();
    expect(crowdAlong(bare, 0)).toEqual([]);
    expect([clockSpan(bare), vehiclesAt(bare, 0), sweepsAt(bare, 0)]).toEqual([null, [], []]);
    expect(() => stateAt(bare, 'x', 0)).toThrow();
  });
});
