/**
 * What the ground is along a course, by a map: the streets that it follows and what they meet and carry.
 */
import { wantIndexed } from '../course/indexedShape.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { GroundAlong } from './along.ts';
import { featuresOf } from './features.ts';
import type { Ground } from './ground.ts';
import { junctionsOf } from './junctions.ts';
import { keepClearOf } from './keepClear.ts';
import { legsOf } from './legs.ts';
import { match } from './match.ts';
import { networkOf } from './network.ts';
import { offMapOf } from './offMap.ts';
import { planeOf } from './plane.ts';
import { reachIn } from './reach.ts';
import { courseOn, samplesOf } from './samples.ts';
import { squareStretches, squaresIn } from './squares.ts';
import { streetsOf, surfacesOf, widthsOf } from './stretches.ts';

/**
 * What a map knows along a course: streets, junctions, things on the course and beside it, widths, surfaces, and where the course
 * follows no street. Measures are calibrated, metres; offsets left positive. A map of another place gives the whole course as `offMap`.
 */
export function groundAlong(indexed: IndexedCourse, ground: Ground): GroundAlong {
  wantIndexed('groundAlong', indexed);
  const { course } = indexed;
  const plane = planeOf(course);
  const network = networkOf(ground.ways, plane);
  const on = courseOn(plane, course);
  const reach = reachIn(network);
  const chain = match(network, reach, samplesOf(on));
  const legs = legsOf(network, reach, on, chain);
  const squareAt = squaresIn(ground.areas, plane);
  const lines = streetsOf(course, network, legs);
  const streets = [...lines, ...squareStretches(course, squareAt, chain)].sort((a, b) => a.from - b.from);
  return {
    streets,
    junctions: junctionsOf(course, network, legs),
    features: featuresOf({ indexed, ground, network }, legs, streets),
    keepClear: keepClearOf(indexed, ground),
    widths: widthsOf(lines),
    surfaces: surfacesOf(streets),
    offMap: offMapOf(course, network, squareAt, chain),
  };
}
