import { describe, expect, it } from 'vitest';
import { TAKE_BY_HEAT } from '../plan/defaults.ts';
import { planOf, planRace, planStation } from '../testing/plans.ts';
import { needsOf, takeRates } from './cups.ts';
import { learnRates } from './learn.ts';

const races = [planRace('m', 'c'), { ...planRace('w', 'c'), division: 'walk' as const }];
const day = (id: string, m: number, w: number): { id: string; races: { race: string; arrivals: number }[] } => ({
  id,
  races: [
    { race: 'm', arrivals: m },
    { race: 'w', arrivals: w },
  ],
});

describe('Rates learnt from counts', () => {
  it('are the plan’s own where the counts are its own sums', () => {
    const bare = planOf({ races });
    const { exact } = needsOf(
      bare.supplies,
      ['water', 'sportsDrink'],
      [
        { division: 'run', count: 900 },
        { division: 'walk', count: 300 },
      ],
    );
    const learnt = learnRates(
      { ...bare, stations: [planStation({ used: { water: exact.water, sportsDrink: exact.sportsDrink } })] },
      [day('s1', 900, 300)],
    );
    expect(learnt.take.run!.water).toBeCloseTo(TAKE_BY_HEAT.warm.water, 12);
    expect(learnt.take.walk!.sportsDrink).toBeCloseTo(takeRates(bare.supplies, 'walk').sportsDrink, 12);
    expect(learnt.take.run!.gel).toBeUndefined();
  });

  it('reckon the counted cups again when they are put into the plan', () => {
    const plan = planOf({
      races,
      stations: [planStation({ used: { water: 2000 } }), planStation({ id: 's2', used: { water: 700 } })],
    });
    const learnt = learnRates(plan, [day('s1', 1000, 100), day('s2', 500, 20)]);
    const next = { ...plan.supplies, take: learnt.take };
    const cups = needsOf(
      next,
      ['water'],
      [
        { division: 'run', count: 1500 },
        { division: 'walk', count: 120 },
      ],
    ).exact.water;
    expect(cups).toBeCloseTo(2700, 6);
    expect(learnt.basis).toMatchObject([{ kind: 'water', used: 2700, stations: ['s1', 's2'] }]);
  });

  it('are none where nothing was counted, or nobody came', () => {
    const plan = planOf({ races, stations: [planStation({ used: { water: 50 } }), planStation({ id: 's2' })] });
    expect(learnRates(plan, [day('s1', 0, 0), day('s2', 500, 0)])).toEqual({ take: {}, basis: [] });
  });
});
