import { describe, expect, it } from 'vitest';
import { DRINK_RATE } from '../plan/defaults.ts';
import { planOf, planRace, planStation } from '../testing/plans.ts';
import { needsOf, type Heads } from './cups.ts';
import { learnRates, learntSupplies, type DayHeads } from './learn.ts';
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

  it('tell their spread over the stations: lowest, highest, standard error', () => {
    // Reckoned 100, 200 and 300 in proportion, by the heads that give them; used 120, 180 and 360 of that.
    const counts = [120, 180, 360];
    const stations = counts.map((water, k) => planStation({ id: `s${k + 1}`, serves: [...BOTH], used: { water } }));
    const days = [1, 2, 3].map((k) => day(`s${k}`, 100 * k, 0));
    const unit = learnRates(planOf({ races, stations }), days).basis[0]!.each[0]!.reckoned / 100;
    const scaled = stations.map((one) => ({ ...one, used: { water: one.used!.water! * unit } }));
    const { basis } = learnRates(planOf({ races, stations: scaled }), days);
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

describe('Rates learnt from gels alone', () => {
  const gels = [planStation({ serves: ['gel'], used: { gel: 300 } })];

  it('tell gels of those who were offered some, and nothing of what people drink', () => {
    const take = { water: 1, sportsDrink: 0, litres: 0.2 };
    const learnt = learnRates(planOf({ races, stations: [...gels, planStation({ id: 's2' })] }), [
      { id: 's1', races: [{ race: 'm', arrivals: 500, take: { ...take, gel: 0.5 } }] },
      { id: 's2', races: [{ race: 'w', arrivals: 200, take: { ...take, gel: 0 } }] },
    ]);
    // 500 × 0.5 were reckoned, 300 taken.
    expect(learnt.take).toEqual({ run: { gel: expect.closeTo(0.6, 12) }, walk: { gel: 0 } });
    expect(learnt).not.toHaveProperty('drinkRate');
    expect(learnt.basis).toMatchObject([{ kind: 'gel', used: 300, reckoned: 250, factor: 1.2 }]);
  });

  it('go by a usual time since the last drink where the day does not say what was taken, and by no station that the plan has not', () => {
    const heads = { races: [{ race: 'm', arrivals: 500 }] };
    const plan = planOf({ races, stations: [planStation({ used: { water: 700 } })] });
    const learnt = learnRates(plan, [
      { id: 's1', ...heads },
      { id: 'gone', ...heads },
    ]);
    const { exact } = needsOf(plan.supplies, BOTH, [{ division: 'run', count: 500, leg: 1200 }]);
    expect(learnt.basis).toMatchObject([
      { kind: 'water', used: 700, reckoned: expect.closeTo(exact.water, 9), stations: ['s1'] },
    ]);
  });
});

describe('What supplies should say by what was learnt', () => {
  const plan = planOf({ races });
  const own = { ...plan, supplies: { ...plan.supplies, take: { run: { water: 1, gel: 0.4 }, walk: { water: 2 } } } };
  const take = { run: { water: 1.08714, sportsDrink: 0.5, gel: 0.59042 }, wheels: { water: 0.2, gel: 0.1234 } };

  it('is rates to a thousandth, and a head’s cups only where the plan sets them itself', () => {
    expect(learntSupplies(own, { take, drinkRate: 0.51124, waterShare: 2 / 3, basis: [] })).toEqual({
      drinkRate: 0.511,
      waterShare: 0.667,
      take: { run: { water: 1.087, gel: 0.59 }, walk: { water: 2 }, wheels: { gel: 0.123 } },
    });
    expect(learntSupplies(plan, { take: { run: take.run }, basis: [] })).toEqual({ take: { run: { gel: 0.59 } } });
  });

  it('is nothing where nothing was learnt', () => expect(learntSupplies(plan, { take: {}, basis: [] })).toEqual({}));
});
