/** Named parameters of the findings on exports, by code. Lengths in metres, times in seconds; ids, not names. */
import type { ItemKind } from '../../kinds.ts';

export interface ExportsParams {
  /** `end`: of items that have two places, such as boxes. */
  'export-unplaced': {
    readonly items: readonly { readonly item: ItemKind; readonly end: 'whole' | 'first' | 'last' }[];
  };
  'calendar-no-clock': { readonly missing: 'date' | 'timeZone' };
  'calendar-no-times': { readonly problem: 'noWaves' | 'noArrivals' };
  'calendar-left-out': Readonly<Record<string, never>>;
  /** `date`: of the plan; `time`: seconds after its midnight. */
  'calendar-clock-change': {
    readonly date: string;
    readonly time: number;
    readonly problem: 'skipped' | 'repeated';
  };
}
