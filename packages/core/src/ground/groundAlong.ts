/**
 * What the ground is along a course, by a map: the streets that it follows and what they meet and carry.
 */
import type { Course } from '../course/course.ts';
import { indexedOnce } from '../course/indexed.ts';
import { wantOnCourse } from '../course/indexedShape.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { GroundAlong } from './along.ts';
import { featuresOf } from './features.ts';
import type { Ground } from './ground.ts';
import { junctionsOf } from './junctions.ts';
import { keepClearOf } from './keepClear.ts';
import { legsOf } from './legs.ts';
import { match } from './match.ts';
import { namesOf } from './names.ts';
import { networkOf } from './network.ts';
import { offMapOf } from './offMap.ts';
import { planeOf } from './plane.ts';
import { reachIn } from './reach.ts';
import { courseOn, samplesOf } from './samples.ts';
import { wantGround } from './shapes.ts';
import { squareStretches, squaresIn } from './squares.ts';
import { streetsOf, surfacesOf, widthsOf } from './stretches.ts';

/**
 * What a map knows along a course: streets, junctions, things on the course and beside it, widths, surfaces, and where the course
 * follows no street. Measures are calibrated, metres; offsets are left positive. A street is the course's within 15 m and about 30°,
 * where that makes one line with what is before and behind it, whichever way its traffic goes. What must stay reachable is listed
 * within 60 m. On a map of another place the whole course is `offMap`.
 * @example
 * ```ts
 * import { courseFromLine } from '@halfcup/core/geometry';
 * import { groundAlong } from '@halfcup/core/ground';
 *
 * const course = courseFromLine([[-30.1, 12.2], [-30.09, 12.2]]);
 * if (!course.ok) throw new Error(course.findings[0]?.message);
 * const street = {
 *   id: 'way/7',
 *   tags: { highway: 'residential', name: 'Pier Road' },
 *   nodes: ['node/1', 'node/2'],
 *   lon: Float64Array.of(-30.1, -30.09),
 *   lat: Float64Array.of(12.2, 12.2),
 * };
 * const source = { date: null, credit: 'own survey', licence: null };
 * const along = groundAlong(course.value, { source, ways: [street], areas: [], points: [] });
 * along.streets[0]?.name; // → 'Pier Road'
 * along.widths; // → [{ from: 0, to: 1088.217, width: 6, rests: 'class' }]
 * along.offMap; // → []
 * ```
 */
export function groundAlong(on: Course | IndexedCourse, ground: Ground): GroundAlong {
  wantOnCourse('groundAlong', on);
  wantGround('groundAlong', ground);
  const indexed = indexedOnce(on);
  const { course } = indexed;
  const plane = planeOf(course);
  const network = networkOf(ground, plane);
  const drawn = courseOn(plane, course);
  const reach = reachIn(network);
  const chain = match(network, reach, samplesOf(drawn));
  const legs = legsOf(network, reach, drawn, chain);
  const squareAt = squaresIn(ground.areas, plane);
  const names = namesOf(network, legs);
  const lines = streetsOf(course, network, legs, names);
  const streets = [...lines, ...squareStretches(course, squareAt, chain)].sort((a, b) => a.from - b.from);
  return {
    streets,
    junctions: junctionsOf(drawn, network, legs, names),
    features: featuresOf({ indexed, ground, network }, legs, streets),
    keepClear: keepClearOf(indexed, ground),
    widths: widthsOf(lines),
    surfaces: surfacesOf(streets),
    offMap: offMapOf(course, network, squareAt, chain),
  };
}
