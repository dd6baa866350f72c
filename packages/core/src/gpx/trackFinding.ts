/** Makes the findings on choosing a line, with their English sentences alone: what reads no GPX loads no others. */
import { tracks } from '../text/en/findings/tracks.ts';
import type { TrackParams } from '../text/params/gpx.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const trackFinding: Maker<TrackParams> = findingMaker(tracks);
