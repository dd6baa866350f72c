/** What stands of a station on the ground, as lines in metres from its pin: tables from end to end, signs and boxes as points; the hand-out line is people. */
import type { Position } from 'geojson';
import type { ItemKind } from '../kinds.ts';
import type { LonLat } from '../finding.ts';
import type { StationLayout } from '../layout/layout.ts';
import { itemsStanding } from './standing.ts';
import { local, toLine } from './zones.ts';

/** One thing on the ground, from one end to the other. */
export interface Footprint {
  readonly kind: ItemKind;
  readonly line: readonly [Position, Position];
}

/** Everything that stands at a station, what has no place left out. */
export function footprints(station: StationLayout): Footprint[] {
  return itemsStanding(station).flatMap(({ item }): Footprint[] => {
    if (item.kind === 'handOut') return [];
    const spot = (at: LonLat | null): Position[] => (at === null ? [] : [local(station.at, at)]);
    if (item.kind === 'trash')
      return (item.boxes ?? []).flatMap(({ at }) => spot(at).map((one) => ({ kind: item.kind, line: [one, one] })));
    const [from, to] = item.at.flatMap(spot);
    return from === undefined ? [] : [{ kind: item.kind, line: [from, to ?? from] }];
  });
}

/** Metres between two straight lines of a plane; 0 where they cross. */
export function apart([a, b]: readonly [Position, Position], [c, d]: readonly [Position, Position]): number {
  const turn = (p: Position, q: Position, r: Position): number =>
    Math.sign((q[0]! - p[0]!) * (r[1]! - p[1]!) - (q[1]! - p[1]!) * (r[0]! - p[0]!));
  if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return 0;
  return Math.min(toLine(a, c, d), toLine(b, c, d), toLine(c, a, b), toLine(d, a, b));
}
