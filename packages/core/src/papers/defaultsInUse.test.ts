/** The defaults that a race day rests on, as the supply list prints them: units, phrases, and what the plan has replaced. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { en } from '../text/en.ts';
import { es } from '../text/es.ts';
import { defaultsInUse, defaultsSection } from './defaultsInUse.ts';
import type { Sheet } from './sheet.ts';
import { supplyListBody } from './supplyList.ts';

const sheet: Sheet = { text: en, paper: 'a4', printedAt: '2027-08-30 18:00' };
const withPlan = (keys: Partial<Plan> = {}, station: Partial<PlanStation> = {}): Analysis =>
  analysisOf(STRAIGHT, [{ ...AT_1500, ...station }], { races: [runners(500)], ...keys });
const base = withPlan().plan;
const supplies = (keys: Partial<Plan['supplies']>): Partial<Plan> => ({ supplies: { ...base.supplies, ...keys } });

/** Cells of each table of the section, in words, by the key of the plan that stands with the first. */
function rowsOf(
  analysis: Analysis,
  text = en,
): { readonly usual: Map<string, string[]>; readonly changed: Map<string, string[]> } {
  const page = defaultsSection(analysis, text).html;
  const tables = page
    .split('<table')
    .slice(1)
    .map(
      (one) =>
        new Map(
          one
            .split('<tr>')
            .slice(2)
            .map(
              (row) =>
                [
                  /data-key="([^"]*)"/u.exec(row)![1]!,
                  [...row.matchAll(/<td[^>]*>(.*?)<\/td>/gu)].map(([, cell]) => cell!.replaceAll(/<[^>]*>/gu, '')),
                ] as const,
            ),
        ),
    );
  return { usual: tables[0]!, changed: tables[1] ?? new Map<string, string[]>() };
}
const valueOf = (analysis: Analysis, key: string): string => {
  const { usual, changed } = rowsOf(analysis);
  return (changed.get(key) ?? usual.get(key)!)[1]!;
};

