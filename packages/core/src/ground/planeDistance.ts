/** Distances between segments of a plane, as squares, in the unit of the positions. */

/** From a point to a segment. */
export function squareToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const over = dx * dx + dy * dy;
  const share = over === 0 ? 0 : Math.min(Math.max(((x - ax) * dx + (y - ay) * dy) / over, 0), 1);
  const ex = ax + share * dx - x;
  const ey = ay + share * dy - y;
  return ex * ex + ey * ey;
}

type Segment = readonly [ax: number, ay: number, bx: number, by: number];

/** On which side of a segment a point lies. */
const sideOf = ([ax, ay, bx, by]: Segment, x: number, y: number): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax);

const cross = (one: Segment, other: Segment): boolean =>
  sideOf(one, other[0], other[1]) * sideOf(one, other[2], other[3]) < 0 &&
  sideOf(other, one[0], one[1]) * sideOf(other, one[2], one[3]) < 0;

/** Whether a segment crosses another, or either end of it comes as near to the other as the square of a distance. */
export const comesWithin = (one: Segment, other: Segment, most: number): boolean =>
  squareToSegment(one[0], one[1], ...other) <= most ||
  squareToSegment(one[2], one[3], ...other) <= most ||
  cross(one, other);
