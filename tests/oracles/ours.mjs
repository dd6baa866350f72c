// Answers of the built core for the oracles: a question as JSON on stdin, the answers as JSON on stdout.
// Needs `pnpm run build`. Asked by check.py.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { buildCourse, courseLength, indexCourse, passesOf, rawLength, wheelBetween } from '@halfcup/core/geometry';
import { readGpx } from '@halfcup/core/gpx';
import { indexBuildings, sightBlocked } from '@halfcup/core/ground';

const { resolve } = createRequire(import.meta.url);

/** Real recordings that npm packages carry (all MIT): gpx-parse 0.10.4, stoplight 0.0.7, gpxparser 3.0.8. */
const FILES = {
  'gpx-parse': 'gpx-parse/tests/integration/data/route-1.1.gpx',
  stoplight: 'stoplight/gpx/sample.gpx',
  gpxparser: 'gpxparser/test/test.xml',
};

function must(result) {
  if (!result.ok) throw new Error(result.findings.map(({ message }) => message).join('\n'));
  return result.value;
}

const courseOfFile = (path) =>
  must(buildCourse({ id: 'c', name: 'c', segments: must(readGpx(readFileSync(path), path)).tracks[0].segments }));

const column = (points, k) => Float64Array.from(points, (point) => point[k]);

function courseThrough(points) {
  const segment = { lon: column(points, 0), lat: column(points, 1), ele: column(points, 2) };
  return must(buildCourse({ id: 'c', name: 'c', segments: [segment], drawn: 'centre' }));
}

/** The number of the house in the way of each pair of points, and metres to it; null where there is none. */
function sightsPast({ houses, pairs }) {
  const areas = houses.map((rings, k) => ({
    id: String(k),
    tags: { building: 'yes' },
    rings: rings.map((ring) => ({ lon: column(ring, 0), lat: column(ring, 1) })),
  }));
  const buildings = indexBuildings({
    source: { date: null, credit: 'drawn', licence: null },
    ways: [],
    areas,
    points: [],
  });
  return pairs.map(([a, b]) => {
    const block = sightBlocked(a, b, buildings);
    return block === null ? null : [Number(block.building.id), block.distance];
  });
}

function answer({ files = {}, wheels = [], sights = { houses: [], pairs: [] } }) {
  const snapped = Object.entries(files).map(([name, pins]) => {
    const indexed = indexCourse(courseOfFile(resolve(FILES[name])));
    return [name, { length: rawLength(indexed.course), passes: pins.map((pin) => passesOf(indexed, pin)) }];
  });
  const read = wheels.map(({ points, offset }) => {
    const course = courseThrough(points);
    return wheelBetween(course, 0, courseLength(course), offset, 1).length;
  });
  return { files: Object.fromEntries(snapped), wheels: read, sights: sightsPast(sights) };
}

const question = JSON.parse(readFileSync(0, 'utf8'));
const paths = Object.fromEntries(Object.entries(FILES).map(([name, file]) => [name, resolve(file)]));
process.stdout.write(JSON.stringify(question.paths === true ? paths : answer(question)));
