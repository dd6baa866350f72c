/**
 * How much each runner of past results slows over the second half, fitted to their splits: the `slow` of the pace model
 * (`pace.ts`) whose times at the splits miss the recorded ones least, by least squares in the model's own terms, where it
 * is linear: share · (total work) = work up to there. Splits count from where the finish time does.
 */
import type { Finding } from '../finding.ts';
import type { RacedayParams } from '../text/params/raceday.ts';
import type { Metres, Seconds } from '../units.ts';
import type { Hills } from './hills.ts';
import { type Work, timeShare, workTo } from './pace.ts';
import { racedayFinding } from './racedayFinding.ts';
import type { PastTimes } from './results.ts';
import type { PastSplit } from './splitColumns.ts';

/** Bounds of what a runner's splits can tell, shares: who speeds up by half or slows to a third has a split that is misread. */
const LEAST = -0.5;
const MOST = 2;
/** How far the fitted time at a split may be off, of the recorded one: an assumption, well above what a bad patch on the road does. */
const OFF = 0.15;

/** What is known of how the finishers of past results slow. */
export interface FittedSlowing {
  /** By place, the fastest first; `null` where a finisher has no splits that can be used. */
  readonly slow: readonly (number | null)[];
  /** Names of the columns used; none: nothing is known. */
  readonly columns: readonly string[];
  /** Finishers with a slowing of their own. */
  readonly runners: number;
  readonly findings: readonly Finding[];
}

interface Place {
  readonly split: PastSplit;
  readonly work: Work;
}

/** The slowing of each of the past finishers of a race of `length` metres, on these hills. */
export function fittedSlowing(
  { times, splits = [] }: PastTimes,
  length: Metres,
  hills: Hills | null,
  where: { readonly race: string; readonly file: string },
): FittedSlowing {
  const measured = splits.map((split) => ({ split, at: split.at === 'half' ? length / 2 : split.at }));
  const beyond = measured.filter(({ at }) => at >= length).map(({ split }) => split.column);
  const places = measured
    .filter(({ at }) => at < length)
    .sort((a, b) => a.at - b.at)
    .map(({ split, at }): Place => ({ split, work: workTo(at / length, hills) }));
  const total = workTo(1, hills);
  const order = times.map((_, k) => k).sort((a, b) => times[a]! - times[b]! || a - b);
  const fits = order.map((k) => fitOf(places, total, times[k]!, k));
  const [fitted, wrong] = [fits.filter((fit) => typeof fit === 'number').length, countOf(fits, 'wrong')];
  const unusable = wrong > fitted;
  const said = (problem: RacedayParams['splits-left-out'], severity: 'note' | 'warning'): Finding =>
    racedayFinding('splits-left-out', problem, { severity, where });
  const findings = [
    ...(beyond.length === 0 ? [] : [said({ problem: 'beyond', columns: beyond, length }, 'note')]),
    ...(wrong === 0
      ? []
      : [
          said(
            { problem: unusable ? 'all' : 'runners', runners: wrong, of: wrong + fitted },
            unusable ? 'warning' : 'note',
          ),
        ]),
  ];
  if (unusable || fitted === 0) return { slow: fits.map(() => null), columns: [], runners: 0, findings };
  const slow = fits.map((fit) => (typeof fit === 'number' ? fit : null));
  return { slow, columns: places.map(({ split }) => split.column), runners: fitted, findings };
}

const countOf = <T>(all: readonly T[], one: T): number => all.filter((each) => each === one).length;

/** The slowing of one finisher; `none` without a split, `wrong` where the splits do not rise to the finish or no runner slows so. */
function fitOf(places: readonly Place[], total: Work, finish: Seconds, k: number): number | 'none' | 'wrong' {
  const recorded = places.flatMap(({ split, work }) => {
    const time = split.times[k] ?? null;
    return time === null ? [] : [{ work, share: time / finish }];
  });
  if (recorded.length === 0) return 'none';
  let [above, below, before] = [0, 0, 0];
  for (const { work, share } of recorded) {
    if (share <= before || share >= 1) return 'wrong';
    before = share;
    const weight = share * total.late - work.late;
    above += weight * (work.even - share * total.even);
    below += weight * weight;
  }
  const slow = above / below;
  if (!(slow >= LEAST && slow <= MOST)) return 'wrong';
  return recorded.every(({ work, share }) => Math.abs(timeShare(work, total, slow) / share - 1) <= OFF)
    ? slow
    : 'wrong';
}
