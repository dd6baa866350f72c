/** What the checks say of ways that runners take. */
import type { PassAt } from '../../params/review.ts';
import type { FlowParams, StretchPart } from '../../params/reviewFlows.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { passAt } from '../nouns.ts';

/** So many passes are told one by one; the plan shows all. */
const MOST_PASSES = 2;

const PARTS: { readonly [part in StretchPart]: string } = {
  sign: 'the sign',
  tables: 'the tables',
  boxes: 'the trash boxes',
};

const parts = (list: readonly StretchPart[], say: Say): string => say.all(list.map((part) => PARTS[part]));

const byTables = (away: number, say: Say): string =>
  away === 0 ? 'beside the tables' : `${say.length(Math.abs(away))} ${away < 0 ? 'before' : 'after'} the tables`;

function some(all: readonly PassAt[], say: Say): string {
  const told = all.slice(0, MOST_PASSES).map((pass) => passAt(pass, say));
  const left = all.length - told.length;
  return left === 0 ? say.all(told) : `${told.join(', ')} and ${say.count(left)} more`;
}

export const flows: TextsOf<FlowParams> = {
  'flows-share-width': ({ other, measured, road, limit, each }, say) => {
    if (measured === null || road === null)
      return [
        `Runners come both ways past the tables (${some(other, say)} the other way); no width of road is given.`,
        `Each way should have ${say.length(each)} beside the tables: whether it has cannot be judged.`,
        'Enter the width of the road.',
      ];
    const { measured: clear, limit: least } = say.compare(measured, limit);
    return [
      `Only ${clear} of the ${say.length(road)} road stays clear beside the tables for runners both ways (the other way: ${some(other, say)}).`,
      `It should be at least ${least}, ${say.length(each)} for each way.`,
      'Move to a wider road, or agree with the road authority how to part the two ways.',
    ];
  },
  'fork-in-stretch': ({ races, how, away, meets, misses }, say) => {
    const who = say.all(races.map(say.race));
    const verb = how === 'joins' ? (races.length > 1 ? 'join' : 'joins') : races.length > 1 ? 'leave' : 'leaves';
    const passes = meets.length === 0 ? '' : `pass ${parts(meets, say)}, but `;
    return [
      `${who} ${verb} this road ${byTables(away, say)}: runners ${passes}miss ${parts(misses, say)}.`,
      'Where courses join or part, runners should pass all of a station or none of it.',
      'Move the station so that all of it lies on one side of the fork.',
    ];
  },
  'leg-crosses': ({ courses, measure, touches, away }, say) => {
    const one = courses.length === 1;
    const verb = touches ? (one ? 'comes onto' : 'come onto') : one ? 'crosses' : 'cross';
    return [
      `${say.all(courses.map(say.course))} ${verb} this road ${byTables(away, say)} (at ${say.far(measure)}).`,
      'No other leg should cross or touch it between the sign and the last box.',
      'Move the station to where no other runners cross.',
    ];
  },
  'passers-not-served': ({ passes }, say) => [
    `${some(passes, say)} ${passes.length > 1 ? 'run' : 'runs'} past the tables and ${passes.length > 1 ? 'are' : 'is'} not served.`,
    'Runners who pass tables ask for cups, and theirs are not counted.',
    'Serve them too, or move the tables off their way.',
  ],
  'stations-face': ({ other, measured, road, limit }, say) => {
    if (measured === null || road === null)
      return [
        `The tables face those of ${say.station(other)} across the road, whose width is not given.`,
        `At least ${say.length(limit)} should stay clear between them: whether it does cannot be judged.`,
        'Enter the width of the road, or move one of the two along it.',
      ];
    const { measured: clear, limit: least } = say.compare(Math.max(measured, 0), limit);
    return [
      `The tables face those of ${say.station(other)}: between them only ${clear} of the ${say.length(road)} road stays clear.`,
      `It should be at least ${least}.`,
      'Move one of the two along the road.',
    ];
  },
};