describe('the section of defaults', () => {
  it('prints what is in use in the plan’s units: a cup in millilitres or fluid ounces, lengths, times and shares', () => {
    const metric = rowsOf(withPlan()).usual;
    const imperial = rowsOf(withPlan({ units: 'imperial' })).usual;
    const cell = (rows: Map<string, string[]>, key: string): string => rows.get(key)![1]!;
    // 7 US fluid ounces of 29.5735 ml (NIST Handbook 44, appendix C).
    expect([cell(metric, 'supplies.cup'), cell(imperial, 'supplies.cup')]).toEqual(['207 ml', '7 fl oz']);
    expect([cell(metric, 'supplies.waste'), cell(metric, 'crew.ready'), cell(metric, 'crew.pourRate')]).toEqual([
      '15 %',
      '30 min',
      expect.stringMatching(/^15 /u),
    ]);
    expect(cell(metric, 'crew.handSpacing')).toBe('1.83 m');
    expect(cell(imperial, 'crew.handSpacing')).toBe('6 ft');
    const van = { id: 'v', name: 'Van', kg: 1500, places: 6, kmh: 40, stop: 900, from: 0 };
    // A mile is 1.609344 km.
    expect(valueOf(withPlan({ units: 'imperial', vehicles: [van] }), 'vehicles.kmh')).toBe('25 mph');
  });

  it('has a second table only where the plan has replaced something, with the usual value beside it', () => {
    expect(defaultsSection(withPlan(), en).html).not.toContain(en.lists.supplies.changedTitle);
    const { usual, changed } = rowsOf(withPlan(supplies({ waste: 0.2 })));
    expect(usual.has('supplies.waste')).toBe(false);
    expect(changed.get('supplies.waste')!.slice(1, 3)).toEqual(['20 %', '15 %']);
  });

  it('prints each value once where the plan has several, as of vehicles', () => {
    const van = { id: 'v', name: 'Van', kg: 1500, places: 6, kmh: 25, stop: 900, from: 4 * 3600 };
    const analysis = withPlan({
      vehicles: [
        { ...van, kg: 800, from: 5.5 * 3600 },
        { ...van, id: 'w', kg: 900 },
        { ...van, id: 'x', kg: 800 },
      ],
    });
    const { changed } = rowsOf(analysis);
    expect(changed.get('vehicles.kg')!.slice(1, 3)).toEqual(['800 kg / 900 kg', '1,500 kg']);
    expect(changed.get('vehicles.from')!.slice(1, 3)).toEqual(['05:30 / 04:00', '00:00']);
    expect(defaultsInUse(withPlan().plan).some(({ row }) => row.key.startsWith('vehicles.'))).toBe(false);
  });

  it('prints when more is called for and how long it takes, where the plan says so', () => {
    expect(valueOf(withPlan(supplies({ resupply: { at: 0.25, takes: 2400 } })), 'supplies.resupply')).toBe(
      '25 %, 40 min',
    );
    expect(defaultsInUse(base).some(({ row }) => row.key === 'supplies.resupply')).toBe(false);
    // A share that is no binary fraction: 0.07 × 100 is 7.000000000000001.
    expect(valueOf(withPlan(supplies({ resupply: { at: 0.07, takes: 2400 } })), 'supplies.resupply')).toBe(
      '7 %, 40 min',
    );
  });

  it('prints a list with commas, a word as it is said, and of a table of rates only that the plan has one', () => {
    const analysis = withPlan(supplies({ wbgtC: 21, heatSteps: [18, 23], take: { walk: { water: 2 } } }));
    expect(valueOf(analysis, 'supplies.heatSteps')).toBe('18 °C, 23 °C');
    expect(valueOf(analysis, 'supplies.take.walk')).toBe('set');
    expect(rowsOf(analysis).changed.get('supplies.heatSteps')![2]).toBe('none');
    expect(valueOf(withPlan(supplies({ heat: 'hot' })), 'supplies.heat')).toBe('hot');
  });

  it('has the take rates of the heat in force alone, by its name', () => {
    const take = (heat: 'hot' | 'cool'): string[] =>
      defaultsInUse({ ...base, supplies: { ...base.supplies, heat } })
        .filter(({ row }) => row.key === 'supplies.drinkRate')
        .map(({ row }) => row.what);
    expect([take('hot').length, take('cool').length]).toEqual([1, 1]);
    expect(take('hot')[0]).toMatch(/hot$/u);
    expect(take('cool')[0]).toMatch(/cool$/u);
  });

  it('prints one of a unit in the singular', () => {
    const analysis = withPlan({ crew: { ...base.crew, minimum: 1 } });
    const [, shown] = rowsOf(analysis).changed.get('crew.minimum')!;
    expect(shown).toMatch(/^1 [a-z]*[^s]$/u);
  });

  it('lists the stations with values of their own by number and in words, and no list where there are none', () => {
    expect(defaultsSection(withPlan(), en).html).not.toContain(en.lists.supplies.stationsTitle);
    const own = defaultsSection(
      withPlan({}, { supplies: { waste: 0.3 }, crew: { pourers: 4 }, name: 'Kelp Bay' }),
      en,
    ).html;
    expect(own.replaceAll(/<[^>]*>/gu, '')).toContain(
      'Station 1 · Kelp Bay: cups spilt or left, on top, pourers while runners come',
    );
    const packs = defaultsSection(withPlan({}, { supplies: { packs: { cups: 50 } } }), en).html;
    expect(packs).toContain('<span data-key="supplies.packs">pack sizes</span>');
  });

  it('has an own phrase for each row in Spanish', () => {
    const rows = rowsOf(withPlan(), es).usual;
    expect(rows.get('supplies.waste')![0]).not.toBe(rowsOf(withPlan()).usual.get('supplies.waste')![0]);
    expect(rows.get('supplies.waste')![1]).toBe('15 %');
  });

  it('says a phrase in English that a language does not know', () => {
    const mute = { ...es, lists: { ...es.lists, supplies: { ...es.lists.supplies, phrase: () => null } } };
    const english = rowsOf(withPlan()).usual.get('supplies.waste')!;
    const analysis = withPlan(supplies({ heat: 'hot', resupply: { at: 0.25, takes: 2400 } }));
    const { usual, changed } = rowsOf(analysis, mute);
    expect([usual.get('supplies.waste')![0], changed.get('supplies.heat')![1], usual.get('crew.minimum')![1]]).toEqual([
      english[0],
      'hot',
      rowsOf(withPlan()).usual.get('crew.minimum')![1],
    ]);
    // "none" is the program's own word, not a row's: a dash stands for it.
    expect(changed.get('supplies.resupply')![2]).toBe('–');
  });
});

describe('the supply list', () => {
  it('orders litres of what is drunk and whole pieces of the rest, with a box to tick', () => {
    const analysis = withPlan();
    const page = supplyListBody(analysis, sheet).html;
    const water = analysis.day!.totals.packs.find(({ kind }) => kind === 'waterJug')!;
    expect(page).toContain(
      `<td>Jugs of water</td><td class="number">${water.count}</td><td class="number">${water.need.toFixed(1)} l</td><td class="number">3.8 l</td><td><span class="tick"></span></td>`,
    );
    const cups = analysis.day!.totals.packs.find(({ kind }) => kind === 'cups')!;
    expect(page).toContain(
      `<td class="number">${cups.count}</td><td class="number">${Math.ceil(cups.need).toLocaleString('en-US')}</td><td class="number">100</td>`,
    );
  });

  it('has a block for each station of the day, and none for one that the plan does not know', () => {
    const analysis = withPlan();
    expect(supplyListBody(analysis, sheet).html.match(/data-station="s1"/gu)).toHaveLength(1);
    expect(supplyListBody({ ...analysis, stations: [] }, sheet).html).not.toContain('data-station');
  });

  it('says where runners slow as splits of past results tell, and by pace no longer then', () => {
    const analysis = withPlan();
    const fitted = [{ race: analysis.plan.races[0]!.id, csv: 'past.csv', splits: ['5 km', 'Half'], runners: 1812 }];
    const told = rowsOf({ ...analysis, day: { ...analysis.day!, fitted } });
    expect(rowsOf(analysis).usual.has('races.slow')).toBe(true);
    expect(told.usual.has('races.slow')).toBe(false);
    expect(told.changed.get('races.slow')![1]).toContain(
      'as 1,812 past finishers slowed, by their splits (5 km, Half)',
    );
    expect(told.changed.get('races.slow')![2]).toBe('6 to 40 %, half of it under 30 km');
  });
});
