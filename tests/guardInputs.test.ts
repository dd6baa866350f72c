/** No command writes over what it reads, whatever it is told. */
import { linkSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import { folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const RESULTS = 'time\n3:00:00\n4:00:00\n';
const races = [
  { id: 'm', course: 'c', waves: [{ time: '07:00', entrants: 100 }], finish: { csv: 'results.csv', column: 'time' } },
];
const PLAN = planText([{ id: 's1', on: { course: 'c', measure: 2500, side: 'right' } }], {
  races,
  context: 'map.html',
  courses: [{ id: 'c', gpx: 'line.xml' }],
});
const COURSE = gpxText([straight(OCEAN, 90, 51, 100)]);
const FILES: Readonly<Record<string, string>> = {
  'c.gpx': COURSE,
  'line.xml': COURSE,
  'placed.txt': gpxText([], [{ at: OCEAN, name: 's1 sign' }]),
  'plan.json': PLAN,
  'plan.html': PLAN,
  'results.csv': RESULTS,
  'map.html': '{}',
};
const folder = folderWith(FILES);
symlinkSync('results.csv', join(folder, 'soft.csv'));
linkSync(join(folder, 'plan.json'), join(folder, 'hard.json'));

describe('an output that is an input', () => {
  it.each([
    [['layout', 'plan.json', '--out', 'plan.json', '--force'], 'being read'],
    [['course', 'c.gpx', '--out', './c.gpx', '--force'], 'being read'],
    [['start', 'X', 'c.gpx', '--every', '1km', '--out', 'c.gpx', '--force'], 'being read'],
    [['layout', 'plan.json', '--out', 'c.gpx', '--force'], 'no GPX'],
    [['layout', 'plan.json', '--out', 'hard.json', '--force'], 'being read'],
    [['layout', 'plan.json', '--out', 'line.xml', '--force'], 'being read'],
    [['raceday', 'plan.json', '--out', 'results.csv', '--force'], 'being read'],
    [['export', 'plan.json', '--to', 'geojson', '--out', 'soft.csv', '--force'], 'being read'],
    [['improve', 'plan.json', '--out', 'results.csv', '--force'], 'being read'],
    [['review', 'plan.json', '--placed', 'placed.txt', '--out', 'placed.txt', '--force'], 'being read'],
    [['review', 'plan.html', '--report', 'plan.html', '--force'], 'being read'],
    [['review', 'plan.json', '--report', 'map.html', '--force'], 'being read'],
    [['review', 'plan.json', '--report', 'plan.json', '--force'], '.html'],
    [['review', 'plan.json', '--report', 'c.gpx', '--force'], '.html'],
  ])('is refused by %j, and the files stay as they are', async (call, message) => {
    expect((await refusalIn(folder, ...call)).join('\n')).toContain(message);
    for (const [name, content] of Object.entries(FILES))
      expect(readFileSync(join(folder, name), 'utf8'), name).toBe(content);
  });

  it('may be the plan itself where the command writes the changed plan', async () => {
    const { exit } = await halfcupIn(folder, 'improve', 'plan.json', '--out', 'plan.json', '--force');
    expect(exit).toBe(0);
    expect(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))).toHaveProperty('format', 'halfcup-plan');
  });
});
