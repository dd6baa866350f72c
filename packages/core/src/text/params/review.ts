/** Named parameters of the findings on the layout: the checks of review/, by code. Lengths in metres, times in seconds; ids, not names. */
export interface ReviewParams {}
