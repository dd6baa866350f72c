/** `halfcup compare`: what it prints for people and for programs, and which names it refuses. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { compareSchema } from '../packages/core/src/export/schemas/compare.ts';
import { ROOT } from './support/build.ts';
import { OCEAN, geodesicLength, gpxText, planText, straight } from './support/courses.ts';
import type { Position } from './support/courses.ts';
import { documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

interface CompareDocument {
  readonly variants: readonly string[];
  readonly stations: readonly {
    readonly id: string;
    readonly moved: number;
    readonly from: Position;
    readonly to: Position;
  }[];
  readonly spacing: readonly { readonly race: string; readonly longest: readonly number[] }[];
  readonly items: readonly {
    readonly station: string;
    readonly item: string;
    readonly along: readonly (number | null)[];
  }[];
  readonly findings: {
    readonly gained: readonly { readonly code: string; readonly where: object }[];
    readonly lost: readonly { readonly code: string }[];
  };
}

const on = (measure: number): object => ({ course: 'c', measure, side: 'right' });
const variants = [
  { name: 'Later', stations: { s1: { on: on(5200) } } },
  { name: 'Other side', stations: { s1: { on: { ...on(4800), side: 'left' }, practice: { signAhead: 80 } } } },
];
const folder = folderWith({
  'c.gpx': gpxText([straight(OCEAN, 90, 97, 100)]),
  'p.json': planText([{ id: 's1', name: 'Ridge', on: on(4800) }], { variants }),
});
const ajv = new Ajv2020({ strict: true, strictTuples: false, strictRequired: true, allErrors: true });

const compared = async (...names: readonly string[]): Promise<CompareDocument> => {
  const document = await documentIn(folder, 'compare', 'p.json', ...names);
  expect(ajv.validate(compareSchema, document) ? [] : ajv.errors).toEqual([]);
  return document as CompareDocument;
};

describe('halfcup compare', () => {
  it('holds the plan against a variant, in metres on the ground that GeographicLib agrees with', async () => {
    const { variants: names, stations, spacing, findings } = await compared('Later');
    expect(names).toEqual(['as planned', 'Later']);
    expect(stations.map(({ id }) => id)).toEqual(['s1']);
    expect(stations[0]!.moved).toBeCloseTo(geodesicLength(stations[0]!.from, stations[0]!.to), 3);
    expect(stations[0]!.moved).toBeCloseTo(400, 1);
    expect(spacing[0]!.longest).toEqual([expect.closeTo(4800, 2), expect.closeTo(5200, 2)]);
    expect(findings.gained.map(({ code }) => code)).toEqual(['leg-long']);
    expect(findings.gained[0]!.where).toMatchObject({ file: 'p.json', station: 's1' });
    expect(findings.lost).toEqual([]);
  });

  it('holds two variants against one another, and the plan in second place where it is named so', async () => {
    const both = await compared('Later', 'Other side');
    expect(both.items.filter(({ item }) => item === 'sign').map(({ along }) => along)).toEqual([
      [expect.closeTo(-91.44, 5), expect.closeTo(-80, 5)],
    ]);
    expect(both.findings.lost.map(({ code }) => code)).toContain('leg-long');
    expect((await compared('Later', 'as planned')).findings.lost.map(({ code }) => code)).toEqual(['leg-long']);
  });

  it('requires every key of the contract', () => {
    expect(compareSchema['required']).toEqual(['variants', 'stations', 'spacing', 'items', 'findings']);
  });

  it('prints tables with station, legs and findings, in the units asked for', async () => {
    const { exit, out } = await halfcupIn(folder, 'compare', 'p.json', 'Later');
    expect(exit).toBe(0);
    expect(out).toMatch(/^Ridge +400 m +m +4\.800 km +5\.200 km/mu);
    expect(out).toMatch(/start to Ridge +4\.80 km +5\.20 km/u);
    expect(out).toMatch(/New: 1 warning\n\nWarnings\n {2}Ridge: .*5\.20 km/u);
    expect(out).toContain('Resolved: none');
    expect((await halfcupIn(folder, 'compare', 'p.json', 'Later', '--units', 'imperial')).out).toMatch(/2\.98 mi/u);
    expect((await halfcupIn(ROOT, 'compare', 'fixtures/demo/plan.json', 'Lighthouse table moved')).out).toMatch(
      /Keeper’s Path +535 m +Full marathon +25\.850 km +25\.280 km/u,
    );
  });

  it('refuses a variant that the plan does not have, and lists those that it has', async () => {
    const lines = await refusalIn(folder, 'compare', 'p.json', 'Latter');
    expect(lines[0]).toMatch(/^p\.json:\d+:\d+: error: .*“Latter”\. Did you mean “Later”\?/u);
    expect(await refusalIn(folder, 'compare', 'p.json', 'x', 'y')).toHaveLength(2);
    expect((await refusalIn(folder, 'compare', 'p.json'))[0]).toMatch(/needs a plan and the name of a variant/u);
  });
});
