/** Named parameters of the findings on files, calls and the page: what the command line and the viewer find, by code. Lengths in metres, times in seconds; ids, not names. */
export interface ProgramParams {}
