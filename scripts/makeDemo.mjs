// Draws the demo: an invented island with a full and a half marathon, a plan and a background map.
// Run: node scripts/makeDemo.mjs [FOLDER]   (default fixtures/demo; the same bytes at every run)
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contextFeatures } from './demo/context.mjs';
import { round, toLonLat, toPlane } from './demo/frame.mjs';
import { island, makePlan, pins } from './demo/plan.mjs';
import { coursePoints, town, tunedNetwork } from './demo/roads.mjs';
import { terrain } from './demo/terrain.mjs';
import { collectionText, gpxText, jsonText } from './demo/write.mjs';

/** All files of the demo, by name. */
export function demoFiles() {
  const net = tunedNetwork();
  const height = terrain(net);
  const withHeight = (p) => [...toLonLat(p), round(height(p), 1)];
  const full = coursePoints(net, 'full').map(withHeight);
  const half = coursePoints(net, 'half').map(withHeight);
  const waypoints = pins(full).map((pin) => ({ ...pin, height: height(toPlane(pin.at)) }));
  const description = 'An invented island: no such road, town or race exists.';
  return {
    'full.gpx': gpxText({ name: `${island} Island full marathon`, description, points: full, waypoints }),
    'half.gpx': gpxText({ name: `${island} Island half marathon`, description, points: half }),
    'plan.json': `${jsonText(makePlan({ full, half, town }))}\n`,
    'context.geojson': collectionText(contextFeatures(net)),
  };
}

const here = fileURLToPath(import.meta.url);
if (process.argv[1] === here) {
  const folder = process.argv[2] ?? join(dirname(here), '../fixtures/demo');
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(demoFiles())) writeFileSync(join(folder, name), text);
}
