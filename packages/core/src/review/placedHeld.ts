/** Points recorded on the ground held against a layout: which is what, where each direction's things stand, and where each station does. */
import type { Finding } from '../finding.ts';
import type { GpxDocument } from '../gpx/document.ts';
import type { Layout } from '../layout/layout.ts';
import { type PlacedGround, groundOf } from './placedGround.ts';
import { type Matching, type Target, matchPoints, targetsOf } from './placedMatch.ts';
import { type PlacedPoint, pointsOf } from './placedPoint.ts';
import { type Anchor, type PlacedStation, anchorOf, placedStation } from './placedStation.ts';
import { type Swap, exchangedBy, swapsOf } from './placedSwapped.ts';

/** A station whose tables were recorded. */
export interface HeldStation {
  readonly anchor: Anchor;
  readonly placed: PlacedStation;
}

export interface Held {
  readonly layout: Layout;
  readonly file: string;
  readonly targets: readonly Target[];
  readonly matching: Matching;
  readonly swaps: readonly Swap[];
  /** By station in the plan's order, the lead's direction first. */
  readonly grounds: readonly PlacedGround[];
  /** In the plan's order; those of which a table was recorded. */
  readonly stations: readonly HeldStation[];
  /** Of the points themselves. */
  readonly findings: readonly Finding[];
}

export function holdPoints(layout: Layout, document: GpxDocument): Held {
  const { stations } = layout;
  const { points, findings } = pointsOf(document, layout.plan.practice.pinR95);
  const targets = targetsOf(stations);
  const named = matchPoints(points, stations, targets);
  const swaps = swapsOf(named.matched, targets, stations);
  const matching = swaps.length === 0 ? named : matchPoints(points, stations, targets, exchangedBy(swaps));
  const grounds = stations.flatMap((station) =>
    station.directions.map((direction) => groundOf(layout, station, direction, matching.matched)),
  );
  const standing = grounds
    .filter(({ direction }) => direction.lead)
    .flatMap((ground) => {
      const anchor = anchorOf(ground);
      const placed = placedStation(ground, anchor);
      return anchor === null || placed === null ? [] : [{ anchor, placed }];
    });
  return { layout, file: document.file, targets, matching, swaps, grounds, stations: standing, findings };
}

/** The largest error of a point of a station, metres of 95 % radius; `null` where nothing of it was recorded. */
export function recordedError({ matching }: Held, station: string): number | null {
  const own = matching.matched.filter(({ target }) => target.station.id === station);
  return own.length === 0 ? null : Math.max(...own.map(({ point }) => point.r95));
}

/** The point that tells where something of a station stands: its own, else the table's, else any of the station's. */
export function pointFor({ matching, stations }: Held, station: string, item: string | undefined): PlacedPoint | null {
  const own = matching.matched.filter(({ target }) => target.station.id === station);
  const anchor = stations.find(({ placed }) => placed.station === station)?.anchor;
  return own.find(({ target }) => target.kind === item)?.point ?? anchor?.point ?? own[0]?.point ?? null;
}
