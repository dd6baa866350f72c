/** Joins a table of stations to a course: node join-csv.mjs COURSE.gpx STATIONS.csv (name,longitude,latitude; no quotes) */
import { readFileSync } from 'node:fs';
import { csvText } from '@halfcup/core/schemas';
import { passesOf } from '@halfcup/core/geometry';
import { courseFromGpx, findingLine } from '@halfcup/core/gpx';

try {
  const [gpx, csv] = process.argv.slice(2);
  const course = courseFromGpx(readFileSync(gpx), { file: gpx });
  if (!course.ok) throw new Error(course.findings.map(findingLine).join('\n'));
  const [, ...rows] = readFileSync(csv, 'utf8').trim().split(/\r?\n/u);
  const joined = rows.flatMap((row) => {
    const [name, ...at] = row.split(',');
    const passes = passesOf(course.value, at.map(Number.parseFloat));
    return passes.map(({ measure, side }) => [name, measure.toFixed(1), side]);
  });
  process.stdout.write(csvText([['name', 'course distance (m)', 'side'], ...joined]));
} catch ({ message }) {
  console.error(`join-csv: ${message}`);
  process.exitCode = 2;
}
