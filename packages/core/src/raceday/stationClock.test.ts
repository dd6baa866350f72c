/** A station by the clock where it serves less than all, or its day tells less than all. */
import { describe, expect, it } from 'vitest';
import type { PlanStation } from '../plan/plan.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import type { StationDay } from './day.ts';
import { type ClockRules, stationStateAt } from './stationClock.ts';

const RULES: ClockRules = { waste: 0.1, pourRate: 10, handRate: 20, fromTables: 0, cup: 0.2 };
const dayOf = (keys: Partial<PlanStation>): StationDay =>
  analysisOf(STRAIGHT, [{ ...AT_1500, ...keys }], { races: [runners(600)] }).day!.stations[0]!;

describe('a station by the clock', () => {
  it('has the drinks that it serves, and none where it serves gels', () => {
    const drinksOf = (serves: PlanStation['serves']): string[] => {
      const day = dayOf({ serves });
      return Object.keys(stationStateAt(day, day.peak!.at, RULES).drinks).toSorted();
    };
    expect(drinksOf(['water', 'sportsDrink'])).toEqual(['sportsDrink', 'water']);
    expect(drinksOf(['water'])).toEqual(['water']);
    expect(drinksOf(['gel', 'sportsDrink'])).toEqual(['sportsDrink']);
    expect(drinksOf(['gel'])).toEqual([]);
  });

  const day = dayOf({ serves: ['water'] });
  const until = day.openUntil!;

  it('tells jugs only where the drink comes in jugs', () => {
    const jugs = (one: StationDay): unknown => stationStateAt(one, until, RULES).drinks.water!.jugs;
    expect(jugs(day)).toMatchObject({ sent: day.packs.find(({ kind }) => kind === 'waterJug')!.count });
    expect(jugs({ ...day, packs: day.packs.filter(({ kind }) => kind !== 'waterJug') })).toBeUndefined();
  });

  it('has been sent what was ordered, else what is needed', () => {
    const sent = (one: StationDay): number => stationStateAt(one, until, RULES).drinks.water!.sent;
    expect(day.ordered!.water).toBeGreaterThan(day.cups.water);
    expect(sent(day)).toBe(day.ordered!.water);
    const { ordered: _, ...needed } = day;
    expect(sent(needed)).toBe(day.cups.water);
  });

  it('is packed when its day says so, else as soon as it closes', () => {
    const phases = (one: StationDay): string[] =>
      [until, until + 1, day.packedAt! - 1, day.packedAt!].map((time) => stationStateAt(one, time, RULES).phase);
    expect(phases(day)).toEqual(['open', 'breakingDown', 'breakingDown', 'packed']);
    const { packedAt: _, ...closed } = day;
    expect(phases(closed)).toEqual(['open', 'packed', 'packed', 'packed']);
  });

  it('hands nothing to those of whom it is not said what they take, and counts them all the same', () => {
    const { take: _, ...silent } = day.races[0]!;
    const one: StationDay = { ...day, races: [silent, { ...silent, race: 'other' }] };
    const state = stationStateAt(one, day.peak!.at + 30, RULES);
    expect([state.drinks.water!.taken, state.handsBusy]).toEqual([0, 0]);
    expect(state.arrived['m']).toBe(stationStateAt(day, day.peak!.at + 30, RULES).arrived['m']);
    expect([state.now > 0, state.arrived['other']]).toEqual([true, 0]);
  });
});
