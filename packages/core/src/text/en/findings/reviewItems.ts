/** What the checks say of items: down the course is "forward", up the course "back". */
import type { ItemKind } from '../../../kinds.ts';
import type { ItemsParams } from '../../params/review.ts';
import type { Say } from '../../say.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { STANDING, areMany, begin, passAt, THE } from '../nouns.ts';

const LOOK = 'Check on the ground.';

/** Several items as a sentence begins with them. */
const theItems = (items: readonly ItemKind[], say: Say): string => begin(say.all(items.map((kind) => THE[kind])));

function signMove({ measured, limit: [low, high], to }: ItemsParams['sign-distance'], say: Say): string {
  const what = to === 'table' ? 'the tables' : 'the hand-out line';
  return measured < low
    ? `Move the sign back ${say.enough(low - measured)}, or ${what} forward.`
    : `Move the sign forward ${say.enough(measured - high)}, or ${what} back.`;
}

function inZone(
  { items: kinds, zone, depth, betweenBoxes, sure, inside = false }: ItemsParams['item-in-zone'],
  say: Say,
): Sentence {
  const name = zone === '' ? 'a keep-clear zone' : `the keep-clear zone ${say.quote(zone)}`;
  const one = !areMany(kinds);
  const how = inside
    ? `${one ? 'stands' : 'stand'} in ${name}, up to ${say.length(depth)} from its edge`
    : depth < 0
      ? `${one ? 'is' : 'are'} ${say.length(-depth)} outside ${name}`
      : depth === 0
        ? `${one ? 'touches' : 'touch'} ${name}`
        : `${one ? 'reaches' : 'reach up to'} ${say.length(depth)} into ${name}`;
  return [
    `${begin(say.all(kinds.map((kind) => STANDING[kind])))} ${how}${betweenBoxes ? ', between two boxes: cups fall there' : ''}.`,
    sure ? 'Nothing should stand in it.' : 'Nothing should stand in it, but the position error is too large to tell.',
    sure
      ? `Move ${one ? 'it' : 'them'} or the station, or ask whoever needs the zone.`
      : `${LOOK.slice(0, -1)}, or ask whoever needs the zone.`,
  ];
}

