/**
 * A station's kerb drawn straight on paper: stretches that hold something are to one scale, and what lies empty
 * between them is left out where it would take more room than a break. Metres in, millimetres out.
 */

/** From and to, metres; from ≤ to. */
export type Span = readonly [from: number, to: number];

export interface KerbBreak {
  /** On paper, millimetres. */
  readonly from: number;
  readonly to: number;
}

export interface KerbScale {
  /** Where a distance stands on paper; within a break linear, beyond the ends on at scale. */
  readonly x: (distance: number) => number;
  /** Millimetres on paper for a metre on the ground. */
  readonly scale: number;
  readonly breaks: readonly KerbBreak[];
  /** Where the drawing ends. */
  readonly end: number;
}

/** Least width of a break on paper. */
const BREAK = 17;
/** Larger is not easier to read: 1 : 200. */
const LARGEST = 5;

/** Spans in order, those that touch as one. */
function merged(spans: readonly Span[]): Span[] {
  const whole: [number, number][] = [];
  for (const [from, to] of spans
    .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const)
    .sort((a, b) => a[0] - b[0])) {
    const last = whole.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else whole.push([from, to]);
  }
  return whole;
}

/** The scale at which all spans, with a break wherever a gap would be wider, fill `width`; and which gaps are broken. */
function fit(
  spans: readonly Span[],
  gaps: readonly number[],
  width: number,
  wide: (k: number) => number,
): { scale: number; broken: readonly boolean[] } {
  const filled = spans.reduce((sum, [from, to]) => sum + to - from, 0);
  let broken = gaps.map(() => true);
  for (;;) {
    const at = filled + gaps.reduce((sum, gap, k) => sum + (broken[k] ? 0 : gap), 0);
    const scale = Math.min(
      LARGEST,
      at === 0 ? LARGEST : (width - broken.reduce((sum, one, k) => sum + (one ? wide(k) : 0), 0)) / at,
    );
    const next = gaps.map((gap, k) => broken[k]! && gap * scale > wide(k));
    if (next.every((one, k) => one === broken[k])) return { scale, broken };
    broken = next;
  }
}

/** The drawing's scale for the spans that hold something, between two places on paper; `first`: width of the first break, `each`: of a break. */
export function kerbScale(
  spans: readonly Span[],
  left: number,
  right: number,
  first: number = BREAK,
  each: number = BREAK,
): KerbScale {
  const whole = merged(spans);
  const gaps = whole.slice(1).map(([from], k) => from - whole[k]![1]);
  const widthOf = (k: number): number => (k === 0 ? Math.max(first, each) : each);
  const { scale, broken } = fit(whole, gaps, right - left, widthOf);
  const knots: [distance: number, x: number][] = [];
  const breaks: KerbBreak[] = [];
  let at = left;
  for (const [k, [from, to]] of whole.entries()) {
    knots.push([from, at], [to, at + (to - from) * scale]);
    at += (to - from) * scale;
    if (k === whole.length - 1) break;
    const wide = broken[k] ? widthOf(k) : gaps[k]! * scale;
    if (broken[k]) breaks.push({ from: at, to: at + wide });
    at += wide;
  }
  return { x: (distance) => between(knots, distance, scale), scale, breaks, end: at };
}

function between(knots: readonly (readonly [number, number])[], distance: number, scale: number): number {
  const [first, last] = [knots[0]!, knots.at(-1)!];
  if (distance <= first[0]) return first[1] + (distance - first[0]) * scale;
  if (distance >= last[0]) return last[1] + (distance - last[0]) * scale;
  const next = knots.findIndex(([at]) => at > distance);
  const [from, to] = [knots[next - 1]!, knots[next]!];
  return from[1] + ((distance - from[0]) / (to[0] - from[0])) * (to[1] - from[1]);
}
