/** Words of counts after the day, and of what they teach. */
import type { LeftKey, Learnt, Spread, Used } from '@halfcup/core/raceday';
import { SERVED_WORD } from '../../words.ts';
import { grouped } from './words.ts';

export const LEFT_WORD: Readonly<Record<LeftKey, string>> = {
  waterFull: 'Water jugs, full',
  waterEmpty: 'Water jugs, empty',
  sportsDrinkFull: 'Sports-drink jugs, full',
  sportsDrinkEmpty: 'Sports-drink jugs, empty',
  cupPacks: 'Packs of cups',
  cupsLoose: 'Loose cups',
  gelBoxes: 'Boxes of gels',
  gelsLoose: 'Loose gels',
};

export const DIVISION_WORD = { run: 'Runners', walk: 'Walkers', wheels: 'Wheelchair racers' } as const;

type Kind = Learnt['basis'][number]['kind'];

/** "Water": at the head of a row. */
export const kindWord = (kind: Kind): string =>
  `${SERVED_WORD[kind].charAt(0).toUpperCase()}${SERVED_WORD[kind].slice(1)}`;

/** "3,050 cups of water, 1,590 gels". */
export const usedText = (used: Used): string =>
  (['water', 'sportsDrink', 'gel'] as const)
    .flatMap((kind) => {
      const count = used[kind];
      if (count === undefined) return [];
      return [kind === 'gel' ? `${grouped(count)} gels` : `${grouped(count)} cups of ${SERVED_WORD[kind]}`];
    })
    .join(', ');

/** "1.11": the digits that a proposal can bear. */
export const rateText = (rate: number): string => rate.toFixed(2);

/** "0.98 to 1.21", of rates between the lowest and the highest station. */
export const spreadText = (rate: number, spread: Spread | null): string =>
  spread === null ? 'one station' : `${rateText(rate * spread.low)} to ${rateText(rate * spread.high)}`;
