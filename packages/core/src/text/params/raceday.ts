/** Named parameters of the findings on race day, by code. Lengths in metres, times in seconds; ids, not names. */
export interface RacedayParams {}
