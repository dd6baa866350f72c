/** What is said of a recorded item, in the units shown. */
import type { PlacedStation, PlacedVerdict } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import { ITEM_WORD, lengthText } from './words.ts';

/** "Trash, last box": one point may stand for a whole stretch. */
export const placedItem = ({ item, end }: PlacedVerdict): string =>
  `${ITEM_WORD[item]}${end === undefined ? '' : end === 'from' ? ', first box' : ', last box'}`;

/** "20 m back"; nothing where it stands well already. */
export function moveText({ move }: PlacedVerdict, units: Units): string {
  const length = lengthText(Math.abs(move), units);
  return length.startsWith('0 ') ? '' : `${length} ${move < 0 ? 'back' : 'forward'}`;
}

/** "120 m forward" of its plan, where most of the way is along the course; nothing where it stands close, or beside it. */
export function stationMove({ along, distance, verdict }: PlacedStation, units: Units): string {
  if (verdict === 'holds' || along === null || Math.abs(along) <= distance / 2) return '';
  return `${lengthText(Math.abs(along), units)} too far ${along > 0 ? 'forward' : 'back'}`;
}

/** What is shown for each verdict. */
export const VERDICT_WORD: Readonly<Record<PlacedVerdict['verdict'], string>> = {
  holds: 'OK',
  fails: 'out of place',
  'cannot tell': 'unclear',
};

/** "2 OK, 1 out of place, 1 unclear". */
export function verdictCounts(verdicts: readonly PlacedVerdict[]): string {
  const of = (verdict: PlacedVerdict['verdict']): number => verdicts.filter((one) => one.verdict === verdict).length;
  return (['holds', 'fails', 'cannot tell'] as const)
    .map((verdict) => `${of(verdict)} ${VERDICT_WORD[verdict]}`)
    .join(', ');
}
