/** Named parameters of the findings on points recorded on the ground, by code. Lengths in metres, times in seconds; ids, not names. */
export interface PlacedParams {}
