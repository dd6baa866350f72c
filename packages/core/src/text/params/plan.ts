/** Named parameters of the findings on plans, by code. Lengths in metres, times in seconds; ids, not names. */
export interface PlanParams {}
