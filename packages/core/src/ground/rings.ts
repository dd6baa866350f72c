/** Rings of areas: closed, the outer one counterclockwise, its holes clockwise (RFC 7946, section 3.1.6). */
import type { GroundLine } from './ground.ts';

/** Twice the area inside a closed ring in square degrees, negative where it runs clockwise. */
export function signedArea({ lon, lat }: GroundLine): number {
  let sum = 0;
  for (let i = 0; i + 1 < lon.length; i++)
    sum += (lon[i]! - lon[0]!) * (lat[i + 1]! - lat[0]!) - (lon[i + 1]! - lon[0]!) * (lat[i]! - lat[0]!);
  return sum;
}

/** The same ring, turned the way it should run. */
export function turnedRing(ring: GroundLine, counterclockwise: boolean): GroundLine {
  const area = signedArea(ring);
  return area === 0 || area > 0 === counterclockwise
    ? ring
    : { lon: ring.lon.toReversed(), lat: ring.lat.toReversed() };
}

/** The outer ring and its holes, each turned the way it should run. */
export const turnedRings = (rings: readonly GroundLine[]): readonly GroundLine[] =>
  rings.map((ring, k) => turnedRing(ring, k === 0));

/** Whether a position is inside a closed ring, by the even-odd rule; on its line either may be said. */
export function isInside({ lon, lat }: GroundLine, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0; i + 1 < lon.length; i++) {
    const [south, north] = [lat[i]!, lat[i + 1]!];
    if (south > y === north > y) continue;
    if (x < lon[i]! + ((y - south) / (north - south)) * (lon[i + 1]! - lon[i]!)) inside = !inside;
  }
  return inside;
}
