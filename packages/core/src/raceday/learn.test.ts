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

  it('tell their spread over the stations: lowest, highest, standard error', () => {
    const [plain] = [planOf({ races })];
    const rate = takeRates(plain.supplies, 'run').water * (1 + plain.supplies.waste);
    // Reckoned 100, 200 and 300 by the heads that give them; used 120, 180 and 360.
    const counts = [120, 180, 360];
    const plan = {
      ...plain,
      stations: counts.map((water, k) => planStation({ id: `s${k + 1}`, used: { water } })),
    };
    const { basis } = learnRates(
      plan,
      [1, 2, 3].map((k) => day(`s${k}`, (100 * k) / rate, 0)),
    );
    const [{ factor, spread, each }] = basis as [(typeof basis)[0]];
    expect(factor).toBeCloseTo(1.1, 12);
    expect([spread!.low, spread!.high]).toEqual([expect.closeTo(0.9, 12), expect.closeTo(1.2, 12)]);
    // Patterson's ratio.est by hand: residuals 10, −40, 30; s² = 2600 / 2; SE = √(1300 / 3) / 200.
    expect(spread!.error).toBeCloseTo(Math.sqrt(1300 / 3) / 200, 12);
    expect(each.map(({ station }) => station)).toEqual(['s1', 's2', 's3']);
  });

  it('have no spread from one station, and none where all agree', () => {
    const of = (...used: number[]): ReturnType<typeof learnRates> =>
      learnRates(
        planOf({ races, stations: used.map((water, k) => planStation({ id: `s${k + 1}`, used: { water } })) }),
        used.map((_, k) => day(`s${k + 1}`, 500, 0)),
      );
    expect(of(700).basis[0]!.spread).toBeNull();
    const { spread, factor } = of(700, 700).basis[0]!;
    expect(spread).toEqual({ low: factor, high: factor, error: 0 });
  });
});
