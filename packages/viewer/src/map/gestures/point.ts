/** The gesture of pointing: a press chooses a station, goes to a finding or asks about a place, moving over the course shows the place on the strip. */
import type { Map as MapLibreMap, MapMouseEvent } from 'maplibre-gl';
import { FLAG_LAYERS } from '../style/flags.ts';
import { STATION_LAYERS } from '../style/stations.ts';
import type { DragState } from './drag.ts';

export interface Pointing {
  readonly choose: (station: string) => void;
  /** A press on the mark of a finding: its place in the list that is drawn. */
  readonly finding: (index: number) => void;
  /** A press that is on nothing of these. */
  readonly ask: (lon: number, lat: number, metresAPixel: number) => void;
  /** Longitude, latitude, and metres a pixel there. */
  readonly over: (lon: number, lat: number, metresAPixel: number) => void;
  readonly left: () => void;
  /** A press is the tool's, which draws: it gets it and the pointer instead. */
  readonly draws: () => boolean;
  readonly put: (at: readonly [number, number]) => void;
  readonly hover: (at: readonly [number, number]) => void;
  /** Two presses, one upon the other. */
  readonly twice: (lon: number, lat: number, metresAPixel: number) => void;
  /** The other button, or a long press: what can be done there, on a station or beside. */
  readonly menu: (at: readonly [number, number], point: At, station: string | null, metresAPixel: number) => void;
}

/** Pixels around a press that still count as on it: a finger is wide. */
const REACH = 8;

export function metresAPixel(zoom: number, latitude: number): number {
  return (40_075_016.7 * Math.cos((latitude * Math.PI) / 180)) / (512 * 2 ** zoom);
}

export type At = { readonly x: number; readonly y: number };

function propertyAt(map: MapLibreMap, { x, y }: At, all: readonly string[], names: readonly string[]): unknown {
  const layers = all.filter((id) => map.getLayer(id) !== undefined);
  const around: [[number, number], [number, number]] = [
    [x - REACH, y - REACH],
    [x + REACH, y + REACH],
  ];
  const [feature] = map.queryRenderedFeatures(around, { layers });
  return names.map((name): unknown => feature?.properties[name]).find((value) => value !== undefined);
}

function stationAt(map: MapLibreMap, at: At): string | null {
  const id = propertyAt(map, at, STATION_LAYERS, ['id', 'station']);
  return typeof id === 'string' ? id : null;
}

function findingAt(map: MapLibreMap, at: At): number | null {
  const index = propertyAt(map, at, FLAG_LAYERS, ['finding']);
  return typeof index === 'number' ? index : null;
}

export function listenForPointing(
  map: MapLibreMap,
  pointing: Pointing,
  drag: DragState,
): { readonly menuInMiddle: () => void } {
  const scale = ({ lngLat }: MapMouseEvent): number => metresAPixel(map.getZoom(), lngLat.lat);
  let asking: ReturnType<typeof setTimeout> | undefined;
  map.on('click', (event: MapMouseEvent) => {
    if (pointing.draws()) {
      // The second press of two is no other corner.
      if (event.originalEvent.detail < 2) pointing.put([event.lngLat.lng, event.lngLat.lat]);
      return;
    }
    const station = stationAt(map, event.point);
    const finding = station === null ? findingAt(map, event.point) : null;
    if (station !== null) pointing.choose(station);
    else if (finding !== null) pointing.finding(finding);
    else {
      clearTimeout(asking);
      asking = setTimeout(() => pointing.ask(event.lngLat.lng, event.lngLat.lat, scale(event)), SECOND);
    }
  });
  map.on('mousemove', (event: MapMouseEvent) => {
    // Whoever holds a station looks at that; what lies under the pointer is not asked for.
    if (drag.busy()) return;
    if (pointing.draws()) {
      map.getCanvas().style.cursor = 'crosshair';
      pointing.hover([event.lngLat.lng, event.lngLat.lat]);
      return;
    }
    const isOnSomething = stationAt(map, event.point) !== null || findingAt(map, event.point) !== null;
    map.getCanvas().style.cursor = isOnSomething ? 'pointer' : '';
    pointing.over(event.lngLat.lng, event.lngLat.lat, scale(event));
  });
  map.on('mouseout', () => pointing.left());
  map.on('dblclick', (event) => {
    event.preventDefault();
    clearTimeout(asking);
    pointing.twice(event.lngLat.lng, event.lngLat.lat, scale(event));
  });
  const menuAt = (at: At): void => {
    const { lng, lat } = map.unproject([at.x, at.y]);
    pointing.menu([lng, lat], at, stationAt(map, at), metresAPixel(map.getZoom(), lat));
  };
  map.on('contextmenu', (event) => {
    event.preventDefault();
    menuAt(event.point);
  });
  listenForLongPress(map, (at) => {
    drag.forget();
    menuAt(at);
  });
  return {
    menuInMiddle: () => {
      const { clientWidth, clientHeight } = map.getContainer();
      menuAt({ x: clientWidth / 2, y: clientHeight / 2 });
    },
  };
}

/** What covers the map waits so long for a second press, milliseconds: it would fall on that. */
const SECOND = 250;
/** A finger that rests so long means what the other button of a mouse means, milliseconds. */
const LONG = 550;
/** Pixels that a resting finger may move. */
const STILL = 10;

function listenForLongPress(map: MapLibreMap, act: (at: At) => void): void {
  const box = map.getCanvasContainer();
  let from: At | null = null;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const end = (): void => {
    clearTimeout(waiting);
    from = null;
  };
  box.addEventListener('pointerdown', (event) => {
    end();
    if (event.pointerType !== 'touch' || !event.isPrimary) return;
    const { left, top } = box.getBoundingClientRect();
    const at = { x: event.clientX - left, y: event.clientY - top };
    from = { x: event.clientX, y: event.clientY };
    waiting = setTimeout(() => act(at), LONG);
  });
  box.addEventListener('pointermove', (event) => {
    if (from !== null && Math.hypot(event.clientX - from.x, event.clientY - from.y) > STILL) end();
  });
  for (const type of ['pointerup', 'pointercancel'] as const) box.addEventListener(type, end);
}
