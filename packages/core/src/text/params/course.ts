/** Named parameters of the findings on courses: gaps, tracks, marks, parts, by code. Lengths in metres, times in seconds; ids, not names. */
export interface CourseParams {}
