/** Makes the findings on the files of a plan's courses, with their English sentences alone: the stages after reading load no others. */
import { planSources } from '../text/en/findings/planSources.ts';
import type { SourceParams } from '../text/params/plan.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const sourceFinding: Maker<SourceParams> = findingMaker(planSources);
