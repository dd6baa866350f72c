/** Times works in turn in one run, so that their ratios hold when the machine's speed drifts. */

export const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Milliseconds of one call. */
export function timed(work) {
  const from = performance.now();
  work();
  return performance.now() - from;
}

/** A work that calls `one` with each of some values, `times` over. */
export const repeated = (one, values, times) => () => {
  for (let k = 0; k < times; k++) for (const value of values) one(value);
};

/** Milliseconds of each of `rounds` rounds of some works, one after the other, after a warm-up of each: at least a call, and until 150 ms are over. */
export function roundsOf(works, rounds) {
  for (const work of works) for (let spent = timed(work); spent < 150;) spent += timed(work);
  return Array.from({ length: rounds }, () => works.map(timed));
}

/** Medians of `rounds` pairs, ours and the peer's in turn. */
export function inTurn(ours, peer, rounds) {
  const pairs = roundsOf([ours, peer], rounds);
  return {
    ours: median(pairs.map(([a]) => a)),
    peer: median(pairs.map(([, b]) => b)),
    ratio: median(pairs.map(([a, b]) => b / a)),
  };
}
