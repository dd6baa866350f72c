/** `halfcup improve`: the proposal for people and for programs, the changed plan on disk, the calls it refuses. */
import { ROOT } from './support/build.ts';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { improveSchema } from '../packages/core/src/export/schemas/improve.ts';
import { OCEAN, type Position, geodesicLength, go, gpxText, planText, straight } from './support/courses.ts';
import { sourceOf } from './support/fixtures.ts';
import { documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

interface Standing {
  readonly error: number;
  readonly warning: number;
  readonly longest: readonly { readonly race: string; readonly length: number }[];
}
interface ImproveDocument {
  readonly before: Standing;
  readonly after: Standing;
  readonly moves: readonly {
    readonly station: string;
    readonly from: Position;
    readonly to: Position;
    readonly measure: number;
    readonly shift: number;
    readonly dropped: readonly string[];
  }[];
  readonly proof: unknown;
}
interface LayoutDocument {
  readonly spacing: readonly { readonly race: string; readonly longest: number }[];
  readonly findings: readonly {
    readonly code: string;
    readonly severity: string;
    readonly where: { readonly station?: string };
  }[];
}

const on = (measure: number | string): object => ({ course: 'c', measure, side: 'right' });
const stations = [
  { id: 'a', name: 'Ridge', on: on('4.5 km'), walked: { by: 'x' } },
  { id: 'b', name: 'Quay', at: go(go(OCEAN, 90, 8400), 180, 6), side: 'right' },
  { id: 'd', name: 'Mole', on: on(13_100), fixed: true },
];
const text = planText(stations);
const folder = folderWith({ 'c.gpx': gpxText([straight(OCEAN, 90, 171, 100)]), 'p.json': text });
const ajv = new Ajv2020({ strict: true, strictTuples: false, strictRequired: true, allErrors: true });

async function improved(place: string, ...args: readonly string[]): Promise<ImproveDocument> {
  const document = await documentIn(place, 'improve', ...args);
  expect(ajv.validate(improveSchema, document) ? [] : ajv.errors).toEqual([]);
  return document as ImproveDocument;
}

describe('halfcup improve', () => {
  it('evens out the legs, says how far on the ground GeographicLib agrees, and proves that it is the best', async () => {
    const { before, after, moves, proof } = await improved(folder, 'p.json');
    // 13,100 m in three legs: 4,367 m each, to the metre.
    expect(before.longest).toEqual([expect.objectContaining({ race: 'm', length: expect.closeTo(4700, 0) as number })]);
    expect(after.longest[0]!.length).toBeCloseTo(4367, 0);
    expect(proof).toBe('optimal');
    expect(moves.map(({ station }) => station)).toEqual(['a', 'b']);
    for (const { from, to, shift } of moves)
      expect(Math.abs(geodesicLength(from, to) - Math.abs(shift))).toBeLessThan(0.05);
    // The station that stands at a place keeps its 6 m beside the course.
    expect(geodesicLength(moves[1]!.to, go(OCEAN, 90, moves[1]!.measure))).toBeCloseTo(6, 1);
  });

  it('requires every key of the contract', () => {
    expect(improveSchema['required']).toEqual(['before', 'after', 'moves', 'proof']);
  });

  it('writes the changed plan with no other byte changed, keeps an existing file, and prints the proposal all the same', async () => {
    const { exit, out } = await halfcupIn(folder, 'improve', 'p.json', '--out', 'q.json');
    expect(exit).toBe(0);
    expect(out).toMatch(/^Longest leg, m +4\.70 km, Quay to Mole +4\.37 km/mu);
    const changed = readFileSync(join(folder, 'q.json'), 'utf8');
    const measure = /"measure": "(\d\.\d+ km)"/u.exec(changed)![1]!;
    const [lon, lat] = (JSON.parse(changed) as { stations: { at: Position }[] }).stations[1]!.at;
    const [lonBefore, latBefore] = stations[1]!.at as Position;
    expect(
      changed
        .replace(measure, '4.5 km')
        .replace(String(lon), String(lonBefore))
        .replace(String(lat), String(latBefore)),
    ).toBe(text);
    const layout = (await documentIn(folder, 'layout', 'q.json')) as LayoutDocument;
    expect(layout.spacing[0]!.longest).toBeCloseTo((await improved(folder, 'p.json')).after.longest[0]!.length, 2);
    expect((await refusalIn(folder, 'improve', 'p.json', '--out', 'q.json'))[0]).toMatch(
      /^q\.json: error: this file exists already/u,
    );
    expect((await halfcupIn(folder, 'improve', 'p.json', '--out', 'q.json', '--force')).exit).toBe(0);
    expect((await improved(folder, 'q.json')).after.longest[0]!.length).toBeCloseTo(layout.spacing[0]!.longest, 0);
  });

  it('moves only the stations asked for, no farther than asked for', async () => {
    const { moves } = await improved(folder, 'p.json', '--only', 'b,d', '--within', '200m');
    expect(moves.map(({ station }) => station)).toEqual(['b']);
    expect(Math.abs(moves[0]!.shift)).toBeLessThanOrEqual(200);
    expect((await improved(folder, 'p.json', '--only', 'd')).moves).toEqual([]);
  });

  it('prints before and after, the moves in the units asked for, and what to look at', async () => {
    const { out, err } = await halfcupIn(folder, 'improve', 'p.json');
    expect(err).toBe('');
    expect(out).toMatch(/Before +After\n(?:.*\n)*Warnings +\d+ +\d+/u);
    expect(out).toMatch(/^Ridge +\d+ m upstream +\d\.\d{3} km/mu);
    expect(out).toMatch(/Proven: no combination of the \d+ places tried is better \(/u);
    expect(out).toContain('Mole stays: fixed.');
    expect(out).toContain('Walk the new place; only the old one was checked on foot: Ridge.');
    expect(out).toContain('--out FILE writes the changed one.');
    expect(out).toMatch(/local codes, the road authority, the police and licensed practitioners decide/u);
    expect((await halfcupIn(folder, 'improve', 'p.json', '--units', 'imperial')).out).toMatch(/\d+ yd upstream/u);
  });

  it('refuses a station that the plan does not have, and lists those that it has', async () => {
    expect(await refusalIn(folder, 'improve', 'p.json', '--only', 'a,x')).toEqual([
      'p.json: error: no station "x" for --only; stations of this plan: a (Ridge), b (Quay), d (Mole)',
    ]);
    expect((await refusalIn(folder, 'improve', 'p.json', '--within', 'far'))[0]).toMatch(/--within/u);
    expect((await refusalIn(folder, 'improve', 'none.json'))[0]).toMatch(/^none\.json: error: file not found/u);
    expect(existsSync(join(folder, 'none.json'))).toBe(false);
  });

  describe('on the demo', () => {
    const { plan, gpx } = sourceOf('demo');
    const ground = readFileSync(join(ROOT, 'fixtures/demo/ground.geojson'), 'utf8');
    const demo = folderWith({ 'plan.json': plan, 'ground.geojson': ground, ...gpx });
    const codes = async (file: string): Promise<string[]> =>
      ((await documentIn(demo, 'layout', file)) as LayoutDocument).findings
        .filter(({ severity }) => severity !== 'note')
        .map(({ code, where }) => `${code} ${where.station ?? ''}`);

    it('mends every error and warning that moving can mend, leaves the fixed station, and proves it', async () => {
      const { before, after, moves, proof } = await improved(demo, 'plan.json');
      expect(await codes('plan.json')).toEqual(expect.arrayContaining(['sign-distance s2', 'leg-long s8']));
      expect({ error: after.error, warning: after.warning, proof }).toEqual({ error: 0, warning: 0, proof: 'optimal' });
      expect(before.error + before.warning).toBeGreaterThan(1);
      expect(moves.map(({ station }) => station)).not.toContain('s9');
    });

    it('moves the tables of the station with a sign placed by hand, so that the sign can stay', async () => {
      const { moves, after } = await improved(demo, 'plan.json', '--only', 's2', '--within', '50m');
      expect(moves).toEqual([expect.objectContaining({ station: 's2', dropped: [] })]);
      expect(after.error).toBe(0);
      await halfcupIn(demo, 'improve', 'plan.json', '--only', 's2', '--within', '50m', '--out', 's2.json');
      expect(await codes('s2.json')).not.toContain('sign-distance s2');
      // Beside a variant, which a changed plan keeps.
      writeFileSync(join(demo, 'again.json'), readFileSync(join(demo, 's2.json')));
      expect(
        (
          (await documentIn(demo, 'compare', 'again.json', 'Lighthouse table moved')) as { stations: { id: string }[] }
        ).stations.map(({ id }) => id),
      ).toEqual(['s6']);
    });
  });
});
