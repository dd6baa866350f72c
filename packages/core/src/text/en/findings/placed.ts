/** What is said of points recorded on the ground. Down the course is "forward", up the course "back". */
import type { PlacedParams, StationItem } from '../../params/placed.ts';
import type { Say } from '../../say.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { begin, sure, THE, theItem } from '../nouns.ts';

const NAME_IT = 'Name it by its station and what it is, such as “s1 sign”';
const SAMPLE = { metric: 'wheel 89.6 m', imperial: 'wheel 98 yd' } as const;

const aPoint = (name: string | null, say: Say): string =>
  name === null ? 'a point without a name' : `point ${say.quote(name)}`;

const thePoint = (name: string | null, say: Say): string => begin(aPoint(name, say));

const thing = ({ item, end }: PlacedParams['placed-wheel-unused']): string =>
  end === null ? THE[item] : `the ${end === 'from' ? 'beginning' : 'end'} of ${THE[item]}`;

const itemOf = ({ station, item, measure }: StationItem, say: Say): string =>
  `${THE[item]} of ${say.station(station)}${measure === null ? '' : ` for runners at ${say.far(measure)}`}`;

const reference = (item: PlacedParams['placed-wheel-unused']['item']): string =>
  item === 'sign' ? 'before the first table' : 'after the last table';

const way = (move: number): string => (move > 0 ? 'forward' : 'back');

function ambiguous(params: PlacedParams['placed-ambiguous'], say: Say): Sentence {
  switch (params.is) {
    case 'stations': {
      const names = [...new Set(params.stations.map(say.station))];
      const what =
        names.length > 1
          ? `names ${say.all(names)}`
          : `fits ${say.count(params.stations.length)} stations called ${names[0]}`;
      return [`${thePoint(params.point, say)} ${what}.`, 'It is not used.', `${NAME_IT}.`];
    }
    case 'between':
      return [
        `${thePoint(params.point, say)} could be ${say.any(params.of.map((one) => itemOf(one, say)))}.`,
        `Its error of ${say.length(params.r95)} leaves that open, so it is not used.`,
        `${NAME_IT}.`,
      ];
    default:
      return [
        `${begin(say.all(params.points.map((name) => aPoint(name, say))))} both stand for ${itemOf(params.of, say)}.`,
        'Only one should; none is used.',
        'Remove the wrong one, or name it by what it is.',
      ];
  }
}

const MISSED = {
  sign: 'its distance to the first table is not checked',
  trash: 'its distance to the last table is not checked',
  table: 'distances to it are taken from where the plan has it',
} as const;

