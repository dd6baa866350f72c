/** Makes the findings on exports, with their English sentences. */
import { exports } from '../text/en/findings/exports.ts';
import type { ExportsParams } from '../text/params/exports.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const exportFinding: Maker<ExportsParams> = findingMaker(exports);
