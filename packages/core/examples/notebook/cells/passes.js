import { passesOf } from '@halfcup/core/geometry';
import { table } from '../show.js';
import { gpx, indexed } from './course.js';

export const passes = gpx.waypoints
  .flatMap(({ name, lon, lat }, k) =>
    passesOf(indexed, [lon, lat]).map((pass) => ({ ...pass, station: `${k + 1} ${name}` })),
  )
  .toSorted((a, b) => a.measure - b.measure);

export default table(
  'Passes in running order',
  ['Station', ' At, km', 'Side', ' Sure', ' Off, m'],
  passes.map(({ station, measure, side, confidence, distance }) => [
    station,
    (measure / 1000).toFixed(3),
    side,
    `${Math.floor(confidence * 100)} %`,
    distance.toFixed(1),
  ]),
);
