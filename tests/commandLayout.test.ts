/** `halfcup layout`: where everything stands, against distances and geodesics that are not the project's own. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { ROOT, buildCommandLine } from './support/build.ts';
import { OCEAN, azimuthAfter, geodesicLength, go, gpxText, planText, straight } from './support/courses.ts';
import type { Item, LayoutDocument } from './support/documents.ts';
import { documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

beforeAll(buildCommandLine);

const folder = folderWith({ 'c.gpx': gpxText([straight(OCEAN, 90, 51, 100)]) });
const on = (measure: number): object => ({ on: { course: 'c', measure, side: 'right' } });
const itemsOf = (layout: LayoutDocument): Record<string, Item> =>
  Object.fromEntries(layout.stations[0]!.directions[0]!.items.map((item) => [item.kind, item]));
const near = (value: number): number => expect.closeTo(value, 5) as number;

const layoutOf = async (station: object): Promise<LayoutDocument> => {
  writeFileSync(join(folder, 'p.json'), planText([{ id: 's1', ...station }]));
  return (await documentIn(folder, 'layout', 'p.json')) as LayoutDocument;
};

describe('halfcup layout', () => {
  // Common practice, no source: sign 100 yd ahead, tables of 6 ft, 10 ft apart, trash 50 to 100 yd after. 1 yd = 0.9144 m, exact.
  it('places sign, tables and trash at the usual distances, in exact yards and feet', async () => {
    const items = itemsOf(await layoutOf(on(1500)));
    const stretches = Object.fromEntries(Object.entries(items).map(([kind, { from, to }]) => [kind, [from, to]]));
    expect(stretches).toEqual({
      sign: [near(1408.56), near(1408.56)],
      sportsDrink: [near(1500), near(1501.8288)],
      water: [near(1504.8768), near(1506.7056)],
      trash: [near(1552.4256), near(1598.1456)],
    });
    expect(items['sign']!.wording).toBe('Water ahead');
    expect(items['sign']!.along[0]).toBeCloseTo(-91.44, 6);
  });

  it('puts each of them on the ground where GeographicLib has it, 4 m to the right', async () => {
    const items = itemsOf(await layoutOf(on(1500)));
    for (const { from, to, at } of Object.values(items)) {
      [from, to].forEach((measure, k) => {
        const truth = go(go(OCEAN, 90, measure), azimuthAfter(OCEAN, 90, measure) + 90, 4);
        expect(geodesicLength(truth, at[k]!)).toBeLessThan(0.001);
      });
    }
  });

  it('puts a gel table before the drinks and the sign before it, and names both', async () => {
    const items = itemsOf(await layoutOf({ ...on(1500), serves: ['gel', 'sportsDrink', 'water'] }));
    expect([items['gel']!.from, items['gel']!.to]).toEqual([expect.closeTo(1490.5512, 5), expect.closeTo(1492.38, 5)]);
    expect(items['sign']!.from).toBeCloseTo(1399.1112, 5);
    expect(items['sign']!.wording).toBe('Water and gel ahead');
  });

  it('gives a sign before the start no place, and says so', async () => {
    const layout = await layoutOf(on(50));
    // The station's own opening bracket stands in the line before its id.
    const line = readFileSync(join(folder, 'p.json'), 'utf8')
      .split('\n')
      .findIndex((text) => text.includes('"s1"'));
    expect(itemsOf(layout)['sign']).toMatchObject({ at: [null, null], from: expect.closeTo(-41.44, 5) as number });
    expect(layout.findings).toContainEqual(
      expect.objectContaining({
        code: 'item-outside',
        severity: 'error',
        where: expect.objectContaining({ item: 'sign', file: 'p.json', line, column: 5 }) as object,
      }),
    );
    expect((await halfcupIn(folder, 'layout', 'p.json')).out).toMatch(
      new RegExp(`Errors\n {2}s1: The sign would stand \\d+ m before the start[^]*?\n {4}p\\.json:${line}:5\n`, 'u'),
    );
  });

  it('names the plan as it was given in every finding that has a place in it', async () => {
    const { findings } = (await documentIn(ROOT, 'layout', 'fixtures/demo/plan.json')) as LayoutDocument;
    const placed = findings.filter(({ where }) => where.line !== undefined);
    expect(placed.length).toBeGreaterThan(0);
    for (const { where } of placed) expect(where.file).toBe('fixtures/demo/plan.json');
  });

  it('prints the demo on one screen with every station, in the units asked for', async () => {
    const { exit, out } = await halfcupIn(ROOT, 'layout', 'fixtures/demo/plan.json');
    const plan = JSON.parse(readFileSync(join(ROOT, 'fixtures/demo/plan.json'), 'utf8')) as {
      stations: { name: string }[];
    };
    expect(exit).toBe(0);
    for (const { name } of plan.stations) expect(out).toContain(name);
    expect(out.split('\n').length).toBeLessThan(60);
    expect(out).toMatch(/local codes, the road authority, the police and licensed practitioners decide/u);
    expect((await halfcupIn(ROOT, 'layout', 'fixtures/demo/plan.json', '--units', 'imperial')).out).toMatch(
      /26\.2\d\d mi/u,
    );
  });

  it('lays a variant over the plan, and refuses one that the plan does not have', async () => {
    const stations = [{ id: 's1', ...on(1500) }];
    const variants = [{ name: 'Later', stations: { s1: on(2000) } }];
    writeFileSync(join(folder, 'v.json'), planText(stations, { variants }));
    const { stations: laid } = (await documentIn(folder, 'layout', 'v.json', '--variant', 'Later')) as LayoutDocument;
    expect(laid[0]!.passes[0]!.measure).toBeCloseTo(2000, 5);
    expect((await refusalIn(folder, 'layout', 'v.json', '--variant', 'Latter'))[0]).toMatch(
      /^v\.json:\d+:\d+: .*“Latter”.*Did you mean “Later”/u,
    );
  });
});
