/** The measure of the checks by a map: a good plan in a town of which they say nothing, and mistakes planted in it one at a time. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { TOWN_MISTAKES, type TownMistake, groundTown, townReview, townPlan } from '../testing/planted/groundTown.ts';
import type { PlanInput } from '../plan/input.ts';
import { valueOf } from '../testing/courses.ts';
import { reviewPlan } from '../whole.ts';
import { GROUND_SAMPLES } from '../testing/groundSamples.ts';

const CODES: ReadonlySet<string> = new Set(Object.keys(GROUND_SAMPLES));

/** What is found by the map with something planted. */
function found(plant: TownMistake['plant']): readonly Finding[] {
  const [plan, town] = [townPlan(), groundTown()];
  plant(plan, town);
  return townReview(plan, town).analysis.findings.filter(({ code }) => CODES.has(code));
}

const told = (findings: readonly Finding[]): string[] =>
  findings.map(({ code, where, message }) => `${code} ${where.station ?? where.course ?? ''}: ${message}`);

describe('in a town with a map', () => {
  it('a good plan has no finding by the map', () => {
    expect(told(found(() => undefined))).toEqual([]);
  });

  it.each(TOWN_MISTAKES)('$name is told as $code, and nothing else is', ({ code, plant, whole }) => {
    const findings = found(plant);
    const own = findings.filter((one) => one.code === code);
    expect(told(findings)).toEqual(told(own));
    expect(own.length).toBe(1);
    expect(own[0]!.where.station).toBe(whole === true ? undefined : 's1');
    expect(own[0]!.source).toBeTruthy();
  });

  it.each(TOWN_MISTAKES.filter(({ inside }) => inside !== undefined))(
    '$name: just inside what is allowed, $code is not found',
    ({ code, inside }) => {
      expect(told(found(inside!).filter((one) => one.code === code))).toEqual([]);
    },
  );

  it('a map that the plan names and that is not there is told, and all else goes on', () => {
    const plan = townPlan();
    const findings = townReview(plan, groundTown(), false).analysis.findings;
    expect(told(findings.filter(({ code }) => CODES.has(code)))).toEqual([
      'ground-missing : The plan names the map “ground.geojson”, which is missing or cannot be read. Streets, junctions, hydrants and houses are not checked without it. Put the file beside the plan, or make it again from a street map.',
    ]);
    expect(findings.some(({ code }) => code === 'no-medical')).toBe(true);
  });
});

describe('the demo with its map', () => {
  const DEMO = new URL('../../../../fixtures/demo/', import.meta.url);
  const file = (name: string): string => readFileSync(new URL(name, DEMO), 'utf8');
  const plan = { ...(JSON.parse(file('plan.json')) as PlanInput), ground: 'ground.geojson' };
  const names = ['full.gpx', 'half.gpx', 'ground.geojson'];
  const reviewed = reviewPlan({ plan, files: Object.fromEntries(names.map((name) => [name, file(name)])) });

  it('has no finding by the map, and every station has its street', () => {
    expect(told(reviewed.findings.filter(({ code }) => CODES.has(code)))).toEqual([]);
    const { stations } = valueOf(reviewed).analysis;
    expect(stations.map(({ street }) => street?.street)).toEqual([
      'Strand Road',
      'Strand Road',
      'Drover’s Road',
      'Norra Road',
      'Skerrow Road',
      'Keeper’s Path',
      'Tidewaiters’ Road',
      'Park Ring',
      'Packet Pier',
    ]);
  });
});
