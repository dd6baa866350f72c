/** No command writes over what it reads, whatever it is told. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildCommandLine } from './support/build.ts';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import { folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

beforeAll(buildCommandLine);

const folder = folderWith({ 'c.gpx': gpxText([straight(OCEAN, 90, 51, 100)]), 'plan.json': planText([{ id: 's1', on: { course: 'c', measure: 2500, side: 'right' } }]) });

describe('an output that is an input', () => {
  it.each([
    [['layout', 'plan.json', '--out', 'plan.json', '--force'], 'being read'],
    [['course', 'c.gpx', '--out', './c.gpx', '--force'], 'being read'],
    [['start', 'X', 'c.gpx', '--every', '1km', '--out', 'c.gpx', '--force'], 'being read'],
    [['layout', 'plan.json', '--out', 'c.gpx', '--force'], 'no GPX'],
    [['review', 'plan.json', '--report', 'plan.json', '--force'], '.html'],
    [['review', 'plan.json', '--report', 'c.gpx', '--force'], '.html'],
  ])('is refused by %j, and the files stay as they are', (call, message) => {
    const before = ['c.gpx', 'plan.json'].map((name) => readFileSync(join(folder, name), 'utf8'));
    expect(refusalIn(folder, ...call).join('\n')).toContain(message);
    expect(['c.gpx', 'plan.json'].map((name) => readFileSync(join(folder, name), 'utf8'))).toEqual(before);
  });

  it('may be the plan itself where the command writes the changed plan', () => {
    const { exit } = halfcupIn(folder, 'improve', 'plan.json', '--out', 'plan.json', '--force');
    expect(exit).toBe(0);
    expect(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))).toHaveProperty('format', 'halfcup-plan');
  });
});
