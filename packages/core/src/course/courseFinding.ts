/** Makes the findings on courses, with their English sentences. */
import { course } from '../text/en/findings/course.ts';
import type { CourseParams } from '../text/params/course.ts';
import { findingMaker, type Maker } from '../text/sentence.ts';

export const courseFinding: Maker<CourseParams> = findingMaker(course);
