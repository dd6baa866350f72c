/** The gesture of pointing: a press chooses a station or asks about a place, moving over the course shows the place on the strip. */
import type { Map as MapLibreMap, MapMouseEvent } from 'maplibre-gl';
import { STATION_LAYERS } from '../style/stations.ts';
import type { DragState } from './drag.ts';

export interface Pointing {
  readonly choose: (station: string) => void;
  /** A press that is on no station. */
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

function stationAt(map: MapLibreMap, { x, y }: { readonly x: number; readonly y: number }): string | null {
  const layers = STATION_LAYERS.filter((id) => map.getLayer(id) !== undefined);
  const around: [[number, number], [number, number]] = [
    [x - REACH, y - REACH],
    [x + REACH, y + REACH],
  ];
  const [feature] = map.queryRenderedFeatures(around, { layers });
  const id: unknown = feature?.properties['id'] ?? feature?.properties['station'];
  return typeof id === 'string' ? id : null;
}

export function listenForPointing(map: MapLibreMap, pointing: Pointing, drag: DragState): void {
  const scale = ({ lngLat }: MapMouseEvent): number => metresAPixel(map.getZoom(), lngLat.lat);
  map.on('click', (event: MapMouseEvent) => {
    const station = stationAt(map, event.point);
    if (station !== null) pointing.choose(station);
    else pointing.ask(event.lngLat.lng, event.lngLat.lat, scale(event));
  });
  map.on('mousemove', (event: MapMouseEvent) => {
    // Whoever holds a station looks at that; what lies under the pointer is not asked for.
    if (drag.busy()) return;
    map.getCanvas().style.cursor = stationAt(map, event.point) === null ? '' : 'pointer';
    pointing.over(event.lngLat.lng, event.lngLat.lat, scale(event));
  });
  map.on('mouseout', () => pointing.left());
}
