/** The side of the road, with how sure it is where that is in doubt. */
import type { Side } from '../../src/course/course.ts';

/** What is surer than this is not in doubt. */
const SURE = 0.95;

/** Probability in whole percent. */
const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** `left`, or `left, 82 % sure`. */
export const sideText = (side: Side, confidence: number): string =>
  confidence >= SURE ? side : `${side}, ${percent(confidence)} sure`;

/** As `sideText`, of a side that the plan may declare. */
export function declaredText(
  side: Side,
  declared: unknown,
  pass: { readonly side: Side; readonly confidence: number },
): string {
  if (declared === null || pass.side === side) return sideText(side, pass.confidence);
  return pass.side === 'unclear' ? `${side}, declared` : `${side}, declared; the pin is on the ${pass.side}`;
}
