/** Squares: streets that a map draws as areas, which a course crosses where it likes. */
import { max, min } from 'd3-array';
import Flatbush from 'flatbush';
import type { Course } from '../course/course.ts';
import { toMeasure } from '../course/scale.ts';
import type { StreetStretch } from './along.ts';
import type { GroundArea } from './ground.ts';
import type { Matched } from './match.ts';
import { type Plane, type PlaneLine, drawnOn } from './plane.ts';
import { isStreet, streetName } from './streetTags.ts';

/** Asks for the square that holds a place of the plane; `null` where none does. */
export type SquareAt = (x: number, y: number) => GroundArea | null;

export function squaresIn(areas: readonly GroundArea[], plane: Plane): SquareAt {
  const squares = areas.filter(({ tags }) => isStreet(tags));
  if (squares.length === 0) return () => null;
  const rings = squares.map((square) => square.rings.map((ring) => drawnOn(plane, ring)));
  const index = new Flatbush(squares.length);
  for (const [outer] of rings) {
    const { x, y } = outer!;
    index.add(min(x)!, min(y)!, max(x), max(y));
  }
  index.finish();
  return (x, y) => {
    const found = index
      .search(x, y, x, y)
      .find((k) => rings[k]!.filter((ring) => surrounds(ring, x, y)).length % 2 === 1);
    return found === undefined ? null : squares[found]!;
  };
}

function surrounds({ x, y }: PlaneLine, px: number, py: number): boolean {
  let inside = false;
  for (let i = 0; i + 1 < x.length; i++) {
    const [y0, y1] = [y[i]!, y[i + 1]!];
    if (y0 > py !== y1 > py && x[i]! + ((x[i + 1]! - x[i]!) * (py - y0)) / (y1 - y0) > px) inside = !inside;
  }
  return inside;
}

/** Stretches of a course on squares, where it follows no street. */
export function squareStretches(course: Course, squareAt: SquareAt, chain: readonly Matched[]): StreetStretch[] {
  const found: StreetStretch[] = [];
  let open: { from: number; square: GroundArea } | null = null;
  const close = (raw: number): void => {
    if (open === null) return;
    const [{ id, tags }, from, to] = [open.square, toMeasure(course, open.from), toMeasure(course, raw)];
    if (to > from) found.push({ from, to, way: id, name: streetName(tags), tags });
    open = null;
  };
  for (const [k, { sample, on }] of chain.entries()) {
    const before = sample.begins ? undefined : chain[k - 1]?.sample;
    if (before === undefined && k > 0) close(chain[k - 1]!.sample.raw);
    const middle = before === undefined ? sample.raw : (before.raw + sample.raw) / 2;
    const square = on === null ? squareAt(sample.x, sample.y) : null;
    if (square !== (open as { square: GroundArea } | null)?.square) close(middle);
    if (square !== null) open ??= { from: middle, square };
  }
  if (chain.length > 0) close(chain.at(-1)!.sample.raw);
  return found;
}
