import { describe, expect, it } from 'vitest';
import { DEFAULT_SUPPLIES, DRINK_RATE } from '../plan/defaults.ts';
import type { Supplies } from '../plan/plan.ts';
import { takeOf } from './take.ts';

const supplies = (keys: Partial<Supplies>): Supplies => ({ ...DEFAULT_SUPPLIES, ...keys });
const BOTH = ['sportsDrink', 'water'] as const;
const HALF_HOUR = 1800;

describe('Take', () => {
  it('is the rate of the heat times the time since the last drink', () => {
    // 0.4 to 0.8 l an hour: ACSM 2007, cited second-hand.
    expect(DRINK_RATE).toEqual({ cool: 0.4, warm: 0.6, hot: 0.8 });
    for (const heat of ['cool', 'warm', 'hot'] as const) {
      const { litres, cups } = takeOf(supplies({ heat }), BOTH, 'run', HALF_HOUR);
      expect(litres.water + litres.sportsDrink).toBeCloseTo(DRINK_RATE[heat] / 2, 9);
      // Cups of 7 US fl oz, half full: 207.0 ml ÷ 2.
      expect(cups.water + cups.sportsDrink).toBeCloseTo(DRINK_RATE[heat] / 2 / 0.10350735, 4);
      expect(cups.water).toBeCloseTo(2 * cups.sportsDrink, 9);
    }
  });

  it('is all of the one drink where only that is served', () => {
    const { cups } = takeOf(supplies({ heat: 'warm' }), ['sportsDrink'], 'run', HALF_HOUR);
    expect(cups.water).toBe(0);
    expect(cups.sportsDrink).toBeCloseTo(0.3 / 0.10350735, 4);
  });

  it('is less than a third 1.4 km after the start of what it is after 5 km, at one pace', () => {
    const at = (metres: number): number => {
      const { cups } = takeOf(supplies({ heat: 'warm' }), BOTH, 'run', metres / 2.8);
      return cups.water + cups.sportsDrink;
    };
    expect(at(1400)).toBeLessThan(at(5000) / 3);
  });

  it('is never under 0.4 cups nor over 4, but as many litres as it takes into bottles', () => {
    const both = (leg: number, keys: Partial<Supplies> = {}): number => {
      const { cups } = takeOf(supplies({ heat: 'hot', ...keys }), BOTH, 'run', leg);
      return cups.water + cups.sportsDrink;
    };
    expect(both(10)).toBeCloseTo(0.4, 9);
    expect(both(4 * 3600)).toBeCloseTo(4, 9);
    const { cups, litres } = takeOf(supplies({ heat: 'hot', handOut: 'bottles' }), ['water'], 'run', 4 * 3600);
    expect(cups).toEqual({ water: 0, sportsDrink: 0 });
    expect(litres.water).toBeCloseTo(3.2, 9);
  });

  it('is 1.3 × the runners’ for walkers in the same time, 0.1 cups of each for wheels', () => {
    const hot = supplies({ heat: 'hot' });
    const [run, walk] = [takeOf(hot, BOTH, 'run', HALF_HOUR), takeOf(hot, BOTH, 'walk', HALF_HOUR)];
    expect(walk.cups.water).toBeCloseTo(run.cups.water * 1.3, 9);
    expect(takeOf(hot, [...BOTH, 'gel'], 'wheels', HALF_HOUR)).toMatchObject({
      cups: { water: 0.1, sportsDrink: 0.1 },
      gels: 0.1,
    });
  });

  it('is the plan’s own where it says, drink by drink, and walkers follow the runners’', () => {
    const own = supplies({ heat: 'cool', take: { run: { water: 2 }, walk: { sportsDrink: 0.3 } } });
    const [run, walk] = [takeOf(own, BOTH, 'run', HALF_HOUR), takeOf(own, BOTH, 'walk', HALF_HOUR)];
    expect(run.cups.water).toBe(2);
    expect(run.cups.sportsDrink).toBeCloseTo(0.2 / 0.10350735 / 3, 4);
    expect(walk.cups).toEqual({ water: 2.6, sportsDrink: 0.3 });
    expect(takeOf(supplies({ drinkRate: 1, heat: 'cool' }), ['water'], 'run', 600).litres.water).toBeCloseTo(1 / 6, 9);
  });
});
