/**
 * Points recorded on the ground, and what is recorded of them: position, its error, name.
 * The 95 % radius is 5 m × `hdop` (assumption: GPX says no accuracy in metres, and recorders that know
 * theirs write a fifth of it there), else the practice's `pinR95`.
 */
import type { Finding, LonLat, Where } from '../finding.ts';
import { placed } from '../text/en/findings/placed.ts';
import type { PlacedParams } from '../text/params/placed.ts';
import { findingMaker } from '../text/sentence.ts';
import type { GpxDocument, GpxWaypoint } from '../gpx/document.ts';

/** Metres of 95 % radius for each unit of `hdop`: assumption. */
export const R95_PER_HDOP = 5;

/** Makes findings on recorded points. */
export const makePlaced: ReturnType<typeof findingMaker<PlacedParams>> = findingMaker(placed);

export interface PlacedPoint {
  readonly waypoint: GpxWaypoint;
  readonly at: LonLat;
  /** Radius, metres, that holds the true place in 95 of 100 cases. */
  readonly r95: number;
  /** Its place in the file, and on the ground. */
  readonly where: Where;
}

/** The waypoints as points, with a finding for each `hdop` that says no error. `pinR95`: metres, where there is none. */
export function pointsOf(
  { file, waypoints }: GpxDocument,
  pinR95: number,
): { points: PlacedPoint[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const points = waypoints.map((waypoint): PlacedPoint => {
    const { lon, lat, hdop, name, line, column } = waypoint;
    const at: LonLat = [lon, lat];
    const where = { file, line, column, at };
    if (hdop !== null && !(hdop > 0))
      findings.push(makePlaced('placed-hdop', { point: name, hdop, r95: pinR95 }, { severity: 'note', where }));
    return { waypoint, at, r95: hdop !== null && hdop > 0 ? hdop * R95_PER_HDOP : pinR95, where };
  });
  return { points, findings };
}
