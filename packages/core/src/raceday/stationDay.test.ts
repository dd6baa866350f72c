import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Division, PlanStation } from '../plan/plan.ts';
import { planOf, planRace, planStation } from '../testing/plans.ts';
import type { StationArrivals } from './day.ts';
import { stationDay } from './stationDay.ts';

const NINE = 9 * 3600;

const comes = (times: readonly number[], sweep: number | null = null, division: Division = 'run'): StationArrivals => ({
  station: 's1',
  races: [{ race: 'm', division, times: Float64Array.from(times).sort(), out: 0 }],
  sweep,
});

/** So many, evenly over a span from nine o'clock. */
const even = (count: number, span: number, from: number = NINE): number[] =>
  Array.from({ length: count }, (_, k) => from + (span * k) / Math.max(1, count - 1));

const dayOf = (station: Partial<PlanStation>, arrivals: StationArrivals): ReturnType<typeof stationDay> => {
  const one = planStation(station);
  const plan = planOf({ races: [planRace('m', 'c')], stations: [one] });
  const take = { run: { water: 1.2, sportsDrink: 0.6, gel: 0.6 } };
  return stationDay({ ...plan, supplies: { ...plan.supplies, heat: 'warm', take } }, one, arrivals);
};

describe('A station’s day', () => {
  it('follows from who comes, by hand', () => {
    const { day, findings } = dayOf(
      { serves: ['gel', 'sportsDrink', 'water'] },
      comes(even(1201, 3600), NINE + 2 * 3600),
    );
    expect(findings).toEqual([]);
    expect(day).toMatchObject({ id: 's1', arrivals: 1201, openFrom: NINE - 1800, openUntil: NINE + 7200, gels: 961 });
    // 1201 × 1.2 × 1.15 and 1201 × 0.6 × 1.15.
    expect(day.cups).toEqual({ water: 1658, sportsDrink: 829 });
    expect(day.volume.water).toBeCloseTo(1658 * 0.2070148 * 0.5, 3);
    expect(day.peak).toEqual({ count: 20, at: NINE });
    expect(day.perMinute).toHaveLength(61);
    // 20 × 1.8 = 36 cups a minute, of which runners take 3 in 10 themselves: (25.2 + 2√25.2) ÷ 25. Gels: (12 + 2√12) ÷ 12.
    // On the ground in an hour: 1200 × 1.8 ÷ 2000.
    expect(day.crew).toMatchObject({ handOut: 2, gel: 2, clean: 2, captain: 1, total: 8 });
    // 80 % come within 48 min: a share of 0.75 − 0.35 × 8 ÷ 50 = 0.694 of 1657.38. One pourer pours 15 ÷ 1.25 = 12 a
    // minute, 8 of them water: 27.6 are taken, and 60 × 27.6 − 59 × 8 = 1184.
    expect(day.crew.pour).toBe(1);
    expect(day.prePour.water).toMatchObject({
      floor: 1150,
      massCurve: 1184,
      cups: 1184,
      room: null,
      tables: 2,
      layers: 3,
    });
    expect(day.prePour.sportsDrink).toMatchObject({ cups: 592, tables: 1, layers: 3 });
    expect(day.tables).toEqual({ gel: 1, sportsDrink: 1, water: 2 });
    // Seven persons pour 1184 + 592 cups at 15 a minute.
    expect(day.crewAt).toBe(NINE - 1800 - 3600 - Math.ceil((1776 / 105) * 60));
    // Broken down in 45 min and a minute a table.
    expect(day.packedAt).toBe(day.openUntil! + 2700 + 4 * 60);
    expect(day.crew.hours).toBeCloseTo((day.packedAt! - day.crewAt!) / 3600, 12);
    // 2,487 cups are nine boxes of 300.
    expect(day.boxes).toBe(9);
  });

  it('says how many full jugs should be left at each half hour', () => {
    const { day } = dayOf({ serves: ['water'], tables: { water: 3 } }, comes(even(1201, 3600)));
    // 1906 cups of 103.5 ml are ordered: 53 gallons. By 09:30 1150 stand ready and 30 × 15 are refilled: 1600 cups, 44 gallons.
    expect(day.packs.find(({ kind }) => kind === 'waterJug')!.count).toBe(53);
    expect(day.prePour.water!.cups).toBe(1150);
    expect(day.jugsLeft).toEqual([{ at: NINE + 1800, water: 53 - 44 }]);
  });

  it('has the same stock poured at whatever second of a clock minute the first comes', () => {
    const stocks = Array.from(
      { length: 60 },
      (_, second) => dayOf({ serves: ['water'] }, comes(even(2000, 1200, NINE + second))).day.prePour.water!,
    );
    for (const stock of stocks) expect(stock).toEqual(stocks[0]);
    // Wheels who come before begin no pour: theirs is on top.
    const mixed = (second: number): unknown =>
      dayOf(
        { serves: ['water'] },
        {
          station: 's1',
          races: [
            { race: 'm', division: 'run', times: Float64Array.from(even(2000, 1200, NINE + second)), out: 0 },
            { race: 'w', division: 'wheels', times: Float64Array.of(NINE - 400 + second, NINE - 90 + second), out: 0 },
          ],
          sweep: null,
        },
      ).day.prePour.water;
    for (let second = 1; second < 60; second++) expect(mixed(second)).toEqual(mixed(0));
  });

  it('hands out the gels that are taken, not all that are ordered', () => {
    // 20 × 0.6 = 12 a minute: 12 + 2√12 by one each.
    expect(dayOf({ serves: ['gel', 'water'], crew: { gelRate: 1 } }, comes(even(1201, 3600))).day.crew.gel).toBe(19);
    expect(dayOf({ serves: ['water'] }, comes(even(1201, 3600))).day.crew.gel).toBe(0);
  });

  it('gets tables for what is staged, unless the plan says', () => {
    expect(dayOf({}, comes(even(1201, 3600))).day.tables).toEqual({ gel: 0, sportsDrink: 1, water: 2 });
    expect(dayOf({ tables: { water: 7 } }, comes(even(1201, 3600))).day.tables.water).toBe(7);
  });

  it('takes more pourers where the plan has fewer tables, and says where those that it has are too few', () => {
    const one = dayOf({ tables: { water: 1 }, serves: ['water'] }, comes(even(1201, 3600)));
    expect(one.day.prePour.water).toMatchObject({ cups: 600, room: 600, tables: 1, layers: 3 });
    // 1656 − 600 within 59 minutes are 18 a minute: two pourers at 12.
    expect(one.day.crew.pour).toBe(2);
    expect(one.findings).toEqual([]);
    const { findings } = dayOf(
      { tables: { water: 1 }, crew: { pourers: 1 }, serves: ['water'] },
      comes(even(1201, 3600)),
    );
    expect(findings.map(({ code }) => code)).toEqual(['cups-run-out']);
  });

  it('says when cups run out later in the day though the first hour is poured', () => {
    const late = [...even(60, 3600), ...even(900, 120, NINE + 4 * 3600)];
    const { findings } = dayOf(
      { tables: { water: 1 }, supplies: { prePourFloor: [0, 0] }, crew: { pourers: 8 }, serves: ['water'] },
      comes(late),
    );
    expect(findings).toMatchObject([{ code: 'cups-run-out', where: { station: 's1', item: 'water' } }]);
    expect(findings[0]!.message).toContain('run out at 13:00');
  });

  it('is ready before wheels, who take cups but start no pre-pour', () => {
    const wheels = {
      race: 'w',
      division: 'wheels' as const,
      times: Float64Array.from(even(20, 600, NINE - 3600)),
      out: 0,
    };
    const { races } = comes(even(1201, 3600));
    const { day } = dayOf({ serves: ['water'] }, { station: 's1', races: [...races, wheels], sweep: null });
    expect(day.openFrom).toBe(NINE - 3600 - 1800);
    // 20 × 0.1 × 1.15 cups more; the floor is by the spread of those on foot.
    expect(day.cups.water).toBe(1660);
    // The wheels' 2.3 cups come before anything is poured, then 27.6 a minute against 12: 2.3 + 60 × 27.6 − 59 × 12.
    expect(day.prePour.water!.massCurve).toBe(951);
    // 0.8 × 1201 steps of 3 s from the 10 to the 90 % arrival: 2882.4 s.
    expect(day.prePour.water!.floor).toBe(Math.ceil(1660 * (0.75 - (0.35 * (2882.4 - 2400)) / 3000)));
    expect(dayOf({}, { station: 's1', races: [wheels], sweep: null }).day.prePour).toEqual({});
  });

  it('stays open for the sweep, or for the last who comes after it', () => {
    expect(dayOf({}, comes([NINE, NINE + 5000], NINE + 4000)).day.openUntil).toBe(NINE + 5000);
    expect(dayOf({}, comes([NINE], NINE + 4000)).day.openUntil).toBe(NINE + 4000);
  });

  it('needs nothing where nobody comes, and says so', () => {
    const { day, findings } = dayOf({}, comes([]));
    expect(day).toMatchObject({
      arrivals: 0,
      races: [],
      quantiles: null,
      peak: null,
      crewAt: null,
      openFrom: null,
      openUntil: null,
      packs: [],
      crew: { total: 0 },
    });
    expect(findings.map(({ code }) => code)).toEqual(['station-no-arrivals']);
  });

  it('never has a negative or unfinished number, nor more poured than bought', () => {
    const times = fc.array(fc.integer({ min: 7 * 3600, max: 14 * 3600 }), { minLength: 1, maxLength: 200 });
    fc.assert(
      fc.property(
        times,
        fc.constantFrom<Division>('run', 'walk', 'wheels'),
        fc.option(fc.nat({ max: 5 })),
        fc.nat({ max: 4 }),
        (list, division, water, pourers) => {
          const { day } = dayOf(
            { tables: water === null ? {} : { water }, crew: { pourers } },
            comes(list, null, division),
          );
          const numbers: number[] = [];
          JSON.stringify(day, (_, value: unknown) => {
            if (typeof value === 'number') numbers.push(value);
            return value;
          });
          for (const one of numbers) expect(Number.isFinite(one) && one >= 0).toBe(true);
          for (const drink of ['water', 'sportsDrink'] as const)
            expect(day.prePour[drink]?.cups ?? 0).toBeLessThanOrEqual(day.cups[drink]);
          expect(day.crewAt!).toBeLessThanOrEqual(day.openFrom!);
        },
      ),
      { seed: 47, numRuns: 200 },
    );
  });
});
