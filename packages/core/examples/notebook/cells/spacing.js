import { courseLength } from '@halfcup/core/geometry';
import { drawing } from '../show.js';
import { course } from './course.js';
import { passes } from './passes.js';

const finish = { station: 'finish', measure: courseLength(course) };
const stops = [{ station: 'start', measure: 0 }, ...passes, finish];
const legs = stops.slice(1).map(({ station, measure }, k) => ({
  name: `${stops[k].station} to ${station}`,
  km: (measure - stops[k].measure) / 1000,
}));

// 60 steps a kilometre, 40 a leg.
const says = legs.map(({ name, km }) => `${name} ${km.toFixed(2)} km`).join(', ');
const bottom = legs.length * 40;
export default drawing(
  says,
  [
    [0, 0],
    [320, bottom],
  ],
  [
    ['line', { class: 'limit', x1: 300, x2: 300, y1: 0, y2: bottom }],
    ['text', { class: 'middle', x: 300, y: bottom + 15 }, '5 km'],
    ...legs.flatMap(({ name, km }, k) => {
      const y = k * 40;
      const figure = km.toFixed(2);
      const [kind, words] = km > 5 ? ['bar long', `too long: ${figure}`] : ['bar', figure];
      return [
        ['text', { x: 0, y: y + 12 }, name],
        ['rect', { class: kind, x: 0, y: y + 17, width: km * 60, height: 17 }],
        ['text', { class: 'on-bar', x: km * 60 - 6, y: y + 30 }, words],
      ];
    }),
  ],
);
