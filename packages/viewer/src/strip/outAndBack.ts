/** Stretches of a course that are run again the other way, and where on them there is room for words. Pure. */
import type { Course } from '@halfcup/core/stages';
import { stretches, type Stretch } from '../map/layers/lanes.ts';
import { keep, samplesOf } from '../state/view/derive.ts';
import type { StripPass, StripScale } from './geometry.ts';

export const retracedStretches: (course: Course) => readonly Stretch[] = keep((course) =>
  stretches(samplesOf(course)).filter((stretch) => stretch.retraced),
);

export interface Marked {
  readonly from: number;
  readonly to: number;
  /** The middle of the words, where there is room for them. */
  readonly words: number | null;
}

/** Pixels that the words take, with a little air. */
export const WORDS = 78;

/** What a pass covers of the course line, pixels. */
function covered(pass: StripPass, scale: StripScale): readonly [number, number] {
  const ends = [pass.measure, ...pass.items.flatMap(({ from, to }) => [from, to])].map((measure) => scale(measure));
  return [Math.min(...ends) - 8, Math.max(...ends) + 8];
}

/** The middle of the widest free room between two ends, where it holds the words. */
function room(from: number, to: number, taken: readonly (readonly [number, number])[]): number | null {
  const inside = taken.filter(([low, high]) => high > from && low < to).toSorted((a, b) => a[0] - b[0]);
  let best: readonly [number, number] = [from, from];
  let at = from;
  for (const [low, high] of [...inside, [to, to] as const]) {
    if (low - at > best[1] - best[0]) best = [at, low];
    at = Math.max(at, high);
  }
  return best[1] - best[0] >= WORDS ? (best[0] + best[1]) / 2 : null;
}

/** Stretches in view, in pixels. */
export function markedStretches(found: readonly Stretch[], passes: readonly StripPass[], scale: StripScale): Marked[] {
  const [low = 0, high = 0] = scale.range();
  const taken = passes.map((pass) => covered(pass, scale));
  return found.flatMap((stretch) => {
    const from = Math.max(low, scale(stretch.from));
    const to = Math.min(high, scale(stretch.to));
    return to - from < 2 ? [] : [{ from, to, words: room(from, to, taken) }];
  });
}
