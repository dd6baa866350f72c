/** What is said of a recorded item, as bare figures in the units shown. */
import type { PlacedVerdict, Units } from '@halfcup/core';
import { ITEM_WORD, wheelFigure } from './words.ts';

/** "Trash, far end": one point may stand for a whole stretch. */
export const placedItem = ({ item, end }: PlacedVerdict): string =>
  `${ITEM_WORD[item]}${end === undefined ? '' : end === 'from' ? ', near end' : ', far end'}`;

/** "20.0 upstream"; nothing where it stands well already. */
export function moveText({ move }: PlacedVerdict, units: Units): string {
  const figure = wheelFigure(Math.abs(move), units);
  return Number(figure) === 0 ? '' : `${figure} ${move < 0 ? 'upstream' : 'downstream'}`;
}

/** "2 hold, 1 fails, 1 cannot tell": in the words of the verdicts. */
export function verdictCounts(verdicts: readonly PlacedVerdict[]): string {
  const of = (verdict: PlacedVerdict['verdict']): number => verdicts.filter((one) => one.verdict === verdict).length;
  const [holds, fails, unclear] = [of('holds'), of('fails'), of('cannot tell')];
  return `${holds} ${holds === 1 ? 'holds' : 'hold'}, ${fails} ${fails === 1 ? 'fails' : 'fail'}, ${unclear} cannot tell`;
}
