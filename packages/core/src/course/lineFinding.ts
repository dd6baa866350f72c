/** Makes the findings on building a course, with their English sentences alone: a page that only snaps loads no others. */
import { line } from '../text/en/findings/line.ts';
import type { LineParams } from '../text/params/course.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const lineFinding: Maker<LineParams> = findingMaker(line);
