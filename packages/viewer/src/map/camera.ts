/** Where the map looks, and what of the ground is where on the page. */
import type { LngLatBoundsLike, Map as MapLibreMap } from 'maplibre-gl';
import type { LonLat } from '@halfcup/core';
import { within, type Bounds, type Padding } from './fit.ts';

/** Pixels about a place that stay free. */
const CLEAR = 16;
const calm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

export function fitTo(map: MapLibreMap, bounds: Bounds, deepest: number, room: Padding, jump: boolean): void {
  const { clientWidth, clientHeight } = map.getContainer();
  map.fitBounds(bounds as unknown as LngLatBoundsLike, {
    padding: within(room, clientWidth, clientHeight),
    maxZoom: deepest,
    animate: !jump && !calm(),
    duration: 500,
  });
}

/** Carries out a fit, and again whenever the map's size changes, as long as it looks where the last fit left it. */
export function refitting(map: MapLibreMap): (fit: () => void) => void {
  let last: { readonly fit: () => void; readonly look: string } | null = null;
  const look = (): string => JSON.stringify([map.getCenter(), map.getZoom()]);
  const put = (fit: () => void): void => {
    fit();
    last = { fit, look: look() };
  };
  map.on('resize', () => {
    if (last?.look === look()) put(last.fit);
  });
  return put;
}

export function placeOnPage(map: MapLibreMap, at: LonLat): readonly [number, number] {
  const { x, y } = map.project([at[0], at[1]]);
  const { left, top } = map.getContainer().getBoundingClientRect();
  return [left + x, top + y];
}

/** Pixels at the edge that do not count as seen. */
const EDGE = 24;

export function seesAll(map: MapLibreMap, [west, south, east, north]: Bounds): boolean {
  const { clientWidth, clientHeight } = map.getContainer();
  return [
    [west, south],
    [east, north],
  ].every((at) => {
    const { x, y } = map.project(at as [number, number]);
    return x > EDGE && y > EDGE && x < clientWidth - EDGE && y < clientHeight - EDGE;
  });
}

export function groundUnder(map: MapLibreMap, [x, y]: readonly [number, number]): readonly [number, number] {
  const { left, top } = map.getContainer().getBoundingClientRect();
  const { lng, lat } = map.unproject([x - left, y - top]);
  return [lng, lat];
}

export function uncover(map: MapLibreMap, at: LonLat, foot: DOMRect): void {
  const { top } = map.getContainer().getBoundingClientRect();
  const [x, y] = placeOnPage(map, at);
  const under = x > foot.left - CLEAR && x < foot.right + CLEAR && y > foot.top - CLEAR;
  if (under) map.panBy([0, y - (foot.top + top) / 2], { duration: calm() ? 0 : 300 });
}
