import { buildCourse, courseLength, indexCourse } from '@halfcup/core/geometry';
import { readGpx } from '@halfcup/core/gpx';
import file from '../../../../../fixtures/demo/full.gpx?url';
import { must, table } from '../show.js';

const bytes = new Uint8Array(await (await fetch(file)).arrayBuffer());
export const gpx = must(readGpx(bytes, 'full.gpx'));

const { name, segments } = gpx.tracks[0];
export const course = must(buildCourse({ id: 'full', name, segments }));
export const indexed = indexCourse(course);

const km = (courseLength(course) / 1000).toFixed(3);
export default table(
  'The course as it was read',
  ['Name', ' Points', ' Length', ' Waypoints'],
  [[name, course.lon.length, `${km} km`, gpx.waypoints.length]],
);
