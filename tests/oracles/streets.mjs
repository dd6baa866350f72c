/**
 * What core reads of a street file against other programs: counts of its elements by xmllint (XML) and by osmium-tool (PBF), and
 * which of its streets are kept. Needs the built core and, from Debian, libxml2-utils and osmium-tool. Exits 1 where any disagrees.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { courseFromGeoJson } from '../../packages/core/dist/src/geojson.js';
import { createGroundClipper } from '../../packages/core/dist/src/ground.js';

const folder = join(dirname(fileURLToPath(import.meta.url)), '../../fixtures/streets');
const [xml, pbf] = ['streets.osm', 'streets.osm.pbf'].map((name) => join(folder, name));
const program = (name, ...args) => execFileSync(name, args, { encoding: 'utf8', maxBuffer: 1e8 });
const xpath = (query) => Number(program('xmllint', '--xpath', query, xml));
const course = courseFromGeoJson({
  type: 'LineString',
  coordinates: [
    [13.3508, 52.5145],
    [13.3528, 52.5145],
  ],
});
// Wide enough for all of the piece: what is kept is then a matter of tags alone.
const read = (path) => {
  const clipper = createGroundClipper(path, [course.value], 5000);
  clipper.write(readFileSync(path));
  return clipper.close().value;
};

let wrong = 0;
function hold(name, ours, theirs, by) {
  const same = JSON.stringify(ours) === JSON.stringify(theirs);
  if (!same) wrong += 1;
  console.log(
    `${same ? 'agrees   ' : 'DISAGREES'} ${name}: ${JSON.stringify(ours)}${same ? '' : ` against ${JSON.stringify(theirs)}`}, by ${by}`,
  );
}

const [ours, packed] = [read(xml), read(pbf)];
hold('nodes of the XML', ours.read.nodes, xpath('count(/osm/node)'), 'xmllint');
hold('ways of the XML', ours.read.ways, xpath('count(/osm/way)'), 'xmllint');
hold('relations of the XML', ours.read.relations, xpath('count(/osm/relation)'), 'xmllint');
hold('buildings of the XML', ours.read.buildings, xpath('count(/osm/*[tag/@k="building"])'), 'xmllint');
const hydrants = ours.ground.points.filter(({ tags }) => tags.emergency === 'fire_hydrant');
hold('hydrants', hydrants.length, xpath('count(/osm/node[tag[@k="emergency" and @v="fire_hydrant"]])'), 'xmllint');
const crossings = ours.ground.points.filter(({ tags }) => tags.highway === 'crossing');
hold('crossings', crossings.length, xpath('count(/osm/node[tag[@k="highway" and @v="crossing"]])'), 'xmllint');

const info = JSON.parse(program('osmium', 'fileinfo', '--extended', '--json', pbf)).data;
const counted = { nodes: packed.read.nodes, ways: packed.read.ways, relations: packed.read.relations };
const { nodes, ways, relations } = info.count;
hold('elements of the PBF', counted, { nodes, ways, relations }, 'osmium-tool');
hold('the day of the PBF', packed.ground.source.date, info.timestamp.last.slice(0, 10), 'osmium-tool');
const streets = program('osmium', 'tags-filter', '--omit-referenced', '-f', 'opl', pbf, 'w/highway')
  .split('\n')
  .filter((line) => line.startsWith('w'))
  .map((line) => `way/${line.slice(1, line.indexOf(' '))}`);
const kept = new Set([...packed.ground.ways, ...packed.ground.areas].map(({ id }) => id));
// Of a street at the edge of the piece there may be one node alone, which is no line.
const nodesOf = (id) => xpath(`count(/osm/way[@id="${id.slice(4)}"]/nd[@ref=/osm/node/@id])`);
hold(
  `streets among ${streets.length} that are lost`,
  streets.filter((id) => !kept.has(id) && nodesOf(id) > 1),
  [],
  'osmium-tool and xmllint',
);
const known = new Set(streets);
hold(
  'streets kept that are none',
  packed.ground.ways.filter(({ id, tags }) => tags.highway !== undefined && !known.has(id)).map(({ id }) => id),
  [],
  'osmium-tool',
);
process.exitCode = wrong > 0 ? 1 : 0;
