/** Times two works in turn in one run, so that their ratio holds when the machine's speed drifts. */

const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Milliseconds of one call. */
export function timed(work) {
  const from = performance.now();
  work();
  return performance.now() - from;
}

/** Medians of `rounds` pairs, ours and the peer's one after the other, after one warm-up of each. */
export function inTurn(ours, peer, rounds) {
  timed(ours);
  timed(peer);
  const pairs = Array.from({ length: rounds }, () => [timed(ours), timed(peer)]);
  return {
    ours: median(pairs.map(([a]) => a)),
    peer: median(pairs.map(([, b]) => b)),
    ratio: median(pairs.map(([a, b]) => b / a)),
  };
}
