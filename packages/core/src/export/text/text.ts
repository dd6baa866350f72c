/**
 * Every sentence of the papers, as one typed record: a language is one file that fills it in.
 * Sentences with figures are functions of texts that are already formatted; they return plain text,
 * which the sheets escape. The safety sentences say less than a practitioner would, and defer.
 */
import type { ItemKind, PointKind, Served } from '../../plan/plan.ts';
import type { ListsText } from './listsText.ts';

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
  readonly left: string;
  readonly right: string;
  readonly side: string;
  readonly sideUnclear: string;
}

/** The captain's sheet. */
export interface CaptainText {
  readonly title: string;
}

/** The volunteer card. */
export interface CardText {
  readonly title: string;
}

/** One language. */
export interface SheetText {
  /** BCP 47 tag: the document's `lang`. */
  readonly language: string;
  /** Its own name for itself. */
  readonly name: string;
  readonly frame: FrameText;
  readonly captain: CaptainText;
  readonly card: CardText;
  readonly lists: ListsText;
}
