// Draws the demo: an invented island in mid-ocean, a full and a half marathon on it, a plan and a background map.
// Run: node scripts/makeDemo.mjs [FOLDER]   (default fixtures/demo; the same bytes at every run, seeds are fixed)
// 1 roads: control points in a plane in km, joined by curves, sampled once; tuned until both races have their length
// 2 courses: stretches of those roads, so shared roads have the very same points; heights from hills and decks
// 3 coast: an outline roughened by noise, kept off the roads, its level line traced; woods and beaches likewise
// 4 houses: plots along the streets, clear of roads and water; names by hand
// 5 ground: the same streets and houses near the courses as a street map has them, with nodes and tags
// 6 plan: stations by measure along the full, with findings left in on purpose (a short sign, a long leg, a corner)
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contextFeatures, islandOf } from './demo/context.mjs';
import { round, toLonLat, toPlane } from './demo/frame.mjs';
import { groundText } from './demo/ground.mjs';
import { island, makePlan, pins } from './demo/plan.mjs';
import { coursePoints, town, tunedNetwork } from './demo/roads.mjs';
import { terrain } from './demo/terrain.mjs';
import { collectionText, gpxText, jsonText } from './demo/write.mjs';

/** All files of the demo, by name. */
export function demoFiles() {
  const net = tunedNetwork();
  const height = terrain(net);
  const land = islandOf(net);
  const withHeight = (p) => [...toLonLat(p), round(height(p), 1)];
  const full = coursePoints(net, 'full').map(withHeight);
  const half = coursePoints(net, 'half').map(withHeight);
  const waypoints = pins(full).map(({ name, at }) => ({ name, at, height: height(toPlane(at)) }));
  const description = 'An invented island: no such road, town or race exists.';
  return {
    'full.gpx': gpxText({ name: `${island} Island full marathon`, description, points: full, waypoints }),
    'half.gpx': gpxText({ name: `${island} Island half marathon`, description, points: half }),
    'plan.json': `${jsonText(makePlan({ line: full, town }))}\n`,
    'context.geojson': collectionText(contextFeatures(net, land)),
    'ground.geojson': groundText(net, land),
  };
}

const here = fileURLToPath(import.meta.url);
if (process.argv[1] === here) {
  const folder = process.argv[2] ?? join(dirname(here), '../fixtures/demo');
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(demoFiles())) writeFileSync(join(folder, name), text);
}
