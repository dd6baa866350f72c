import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Division, PlanStation } from '../plan/plan.ts';
import { planOf, planRace, planStation } from '../testing/plans.ts';
import type { StationArrivals } from './day.ts';
import { prePourTold } from './prePour.ts';
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
  return stationDay({ ...plan, supplies: { ...plan.supplies, heat: 'warm' } }, one, arrivals);
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
    // 20 × 1.8 = 36 cups a minute: (36 + 12) ÷ 8. Gels: (12 + 2√12) ÷ 12. On the ground in an hour: 1200 × 1.8 ÷ 400.
    expect(day.crew).toMatchObject({ handOut: 6, pour: 2, gel: 2, clean: 6, captain: 1, total: 17 });
    // 80 % come within 48 min: a share of 0.75 − 0.35 × 8 ÷ 50 = 0.694 of 1658, over the curve.
    expect(day.prePour.water).toMatchObject({ cups: 1151, floor: 1151, room: null });
    // 24 cups a minute taken and, two thirds of 30, 20 poured: 60 × 24 − 59 × 20.
    expect(day.prePour.water!.massCurve).toBe(260);
    expect(prePourTold(day.prePour.water!, 200)).toBe('4 tables × 2 layers = 1,600 cups');
    // Eight persons pour 1151 + 576 cups at 15 a minute.
    expect(day.prePour.sportsDrink!.cups).toBe(576);
    expect(day.crewAt).toBe(NINE - 1800 - 3600 - Math.ceil((1727 / 120) * 60));
    expect(day.crew.hours).toBeCloseTo((day.openUntil! - day.crewAt!) / 3600, 12);
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

  it('gets tables for what is staged and for those who hand out, unless the plan says', () => {
    // Six who hand out by 1.5 m are 9 m: two thirds of it for water are 3.3 tables of 6 ft, a third 1.6.
    expect(dayOf({}, comes(even(1201, 3600))).day.tables).toEqual({ gel: 0, sportsDrink: 2, water: 4 });
    expect(dayOf({ crew: { handSpacing: 0 } }, comes(even(1201, 3600))).day.tables).toEqual({
      gel: 0,
      sportsDrink: 1,
      water: 2,
    });
    expect(dayOf({ tables: { water: 7 } }, comes(even(1201, 3600))).day.tables.water).toBe(7);
  });

  it('says by how much the plan’s tables are too few for the pre-pour, and what to do', () => {
    const { day, findings } = dayOf({ tables: { water: 1 }, serves: ['water'] }, comes(even(1201, 3600)));
    expect(day.prePour.water).toMatchObject({ cups: 600, room: 600, tables: 1, layers: 3 });
    const short = findings.find(({ code }) => code === 'pre-pour-room')!;
    expect(short.message).toContain(
      'The table holds 600 cups of water. 1,151 should be poured before the first runner: 551 more. Put up 1 more table.',
    );
    expect(dayOf({ tables: { water: 2 }, serves: ['water'] }, comes(even(1201, 3600))).findings).toEqual([]);
  });

  it('names the pourers who would do with the plan’s tables, where it is the rush that asks for more', () => {
    // 1001 within ten minutes take 1202 cups; the curve asks for over 1000, the floor for two fifths of 1382.
    const rush = (pourers: number): ReturnType<typeof stationDay> =>
      dayOf(
        { tables: { water: 1 }, supplies: { prePourFloor: [0.4, 0.4] }, crew: { pourers }, serves: ['water'] },
        comes(even(1001, 600)),
      );
    const [finding] = rush(2).findings;
    const told = /more\. Put up 1 more table, or have (\d+) people pour water\.$/u.exec(finding!.message);
    expect(rush(Number(told![1])).findings).toEqual([]);
    expect(rush(Number(told![1])).day.prePour.water!.cups).toBe(553);
  });

  it('says when cups run out later in the day though the first hour is poured', () => {
    const late = [...even(60, 3600), ...even(900, 120, NINE + 4 * 3600)];
    const { findings } = dayOf(
      { tables: { water: 1 }, supplies: { prePourFloor: [0, 0] }, crew: { pourers: 8 }, serves: ['water'] },
      comes(late),
    );
    expect(findings).toMatchObject([{ code: 'cups-run-out', where: { station: 's1', item: 'water' } }]);
    expect(findings[0]!.message).toContain('run out at 13:01');
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
    // The wheels' 2 cups and the first minute's 24, before anything is poured.
    expect(day.prePour.water!.massCurve).toBe(26);
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
