/** Crews and tables of one station 3.5 km into a half marathon, by the size of the field, with the rules of a plan that gives none. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import type { StationDay } from './day.ts';
import { planFrom } from '../testing/plans.ts';
import type { Heat } from '../plan/plan.ts';

/** Waves of a tenth each, ten minutes apart, where there are several. */
const wavesOf = (entrants: number): { time: string; entrants: number }[] =>
  entrants < 40_000
    ? [{ time: '08:00', entrants }]
    : Array.from({ length: 10 }, (_, k) => ({
        time: `0${8 + Math.floor(k / 6)}:${String((k % 6) * 10).padStart(2, '0')}`,
        entrants: entrants / 10,
      }));

function dayOf(entrants: number, heat: Heat): { day: StationDay; codes: string[] } {
  const plan = planFrom({
    courses: [
      {
        id: 'c',
        line: [
          [-30.2, 12.2],
          [-30.006, 12.2],
        ],
        drawn: 'centre',
      },
    ],
    races: [{ id: 'h', course: 'c', show: 1, waves: wavesOf(entrants), finish: { median: '2:05:00', spread: 0.2 } }],
    stations: [{ id: 's', on: { course: 'c', measure: '3.5 km', side: 'right' }, serves: ['sportsDrink', 'water'] }],
    supplies: { heat },
  });
  const analysed = analyse(plan, { gpx: new Map() });
  if (!analysed.ok) throw new Error(analysed.findings[0]!.message);
  const { day, findings } = analysed.value;
  return { day: day!.stations[0]!, codes: findings.map(({ code }) => code) };
}

// 300 and 500 runners: "at least 6" of crew; 1,000 in a 10 km: about 10 helpers; 6,500: organisers ask for 30, a club
// would do with 20 (a runners' forum, 2017, cited second-hand). The other rows, and all tables: common practice, no source.
const SIZES: readonly (readonly [
  arrivals: number,
  crew: readonly [number, number],
  tables: readonly [number, number],
])[] = [
  [50, [2, 5], [1, 2]],
  [300, [6, 10], [2, 4]],
  [500, [6, 10], [2, 4]],
  [1000, [9, 16], [4, 7]],
  [2250, [14, 26], [6, 12]],
  [6500, [20, 40], [12, 26]],
  [40_000, [90, 180], [30, 70]],
];

describe.each(SIZES)('%i arrivals', (arrivals, [fewest, most], [leastTables, mostTables]) => {
  it('have the crew and the tables that such races have', () => {
    const { day, codes } = dayOf(arrivals, 'warm');
    expect(day.arrivals).toBe(arrivals);
    expect(day.crew.total).toBeGreaterThanOrEqual(fewest);
    expect(day.crew.total).toBeLessThanOrEqual(most);
    const tables = day.tables.water + day.tables.sportsDrink + day.tables.gel;
    expect(tables).toBeGreaterThanOrEqual(leastTables);
    expect(tables).toBeLessThanOrEqual(mostTables);
    expect(codes.includes('tables-room')).toBe(arrivals === 40_000);
    expect(codes.filter((code) => ['crew-many', 'tables-many', 'pour-late', 'cups-run-out'].includes(code))).toEqual(
      [],
    );
  });

  it.each(['cool', 'hot'] as const)('have a crew within 1.5 times of that on a %s day', (heat) => {
    const { total } = dayOf(arrivals, heat).day.crew;
    expect(total).toBeGreaterThanOrEqual(fewest / 1.5);
    expect(total).toBeLessThanOrEqual(most * 1.5);
  });
});
