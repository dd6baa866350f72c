/**
 * One vehicle on a course: when it leaves and arrives, so that it is nowhere before the course is open to it, and
 * how late it would be where the course closes. It goes at one speed and waits where it stands. Limits are linear
 * between the clock's entries and so is the vehicle, so that the entries and the ends are the only places to look at.
 */
import { timeAt, type Timeline } from './clockAlong.ts';

export interface Limits {
  /** Not earlier than this. */
  readonly opens: Timeline;
  /** Not later than this. */
  readonly closes: Timeline;
}

export const NO_LIMIT: Timeline = { measures: [], times: [] };

export interface Move {
  readonly leave: number;
  readonly arrive: number;
  /** Seconds by which it would be on closed course, 0 where it is not. */
  readonly late: number;
}

/** From one measure to another, ready at a time, at `speed` metres a second. */
export function move({ opens, closes }: Limits, from: number, to: number, ready: number, speed: number): Move {
  const [low, high] = from < to ? [from, to] : [to, from];
  const between = [...opens.measures, ...closes.measures].filter((measure) => measure > low && measure < high);
  const points = [from, ...between, to].map((measure) => ({ measure, after: Math.abs(measure - from) / speed }));
  const leave = Math.max(ready, ...points.map(({ measure, after }) => (timeAt(opens, measure) ?? ready) - after));
  const late = Math.max(
    0,
    ...points.map(({ measure, after }) => leave + after - (timeAt(closes, measure) ?? Infinity)),
  );
  return { leave, arrive: leave + Math.abs(to - from) / speed, late };
}
