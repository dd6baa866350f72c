/** The words that findings and papers share, as a language fills them in. */
import type { ItemKind, PointKind, Served } from '../kinds.ts';

export interface Words {
  /** As a sentence begins with them. */
  readonly items: { readonly [kind in ItemKind]: string };
  /** As they stand inside a sentence. */
  readonly served: { readonly [kind in Served]: string };
  readonly points: { readonly [kind in PointKind]: string };
  /** On the advance sign: drinks by "Water" (sports drink alone by its own name), then gel. */
  readonly sign: (serves: readonly Served[]) => string;
  readonly left: string;
  readonly right: string;
  readonly and: string;
  readonly or: string;
  /** Between the ends of a range: "82 to 101 m". */
  readonly to: string;
  readonly quotes: readonly [open: string, close: string];
  /** Values that cannot be shown as they are: "nothing", "a list of 3". */
  readonly found: {
    readonly [kind in 'nothing' | 'emptyText' | 'notNumber' | 'tooLarge' | 'nearZero' | 'object' | 'other']: string;
  } & { readonly list: (count: number) => string; readonly digits: (count: number) => string };
  /** A whole number with the marks that the language puts into it. */
  readonly count: (value: number) => string;
}
