/** Stretches of a course that follow no street: none within 20 m of it that runs its way, and no square around it. */
import type { Course } from '../course/course.ts';
import { toMeasure } from '../course/scale.ts';
import type { GroundStretch } from './along.ts';
import { turnDeg } from './candidates.ts';
import type { Matched } from './match.ts';
import type { Network } from './network.ts';
import { shareNearest } from './plane.ts';
import type { Sample } from './samples.ts';
import type { SquareAt } from './squares.ts';

/** Metres from the course within which a street is followed; metres of course without one that are worth a word. */
const WITHIN = 20;
const OVER = 50;
/** Degrees by which a followed street may turn from the course. */
const TURN = 30;

export function offMapOf(
  course: Course,
  network: Network,
  squareAt: SquareAt,
  chain: readonly Matched[],
): GroundStretch[] {
  const found: GroundStretch[] = [];
  let from: number | null = null;
  const close = (raw: number): void => {
    if (from !== null && raw - from > OVER) found.push({ from: toMeasure(course, from), to: toMeasure(course, raw) });
    from = null;
  };
  for (const [k, { sample, on }] of chain.entries()) {
    const before = chain[k - 1]?.sample;
    const middle = before === undefined || sample.begins ? sample.raw : (before.raw + sample.raw) / 2;
    if (sample.begins && before !== undefined) close(before.raw);
    if (on !== null || squareAt(sample.x, sample.y) !== null || follows(network, sample)) close(middle);
    else from ??= middle;
  }
  if (chain.length > 0) close(chain.at(-1)!.sample.raw);
  return found;
}

function follows({ index, from, to, x, y, length }: Network, sample: Sample): boolean {
  const near = index?.search(sample.x - WITHIN, sample.y - WITHIN, sample.x + WITHIN, sample.y + WITHIN) ?? [];
  return near.some((segment) => {
    const [x0, y0, x1, y1] = [x[from[segment]!]!, y[from[segment]!]!, x[to[segment]!]!, y[to[segment]!]!];
    const share = shareNearest(sample.x, sample.y, x0, y0, x1, y1);
    const distance = Math.hypot(x0 + share * (x1 - x0) - sample.x, y0 + share * (y1 - y0) - sample.y);
    const over = length[segment]! > 0 ? 1 / length[segment]! : 0;
    return distance <= WITHIN && over > 0 && turnDeg(sample, (x1 - x0) * over, (y1 - y0) * over) <= TURN;
  });
}
