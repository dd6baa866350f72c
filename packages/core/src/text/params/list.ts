/** Named parameters of the findings on a list of stations. Rows are counted from 1, the header among them. */
import type { Found } from '../found.ts';
import type { Unknown } from './unknown.ts';

/** What a cell should have held. */
export type ListKind = 'distance' | 'width' | 'lon' | 'lat' | 'count' | 'side' | 'serves';

type RowProblem =
  | { readonly problem: 'value'; readonly column: string; readonly found: Found; readonly kind: ListKind }
  /** The comma or point can be a decimal mark or one of thousands. */
  | { readonly problem: 'comma'; readonly column: string; readonly found: Found }
  | { readonly problem: 'noPlace' | 'twoPlaces' | 'halfPlace' }
  | { readonly problem: 'course'; readonly name: Unknown }
  | { readonly problem: 'past'; readonly measure: number; readonly length: number }
  | { readonly problem: 'before'; readonly measure: number; readonly start: number }
  | { readonly problem: 'fields'; readonly fields: number; readonly header: number };

export interface ListParams {
  'list-unread': { readonly problem: 'empty' | 'noRows' | 'openQuote' | 'afterQuote' };
  'list-heads':
    | { readonly problem: 'none' | 'noPlace' }
    | { readonly problem: 'twice'; readonly column: string }
    | { readonly problem: 'unused'; readonly columns: readonly string[]; readonly more: number };
  /** The row was left out. */
  'list-row': { readonly row: number } & RowProblem;
  'list-assumed': { readonly problem: 'side' | 'tables'; readonly rows: number };
}
