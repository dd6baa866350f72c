/** Makes the findings on street files, with their English sentences. */
import { ground } from '../text/en/findings/ground.ts';
import type { GroundParams } from '../text/params/ground.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const groundFinding: Maker<GroundParams> = findingMaker(ground);
