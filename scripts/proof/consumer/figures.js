/** What a user of core works out from the demo, by every entry point; the same code runs in Node, in a page and in a worker. */
import { analyse, readPlan } from '@halfcup/core';
import { toGeoJson } from '@halfcup/core/geojson';
import { buildCourse, courseLength, indexCourse, passesOf } from '@halfcup/core/geometry';
import { readGpx } from '@halfcup/core/gpx';
import { fieldOf } from '@halfcup/core/raceday';
import { papersOf } from '@halfcup/core/papers';

const held = (result) => {
  if (!result.ok) throw new Error(result.findings.map(({ message }) => message).join('\n'));
  return result.value;
};

/** Texts and bytes in, plain figures out. */
export function figuresOf(planText, gpxFiles) {
  const gpx = new Map(Object.entries(gpxFiles).map(([name, bytes]) => [name, held(readGpx(bytes, name))]));
  const { plan } = held(readPlan(planText, 'plan.json'));
  const analysis = held(analyse(plan, { gpx }));
  const [line] = gpx.values();
  const course = held(buildCourse({ id: 'full', name: 'Full', segments: line.tracks[0].segments }));
  const passes = passesOf(indexCourse(course), analysis.stations[0].at);
  const papers = papersOf(analysis, { paper: 'a4', printedAt: '2027-09-01 12:00' });
  return {
    points: course.lon.length,
    length: courseLength(course),
    passes: passes.map(({ measure, offset, side }) => ({ measure, offset, side })),
    stations: analysis.stations.map(({ id, passes: served }) => [id, served.length]),
    findings: analysis.findings.map(({ code, severity }) => `${severity} ${code}`),
    features: toGeoJson(analysis).features.length,
    starters: held(fieldOf(plan.races[0], courseLength(course), new Map())).start.length,
    papers: papers.map(({ name, html }) => [name, html.length]),
  };
}
