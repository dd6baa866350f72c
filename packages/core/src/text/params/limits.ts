/** Named parameters of the finding that a limit is passed. */
import type { Counted, Reader } from '../../limits.ts';

export interface LimitParams {
  /** `found`: absent where reading ended at the limit, so that nobody knows how many there are. */
  'past-limit': { readonly reader: Reader; readonly what: Counted; readonly most: number; readonly found?: number };
  /** `listed`: how many problems are listed of those that there are. */
  'more-problems': { readonly listed: number };
}
