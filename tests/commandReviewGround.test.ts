/** The command line with a plan that names its map of the ground: there, missing, broken, and outside the plan's folder. */
import { createHash } from 'node:crypto';
import { readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { groundText } from '../packages/core/src/ground/groundText.ts';
import { at, groundTown, townFiles, townPlan } from '../packages/core/src/testing/planted/groundTown.ts';
import { documentIn, folderWith, halfcupIn } from './support/halfcup.ts';

const plan = townPlan();
at(997)(plan);
const { text, ground } = townFiles(plan, groundTown());
const map = groundText(ground);
const folderOf = (files: Readonly<Record<string, string>>): string => folderWith({ 'plan.json': text, ...files });

describe('a plan with a map of the ground', () => {
  it('is reviewed by it, and the review says which file it was', async () => {
    const folder = folderOf({ 'ground.geojson': map });
    const { out, err, exit } = await halfcupIn(folder, 'review', 'plan.json');
    expect(exit, err).toBe(0);
    expect(out).toContain('stand in the mouth of Mill Lane, by the map of 2026-10-02');
    const { inputs, findings } = (await documentIn(folder, 'review', 'plan.json')) as {
      inputs: unknown;
      findings: readonly { readonly code: string; readonly where: { readonly line?: number } }[];
    };
    expect(inputs).toEqual([{ file: 'ground.geojson', sha256: createHash('sha256').update(map).digest('hex') }]);
    expect(findings.find(({ code }) => code === 'item-in-mouth')?.where.line).toBe(1);
  });

  it('is laid out with its streets', async () => {
    const { stations } = (await documentIn(folderOf({ 'ground.geojson': map }), 'layout', 'plan.json')) as {
      stations: readonly { readonly street: unknown }[];
    };
    expect(stations[0]!.street).toEqual({
      street: 'Harbour Road',
      after: 'Quay Street',
      before: 'Mill Lane',
      by: 'map',
    });
  });

  it('is worked out without it where it is missing, and the review says so at its place', async () => {
    const { out, err, exit } = await halfcupIn(folderOf({}), 'review', 'plan.json');
    expect(exit, err).toBe(0);
    expect(out).toContain('The plan names the map “ground.geojson”, which is missing or cannot be read.');
    expect(out).not.toContain('Mill Lane');
  });

  it('is worked out without it where it is broken, and the review says where', async () => {
    const { out, err, exit } = await halfcupIn(
      folderOf({ 'ground.geojson': map.slice(0, 400) }),
      'review',
      'plan.json',
    );
    expect([exit, err]).toEqual([1, expect.any(String)]);
    expect(out).toContain('The plan names the map “ground.geojson”');
    expect(`${out}${err}`).toMatch(/ground\.geojson:\d+:\d+/u);
  });

  it('takes no map from outside its folder', async () => {
    const outside = join(folderWith({ 'ground.geojson': map }), 'ground.geojson');
    const folder = folderOf({});
    symlinkSync(outside, join(folder, 'ground.geojson'));
    const { out } = await halfcupIn(folder, 'review', 'plan.json');
    expect(out).toContain('The plan names the map “ground.geojson”');
    expect(out).not.toContain('Mill Lane');
  });

  it('is not written over', async () => {
    const folder = folderOf({ 'ground.geojson': map });
    const { exit, err } = await halfcupIn(folder, 'layout', 'plan.json', '--out', 'ground.geojson', '--force');
    expect([exit, err]).toEqual([2, expect.stringContaining('ground.geojson')]);
    expect(readFileSync(join(folder, 'ground.geojson'), 'utf8')).toBe(map);
  });
});
