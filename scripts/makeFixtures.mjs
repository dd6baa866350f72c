// Draws the named cases: for each a folder with one GPX a course and a plan.
// Run: node scripts/makeFixtures.mjs [FOLDER]   (default fixtures; the same bytes at every run, seeds are fixed)
// What core makes of them is in expected.json beside them: UPDATE=1 npx vitest run --project across tests/fixtures
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { jsonText } from './demo/write.mjs';
import { cases } from './fixtures/cases.mjs';

const place = ([lon, lat]) => `lat="${lat.toFixed(7)}" lon="${lon.toFixed(7)}"`;

function gpxText(name, about, points, stations) {
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Halfcup fixtures" xmlns="http://www.topografix.com/GPX/1/1">',
    `  <metadata><name>${name}</name><desc>${about}</desc></metadata>`,
    ...stations.map(({ name, at }) => `  <wpt ${place(at)}><name>${name}</name></wpt>`),
    `  <trk><name>${name}</name><trkseg>`,
    ...points.map((at) => `    <trkpt ${place(at)}/>`),
    '  </trkseg></trk>',
    '</gpx>',
  ];
  return `${lines.join('\n')}\n`;
}

const rounded = ([lon, lat]) => [Number(lon.toFixed(7)), Number(lat.toFixed(7))];

function planOf(
  name,
  { about, courses, stations, races = [{ id: 'race', name: 'The race', course: 'course' }], drawn = 'centre', length },
) {
  return {
    format: 'halfcup-plan',
    version: 1,
    name: `${name}: ${about}`,
    courses: Object.keys(courses).map((id) => ({ id, name: id, gpx: `${id}.gpx`, drawn, length })),
    races,
    stations: stations.map(({ id, name, at, ...more }) => Object.assign({ id, name, at: rounded(at) }, more)),
  };
}

/** All files, by path below the fixtures' folder. */
export function fixtureFiles() {
  const files = {};
  for (const [name, make] of Object.entries(cases)) {
    const made = make();
    for (const [id, points] of Object.entries(made.courses))
      files[`${name}/${id}.gpx`] = gpxText(`${name} ${id}`, made.about, points, made.stations);
    // By JSON and back, so that what is undefined is left out.
    files[`${name}/plan.json`] = `${jsonText(JSON.parse(JSON.stringify(planOf(name, made))))}\n`;
  }
  return files;
}

const here = fileURLToPath(import.meta.url);
if (process.argv[1] === here) {
  const folder = process.argv[2] ?? join(dirname(here), '../fixtures');
  for (const [name, text] of Object.entries(fixtureFiles())) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
}
