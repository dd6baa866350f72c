/** What the checks say of where things stand: down the course is "forward", up the course "back". */
import type { ItemKind } from '../../../kinds.ts';
import type { PlacingParams } from '../../params/reviewFlows.ts';
import type { Say } from '../../say.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { STANDING, aPoint, areMany, begin } from '../nouns.ts';

const BOXES = 'the trash boxes';

/** Boxes stand for the trash where things have an order. */
const inOrder = (kind: ItemKind, say: Say): string => (kind === 'trash' ? 'trash boxes' : say.itemInside(kind));
const theThing = (kind: ItemKind): string => (kind === 'trash' ? 'a trash box' : STANDING[kind]);
const things = (items: readonly ItemKind[], say: Say): string => say.all(items.map(theThing));
const placed = (byHand: readonly ItemKind[], say: Say): string =>
  byHand.length === 0 ? '' : ` (${say.all(byHand.map((kind) => inOrder(kind, say)))} placed by hand)`;
const turnOver = (degrees: number, most: number): string => `${Math.max(Math.round(Math.abs(degrees)), most + 1)}°`;

function boxDistance(
  { end, measured: at, limit: wanted, byHand, own }: PlacingParams['box-distance'],
  say: Say,
): Sentence {
  const before = at < 0;
  const { measured, limit } = say.compare(at, wanted);
  const how = byHand ? ' (placed by hand)' : own === null ? '' : ' (the station’s own distance)';
  const short = at < wanted[0];
  const by = say.enough(short ? wanted[0] - at : at - wanted[1]);
  return [
    `The ${end} trash box is ${before ? `${say.length(-at)} before the end of the tables` : `${measured} after the last table`}${how}.`,
    `It should be ${limit}${before ? ' after it' : ''}.`,
    !byHand && own !== null
      ? 'Clear the station’s own distance, or waive this if it is meant.'
      : `Move ${BOXES} ${short ? 'forward' : 'back'} ${by}.`,
  ];
}

function hardToRead(params: PlacingParams['sign-hard-to-read'], say: Say): Sentence {
  if (params.is === 'bend')
    return [
      `The course bends ${turnOver(params.turn, params.most)} to the ${say.side(params.turn > 0 ? 'left' : 'right')} at the sign, or within ${say.length(params.within)} before it.`,
      `It should bend at most ${params.most}°, so that runners see the sign in time.`,
      'Move the sign or the station along the straight.',
    ];
  const { measured: grade, limit: most } = say.comparePercent(params.measured, params.limit);
  return [
    `The course falls ${grade} over the ${say.length(params.over)} before the sign.`,
    `It should fall at most ${most}, so that runners have time to read the sign.`,
    'Move the sign or the station off the descent.',
  ];
}

function wayBlocked(params: PlacingParams['medical-way-blocked'], say: Say): Sentence {
  const [medical, access] = [aPoint(params.medical, say), aPoint(params.access, say)];
  if (params.by === 'flow')
    return [
      `The way from ${medical}, on the ${say.side(params.side)}, to ${access} crosses the course.`,
      'A stretcher or an ambulance should not have to cross runners.',
      'Put both on one side, or agree with the medical lead how runners are held, and waive this.',
    ];
  const one = !areMany(params.items);
  return [
    `${begin(things(params.items, say))} ${one ? 'stands' : 'stand'} on the straight way from ${medical} to ${access}.`,
    'A stretcher needs a way free of tables and signs.',
    'Move a point, or what stands between them.',
  ];
}

