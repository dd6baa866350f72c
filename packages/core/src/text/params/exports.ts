/** Named parameters of the findings on exports and papers, by code. Lengths in metres, times in seconds; ids, not names. */
export interface ExportsParams {}
