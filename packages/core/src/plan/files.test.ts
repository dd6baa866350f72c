import { expect, it } from 'vitest';
import { planCourse, planOf, planRace } from '../testing/plans.ts';
import { filesNamedBy } from './files.ts';

it('names each file once, in the plan’s order: of courses, of races and their waves, of the background, of the ground', () => {
  const past = { csv: 'past.csv', column: 'time' };
  const plan = planOf({
    courses: [
      planCourse('a', { gpx: 'full.gpx' }),
      planCourse('b', { gpx: 'half.gpx' }),
      planCourse('c', { gpx: 'full.gpx', reverse: true }),
      planCourse('d'),
    ],
    races: [
      {
        ...planRace('m', 'a'),
        finish: past,
        waves: [{ time: 0, entrants: 1, finish: { csv: 'elite.csv', column: 't' } }],
      },
      { ...planRace('h', 'b'), finish: past },
      { ...planRace('w', 'c'), finish: { median: 3600, spread: 0.2 } },
    ],
  });
  expect(filesNamedBy({ ...plan, context: 'island.geojson', ground: 'ground.geojson' })).toEqual({
    gpx: ['full.gpx', 'half.gpx'],
    results: ['past.csv', 'elite.csv'],
    context: ['island.geojson'],
    ground: ['ground.geojson'],
  });
  expect(filesNamedBy(planOf({}))).toEqual({ gpx: [], results: [], context: [], ground: [] });
});
