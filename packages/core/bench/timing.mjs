/** Times works in turn in one run, so that their ratios hold when the machine's speed drifts. */

export const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Milliseconds of one call. */
export function timed(work) {
  const from = performance.now();
  work();
  return performance.now() - from;
}

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

/**
 * Ours over the peer's time for one call on each of some values: the median of `rounds` rounds. A round takes the medians of
 * `slices` short slices, the two in turn, since works of microseconds are drowned where the machine stops one of them for a moment.
 */
export function overInSlices(ours, peer, values, rounds, slices) {
  const [own, other] = [ours, peer].map((one) => () => values.forEach((value) => one(value)));
  roundsOf([own, other], 0);
  const ratios = Array.from({ length: rounds }, () => {
    const pairs = Array.from({ length: slices }, () => [timed(own), timed(other)]);
    return median(pairs.map(([a]) => a)) / median(pairs.map(([, b]) => b));
  });
  return median(ratios);
}
