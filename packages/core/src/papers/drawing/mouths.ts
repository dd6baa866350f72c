/** Where the mouths of other streets are on a drawing. */
import type { KerbScale } from '../kerbScale.ts';
import type { KerbMouth } from './frame.ts';

/** Both ends on paper, millimetres, cut at its edges. */
export function mouthEnds({ along }: KerbMouth, { x }: KerbScale, width: number): readonly [number, number] {
  const [from, to] = along.map((at) => Math.min(Math.max(x(at), 0), width)) as [number, number];
  return [from, to];
}

/** Where the line from a street on the far side crosses the road: in the middle of its mouth, or before what stands at the right edge, millimetres. */
export function crossingOf(mouth: KerbMouth, scale: KerbScale, width: number, atRight: number): number {
  const [from, to] = mouthEnds(mouth, scale, width);
  return Math.max(from, Math.min((from + to) / 2, width - atRight - 1));
}
