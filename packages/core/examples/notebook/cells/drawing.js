import { courseLength, eastNorth, sliceLine } from '@halfcup/core/geometry';
import { drawing } from '../show.js';
import { course, gpx } from './course.js';

const line = sliceLine(course, 0, courseLength(course));
const place = (at) => {
  const { east, north } = eastNorth(line[0], at);
  // One step is 40 m; in a drawing y runs down.
  return [east / 40, -north / 40];
};
const points = line.map(place);
const path = points.map((point) => point.map((value) => value.toFixed(1))).join(' ');
const finish = points.at(-1);

export default drawing(`${course.name}: ${gpx.waypoints.length} stations by number`, points, [
  ['polyline', { class: 'line', points: path }],
  ['circle', { class: 'end', cx: 0, cy: 0, r: 3 }],
  ['text', { class: 'before', x: 4, y: -8 }, 'start'],
  ['circle', { class: 'end', cx: finish[0], cy: finish[1], r: 3 }],
  ['text', { class: 'before', x: finish[0] + 4, y: finish[1] + 15 }, 'finish'],
  ...gpx.waypoints.flatMap(({ lon, lat }, k) => {
    const [x, y] = place([lon, lat]);
    return [
      ['circle', { class: 'pin', cx: x, cy: y, r: 9 }],
      ['text', { class: 'middle strong', x, y: y + 4.5 }, k + 1],
    ];
  }),
]);
