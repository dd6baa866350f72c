/**
 * How much a search looks at: places near one another are tried in all combinations, so that many stations on one stretch get
 * fewer places each. The same plan always gets the same, whatever the machine.
 */
import type { Layout, StationLayout } from '../layout/layout.ts';
import { inverseLength } from '../geodesy/karney.ts';

/** Combinations of two neighbours' places, all pairs of neighbours together: a minute or two of work. */
const COMBINATIONS = 4_000_000;
/** From sign to trash and a little more, metres: what two stations can have in common. */
const STRETCH = 300;

/** Pairs of stations whose places may meet, and of those that follow one another in a race. */
function pairsOf({ stations, spacing }: Layout, movable: readonly boolean[], within: number): number {
  const legs = spacing.reduce((sum, race) => sum + race.legs.length, 0);
  const near = (a: StationLayout, b: StationLayout): boolean =>
    inverseLength(a.at[0], a.at[1], b.at[0], b.at[1]) <= 2 * within + STRETCH;
  let pairs = legs;
  for (const [k, a] of stations.entries())
    if (movable[k]!)
      for (let other = k + 1; other < stations.length; other++)
        if (movable[other]! && near(a, stations[other]!)) pairs++;
  return pairs;
}

/** Metres between places: `usual`, or a multiple of it by which the combinations stay under the limit. */
export function stepWithin(layout: Layout, movable: readonly boolean[], within: number, usual: number): number {
  const pairs = pairsOf(layout, movable, within);
  const combinations = (step: number): number => pairs * (2 * Math.floor(within / step) + 1) ** 2;
  let step = usual;
  while (combinations(step) > COMBINATIONS && step < within) step += usual;
  return step;
}
