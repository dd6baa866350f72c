/**
 * How far apart the stations of a race are: node spacing.mjs COURSE.gpx
 * The stations are the file's waypoints. Each pass counts, as on an out-and-back; a plan says which of them are served.
 */
import { readFile } from 'node:fs/promises';
import { buildCourse, courseLength, findingLine, indexCourse, passesOf, startMeasure } from '@halfcup/core/geometry';
import { readGpx } from '@halfcup/core/gpx';

/** The value of a result, or the end of this program with what is wrong. */
function must(result) {
  if (result.ok) return result.value;
  console.error(result.findings.map(findingLine).join('\n'));
  return process.exit(2);
}
const refuse = (message, where = {}) => must({ ok: false, findings: [{ message, where }] });

const [file] = process.argv.slice(2);
if (file === undefined) refuse('found no file; expected node spacing.mjs COURSE.gpx');

const gpx = must(
  readGpx(await readFile(file).catch(({ message }) => refuse(`cannot be read: ${message}`, { file })), file),
);
const line = gpx.tracks[0] ?? gpx.routes[0];
if (line === undefined) refuse('found no track and no route; expected the course', { file });

const course = indexCourse(must(buildCourse({ id: 'course', name: file, segments: line.segments })));
const stops = gpx.waypoints.flatMap(({ name, lon, lat }) => {
  const passes = passesOf(course, [lon, lat]);
  if (passes.length === 0)
    console.error(`${name ?? 'A waypoint'} is left out: the course does not come within 60 m of it.`);
  return passes.map(({ measure }) => ({ name: name ?? 'a waypoint', measure }));
});
const places = [
  { name: 'start', measure: startMeasure(course.course) },
  ...stops.toSorted((a, b) => a.measure - b.measure),
  { name: 'finish', measure: courseLength(course.course) },
];
const legs = places
  .slice(1)
  .map((to, k) => ({ from: places[k].name, to: to.name, km: (to.measure - places[k].measure) / 1000 }));

for (const { from, to, km } of legs) console.log(`${km.toFixed(3).padStart(7)} km  ${from} to ${to}`);
console.log(
  `${Math.max(...legs.map(({ km }) => km))
    .toFixed(3)
    .padStart(7)} km  is the longest leg`,
);
