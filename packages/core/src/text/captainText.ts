/** The captain's sheet, as a language fills it in. */

import type { PourWords } from './pourWords.ts';

/** The captain's sheet. */
export interface CaptainText {
  readonly title: string;
  /** Under the code of the place. */
  readonly scan: string;
  /** Before what is counted at the end. */
  readonly counts: string;
  readonly counted: Readonly<Record<'waterJug' | 'sportsDrinkJug' | 'cups' | 'gels', string>>;
  readonly stationOf: (number: number, count: number) => string;
  readonly emergency: {
    readonly title: string;
    /** What is meant by it, the commonest signs: the usual caution, no medical advice. */
    readonly signs: string;
    /** Before the number. */
    readonly callFirst: string;
    readonly say: string;
    readonly words: string;
    /** Before the place by its street. */
    readonly where: string;
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
    /** Says what a chalk mark and a wheel are. */
    readonly about: string;
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
    /** The hand-out line with the persons along it. */
    readonly hands: (item: string, count: number) => string;
    readonly keepClear: (name: string) => string;
    /** A length along the course, where none by wheel is meant. */
    readonly course: (length: string) => string;
    /** What distances are measured from and with, once under a drawing. */
    readonly measured: string;
    readonly measuredTwice: string;
    readonly people: string;
    readonly acrossNotToScale: string;
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
    readonly packed: string;
    readonly stayOpen: string;
  };
  readonly prePour: {
    readonly title: string;
    /** "Pour 470: two tables, about 235 on each, one full layer and 35 on top". */
    readonly told: (words: PourWords) => string;
    readonly perLayer: (cups: string) => string;
    readonly bottles: string;
  };
  readonly supplies: {
    readonly title: string;
    /** At how many jugs of what, and how long it takes. */
    readonly callMore: (jugs: string, takes: string) => string;
    readonly more: string;
    /** At the head of the table of full jugs by the half hour; how long more takes, where the plan says. */
    readonly left: (takes: string | null) => string;
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
