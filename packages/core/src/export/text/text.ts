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
  /** A whole number with the marks that the language puts into it. */
  readonly count: (value: number) => string;
}

/** The captain's sheet. */
export interface CaptainText {
  readonly title: string;
  readonly stationOf: (number: number, count: number) => string;
  readonly emergency: {
    readonly title: string;
    /** Before the number. */
    readonly callFirst: string;
    readonly say: string;
    readonly words: string;
    readonly comeInBy: string;
    readonly grid: string;
    readonly stayOnLine: string;
    /** Before whom to call. */
    readonly thenControl: string;
    readonly tellControl: string;
    readonly stay: string;
    readonly radio: string;
  };
  /** North, north-east and so on, clockwise, as they stand in the sentence below. */
  readonly compass: readonly [string, string, string, string, string, string, string, string];
  readonly comeFrom: (compass: string) => string;
  readonly tablesOn: (side: string) => string;
  readonly drawing: {
    readonly title: string;
    readonly straight: string;
    readonly notToScale: string;
    readonly runners: string;
    readonly chalk: string;
    readonly at: string;
    readonly before: (length: string) => string;
    readonly past: (length: string) => string;
    readonly between: (from: string, to: string) => string;
    readonly along: string;
    readonly sign: (wording: string) => string;
    readonly tables: (item: string, count: number) => string;
    readonly boxes: (item: string, count: number) => string;
    readonly folds: string;
    readonly none: string;
  };
  readonly map: { readonly title: string; readonly north: string };
  readonly clock: {
    readonly title: string;
    readonly beHere: string;
    readonly ready: string;
    readonly firstWheels: string;
    readonly firstRunner: string;
    readonly busiest: string;
    readonly busiestCount: (count: string) => string;
    readonly last: string;
    readonly sweep: string;
    readonly stayOpen: string;
  };
  readonly prePour: {
    readonly title: string;
    readonly told: (tables: number, layers: number, cups: string) => string;
    readonly perLayer: (cups: string, least: string) => string;
  };
  readonly supplies: {
    readonly title: string;
    readonly packs: Readonly<Record<PackWord, string>>;
    /** At how many jugs of what, and how long it takes. */
    readonly callMore: (jugs: string, takes: string) => string;
    readonly more: string;
  };
  readonly crew: {
    readonly title: string;
    readonly roles: Readonly<Record<'handOut' | 'pour' | 'gel' | 'clean' | 'captain', string>>;
    readonly total: string;
    readonly shifts: (count: number) => string;
  };
  readonly talk: {
    readonly title: string;
    readonly channel: string;
    readonly callSign: string;
    readonly captain: string;
    readonly phone: string;
  };
  readonly order: {
    readonly setUp: readonly string[];
    readonly open: readonly string[];
    readonly after: readonly string[];
    readonly setUpTitle: string;
    readonly openTitle: string;
    readonly afterTitle: string;
    readonly bags: string;
    readonly leftovers: string;
    readonly jugs: string;
    readonly folded: string;
  };
}

/** What is sent to a station, by the names that race day gives it; a sign is one word whatever it says. */
export type PackWord =
  | 'waterJug'
  | 'sportsDrinkJug'
  | 'cups'
  | 'gels'
  | 'gloves'
  | 'bags'
  | 'towels'
  | 'stackingSheets'
  | 'table'
  | 'box'
  | 'sign'
  | 'instructions';

/** The volunteer card. */
export interface CardText {
  readonly title: string;
  readonly where: string;
  readonly when: string;
  readonly untilReleased: string;
  readonly captain: string;
  readonly bringTitle: string;
  readonly bring: readonly string[];
  readonly cupTitle: string;
  readonly rim: string;
  readonly palm: string;
  readonly handTitle: string;
  readonly callOut: (served: readonly string[]) => string;
  readonly hand: readonly string[];
  readonly fallTitle: string;
  readonly fall: readonly string[];
  readonly ride: string;
  readonly or: string;
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
