/** What is proven of the places that were found, in the units shown. */
import type { Units } from '@halfcup/core/plan';
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
    return `There may be a better solution. None has fewer than ${counted(error, 'error')}; with that many errors, none has fewer than ${counted(warning, 'warning')}; with that many of both, the longest legs add up to at least ${short(longest)}.`;
  }
  const reach =
    stepBeyond > step && within > NEAR
      ? `${short(NEAR)}, then every ${short(stepBeyond)} up to ${short(within)}`
      : short(within);
  return `Proven best of all combinations of the ${tried} places tried: one every ${short(step)} within ${reach}, then finer around the best.`;
}
