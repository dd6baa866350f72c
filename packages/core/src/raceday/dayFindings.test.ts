import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import { DEFAULT_CREW, DEFAULT_PRACTICE, DEFAULT_SUPPLIES } from '../plan/defaults.ts';
import { planFrom, planOf, planStation } from '../testing/plans.ts';
import type { Finding } from '../finding.ts';
import type { StationDay } from './day.ts';
import { drinksFinding, stationDayFindings, unusedFindings } from './dayFindings.ts';

const plan = planOf({ stations: [planStation({})] });
const at = (n: number): { first: number; p10: number; p50: number; p90: number; last: number } => ({
  first: n,
  p10: n,
  p50: n,
  p90: n,
  last: n,
});

/** A day of so many arrivals and people, with so many cups poured ahead. */
const dayOf = (arrivals: number, total: number, cups = 0): StationDay => ({
  id: 's1',
  arrivals,
  races: [],
  quantiles: at(9 * 3600),
  perMinute: [],
  peak: null,
  crewAt: 0,
  openFrom: 0,
  openUntil: 0,
  cups: { water: cups, sportsDrink: 0 },
  gels: 0,
  prePour: { water: { cups, share: 1, massCurve: 0, floor: 0, room: null, tables: 1, layers: 1, pourers: 1 } },
  volume: { water: 0, sportsDrink: 0 },
  tables: { gel: 0, sportsDrink: 0, water: 1 },
  packs: [],
  crew: { handOut: 0, pour: 1, gel: 0, clean: 0, captain: 1, total, hours: 3, shifts: 1 },
});
const codes = (findings: readonly Finding[]): string[] => findings.map(({ code }) => code);

describe('Crews', () => {
  it('of more than one for 25 arrivals are a lot, but never those of up to six', () => {
    expect(codes(stationDayFindings(plan, dayOf(1000, 40)))).toEqual([]);
    expect(codes(stationDayFindings(plan, dayOf(1000, 41)))).toEqual(['crew-many']);
    expect(codes(stationDayFindings(plan, dayOf(50, 6)))).toEqual([]);
    expect(stationDayFindings(plan, dayOf(50, 7))[0]).toMatchObject({
      measured: 7,
      limit: 6,
      where: { station: 's1' },
    });
  });

  it('pour what stands ready within an hour, or it is said', () => {
    // One person besides the captain pours 15 a minute: 900 an hour.
    expect(codes(stationDayFindings(plan, dayOf(900, 2, 900)))).toEqual([]);
    expect(stationDayFindings(plan, dayOf(900, 2, 901))).toMatchObject([{ code: 'pour-late', limit: 3600 }]);
    expect(codes(stationDayFindings(plan, { ...dayOf(900, 99, 9000), quantiles: null }))).toEqual([]);
  });
});

describe('Drinks', () => {
  // Western Province Athletics, station guide 2019 (read): at least 3 drinks a runner where stations are 5 km apart.
  const day = (cups: number, shortestLeg: number): ReturnType<typeof dayOf> & { shortestLeg: number } => ({
    ...dayOf(100, 4),
    ordered: { water: cups, sportsDrink: 0 },
    shortestLeg,
  });

  it('are few under three a runner, where stations are 5 km apart', () => {
    expect(drinksFinding([day(300, 5000)])).toEqual([]);
    expect(drinksFinding([day(299, 4999)])).toEqual([]);
    expect(drinksFinding([day(299, 5000)])).toMatchObject([{ code: 'drinks-few', measured: 2.99, limit: 3 }]);
    expect(drinksFinding([{ ...day(299, 5000), handOut: 'bottles' }])).toEqual([]);
  });

  it('are one finding, the fewest first', () => {
    const [finding, ...more] = drinksFinding([day(290, 6000), { ...day(200, 6000), id: 's2' }]);
    expect(more).toEqual([]);
    expect(finding!.params).toMatchObject({ stations: ['s2', 's1'], ordered: 2 });
  });
});

describe('Rules', () => {
  it('that have no effect are named, others are not', () => {
    expect(unusedFindings(plan)).toEqual([]);
    const spaced = { ...plan, practice: { ...DEFAULT_PRACTICE, boxEvery: 10 } };
    expect(unusedFindings(spaced)).toMatchObject([{ code: 'rule-unused', params: { rules: ['practice.boxEvery'] } }]);
    const bottles = {
      ...plan,
      supplies: { ...DEFAULT_SUPPLIES, handOut: 'bottles' as const, layers: 2 },
      crew: { ...DEFAULT_CREW, pourers: 3 },
    };
    expect(unusedFindings(bottles)[0]!.params).toEqual({
      rules: ['supplies.layers', 'crew.pourers'],
      because: 'bottles',
    });
    // One station with cups, and they have an effect.
    expect(unusedFindings({ ...bottles, stations: [planStation({ supplies: { handOut: 'cups' } })] })).toEqual([]);
  });
});

describe('Tables', () => {
  const found = (tablesRoom: number): Finding[] => {
    const analysed = analyse(
      planFrom({
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
        races: [
          {
            id: 'r',
            course: 'c',
            waves: [{ time: '08:00', entrants: 2000 }],
            finish: { median: '60 min', spread: 0.2 },
          },
        ],
        practice: { tablesRoom },
        stations: [{ id: 's1', on: { course: 'c', measure: '5 km', side: 'right' }, serves: ['water'] }],
      }),
      { gpx: new Map() },
    );
    if (!analysed.ok) throw new Error(analysed.findings[0]!.message);
    return analysed.value.findings.filter(({ code }) => code === 'tables-room');
  };

  it('that are longer than their place are told, with the pourers who make up for them', () => {
    const [note] = found(9);
    expect(note).toMatchObject({ severity: 'note', where: { station: 's1' }, limit: 9 });
    // As many 6 ft tables as are wanted have room in just their length.
    const { wanted, tables, pourers } = note!.params as { wanted: number; tables: number; pourers: number };
    expect(tables).toBe(4);
    expect(pourers).toBeGreaterThan(1);
    expect(found(wanted * 1.8288)).toEqual([]);
    expect(found(wanted * 1.8288 - 0.01)).toHaveLength(1);
  });
});
