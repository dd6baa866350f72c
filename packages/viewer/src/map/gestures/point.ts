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
}

/** Pixels around a press that still count as on it: a finger is wide. */
const REACH = 8;

export function metresAPixel(zoom: number, latitude: number): number {
  return (40_075_016.7 * Math.cos((latitude * Math.PI) / 180)) / (512 * 2 ** zoom);
}

type At = { readonly x: number; readonly y: number };

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

export function listenForPointing(map: MapLibreMap, pointing: Pointing, drag: DragState): void {
  const scale = ({ lngLat }: MapMouseEvent): number => metresAPixel(map.getZoom(), lngLat.lat);
  map.on('click', (event: MapMouseEvent) => {
    const station = stationAt(map, event.point);
    const finding = station === null ? findingAt(map, event.point) : null;
    if (station !== null) pointing.choose(station);
    else if (finding !== null) pointing.finding(finding);
    else pointing.ask(event.lngLat.lng, event.lngLat.lat, scale(event));
  });
  map.on('mousemove', (event: MapMouseEvent) => {
    // Whoever holds a station looks at that; what lies under the pointer is not asked for.
    if (drag.busy()) return;
    const isOnSomething = stationAt(map, event.point) !== null || findingAt(map, event.point) !== null;
    map.getCanvas().style.cursor = isOnSomething ? 'pointer' : '';
    pointing.over(event.lngLat.lng, event.lngLat.lat, scale(event));
  });
  map.on('mouseout', () => pointing.left());
}
