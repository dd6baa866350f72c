import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SUPPLIES } from '../plan/defaults.ts';
import type { Division, Supplies } from '../plan/plan.ts';
import { planOf, planStation } from '../testing/plans.ts';
import { gelFindings, heatFindings, needsOf, whole, type Heads } from './cups.ts';
import { heatOf, type Flow } from './take.ts';

const supplies = (keys: Partial<Supplies>): Supplies => ({ ...DEFAULT_SUPPLIES, ...keys });
/** So many who last drank 20 minutes ago. */
const heads = (division: Division, count: number): Heads[] => [{ division, count, leg: 1200 }];
const flows = (division: Division, count: number): Flow[] => [
  { race: 'm', division, leg: 1200, times: new Float64Array(count) },
];

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

describe('Cups', () => {
  it('are arrivals × take × (1 + waste), in whole cups, of what is served', () => {
    const own = supplies({ take: { run: { water: 1.2 } } });
    const needs = needsOf(own, ['water'], heads('run', 1000));
    expect(needs.exact.water).toBeCloseTo(1380, 9);
    expect(needs.cups).toEqual({ water: 1380, sportsDrink: 0 });
    expect(needs.gels).toBe(0);
    expect(needsOf(own, ['water'], heads('run', 1)).cups.water).toBe(2);
  });

  it('are ordered with the reserve on top', () => {
    const needs = needsOf(
      supplies({ reserve: 0.2, take: { run: { water: 1 } }, waste: 0 }),
      ['water'],
      heads('run', 1001),
    );
    expect(needs.cups.water).toBe(1001);
    expect(needs.ordered.cups.water).toBe(Math.ceil(1001 * 1.2));
    expect(needs.ordered.volume.water).toBeCloseTo(1202 * DEFAULT_SUPPLIES.cup * DEFAULT_SUPPLIES.fill, 9);
  });

  it('are none where bottles are filled: litres by the hour, nothing spilt', () => {
    // Two hours at 0.6 l.
    const needs = needsOf(
      supplies({ handOut: 'bottles', heat: 'warm' }),
      ['water'],
      [{ division: 'run', count: 100, leg: 7200 }],
    );
    expect(needs.cups).toEqual({ water: 0, sportsDrink: 0 });
    expect(needs.volume.water).toBeCloseTo(120, 9);
    expect(needs.ordered.volume.water).toBeCloseTo(138, 9);
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
        const exactOf = (come: readonly Heads[]): number => needsOf(all, ['water'], come).exact.water;
        const exact = exactOf([...heads('run', run), ...heads('walk', walk), ...heads('wheels', wheels)]);
        const apart = exactOf(heads('run', run)) + exactOf(heads('walk', walk)) + exactOf(heads('wheels', wheels));
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
    const [finding] = gelFindings(plan, station, flows('run', 1000));
    expect(finding).toMatchObject({ code: 'gels-short', measured: 500, limit: 600 });
    expect(finding!.message).toContain('100 too few');
    expect(gelFindings(plan, planStation({ serves: ['gel'] }), flows('run', 1000))).toEqual([]);
  });
});
