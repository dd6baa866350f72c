/** The sole owner of MapLibre: it is given scenes, places and a palette, and tells what was pointed at. */
import { Map as MapLibreMap, NavigationControl, ScaleControl, setWorkerUrl, type GeoJSONSource, type LngLatBoundsLike } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import 'maplibre-gl/dist/maplibre-gl.css';
import type { LonLat, Units } from '@halfcup/core';
import { bbox, featureCollection, point } from '@turf/turf';
import { labelPadding, within, type Bounds, type Padding } from './fit.ts';
import { listenForPointing, type Pointing } from './gestures/point.ts';
import { drawImage } from './images.ts';
import { PICKED_LAYERS, pickedFilter, styleOf } from './layers/style.ts';
import { readPalette } from './palette.ts';
import { graticule } from './graticule.ts';
import { EMPTY_SCENE, SOURCES, type Scene } from './scene.ts';
import { PLAN_UNDERLAY, type Underlay } from './underlay.ts';

export interface MapView {
  readonly show: (scene: Scene) => void;
  readonly select: (station: string | null) => void;
  readonly goTo: (bounds: Bounds, deepest: number, room: Padding) => void;
  readonly goToWhole: () => void;
  readonly cursor: (at: LonLat | null) => void;
  readonly units: (units: Units) => void;
  /** What lies under the course. */
  readonly underlay: (under: Underlay) => void;
  /** Reads the palette again, after the page has turned light or dark. */
  readonly repaint: () => void;
  readonly close: () => void;
}

interface State {
  scene: Scene;
  selected: string | null;
  latitude: number;
  under: Underlay;
}

const wholeOf = (scene: Scene): Bounds | null => {
  if (scene.courses.features.length === 0) return null;
  const [west, south, east, north] = bbox(featureCollection([...scene.courses.features, ...scene.stations.features]));
  return [west, south, east, north];
};

const calm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

function makeMap(container: HTMLElement): MapLibreMap {
  setWorkerUrl(workerUrl);
  const map = new MapLibreMap({
    container,
    style: styleOf(EMPTY_SCENE, readPalette(document.documentElement), 0, PLAN_UNDERLAY),
    center: [0, 0],
    zoom: 1,
    maxZoom: 22,
    attributionControl: false,
    dragRotate: false,
    pitchWithRotate: false,
    touchPitch: false,
    fadeDuration: 0,
    renderWorldCopies: true,
  });
  map.touchZoomRotate.disableRotation();
  map.keyboard.disableRotation();
  map.addControl(new NavigationControl({ showCompass: false }), 'top-right');
  map.getCanvas().setAttribute('aria-label', 'Map of the course. Arrow keys move it, plus and minus zoom. The table of stations holds the same places.');
  return map;
}

/** How long the map may stay busy before it is told to be idle counts for nothing: it says so itself. */
function reportIdle(map: MapLibreMap, container: HTMLElement, state: State): void {
  map.on('dataloading', () => container.setAttribute('data-map', 'busy'));
  map.on('movestart', () => container.setAttribute('data-map', 'busy'));
  map.on('idle', () => {
    container.setAttribute('data-map', 'idle');
    container.setAttribute('data-zoom', map.getZoom().toFixed(2));
    container.setAttribute('data-features', String(SOURCES.reduce((sum, name) => sum + state.scene[name].features.length, 0)));
  });
}

export function createMapView(container: HTMLElement, pointing: Pointing): MapView {
  const map = makeMap(container);
  const state: State = { scene: EMPTY_SCENE, selected: null, latitude: 0, under: PLAN_UNDERLAY };
  const scale = new ScaleControl({ maxWidth: 120 });
  map.addControl(scale, 'bottom-left');
  reportIdle(map, container, state);
  listenForPointing(map, pointing);
  map.setMissingStyleImageResolver((id) => {
    const image = drawImage(id, readPalette(document.documentElement));
    if (image !== null && !map.hasImage(id)) map.addImage(id, image.data, { pixelRatio: image.pixelRatio });
  });
  const pick = (): void => {
    for (const [id, ticks] of PICKED_LAYERS) if (map.getLayer(id) !== undefined) map.setFilter(id, pickedFilter(state.selected, ticks));
  };
  const drawGraticule = (): void => {
    if (!state.under.graticule) return;
    const bounds = map.getBounds();
    void map.getSource<GeoJSONSource>('graticule')?.setData(graticule([bounds.getWest(), bounds.getSouth(), bounds.getEast(), bounds.getNorth()]));
  };
  map.on('moveend', drawGraticule);
  const restyle = (fresh: boolean): void => {
    map.setStyle(styleOf(state.scene, readPalette(document.documentElement), state.latitude, state.under), { diff: !fresh && map.isStyleLoaded() === true });
    map.once('styledata', () => {
      pick();
      drawGraticule();
    });
    pick();
  };
  const goTo = (bounds: Bounds, deepest: number, room: Padding, jump: boolean): void => {
    const padding = within(room, container.clientWidth, container.clientHeight);
    map.fitBounds(bounds as unknown as LngLatBoundsLike, { padding, maxZoom: deepest, animate: !jump && !calm(), duration: 500 });
  };
  return {
    show: (scene) => {
      state.scene = scene;
      const whole = wholeOf(scene);
      state.latitude = whole === null ? 0 : (whole[1] + whole[3]) / 2;
      restyle(false);
    },
    select: (station) => {
      state.selected = station;
      pick();
    },
    goTo: (bounds, deepest, room) => goTo(bounds, deepest, room, false),
    goToWhole: () => {
      const whole = wholeOf(state.scene);
      if (whole !== null) goTo(whole, 17, labelPadding(state.scene.stations, whole), true);
    },
    cursor: (at) => {
      const data = featureCollection(at === null ? [] : [point([at[0], at[1]])]);
      void map.getSource<GeoJSONSource>('cursor')?.setData(data);
    },
    units: (units) => scale.setUnit(units),
    underlay: (under) => {
      state.under = under;
      restyle(true);
    },
    repaint: () => restyle(true),
    close: () => map.remove(),
  };
}
