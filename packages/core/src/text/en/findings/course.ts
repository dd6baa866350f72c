import type { CourseParams } from '../../params/course.ts';
import type { TextsOf } from '../../sentence.ts';

export const course: TextsOf<CourseParams> = {};
