/** Named parameters of the findings on reading GPX, by code. Lengths in metres, times in seconds; ids, not names. */
export interface GpxParams {}
