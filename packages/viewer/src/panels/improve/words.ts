/** What is proven of positions that were found, in the units shown. */
import type { Units } from '@halfcup/core';
import type { Improved } from '../../state/store/store.ts';
import { counted, lengthText } from '../../words.ts';

/** Beyond this many metres places are tried farther apart. */
const NEAR = 500;

export function provenText(
  { proof, tried, step, stepBeyond, within }: Pick<Improved, 'proof' | 'tried' | 'step' | 'stepBeyond' | 'within'>,
  units: Units,
): string {
  const short = (metres: number): string => lengthText(metres, units);
  if (proof !== 'optimal') {
    const { error, warning, longest } = proof.bound;
    return `Not proven to be the best: no combination has fewer than ${counted(error, 'error')}, nor with as few of them fewer than ${counted(warning, 'warning')}, nor longest legs that add up to less than ${short(longest)}.`;
  }
  const reach =
    stepBeyond > step && within > NEAR
      ? `${short(NEAR)}, every ${short(stepBeyond)} beyond to ${short(within)}`
      : short(within);
  return `Proven: of all combinations of the ${tried} places tried (every ${short(step)} within ${reach}, then finer around the best) none is better.`;
}
