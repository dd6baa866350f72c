/** A plan for the bench: an invented winding course of 20,000 points in mid-ocean, 30 stations beside it, the same at every run. */
import { buildCourse, pointAt } from '@halfcup/core/geometry';

/** Longitudes and latitudes of a winding line, points `spacing` metres apart. */
function winding(count, spacing) {
  const [lon, lat] = [new Float64Array(count), new Float64Array(count)];
  [lon[0], lat[0]] = [-17.4, -33.2];
  for (let k = 1; k < count; k++) {
    const along = k * spacing;
    const heading = along / 6700 + 0.7 * Math.sin(along / 900) + 0.25 * Math.sin(along / 130);
    lat[k] = lat[k - 1] + (spacing * Math.cos(heading)) / 110_900;
    lon[k] = lon[k - 1] + (spacing * Math.sin(heading)) / (111_300 * Math.cos((lat[k] * Math.PI) / 180));
  }
  return { lon, lat };
}

export const POINTS = 20_000;
export const STATIONS = 30;

function gpxText({ lon, lat }) {
  const points = Array.from(
    lon,
    (x, k) =>
      `<trkpt lat="${lat[k].toFixed(7)}" lon="${x.toFixed(7)}"><ele>${(20 + 10 * Math.sin(k / 500)).toFixed(1)}</ele></trkpt>\n`,
  );
  return `<gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Bench</name><trkseg>\n${points.join('')}</trkseg></trk></gpx>\n`;
}

/** Files to be dropped on the page; `runners` in four waves, so that every move is also reckoned for race day; 0: without race day. */
export function benchFiles(runners) {
  const line = winding(POINTS, 2.1);
  const built = buildCourse({
    id: 'c',
    name: 'c',
    segments: [{ ...line, ele: new Float64Array(POINTS).fill(NaN) }],
    drawn: 'centre',
  });
  if (!built.ok) throw new Error(built.findings[0].message);
  const length = built.value.raw.at(-1);
  const stations = Array.from({ length: STATIONS }, (_, k) => {
    const { at } = pointAt(built.value, (length * (k + 0.5)) / STATIONS, -6);
    return { id: `s${k + 1}`, name: `Station ${k + 1}`, at: at.map((value) => Number(value.toFixed(7))) };
  });
  const waves = ['08:00', '08:10', '08:20', '08:30'].map((time) => ({ time, entrants: runners / 4 }));
  const field = runners > 0 ? { waves, finish: { median: '4:10:00', spread: 0.2 } } : {};
  const plan = {
    format: 'halfcup-plan',
    version: 1,
    name: 'Bench',
    courses: [{ id: 'c', name: 'Bench', gpx: 'bench.gpx' }],
    races: [{ id: 'r', name: 'Race', course: 'c', ...field }],
    stations,
  };
  return { 'plan.json': JSON.stringify(plan, null, 2), 'bench.gpx': gpxText(line) };
}
