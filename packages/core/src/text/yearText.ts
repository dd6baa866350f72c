/** What the forms of the year are called: heads of their columns, words of their papers. */
import type { LeftKey } from '../kinds.ts';

export interface YearText {
  /** Head of the column of station ids, or names. */
  readonly station: string;
  readonly name: string;
  /** Heads of the leftover form. */
  readonly left: Readonly<Record<LeftKey, string>>;
  /** Head of what was sent to a station. */
  readonly sent: string;
  /** Between the ends of a range. */
  readonly to: string;
  readonly roster: RosterText;
  readonly order: OrderText;
  /** Heads of the table of crew by the hour, beside station and name. */
  readonly crewHeads: readonly string[];
  readonly learning: LearningText;
}

/** The paper on what the counts teach. */
export interface LearningText {
  readonly title: string;
  readonly about: string;
  readonly how: string;
  readonly kindsTitle: string;
  readonly kinds: readonly [
    what: string,
    used: string,
    expected: string,
    factor: string,
    range: string,
    stations: string,
  ];
  readonly ratesTitle: string;
  readonly rates: readonly [who: string, what: string, now: string, next: string, spread: string];
  readonly divisions: Readonly<Record<'run' | 'walk' | 'wheels', string>>;
  readonly stationsTitle: string;
  readonly stations: readonly [station: string, what: string, used: string, expected: string, factor: string];
  /** Where one station alone has counted. */
  readonly oneStation: string;
  readonly heat: (heat: string) => string;
  readonly heats: Readonly<Record<'cool' | 'warm' | 'hot', string>>;
  readonly form: string;
  readonly formAbout: string;
}

/** The roster and its sign-in sheet. */
export interface RosterText {
  /** Heads of its columns, beside name and station. */
  readonly role: string;
  readonly from: string;
  readonly until: string;
  readonly phone: string;
  readonly title: string;
  readonly about: string;
  /** Columns of the sheet. */
  readonly columns: readonly [
    name: string,
    role: string,
    hours: string,
    arrived: string,
    left: string,
    signature: string,
  ];
  readonly needs: (crew: string, from: string, until: string, shifts: number) => string;
  readonly missing: (count: string) => string;
  readonly ends: (time: string) => string;
  readonly sum: string;
}

/** The supply order. */
export interface OrderText {
  readonly title: string;
  readonly deliver: (date: string) => string;
  readonly noDate: string;
  readonly columns: readonly [orderBy: string, item: string, packs: string, price: string, cost: string];
  readonly total: string;
  readonly unpriced: (count: number) => string;
  /** An amount of money, without its currency: "1,234.50". */
  readonly amount: (value: number) => string;
  /** Heads of the table for other tools. */
  readonly heads: readonly string[];
}
