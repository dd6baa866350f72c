/** What is said of a recorded item, in the units shown. */
import type { PlacedVerdict, Units } from '@halfcup/core';
import { DASH, ITEM_WORD, lengthText } from '../../words.ts';

/** "Trash, far end": one point may stand for a whole stretch. */
export const placedItem = ({ item, end }: PlacedVerdict): string => `${ITEM_WORD[item]}${end === undefined ? '' : end === 'from' ? ', near end' : ', far end'}`;

/** "20.0 m upstream"; a dash where it holds. */
export const moveText = ({ move }: PlacedVerdict, units: Units): string => (move === 0 ? DASH : `${lengthText(Math.abs(move), units)} ${move < 0 ? 'upstream' : 'downstream'}`);

export const limitText = ({ limit }: PlacedVerdict, units: Units): string => limit.map((bound) => lengthText(bound, units)).join(' to ');

/** "2 hold, 1 fails, 1 cannot tell": in the words of the verdicts. */
export function verdictCounts(verdicts: readonly PlacedVerdict[]): string {
  const of = (verdict: PlacedVerdict['verdict']): number => verdicts.filter((one) => one.verdict === verdict).length;
  const [holds, fails, unclear] = [of('holds'), of('fails'), of('cannot tell')];
  return `${holds} ${holds === 1 ? 'holds' : 'hold'}, ${fails} ${fails === 1 ? 'fails' : 'fail'}, ${unclear} cannot tell`;
}
