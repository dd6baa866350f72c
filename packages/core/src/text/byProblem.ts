/** Texts of a code under which several problems are reported: one for each value of `problem`. */
import type { Say } from './say.ts';
import type { Sentence } from './sentence.ts';

interface Problem {
  readonly problem: string;
}

/** The parameters of a problem. */
type Of<U extends Problem, P> = U extends Problem ? (P extends U['problem'] ? U : never) : never;

/** A text for each problem of a code. */
export type ProblemTexts<U extends Problem> = {
  readonly [P in U['problem']]: (params: Of<U, P>, say: Say) => Sentence;
};

/** The text of a code: that of the problem in its parameters. */
export const byProblem =
  <U extends Problem>(texts: ProblemTexts<U>) =>
  (params: U, say: Say): Sentence =>
    (texts[params.problem as U['problem']] as (params: U, say: Say) => Sentence)(params, say);