export const placing: TextsOf<PlacingParams> = {
  'after-descent': ({ measured, limit, races, over }, say) => {
    const { measured: grade, limit: most } = say.comparePercent(measured, limit);
    return [
      `${say.all(races.map(say.race))} ${races.length > 1 ? 'descend' : 'descends'} at ${grade} over the ${say.length(over)} before the tables.`,
      `It should be less than ${most}, as runners arrive fast and stop late.`,
      'Move the tables to level road, or tell the crew and hand out farther along.',
    ];
  },
  'box-distance': boxDistance,
  'box-in-bend': ({ turn, most, after }, say) => [
    `The course bends ${turnOver(turn, most)} to the ${say.side(turn > 0 ? 'left' : 'right')} at ${BOXES}, ${say.length(Math.max(after, 0))} after the tables.`,
    `Where they stand it should bend at most ${most}°.`,
    'Move the station along the straight, or place the trash by hand.',
  ],
  'box-on-leg': ({ boxes, courses, at, measured, limit }, say) => {
    const { measured: near, limit: least } = say.compare(measured, limit);
    const who = say.all(courses.map(say.course));
    return [
      `${boxes === 1 ? 'A trash box stands' : `${say.count(boxes)} trash boxes stand`} in the way of ${who}, ${near} from its line (at ${say.far(at)}).`,
      `Boxes should be at least ${least} from it.`,
      'Move the station, or place the trash by hand, clear of the mouth.',
    ];
  },
  'boxes-few': ({ boxes, needed, cups, perBag, bags }, say) => [
    `${boxes === 1 ? 'There is one trash box' : `There are ${say.count(boxes)} trash boxes`} for about ${say.count(cups)} used cups.`,
    `At least ${say.count(needed)} are needed: a bag holds ${say.count(perBag)} cups, and a box takes ${say.count(bags)} bags a day (assumed).`,
    'Add boxes, or plan to empty them more often and waive this.',
  ],
  'boxes-missing': ({ every }, say) => [
    'Cups are handed out, and there is no trash box.',
    'Boxes should stand after the tables, where runners drop their cups.',
    `Set the number of boxes, or clear it for one every ${say.length(every)}.`,
  ],
  'item-order': ({ met, wanted, byHand }, say) => {
    const order = (kinds: readonly ItemKind[]): string => kinds.map((kind) => inOrder(kind, say)).join(', then ');
    return [
      `Runners meet ${order(met)}${placed(byHand, say)}.`,
      `The order should be ${order(wanted)}.`,
      byHand.length === 0 ? 'Correct the distances.' : 'Move them, or let the plan’s distances place them.',
    ];
  },
  'items-on-top': ({ items, overlap, byHand }, say) => [
    `${begin(things(items, say))} stand on one spot, over ${say.length(overlap)}${placed(byHand, say)}.`,
    'Each should have a place of its own.',
    'Move them apart along the road.',
  ],
  'medical-way-blocked': wayBlocked,
  'near-finish': ({ measured, limit, races }, say) => {
    const { measured: left, limit: least } = say.compareFar(measured, limit);
    return [
      `From here ${say.all(races.map(say.race))} ${races.length > 1 ? 'have' : 'has'} only ${left} to the finish.`,
      `The last station should be at least ${least} from it.`,
      'Move it back, or leave it out.',
    ];
  },
  'near-start': ({ measured, limit, races }, say) => {
    const { measured: run, limit: least } = say.compareFar(measured, limit);
    return [
      `${say.all(races.map(say.race))} ${races.length > 1 ? 'come' : 'comes'} here only ${run} after the start.`,
      `The first station should be at least ${least} from it, where runners are less packed.`,
      'Move it forward, or leave it out.',
    ];
  },
  'point-blocked': ({ items, point, station, measured, limit }, say) => {
    const { measured: near, limit: least } = say.compare(measured, limit);
    const whose = station === null ? '' : ` of ${say.station(station)}`;
    return [
      `${begin(things(items, say))} ${areMany(items) ? 'stand' : 'stands'} on ${aPoint(point, say)}${whose}, ${near} from it.`,
      `At least ${least} around it should be free.`,
      'Move the point, or what stands on it.',
    ];
  },
  'sign-hard-to-read': hardToRead,
  'sign-in-road': ({ measured, limit, road, sure }, say) => {
    const { measured: away, limit: least } = say.compare(measured, limit);
    return [
      `The sign is ${away} from the course line (placed by hand), in the road${road === null ? '' : `, which is ${say.length(road)} wide`}.`,
      `It should be at least ${least} from the line, beside the road${sure ? '' : '; the position error is too large to tell'}.`,
      sure ? 'Move it to the verge.' : 'Check on the ground.',
    ];
  },
};
