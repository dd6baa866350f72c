/** Makes the findings on counts and rosters, with their English sentences. */
import { year } from '../text/en/findings/year.ts';
import type { YearParams } from '../text/params/year.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const yearFinding: Maker<YearParams> = findingMaker(year);
