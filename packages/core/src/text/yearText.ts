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
