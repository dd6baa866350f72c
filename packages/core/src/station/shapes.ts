/** The shapes of what is known of a station before anything is laid out. */
import { PASS_SHAPES } from '../course/course.ts';
import { isPlanStation } from '../plan/shapes.ts';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import {
  type Shape,
  type Shapes,
  aFlag,
  aText,
  count,
  finite,
  listOf,
  oneOf,
  orNull,
  position,
  recordOf,
  remembered,
} from '../wants.ts';
import type { Practice } from '../plan/plan.ts';
import type { Direction, RaceSpacing, SeenStation, StationPass } from './station.ts';

export const isStationPass: Shape = recordOf<StationPass>('a pass of a station', {
  ...PASS_SHAPES,
  race: aText,
  course: aText,
  pass: count,
  served: aFlag,
});

export const DIRECTION_SHAPES: Shapes<Direction> = {
  lead: aFlag,
  course: aText,
  race: aText,
  measure: finite,
  azimuthDeg: finite,
  side: oneOf('left', 'right', 'unclear'),
  passes: listOf(count, 1),
};
export const isDirection: Shape = recordOf('a direction', DIRECTION_SHAPES);

const isPractice: Shape = recordOf(
  'practice',
  Object.fromEntries(Object.keys(DEFAULT_PRACTICE).map((key) => [key, finite])) as Shapes<Practice>,
);

export const SEEN_SHAPES: Shapes<SeenStation> = {
  id: aText,
  name: aText,
  index: count,
  station: isPlanStation,
  practice: isPractice,
  at: position,
  declared: orNull(oneOf('left', 'right')),
  passes: listOf(isStationPass),
  directions: listOf(isDirection),
  nearest: orNull(recordOf('a nearest place', { course: aText, measure: finite, distance: finite })),
};

/** A station's directions count on its passes. */
export const directionsFit =
  (shape: Shape): Shape =>
  (value) => {
    const found = shape(value);
    if (found !== null) return found;
    const { passes, directions } = value as Pick<SeenStation, 'passes' | 'directions'>;
    for (const [k, direction] of directions.entries())
      for (const index of direction.passes)
        if (index >= passes.length)
          return { path: `directions[${k}].passes`, expected: 'indices of its passes', found: index, range: true };
    return null;
  };

export const isSeenStation: Shape = remembered(directionsFit(recordOf('a station that passStage gives', SEEN_SHAPES)));

export const isRaceSpacing: Shape = recordOf<RaceSpacing>('spacing', {
  race: aText,
  course: aText,
  legs: listOf(recordOf('a leg', { from: aText, to: aText, length: finite, end: finite })),
  longest: finite,
  shortest: finite,
  mean: finite,
});
