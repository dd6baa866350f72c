/**
 * Points recorded on the ground, and what is recorded of them: position, its error, name.
 * The 95 % radius is 5 m × `hdop` (assumption: GPX says no accuracy in metres, and recorders that know
 * theirs write a fifth of it there), else the practice's `pinR95`.
 */
import type { Finding, LonLat, Where } from '../finding.ts';
import type { GpxDocument, GpxWaypoint } from '../gpx/document.ts';

/** Metres of 95 % radius for each unit of `hdop`: assumption. */
export const R95_PER_HDOP = 5;

export interface PlacedPoint {
  readonly waypoint: GpxWaypoint;
  readonly at: LonLat;
  /** Radius, metres, that holds the true place in 95 of 100 cases. */
  readonly r95: number;
  /** How messages call it: its name in quotes, or what it is. */
  readonly label: string;
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
    const label = name === null ? 'A point without a name' : `Point "${name}"`;
    if (hdop !== null && !(hdop > 0)) {
      const message = `${label} has an hdop of ${hdop}, which no receiver has; expected more than 0. Its error is taken as ${pinR95} m, as if it had none.`;
      findings.push({ code: 'placed-hdop', severity: 'note', message, where });
    }
    return { waypoint, at, r95: hdop !== null && hdop > 0 ? hdop * R95_PER_HDOP : pinR95, label, where };
  });
  return { points, findings };
}
