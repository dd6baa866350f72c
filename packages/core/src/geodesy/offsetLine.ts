/**
 * The line parallel to a polyline at an offset: how much longer or shorter it is than the polyline,
 * vertex by vertex. Inside corners are trimmed to where both sides meet (2·o·tan(θ/2) shorter),
 * outside corners rounded (o·θ longer). Folds, where no such line exists, are found, not mended.
 */

/** A vertex at which the line turns, in running order. */
export interface Corner {
  /** Along the polyline, metres, in the caller's own count. */
  readonly at: number;
  /** Turn in radians, to the left positive. */
  readonly turn: number;
}

/** Corrections of the offset line against the polyline, between two places on it. */
export interface OffsetReading {
  /** Metres that the offset line is longer than the polyline; `null` where it folds. */
  readonly longer: number | null;
  /** Sum of all turns without their signs, radians. */
  readonly totalTurn: number;
}

/** A trim this small is the rounding of a straight line, metres: it needs no leg. */
const ROUNDING = 1e-6;
/** A corner that turns more has no inside. */
const SHARPEST = (150 * Math.PI) / 180;
/** From here on a vertex counts as a drawn corner, whose trim may run over vertices that hardly turn. */
const DRAWN = (20 * Math.PI) / 180;
/** What hardly turns: each vertex, and all under one trim together. */
const SLIGHT = (3 * Math.PI) / 180;
const SLIGHT_TOGETHER = (6 * Math.PI) / 180;

/**
 * Reads the line at `offset` metres (left positive) from `from` to `to`, `from` ≤ `to`, over the corners
 * strictly between. It folds where a corner turns over 150°, or where two trims, or a trim and an end, overlap. `smooth`: the
 * corners stand for a line that bends all along, so that an end in one of their trims is an end in a bend, and no fold.
 */
export function readOffsetLine(
  corners: readonly Corner[],
  from: number,
  to: number,
  offset: number,
  smooth = false,
): OffsetReading {
  const inner = corners.filter(({ at }) => at > from && at < to);
  const totalTurn = inner.reduce((sum, { turn }) => sum + Math.abs(turn), 0);
  const [low, high] = smooth ? [-Infinity, Infinity] : [from, to];
  const folded = inner.some((corner, k) => Math.abs(corner.turn) > SHARPEST || !hasLegs(inner, k, low, high, offset));
  if (folded && offset !== 0) return { longer: null, totalTurn };
  const longer = inner.reduce(
    (sum, { turn }) => sum + (isInside(turn, offset) ? -2 * trimOf(turn, offset) : Math.abs(offset * turn)),
    0,
  );
  return { longer, totalTurn };
}

const isInside = (turn: number, offset: number): boolean => turn * offset > 0;

/** What each leg loses at a corner, metres; 0 at outside corners. */
const trimOf = (turn: number, offset: number): number =>
  isInside(turn, offset) ? Math.abs(offset) * Math.tan(Math.abs(turn) / 2) : 0;

/** Whether both legs of corner `k` are as long as the trims on them. */
function hasLegs(corners: readonly Corner[], k: number, from: number, to: number, offset: number): boolean {
  const trim = trimOf(corners[k]!.turn, offset);
  return trim < ROUNDING || (hasLeg(corners, k, -1, from, offset) && hasLeg(corners, k, 1, to, offset));
}

function hasLeg(corners: readonly Corner[], k: number, step: 1 | -1, end: number, offset: number): boolean {
  const { at, turn } = corners[k]!;
  const trim = trimOf(turn, offset);
  const drawn = Math.abs(turn) >= DRAWN;
  let passed = 0;
  for (let i = k + step; i >= 0 && i < corners.length; i += step) {
    const other = corners[i]!;
    const length = Math.abs(other.at - at);
    const slight = Math.abs(other.turn) < SLIGHT;
    // A slight vertex under a drawn corner's trim goes with that corner, seen from either of the two.
    if (drawn && slight && length < trim + trimOf(other.turn, offset)) {
      passed += Math.abs(other.turn);
      if (passed > SLIGHT_TOGETHER) return false;
      continue;
    }
    if (Math.abs(turn) < SLIGHT && Math.abs(other.turn) >= DRAWN && length < trim + trimOf(other.turn, offset))
      return true;
    return length >= trim + trimOf(other.turn, offset);
  }
  return Math.abs(end - at) >= trim;
}
