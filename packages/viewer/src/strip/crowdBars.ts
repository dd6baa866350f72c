/** Runners per 100 m as bars on the strip, on a scale by powers of ten, so that few runners show beside a crowd. Pure. */
import type { CrowdAlong } from '@halfcup/core/raceday';
import type { StripScale } from './geometry.ts';

/** Counts that are marked. */
export const CROWD_TICKS = [10, 100, 1000] as const;
/** Pixels of each power of ten. */
const TEN = 12;
const MOST = 38;

/** Pixels; 0 for nobody, 2 at least for anybody. */
export const heightOf = (runners: number): number =>
  runners === 0 ? 0 : Math.min(MOST, Math.max(2, TEN * Math.log10(runners)));

const figure = (value: number): string => (Math.round(value * 10) / 10).toString();

/** A closed outline of the bars in view, standing on `foot`; empty where nobody is on the road there. */
export function bars(
  { from, every, runners }: Pick<CrowdAlong, 'from' | 'every' | 'runners'>,
  scale: StripScale,
  foot: number,
): string {
  const [low = 0, high = 1] = scale.range();
  const [near = 0, far = 0] = scale.domain();
  const first = Math.max(0, Math.floor((near - from) / every));
  const last = Math.min(runners.length - 1, Math.floor((far - from) / every));
  let path = '';
  let at = 0;
  for (let k = first; k <= last; k++) {
    const height = heightOf(runners[k]!);
    if (height !== at) {
      const x = figure(Math.max(low, scale(from + k * every)));
      path += at === 0 ? `M${x} ${figure(foot)}V${figure(foot - height)}` : `H${x}V${figure(foot - height)}`;
      if (height === 0) path += 'Z';
    }
    at = height;
  }
  if (at !== 0) path += `H${figure(Math.min(high, scale(from + (last + 1) * every)))}V${figure(foot)}Z`;
  return path;
}
