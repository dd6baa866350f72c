/** Makes the findings on reading GPX, with their English sentences. */
import { gpx } from '../text/en/findings/gpx.ts';
import type { GpxParams } from '../text/params/gpx.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const gpxFinding: Maker<GpxParams> = findingMaker(gpx);
