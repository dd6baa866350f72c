/** Room around a plan for the rings and names that stand outside the places themselves. Pure. */
import type { FeatureCollection, Point } from 'geojson';
import { RING_FAR, type StationProps } from './layers/stations.ts';

export interface Padding {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export type Bounds = readonly [west: number, south: number, east: number, north: number];

/** A name may be this wide and this high beyond its station, pixels. */
const WIDE = 130;
const HIGH = 72;
/** A course distance beside its tick. */
const PLAIN = 46;
/** The scale and the map's credit stand over the foot of the map. */
const FOOT = 60;
/** The buttons stand over the top of the map. */
const UNDER_BUTTONS = 72;
/** Stations within this share of the span count as standing at the edge. */
const EDGE = 0.2;

/** More room on the sides where a station near the edge points outward, none wasted on the others. */
export function labelPadding(
  stations: FeatureCollection<Point, StationProps>,
  [west, south, east, north]: Bounds,
): Padding {
  const padding = { left: PLAIN, right: PLAIN, top: UNDER_BUTTONS, bottom: FOOT };
  for (const { geometry, properties } of stations.features) {
    const [lon = 0, lat = 0] = geometry.coordinates;
    const [x, y] =
      properties.shape === 'ring'
        ? [1, 0]
        : [Math.sin((properties.bearing * Math.PI) / 180), Math.cos((properties.bearing * Math.PI) / 180)];
    if (lon - west < EDGE * (east - west) && x < -0.35) padding.left = WIDE;
    if (east - lon < EDGE * (east - west) && x > 0.35) padding.right = WIDE;
    if (north - lat < EDGE * (north - south) && y > 0.35) padding.top = UNDER_BUTTONS + HIGH / 2;
    if (lat - south < EDGE * (north - south) && y < -0.35) padding.bottom = FOOT + HIGH / 2;
  }
  return padding;
}

/** Never more than a share of the container, so that something is left to see. */
export function within(padding: Padding, width: number, height: number): Padding {
  const across = Math.min(1, (width * 0.5) / (padding.left + padding.right));
  const down = Math.min(1, (height * 0.45) / (padding.top + padding.bottom));
  return {
    left: padding.left * across,
    right: padding.right * across,
    top: padding.top * down,
    bottom: padding.bottom * down,
  };
}

/** Room around a place that is no station. */
export const AROUND_PLACE: Padding = { left: 40, right: 40, top: 40, bottom: 40 };

/** Pixels towards a side, of which the ring's direction has a share. */
const reach = (share: number): number => 36 + Math.max(0, share) * (RING_FAR + 14);

/** Room around the items of one station, with more where its ring and name stand; `null` where the side is unclear. */
export function stationPadding(bearingDeg: number | null): Padding {
  const angle = ((bearingDeg ?? 0) * Math.PI) / 180;
  const [x, y] = bearingDeg === null ? [0, 0] : [Math.sin(angle), Math.cos(angle)];
  return { left: reach(-x), right: reach(x), top: reach(y), bottom: reach(-y) };
}