export const placed: TextsOf<PlacedParams> = {
  'placed-ambiguous': ambiguous,
  'placed-assumptions': ({ perHdop, r95, between, wheelShare, wheelFixed }, say) => [
    `Assumed error of a point (95 %): ${say.length(perHdop)} × hdop; ${say.length(r95)} without hdop and for planned places; ± ${say.length(between)} between two.`,
    `Assumed error of a wheel: ${say.percent(wheelShare)} plus ${say.length(wheelFixed)}.`,
    'One point at a table marks its first end; trash has no tolerance of its own, so the sign’s is used.',
  ],
  'placed-distance': (params, say) => {
    const { item, margin, move } = params;
    const { measured, limit } = say.compare(params.measured, params.limit);
    const doubt = move === null ? ` (± ${say.length(margin)})` : '';
    return [
      `${begin(thing(params))} is ${measured}${doubt} ${reference(item)}.`,
      `It should be ${limit}${move === null ? ', but the error is too large to tell' : ''}.`,
      move === null ? 'Wheel it, or record it again.' : `Move it ${way(move)} ${say.length(Math.abs(move))}.`,
    ];
  },
  'placed-far': (params, say) => {
    const { margin, along, sure: clear } = params;
    const { measured, limit } = say.compare(params.measured, params.limit);
    const doubt = clear ? '' : ` (± ${say.length(margin)})`;
    return [
      `The tables are ${measured}${doubt} from their planned place${along === null ? '' : `, too far ${way(along)}`}.`,
      `They should be within ${limit}${clear ? '' : ', but the error is too large to tell'}.`,
      clear ? 'Move the station there, or correct the plan and review it again.' : 'Record them again.',
    ];
  },
  'placed-hdop': ({ point, hdop, r95 }, say) => [
    `${thePoint(point, say)} has an hdop of ${say.found(hdop)}, which no receiver gives.`,
    'It should be more than 0.',
    `Its error is taken as ${say.length(r95)}, as if it had none.`,
  ],
  'placed-missing': (params, say) => {
    if (params.is === 'all') return ['Nothing was recorded here.', 'The sign, tables and trash should be.'];
    const { item, measure } = params;
    const whose = measure === null ? '' : ` for runners who pass at ${say.far(measure)}`;
    return [
      `${theItem(item)}${whose} was not recorded: ${MISSED[item === 'sign' || item === 'trash' ? item : 'table']}.`,
    ];
  },
  'placed-off-course': ({ point, item, radius }, say) => [
    `${thePoint(point, say)}, ${THE[item]}, is more than ${say.length(radius)} from its course or beyond its end, so it has no course distance.`,
    null,
    'Check where it was recorded.',
  ],
  'placed-order': ({ pairs, by, planned }, say) => [
    `Runners meet ${pairs.map(([first, then]) => `${THE[first]} before ${THE[then]}`).join(', ')} (by ${say.length(by)}).`,
    `The order should be ${planned.map((kind) => say.itemInside(kind)).join(', ')}.`,
    'Move them, or correct the names of the points.',
  ],
  'placed-side': (params, say) => {
    if (params.is === 'unclear')
      return [
        `It is unclear on which side of the road ${say.all(params.items.map((kind) => THE[kind]))} ${params.items.length > 1 ? 'stand' : 'stands'}.`,
        params.items.length > 1
          ? 'They were recorded too near the course line for their error.'
          : 'It was recorded too near the course line for its error.',
        'Check on the ground.',
      ];
    const { item, side, planned, confidence } = params;
    return [
      `${theItem(item)} is on the ${say.side(side)} as its runners see it${confidence < 0.95 ? ` (${sure(confidence, say)})` : ''}.`,
      `It should be on the ${say.side(planned)}.`,
      'Move it across, or correct the side in the plan.',
    ];
  },
  'placed-swapped': ({ station, other }, say) => [
    `The points of ${say.station(station)} are where ${say.station(other)} is planned, and those of ${say.station(other)} where ${say.station(station)} is.`,
    'Their names look swapped, and are compared as if exchanged.',
    'Correct the names, or the stations on the ground.',
  ],
  'placed-unknown': (params, say) => [
    params.is === 'nothing'
      ? `${thePoint(params.point, say)} names nothing that the plan has at ${say.station(params.station)}, or something recorded already.`
      : `${thePoint(params.point, say)} is more than ${say.length(params.near)} from everything in the plan that it could be.`,
    'It is not used.',
    `${NAME_IT}, or remove it.`,
  ],
  'placed-wheel-differs': ({ wheel, positions, margin, ...which }, say) => [
    `${begin(thing(which))} is ${say.length(wheel)} ${reference(which.item)} by wheel, but ${say.length(positions)} (± ${say.length(margin)}) by position.`,
    'The wheel counts.',
    'Check where it was wheeled to.',
  ],
  'placed-wheel-needed': ({ by, margin, tolerance, ...which }, say) => {
    const { measured, limit } = say.compare(margin, tolerance);
    const how =
      which.item === 'sign' ? 'Wheel from the sign to the first table' : 'Wheel from the end of the last table to it';
    return [
      `The ${by === 'wheel' ? 'wheel' : 'position'} error of ${thing(which)} (± ${measured}) is larger than the tolerance of ${limit}.`,
      'No distance can be confirmed that way.',
      `${how} and note it in the point’s comment, such as ${say.quote(SAMPLE[say.units])}${by === 'wheel' ? '; check with a tape' : ''}.`,
    ];
  },
  'placed-wheel-unread': ({ point, text }, say) => [
    `${thePoint(point, say)} has the wheel reading ${say.quote(text)}, which is not one length; its position is used.`,
    `It should be one length with its unit, such as ${say.quote(SAMPLE[say.units])}.`,
  ],
  'placed-wheel-unused': (which) => [
    `${begin(thing(which))} was wheeled, but the plan has no wheel distance there: the line along the kerb folds back on itself.`,
    'The position is used.',
  ],
};
