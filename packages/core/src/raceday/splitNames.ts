/** Distances that the columns of past results are named by: "5 km", "10K", "Mile 6", "Half", "Split 15 km", "Media". */
import { measureOfName } from '../course/markNames.ts';
import type { Metres } from '../units.ts';

/** Where a split is taken: metres from the start, or halfway. */
export type SplitPlace = Metres | 'half';

const HALF_MARATHON: Metres = 21_097.5;
const HALFWAY = /^(half|half\s?way|media|medio|mitad)$/iu;
const HALF_MARATHON_NAME = /^(half marathon|media marat[oó]n|medio marat[oó]n)$/iu;
/** Words beside a distance that leave it what it is. */
const BESIDE = /\b(split|time|at|tiempo|paso|en|por)\b|[:_]/giu;

/** Where the split of a column is taken, by its name; `null` where the name says no distance. */
export function splitPlaceOf(name: string): SplitPlace | null {
  const bare = name.replaceAll(BESIDE, ' ').replaceAll(/\s+/gu, ' ').trim();
  if (HALFWAY.test(bare)) return 'half';
  return HALF_MARATHON_NAME.test(bare) ? HALF_MARATHON : measureOfName(bare);
}
