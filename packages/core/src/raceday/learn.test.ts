import { describe, expect, it } from 'vitest';
import { DRINK_RATE } from '../plan/defaults.ts';
import { planOf, planRace, planStation } from '../testing/plans.ts';
import { needsOf, type Heads } from './cups.ts';
import { learnRates, type DayHeads } from './learn.ts';
import { takeOf } from './take.ts';

const races = [planRace('m', 'c'), { ...planRace('w', 'c'), division: 'walk' as const }];
const BOTH = ['water', 'sportsDrink'] as const;

/** A day of so many runners and walkers, who last drank half an hour ago. */
function day(id: string, m: number, w: number): DayHeads {
  const take = (division: 'run' | 'walk'): NonNullable<DayHeads['races'][number]['take']> => {
    const { cups, litres } = takeOf(planOf({}).supplies, BOTH, division, 1800);
    return { ...cups, gel: 0, litres: litres.water + litres.sportsDrink };
  };
  return {
    id,
    races: [
      { race: 'm', arrivals: m, take: take('run') },
      { race: 'w', arrivals: w, take: take('walk') },
    ],
  };
}
const heads = (run: number, walk: number): Heads[] => [
  { division: 'run', count: run, leg: 1800 },
  { division: 'walk', count: walk, leg: 1800 },
];

describe('Rates learnt from counts', () => {
  it('are the plan’s own where the counts are its own sums', () => {
    const bare = planOf({ races });
    const { exact } = needsOf(bare.supplies, BOTH, heads(900, 300));
    const learnt = learnRates(
      { ...bare, stations: [planStation({ used: { water: exact.water, sportsDrink: exact.sportsDrink } })] },
      [day('s1', 900, 300)],
    );
    expect(learnt.drinkRate).toBeCloseTo(DRINK_RATE.warm, 12);
    expect(learnt.waterShare).toBeCloseTo(2 / 3, 12);
    expect(learnt.take.run!.gel).toBeUndefined();
  });

  it('reckon the counted cups again when they are put into the plan', () => {
    const stations = [
      planStation({ used: { water: 2000, sportsDrink: 500 } }),
      planStation({ id: 's2', used: { water: 700, sportsDrink: 100 } }),
    ];
    const plan = planOf({ races, stations });
    const learnt = learnRates(plan, [day('s1', 1000, 100), day('s2', 500, 20)]);
    const next = { ...plan.supplies, drinkRate: learnt.drinkRate!, waterShare: learnt.waterShare! };
    const { exact } = needsOf(next, BOTH, heads(1500, 120));
    expect(exact.water).toBeCloseTo(2700, 6);
    expect(exact.sportsDrink).toBeCloseTo(600, 6);
    expect(learnt.basis).toMatchObject([
      { kind: 'sportsDrink', used: 600, stations: ['s1', 's2'] },
      { kind: 'water', used: 2700, stations: ['s1', 's2'] },
    ]);
  });

  it('are none where nothing was counted, or nobody came', () => {
    const plan = planOf({ races, stations: [planStation({ used: { water: 50 } }), planStation({ id: 's2' })] });
    expect(learnRates(plan, [day('s1', 0, 0), day('s2', 500, 0)])).toEqual({ take: {}, basis: [] });
  });
});
