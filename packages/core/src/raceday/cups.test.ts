import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SUPPLIES, TAKE_BY_HEAT } from '../plan/defaults.ts';
import type { Division, Supplies } from '../plan/plan.ts';
import { planOf, planStation } from '../testing/plans.ts';
import { cupsExact, gelFindings, heatFindings, heatOf, needsOf, takeRates, whole, type Heads } from './cups.ts';

const supplies = (keys: Partial<Supplies>): Supplies => ({ ...DEFAULT_SUPPLIES, ...keys });
const heads = (division: Division, count: number): Heads[] => [{ division, count }];

describe('Heat', () => {
  it('is the level that the plan gives, whatever the temperature', () => {
    expect(heatOf(supplies({ heat: 'cool', wbgtC: 30, heatSteps: [18, 23] }))).toEqual({ heat: 'cool', by: 'given' });
  });

  it('comes from the temperature by the plan’s steps, a step belonging to the hotter level', () => {
    const at = (wbgtC: number): string => heatOf(supplies({ wbgtC, heatSteps: [18, 23] })).heat;
    expect([17.9, 18, 22.9, 23].map(at)).toEqual(['cool', 'warm', 'warm', 'hot']);
  });

  it('is taken as warm and said so where there is nothing to go by', () => {
    const plan = planOf({
      stations: [
        planStation({ id: 's1' }),
        planStation({ id: 's2', supplies: { heat: 'hot' } }),
        planStation({ id: 's3', supplies: { wbgtC: 25 } }),
      ],
    });
    expect(heatOf(plan.supplies)).toEqual({ heat: 'warm', by: 'assumed' });
    expect(heatFindings(plan).map(({ code, where }) => [code, where.path])).toEqual([
      ['heat-assumed', '/supplies'],
      ['heat-assumed', '/stations/2/supplies'],
    ]);
    expect(heatFindings(plan)[1]!.message).toContain('A temperature of 25 °C is given without heat steps');
    expect(heatFindings({ ...plan, stations: [], supplies: supplies({ heat: 'cool' }) })).toEqual([]);
  });

  it('is doubted where the steps fall', () => {
    expect(
      heatFindings({ ...planOf({}), supplies: supplies({ wbgtC: 20, heatSteps: [23, 18] }) }).map(({ code }) => code),
    ).toEqual(['heat-steps']);
  });
});

describe('Take rates', () => {
  it('are the runners’ by heat, 1.3 × their cups for walkers, 0.1 for wheels', () => {
    const hot = supplies({ heat: 'hot' });
    expect(takeRates(hot, 'run')).toEqual(TAKE_BY_HEAT.hot);
    expect(takeRates(hot, 'walk').water).toBeCloseTo(1.8 * 1.3, 12);
    expect(takeRates(hot, 'walk').gel).toBe(0.6);
    expect(takeRates(hot, 'wheels')).toEqual({ water: 0.1, sportsDrink: 0.1, gel: 0.1 });
  });

  it('are the plan’s own where it says, and walkers follow the runners’', () => {
    const own = supplies({ heat: 'cool', take: { run: { water: 2 }, walk: { sportsDrink: 0.3 } } });
    expect(takeRates(own, 'run')).toEqual({ water: 2, sportsDrink: 0.5, gel: 0.6 });
    expect(takeRates(own, 'walk')).toEqual({ water: 2.6, sportsDrink: 0.3, gel: 0.6 });
  });
});

describe('Cups', () => {
  it('are arrivals × take × (1 + waste), in whole cups, of what is served', () => {
    const warm = supplies({ heat: 'warm' });
    const needs = needsOf(warm, ['water'], heads('run', 1000));
    expect(needs.exact.water).toBeCloseTo(1380, 9);
    expect(needs.cups).toEqual({ water: 1380, sportsDrink: 0 });
    expect(needs.gels).toBe(0);
    expect(needsOf(warm, ['water'], heads('run', 1)).cups.water).toBe(2);
  });

  it('are 36.57 half cups of 7 fl oz to the gallon of 128 fl oz (NIST Handbook 44, appendix C)', () => {
    const needs = needsOf(supplies({ waste: 0, take: { run: { water: 128 } } }), ['water'], heads('run', 2));
    // 256 cups of 3.5 fl oz are 7 gallons.
    expect(needs.volume.water).toBeCloseTo(7 * 3.785411784, 9);
    expect(128 / 3.5).toBeCloseTo(36.57, 2);
  });

  it('add up over divisions', () => {
    const part = fc.nat({ max: 20_000 });
    fc.assert(
      fc.property(part, part, part, fc.constantFrom('cool', 'warm', 'hot'), (run, walk, wheels, heat) => {
        const all = supplies({ heat });
        const exact = cupsExact(
          all,
          [...heads('run', run), ...heads('walk', walk), ...heads('wheels', wheels)],
          'water',
        );
        const apart =
          cupsExact(all, heads('run', run), 'water') +
          cupsExact(all, heads('walk', walk), 'water') +
          cupsExact(all, heads('wheels', wheels), 'water');
        expect(Math.abs(exact - apart)).toBeLessThan(1e-6);
        expect(whole(exact)).toBeGreaterThanOrEqual(exact - 1e-4);
        expect(whole(exact)).toBeLessThan(exact + 1);
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  it('makes no cup of what only rounding adds', () => {
    expect(1000 * 1.2 * 1.15).toBeGreaterThanOrEqual(1380);
    expect(whole(1380.0000000000002)).toBe(1380);
    expect(whole(1380.001)).toBe(1381);
  });
});

describe('Gels', () => {
  it('are ordered by gelOrder, for wheels by what they take', () => {
    expect(needsOf(DEFAULT_SUPPLIES, ['gel'], [...heads('run', 1000), ...heads('wheels', 10)]).gels).toBe(801);
  });

  it('are said to be short where fewer are ordered than taken', () => {
    const station = planStation({ serves: ['gel', 'water'], supplies: { gelOrder: 0.5 } });
    const plan = planOf({ stations: [station] });
    const [finding] = gelFindings(plan, station, heads('run', 1000));
    expect(finding).toMatchObject({ code: 'gels-short', measured: 500, limit: 600 });
    expect(finding!.message).toContain('100 too few');
    expect(gelFindings(plan, planStation({ serves: ['gel'] }), heads('run', 1000))).toEqual([]);
  });
});
