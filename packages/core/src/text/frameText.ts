/** What every paper shares, as a language fills it in: frame, words for items and sides, blanks. */
import type { ItemKind, PointKind, Served } from '../kinds.ts';
import type { StreetWords } from './streetWords.ts';
import type { SupplyWords } from './supplyWords.ts';

/** What every paper shares: frame, words for items and sides, blanks. */
export interface FrameText {
  /** Begins the version that a paper is of: "Version 3". */
  readonly version: (version: string) => string;
  readonly noVersion: string;
  readonly printed: (at: string) => string;
  readonly destroy: string;
  readonly page: string;
  readonly of: string;
  readonly noName: string;
  /** Stands before a line to write on. */
  readonly toFill: string;
  readonly caution: string;
  readonly station: string;
  readonly items: { readonly [kind in ItemKind]: string };
  readonly served: { readonly [kind in Served]: string };
  readonly points: { readonly [kind in PointKind]: string };
  readonly supplies: SupplyWords;
  readonly left: string;
  readonly right: string;
  readonly street: StreetWords;
  readonly side: string;
  readonly sideUnclear: string;
  /** A day with its weekday (from 0, Sunday), day of the month, month (from 0, January) and year. */
  readonly date: (weekday: number, day: number, month: number, year: number) => string;
  /** A whole number with the marks that the language puts into it. */
  readonly count: (value: number) => string;
}
