/** Where other streets meet a course, by the plan's map: ticks of the strip, and the one that is pointed at. Pure. */
import type { Junction } from '@halfcup/core/ground';
import { crossingText } from '@halfcup/core/sentences';
import type { OpenPlan } from '../state/store/store.ts';
import { LINE_Y } from './frame.ts';
import type { StripScale } from './geometry.ts';

const NONE: readonly Junction[] = [];
/** Pixels from the middle of the course line, and how long a tick is. */
const FROM = 3;
const LONG = 6;
const SHORT = 4;
/** Nearer than this to a tick is on it, pixels. */
const ON = 5;

/** Along a course; none where the plan has no map. */
export const junctionsOf = ({ analysis }: OpenPlan, course: string): readonly Junction[] =>
  analysis.ground?.along.get(course)?.junctions ?? NONE;

/** Path commands of the ticks in view: up for what leaves to the left, down to the right; short for paths and driveways. */
export function junctionTicks(junctions: readonly Junction[], scale: StripScale): string {
  const [low = 0, high = 0] = scale.range();
  return junctions
    .flatMap(({ measure, sides, vehicles, access }) => {
      const x = scale(measure);
      if (x < low || x > high) return [];
      const long = vehicles && !access ? LONG : SHORT;
      return sides.map((side) =>
        side === 'left' ? `M${x.toFixed(1)} ${LINE_Y - FROM}v${-long}` : `M${x.toFixed(1)} ${LINE_Y + FROM}v${long}`,
      );
    })
    .join('');
}

/** What the nearest tick is called, within a few pixels of a measure; `null` where there is none. */
export function crossingAt(junctions: readonly Junction[], measure: number, scale: StripScale): string | null {
  const at = scale(measure);
  const near = junctions
    .map((junction) => ({ off: Math.abs(scale(junction.measure) - at), junction }))
    .filter(({ off }) => off <= ON)
    .toSorted((a, b) => a.off - b.off)[0];
  return near === undefined ? null : crossingText(near.junction, 'en');
}
