/** Keeps one course with its index. A message { id, at: [lon, lat] } is answered by { id, passes }, or { id, problem } in words. */
import { buildCourse, indexCourse, passesOf } from '@halfcup/core/geometry';
import { readGpx } from '@halfcup/core/gpx';
import file from '../../../../fixtures/demo/full.gpx?url';

async function open() {
  const gpx = readGpx(new Uint8Array(await (await fetch(file)).arrayBuffer()), 'full.gpx');
  const course = gpx.ok
    ? buildCourse({ id: 'full', name: 'Full', segments: gpx.value.tracks[0]?.segments ?? [] })
    : gpx;
  if (!course.ok) throw new Error(course.findings[0].message);
  return indexCourse(course.value);
}

const course = open();

addEventListener('message', async ({ data: { id, at } }) => {
  try {
    postMessage({ id, passes: passesOf(await course, at) });
  } catch (error) {
    // A position that is none, or a course that cannot be read: whoever asked is told.
    postMessage({ id, problem: error.message });
  }
});
