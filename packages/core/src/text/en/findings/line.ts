/** Building a course from points: gaps between segments, points that are no position, its length. */
import type { Found } from '../../found.ts';
import type { LineParams } from '../../params/course.ts';
import { wholeFar } from '../../parts.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { isStated } from '../planValues.ts';

/** "points 4 and 5". */
const pair = (point: number, say: Say): string => `points ${say.count(point)} and ${say.count(point + 1)}`;

const degrees = (value: Found, say: Say): string => (isStated(value) ? say.found(value) : 'missing');

const SHORT = {
  none: 'The course has no points.',
  onePlace: 'All points of the course are at one place.',
  noLength: 'The line of the course has no length.',
} as const;

export const line: TextsOf<LineParams> = {
  'gap-joined': ({ length, point, asked, seam }, say) => [
    seam === undefined
      ? `Two segments are ${say.length(length)} apart, between ${pair(point, say)}.`
      : `Two parts of the course meet ${say.length(length)} apart at ${say.far(seam.measure)}${seam.times === 1 ? '' : `, ${seam.times === 2 ? 'twice' : `${say.count(seam.times)} times`} in all`}.`,
    `They are joined by a straight line${asked ? ', as asked' : ''}.`,
  ],
  'gap-skipped': ({ length, point }, say) => [
    `Two segments are ${say.length(length)} apart, between ${pair(point, say)}.`,
    'The gap is skipped, as asked, and adds no distance.',
  ],
  'gap-refused': ({ length, point, most }, say) => {
    const { measured, limit } = say.compare(length, most);
    return [
      `Two segments are ${measured} apart, between ${pair(point, say)}.`,
      `They should be at most ${limit} apart.`,
      'Fix the file, or set gaps to join (a straight line) or skip (adds no distance).',
    ];
  },
  position: ({ lon, lat, point, swapped }, say) => [
    point === undefined
      ? `The longitude is ${degrees(lon, say)}, the latitude is ${degrees(lat, say)}.`
      : `The longitude of point ${say.count(point)} is ${degrees(lon, say)}, its latitude is ${degrees(lat, say)}.`,
    'They should be degrees from -180 to 180 and from -90 to 90.',
    swapped === true ? 'Longitude comes first: the two may be swapped.' : null,
  ],
  'course-too-short': (params) => [
    params.problem === 'few'
      ? `The line of the course has ${params.points === 1 ? 'one point' : 'no points'}.`
      : SHORT[params.problem],
    'It should have at least two different points.',
  ],
  'course-too-long': ({ length, most, step, point }, say) => [
    `The course would be ${wholeFar(length, say)} long, ${wholeFar(step, say)} of it between ${pair(point, say)}.`,
    `It should be at most ${wholeFar(most, say)}.`,
    'Delete the points that are not part of the race.',
  ],
};
