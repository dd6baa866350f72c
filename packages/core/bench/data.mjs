/** Inputs of the benches: invented courses in mid-ocean, the same at every run. */
import { buildCourse, indexCourse, pointAt } from '@halfcup/core/geometry';

/** Uniform in 0 … 1 (excluded), repeatable. */
export function generator(seed) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
}

/** A winding line of `count` points, `spacing` metres apart, that does not close. */
export function windingLine(count, spacing, seed = 1) {
  const random = generator(seed);
  const lon = new Float64Array(count);
  const lat = new Float64Array(count);
  let heading = 1;
  let bend = 0;
  lon[0] = -17.4;
  lat[0] = -33.2;
  for (let i = 1; i < count; i++) {
    bend = 0.98 * bend + 0.02 * (random() - 0.5);
    heading = 1 + 8 * bend * Math.sqrt(spacing) + 0.6 * Math.sin((i * spacing) / 3000);
    lat[i] = lat[i - 1] + (spacing * Math.cos(heading)) / 110900;
    lon[i] = lon[i - 1] + (spacing * Math.sin(heading)) / (111300 * Math.cos((lat[i] * Math.PI) / 180));
  }
  return { lon, lat };
}

export function courseOf({ lon, lat }, id = 'course') {
  const built = buildCourse({
    id,
    name: id,
    segments: [{ lon, lat, ele: new Float64Array(lon.length).fill(NaN) }],
    drawn: 'centre',
  });
  if (!built.ok) throw new Error(built.findings[0].message);
  return built.value;
}

export const indexedOf = (line, id) => indexCourse(courseOf(line, id));

/** Pins 6 m to the right of the course, evenly along it. */
export function pinsAlong(course, count) {
  const length = course.raw.at(-1);
  return Array.from({ length: count }, (_, k) => pointAt(course, (length * (k + 0.5)) / count, -6).at);
}

/** A GPX file of one track with elevations and times: about 98 bytes a point. */
export function gpxText(count) {
  const { lon, lat } = windingLine(count, 3);
  const points = Array.from(
    lon,
    (x, i) =>
      `<trkpt lat="${lat[i].toFixed(7)}" lon="${x.toFixed(7)}"><ele>${(20 + 10 * Math.sin(i / 500)).toFixed(1)}</ele><time>2027-09-12T08:00:00Z</time></trkpt>\n`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Bench</name><trkseg>\n${points.join('')}</trkseg></trk></gpx>\n`;
}
