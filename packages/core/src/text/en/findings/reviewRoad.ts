/** What the checks say of the road and of points beside it. */
import type { RoadParams } from '../../params/review.ts';
import type { Say } from '../../say.ts';
import { some } from '../../some.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { aPoint, begin, sure } from '../nouns.ts';

const LOOK = 'Check on the ground.';

/** Degrees, never rounded down to what is allowed. */
const turnOver = (degrees: number, most: number): string => `${Math.max(Math.round(Math.abs(degrees)), most + 1)}°`;

const upOrDown = (along: number, say: Say): string =>
  `${say.length(Math.abs(along))} ${along < 0 ? 'before' : 'after'}`;

const INSIDE = {
  inside: ', on their side: runners cut in along them',
  outside: ', away from them: runners on the shortest way must come across to them',
} as const;

function dropSide(params: RoadParams['drop-side'], say: Say): Sentence {
  const point = begin(aPoint(params.point, say));
  const away = 'offset' in params ? say.length(Math.abs(params.offset)) : '';
  switch (params.is) {
    case 'across':
      return [
        `${point} lies ${away} to the ${say.side(params.side)} of the course; the tables stand on the ${say.side(params.tables)}.`,
        'It should be on the tables’ side, or everything must be carried across the course.',
        'Move it, or drop supplies before the road closes and waive this.',
      ];
    case 'far':
      return [
        `${point} is more than ${say.length(params.radius)} from the course, so it is unclear on which side it lies.`,
        null,
        LOOK,
      ];
    case 'tables-unclear':
      return [
        `The side of the tables is unclear, and so is whether ${aPoint(params.point, say)} lies on it.`,
        null,
        LOOK,
      ];
    default:
      return [
        `${point} is ${away} from the course line: its side is only ${sure(params.confidence, say)}.`,
        null,
        LOOK,
      ];
  }
}

function trashBlocks(params: RoadParams['trash-blocks-medical'], say: Say): Sentence {
  const medical = aPoint(params.medical, say);
  if (params.is === 'far') {
    const far = `${begin(aPoint(params.point, say))} is more than ${say.length(params.radius)} from the course`;
    return [`${far}: it is unclear whether the trash lies between ${medical} and its access point.`, null, LOOK];
  }
  const between = `${say.length(params.overlap)} of the row of trash boxes lies between ${medical} and its access point`;
  if (params.side === null) return [`${between}, but it is unclear whether all three are on one side.`, null, LOOK];
  return [
    `${between}, all on the ${say.side(params.side)}.`,
    'A stretcher needs a way free of boxes and cups.',
    'Move a point so that both come before the trash or both after it, or place the trash by hand.',
  ];
}

function medicalAccess({ point, nearest, limit, far }: RoadParams['medical-without-access'], say: Say): Sentence {
  const medical = begin(aPoint(point, say));
  if (nearest === null)
    return [
      `${medical} has no access point: the plan has none.`,
      `One should be within ${say.length(limit)}.`,
      'Add one that an ambulance can reach.',
    ];
  const { measured, limit: most } = say.compare(nearest.distance, limit);
  const names = [
    ...(nearest.point.name === null ? [] : [say.quote(nearest.point.name)]),
    ...(nearest.station === null ? [] : [`at ${say.station(nearest.station)}`]),
  ];
  return [
    `${medical} is ${nearest.distance < 1000 ? measured : say.far(nearest.distance)} from the nearest access point${names.length === 0 ? '' : ` (${names.join(' ')})`}, as the crow flies.`,
    `It should be at most ${most}.`,
    far
      ? 'Add one that an ambulance can reach.'
      : 'Move one of them, add a nearer access point, or agree with the medical lead on carrying that far and waive this.',
  ];
}

export const road: TextsOf<RoadParams> = {
  'access-missing': () => [
    'There is no access point and no supplies drop.',
    'There should be one, so that supplies and an ambulance know where to drive.',
    'Add one under Points.',
  ],
  'bend-near-tables': ({ turn, most, within, away, tables }, say) => [
    `The course bends ${turnOver(turn, most)} to the ${say.side(turn > 0 ? 'left' : 'right')} ${away === 0 ? 'beside' : upOrDown(away, say)} the tables${tables === null ? '' : INSIDE[tables]}.`,
    `Within ${say.length(within)} of them it should bend at most ${most}°.`,
    'Move the station along the straight.',
  ],
  'clear-width': ({ measured, limit, road: width, taken, crew }, say) => {
    const { measured: clear, limit: least } = say.compare(Math.max(measured, 0), limit);
    const short = limit - measured;
    return [
      `Only ${clear} of the ${say.length(width)} road stays clear: tables and hand-out crew (${say.length(crew)} assumed) take ${say.length(taken)}.`,
      `At least ${least} should stay clear.`,
      `${short <= taken ? `Move the tables back ${say.enough(short)}, or move` : 'Move'} to a wider road, or agree on a smaller width with the road authority.`,
    ];
  },
  'descent-with-wheels': ({ measured, limit, race, over }, say) => {
    const { measured: grade, limit: most } = say.comparePercent(measured, limit);
    return [
      `${say.race(race)}, on wheels, descends at ${grade} over the ${say.length(over)} before the tables.`,
      `It should be less than ${most}, as racers on wheels arrive fast and stop late.`,
      'Move the tables, or keep the road clear until racers on wheels are through, and tell the crew.',
    ];
  },
  'drop-side': dropSide,
  'grade-at-tables': ({ measured, limit, climbs, around }, say) => {
    const { measured: grade, limit: most } = say.comparePercent(measured, limit);
    return [
      `The course ${climbs ? 'climbs' : 'falls'} ${grade} at the tables, measured from ${say.length(around)} before them to ${say.length(around)} after.`,
      `It should be at most ${most}.`,
      'Look for a level stretch, or level the tables.',
    ];
  },
  'medical-without-access': medicalAccess,
  'responders-width': ({ measured, limit, road, stations = [] }, say) => {
    const { measured: clear, limit: least } = say.compare(Math.max(measured, 0), limit);
    return [
      stations.length > 1
        ? `As little as ${clear} of road stays clear at ${some(stations.map(say.station), say, (count) => `${say.count(count)} more`)}, which have first-aid or access points.`
        : `Only ${clear} of the ${say.length(road)} road stays clear beside tables and hand-out crew, with a first-aid or access point here.`,
      `A fire apparatus road needs ${least} clear.`,
      'Ask the fire marshal and the medical lead how vehicles get through, or move the tables back.',
    ];
  },
  'trash-blocks-medical': trashBlocks,
};
