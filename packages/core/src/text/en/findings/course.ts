/** Courses: their points, gaps, marks and parts. */
import type { CourseParams, FlawAt, Knot } from '../../params/course.ts';
import { sideBySide } from '../../parts.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { line } from './line.ts';

/** "Points 4 to 9 of segment 1", as a sentence begins. */
function flawed({ first, last, segment }: FlawAt, say: Say): string {
  const points =
    first === last
      ? `Point ${say.count(first)}`
      : `Points ${say.count(first)} ${last === first + 1 ? 'and' : 'to'} ${say.count(last)}`;
  return `${points} of segment ${segment}`;
}

/** As it stands inside a sentence. */
function knot(one: Knot, say: Say): string {
  if (typeof one === 'string') return `the ${one}`;
  return 'name' in one ? say.quote(one.name) : `the ${say.far(one.measure)} mark`;
}

const beginning = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;

const WHAT = {
  station: 'The station',
  partStart: 'The beginning of this part',
  partEnd: 'The end of this part',
} as const;

const beyond: TextsOf<CourseParams>['measure-beyond-course'] = (params, say) => {
  const course = params.course === undefined ? 'the course' : say.course(params.course);
  const what = WHAT[params.what];
  const should = 'It should be on the course.';
  if (params.problem === 'gap')
    return [`${what} is at ${say.far(params.measure)}, where ${course} skips a gap.`, should];
  if (params.problem === 'before') {
    const { measured, limit } = say.compareFar(params.measure, params.start);
    return [`${what} is at ${measured}, but ${course} begins at ${limit}.`, should];
  }
  const { measured, limit } = say.compareFar(params.measure, params.length);
  return [`${what} is at ${measured}, but ${course} is ${limit} long.`, should];
};

const geojson: TextsOf<CourseParams>['geojson'] = (params, say) => {
  if (params.problem === 'nested')
    return ['The GeoJSON nests collections too deeply.', 'There should be only a few levels.'];
  if (params.problem === 'holes')
    return [
      `The polygon has ${params.holes === 1 ? 'a hole' : `${say.count(params.holes)} holes`}.`,
      'It should be one ring.',
    ];
  if (params.problem === 'corners')
    return [
      `The ring has ${params.corners} ${params.corners === 1 ? 'corner' : 'corners'}.`,
      'It should have three or more.',
    ];
  const found = say.found(params.found);
  if (params.problem === 'type')
    return [
      `The type in the GeoJSON is ${found}.`,
      'It should be Feature, FeatureCollection, GeometryCollection, or a point, line or polygon.',
    ];
  const should = { object: 'a GeoJSON object', coordinates: 'a list of coordinates', list: 'a list' } as const;
  return [`The GeoJSON has ${found} here.`, `It should be ${should[params.problem]}.`];
};

export const course: TextsOf<CourseParams> = {
  ...line,
  'mark-factor': ({ from, to, marks, line, within }, say) => {
    const { measured, limit } = sideBySide(marks, line, say);
    return [
      `From ${knot(from, say)} to ${knot(to, say)} the marks say ${measured}, but the line is ${limit} long.`,
      `They should agree within ${say.percent(within)}.`,
      'Fix the mark or the line.',
    ];
  },
  'mark-off-course': ({ mark, distance, most }, say) => {
    const { measured, limit } = sideBySide(distance, most, say);
    return [`${beginning(knot(mark, say))} is ${measured} from the course.`, `It should be at most ${limit} away.`];
  },
  'marks-no-order': (params, say) => {
    if ('length' in params)
      return [`The length of the course is given as ${say.length(params.length)}.`, 'It should be more than 0.'];
    const { places, more } = params;
    const listed = places.map(({ mark, along }) => `${knot(mark, say)} at ${say.any(along.map(say.far))}`);
    return [
      `The marks are not in order along the line: ${listed.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`,
      'Course distance should grow from each mark to the next.',
      'Fix the place or distance of a mark, or reverse the course.',
    ];
  },
  'measure-beyond-course': beyond,
  'part-backwards': ({ course: of, from, to }, say) => {
    const { measured, limit } = say.compareFar(to, from);
    return [`This part of ${say.course(of)} runs from ${limit} to ${measured}.`, 'It should end after it begins.'];
  },
  'parts-apart': ({ length, most }, say) => {
    const { measured, limit } = say.compare(length, most);
    return [
      `This part begins ${measured} from the end of the one before it.`,
      `They should be at most ${limit} apart.`,
    ];
  },
  geojson,
  'track-spike': (flaw, say) => [
    `${flawed(flaw, say)} leaves the course by ${say.length(flaw.size)} and returns.`,
    `This spike adds ${say.length(2 * flaw.size)}.`,
    'Delete the point, unless the course goes there.',
  ],
  'track-jump': (flaw, say) => [
    `${flawed(flaw, say)} are ${say.length(flaw.size)} apart, far more than the points around them.`,
    'They are joined by a straight line.',
    'Add the points between them, unless the road is straight.',
  ],
  'track-sparse-bend': (flaw, say) => {
    const { measured, limit } = say.compare(flaw.size, flaw.most);
    return [
      `${flawed(flaw, say)} are ${measured} apart on a bend.`,
      `They should be at most ${limit} apart, so that the line follows the road.`,
    ];
  },
  'track-tangle': (flaw, say) => [
    `The recorder seems to have stood still: ${say.length(flaw.size)} of track within ${say.length(10)} of one place.`,
    'segment' in flaw
      ? `These are ${flawed(flaw, say).toLowerCase()}.`
      : `It is between ${say.far(flaw.from)} and ${say.far(flaw.to)} of the recorded line.`,
  ],
};
