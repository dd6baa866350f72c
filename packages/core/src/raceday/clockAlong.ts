/**
 * When a course opens to vehicles, closes and reopens at a measure, from the plan's `clock`: linear between the
 * entries either side that have such a time, the nearest one's beyond the first and the last.
 */
import type { PlanClock } from '../plan/plan.ts';

export type ClockKey = 'accessOpens' | 'closes' | 'sweep' | 'reopens';

/** Times (seconds after midnight) by measure, ascending. */
export interface Timeline {
  readonly measures: readonly number[];
  readonly times: readonly number[];
}

/** The entries of one course that give a time of this kind. */
export function timelineOf(clock: readonly PlanClock[], course: string, key: ClockKey): Timeline {
  const entries = clock
    .flatMap((entry) =>
      entry.course === course && entry[key] !== undefined ? [{ measure: entry.measure, time: entry[key] }] : [],
    )
    .sort((a, b) => a.measure - b.measure);
  return { measures: entries.map(({ measure }) => measure), times: entries.map(({ time }) => time) };
}

/** The time at a measure; `null` where the plan gives none for the course. */
export function timeAt({ measures, times }: Timeline, measure: number): number | null {
  const after = measures.findIndex((one) => one >= measure);
  if (after === -1) return times.at(-1) ?? null;
  const [high, highTime] = [measures[after]!, times[after]!];
  if (after === 0 || high === measure) return highTime;
  const [low, lowTime] = [measures[after - 1]!, times[after - 1]!];
  return lowTime + ((measure - low) / (high - low)) * (highTime - lowTime);
}
