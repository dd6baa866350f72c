/**
 * Places on a line for things that each take some room: in the order of where they want to be, none on another, none
 * beyond the ends, and moved as little as that allows (least squares, by pooling adjacent violators).
 */

export interface Want {
  /** Where its middle should be, millimetres. */
  readonly at: number;
  /** Millimetres. */
  readonly width: number;
}

interface Pool {
  readonly mean: number;
  readonly count: number;
}

/** Their middles, in the order given; those that want the same place keep that order. `null` where there is not room for all. */
export function slots(wants: readonly Want[], left: number, right: number): number[] | null {
  const order = wants.map((_, k) => k).sort((a, b) => wants[a]!.at - wants[b]!.at || a - b);
  let run = 0;
  const before = order.map((k) => {
    const middle = run + wants[k]!.width / 2;
    run += wants[k]!.width;
    return middle;
  });
  if (run > right - left + 1e-9) return null;
  const pools: Pool[] = [];
  for (const [i, k] of order.entries()) {
    let pool: Pool = { mean: wants[k]!.at - before[i]!, count: 1 };
    for (let last = pools.at(-1); last !== undefined && last.mean > pool.mean; last = pools.at(-1)) {
      pools.pop();
      const count = last.count + pool.count;
      pool = { mean: (last.mean * last.count + pool.mean * pool.count) / count, count };
    }
    pools.push(pool);
  }
  const places = wants.map(() => 0);
  let i = 0;
  for (const { mean, count } of pools) {
    const start = Math.min(Math.max(mean, left), right - run);
    for (const end = i + count; i < end; i++) places[order[i]!] = start + before[i]!;
  }
  return places;
}
