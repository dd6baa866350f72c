/** Makes the findings on race day, with their English sentences. */
import { raceday } from '../text/en/findings/raceday.ts';
import type { RacedayParams } from '../text/params/raceday.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const racedayFinding: Maker<RacedayParams> = findingMaker(raceday);
