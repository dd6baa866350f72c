/** Named parameters of the findings on what is filled in by hand before and after a race: counts, rosters. Ids, not names. */
import type { LeftKey, SupplyKind } from '../../kinds.ts';
import type { Found } from '../found.ts';

type Drink = 'water' | 'sportsDrink';

export interface YearParams {
  /** A table of comma-separated values that cannot be read; `columns`, `header`: names as they stand in the file. */
  'table-unread':
    | { readonly problem: 'openQuote' | 'afterQuote' | 'noLine' | 'noRows' }
    | { readonly problem: 'tooMany'; readonly fields: number; readonly header: number }
    | { readonly problem: 'twice'; readonly column: string }
    | { readonly problem: 'none'; readonly column: string; readonly header: readonly string[]; readonly more: number }
    /** How many rows more cannot be read. */
    | { readonly problem: 'more'; readonly rows: number };
  /** Columns that are not read. */
  'table-column-unknown': { readonly columns: readonly string[]; readonly more: number };
  'leftovers-unread':
    | { readonly problem: 'noStation' }
    | {
        readonly problem: 'unknownStation';
        readonly found: Found;
        readonly known: readonly string[];
        readonly more: number;
      }
    /** `line`: where it stood before. */
    | { readonly problem: 'twice'; readonly station: string; readonly line: number }
    | { readonly problem: 'notNumber'; readonly count: LeftKey; readonly found: Found }
    /** Packs; for loose pieces pieces. */
    | {
        readonly problem: 'tooMany';
        readonly item: SupplyKind;
        readonly left: number;
        readonly sent: number;
        readonly pieces?: true;
      }
    | { readonly problem: 'notSent'; readonly item: SupplyKind }
    /** Cups are counted, and two drinks were served from them. */
    | { readonly problem: 'whichDrink'; readonly drink: Drink }
    | { readonly problem: 'noDrink'; readonly cups: number }
    | { readonly problem: 'noCounts' };
  'roster-unread':
    | { readonly problem: 'noName' | 'noStation' | 'nobody' }
    | {
        readonly problem: 'unknownStation';
        readonly found: Found;
        readonly known: readonly string[];
        readonly more: number;
      }
    | { readonly problem: 'notTime'; readonly found: Found }
    /** Clock times. */
    | { readonly problem: 'backwards'; readonly from: number; readonly until: number }
    /** `line`: where they stood before. */
    | { readonly problem: 'twice'; readonly line: number };
}