export const items: TextsOf<ItemsParams> = {
  'courses-disagree': ({ measured, limit, item, courses: [one, other] }, say) => {
    const { measured: apart, limit: most } = say.compare(measured, limit);
    return [
      `The lines of ${say.course(one)} and ${say.course(other)} put ${THE[item]} in two places, ${apart} apart, on one road.`,
      `They should agree within ${most}.`,
      'Draw shared roads with the same points.',
    ];
  },
  'item-across': ({ items: kinds, offset, side, tables }, say) => [
    `${theItems(kinds, say)} ${kinds.length === 1 ? 'is' : 'are up to'} ${say.length(Math.abs(offset))} to the ${say.side(side)} of the course (placed by hand).`,
    `${kinds.length === 1 ? 'It' : 'They'} should be on the ${say.side(tables)}, as the tables are.`,
    `Move ${kinds.length === 1 ? 'it' : 'them'} across, or declare the other side.`,
  ],
  'item-in-zone': inZone,
  'item-off-course': ({ measured, limit, items: kinds }, say) => {
    const one = kinds.length === 1;
    const { measured: distance, limit: most } = say.compare(measured, limit);
    return [
      `${theItems(kinds, say)} ${one ? 'is' : 'are up to'} ${measured < 1000 ? distance : say.far(measured)} from ${one ? 'its' : 'their'} course (placed by hand).`,
      `It should be at most ${most}.`,
      `Check ${one ? 'its position' : 'their positions'} (longitude comes first), or remove ${one ? 'it' : 'them'}.`,
    ];
  },
  'item-outside': ({ items: kinds, beyond, by, lead }, say) => {
    const one = kinds.length === 1;
    const where =
      beyond === 'gap'
        ? 'across a skipped gap'
        : `${one ? '' : 'up to '}${say.enough(by)} ${beyond === 'start' ? 'before' : 'past'} the ${beyond}`;
    const how = beyond === 'gap' || !lead ? '' : `${beyond === 'start' ? ' forward' : ' back'} ${say.enough(by)}`;
    return [
      `${theItems(kinds, say)} would stand ${where}, where there is no course.`,
      null,
      `Move the station${how}, or place ${one ? 'the item' : 'them'} by hand.`,
    ];
  },
  'item-outside-allowed': ({ items: kinds, away, sure }, say) => [
    `${theItems(kinds, say)} ${kinds.length === 1 ? 'reaches' : 'reach up to'} ${say.length(away)} outside every allowed zone.`,
    sure ? 'All should stand inside one.' : 'All should stand inside one, but the position error is too large to tell.',
    sure ? 'Move what is outside, or the station, or have the zone widened.' : LOOK,
  ],
  'items-overlap': ({ before, overlap, atTables, sideUnclear, others }, say) => [
    `The stretch from sign to trash overlaps that of ${say.station(before)} by ${say.length(overlap)}${atTables ? ', as far as the tables of one of them' : ''}${others === undefined ? '' : `; ${say.count(others)} more stations reach into it`}.`,
    sideUnclear
      ? 'They should not meet on one side, and the side of one is unclear.'
      : 'One should end before the other begins on the same side.',
    `Move one away by at least ${say.enough(overlap)}, or to the other side.`,
  ],
  'sign-distance': (params, say) => {
    const { to, byHand, own } = params;
    const first = to === 'table' ? 'the first table' : 'the hand-out line';
    const behind = params.measured < 0;
    const { measured, limit } = say.compare(params.measured, params.limit);
    const how = byHand ? ' (placed by hand)' : own === null ? '' : ' (the station’s own distance)';
    return [
      `The sign is ${behind ? `${say.length(-params.measured)} behind` : `${measured} before`} ${first}${how}.`,
      `It should be ${limit}${behind ? ' before it' : ''}.`,
      !byHand && own !== null
        ? 'Clear the station’s own distance, or waive this if it is meant.'
        : signMove(params, say),
    ];
  },
  'sign-missed': ({ passes }, say) => [
    passes.length === 1
      ? `${passAt(passes[0]!, say)} does not pass the sign: its course joins between sign and tables.`
      : `${say.all(passes.map((pass) => passAt(pass, say)))} do not pass the sign: their courses join between sign and tables.`,
    null,
    'Give those runners a sign of their own, or move the station forward.',
  ],
  'tables-far-off': ({ measured, limit, road = null }, say) => {
    const { measured: away, limit: most } = say.compare(measured, limit);
    if (road !== null)
      return [
        `By the road’s width, ${say.length(road)}, the tables would stand ${away} from the course line.`,
        `It should be at most ${most}.`,
        'Correct the width, or leave it out and put the pin at the kerb.',
      ];
    return [
      `The tables would stand ${away} from the course line, where the pin is.`,
      `It should be at most ${most}.`,
      'Put the pin at the kerb, or give the width of the road.',
    ];
  },
  'tables-hidden': ({ measured, limit }, say) => {
    const { measured: swing, limit: most } = say.compare(measured, limit);
    return [
      `Between sign and tables the course swings ${swing} off the straight line, so the tables may be hidden.`,
      `It should be at most ${most}.`,
      LOOK,
    ];
  },
  'tables-mismatch': ({ item, tables }, say) =>
    tables === 0
      ? [
          `${begin(say.served(item))} is served but has no table, so it is not laid out or named on the sign.`,
          null,
          'Give it a table, or stop serving it.',
        ]
      : [
          `${begin(say.served(item))} has ${say.count(tables)} ${tables === 1 ? 'table' : 'tables'} but is not served, so none is laid out.`,
          null,
          'Serve it, or remove its tables.',
        ],
  'two-way-road': ({ measured, limit, courses, items, sure }, say) => {
    const { measured: distance, limit: least } = say.compare(measured, limit);
    return [
      `Runners on ${say.all(courses.map(say.course))} come the other way, ${distance} from ${say.all(items.map((kind) => THE[kind]))}.`,
      `It should be at least ${least}, half the clear width${sure ? '' : '; recorded lines are not exact enough to tell'}.`,
      sure ? 'Move the items to the other side, or separate the two ways with cones.' : LOOK,
    ];
  },
  'wheel-folds': ({ items: kinds, offset }, say) => [
    offset === null
      ? `There is no wheel distance to ${say.all(kinds.map((kind) => THE[kind]))}: a skipped gap lies between the chalk mark and ${kinds.length === 1 ? 'it' : 'them'}.`
      : `There is no wheel distance to ${say.all(kinds.map((kind) => THE[kind]))}: ${say.length(Math.abs(offset))} beside the course, the way there folds back on itself.`,
    offset === null ? null : 'A bend is tighter than that, or the road between two corners is too short.',
    `Place ${kinds.length === 1 ? 'it' : 'them'} by course distance, and check on the ground.`,
  ],
};
