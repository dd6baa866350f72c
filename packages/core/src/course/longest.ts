/** No course is longer, metres: points that are not of a race would become millions of vertices. */
export const LONGEST_COURSE = 10_000_000;
