/** The sole owner of MapLibre: it is given scenes, places and a palette, and tells what was pointed at. */
import {
  Map as MapLibreMap,
  NavigationControl,
  ScaleControl,
  setWorkerUrl,
  type GeoJSONSource,
  type RequestTransformFunction,
} from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import 'maplibre-gl/dist/maplibre-gl.css';
import type { FeatureCollection } from 'geojson';
import type { LonLat } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import { bbox, featureCollection } from '@turf/turf';
import { clockOn, type ClockOnMap } from './clockOnMap.ts';
import { fitTo, groundUnder, placeOnPage, refitting, seesAll, uncover } from './camera.ts';
import { labelPadding, type Bounds, type Padding } from './fit.ts';
import { listenForDragging, type Dragging } from './gestures/drag.ts';
import { createHandles, type Handle } from './gestures/handles.ts';
import { listenForNudges } from './gestures/nudge.ts';
import { listenForPointing, type Pointing } from './gestures/point.ts';
import { drawImage } from './images.ts';
import { PICKED_LAYERS, pickedFilter } from './style/stations.ts';
import { styleOf } from './style/style.ts';
import { hostOf } from './hosts.ts';
import { checkWorker, tryWorker, watchFaults, type MapFaults } from './mapFaults.ts';
import { readPalette } from './palette.ts';
import { graticule } from './graticule.ts';
import { EMPTY_SCENE, KEPT_IDS, SOURCES, type Scene } from './scene.ts';
import { shapesOn, spotOn, type Spot } from './spots.ts';
import { sourceDiff } from './sourceDiff.ts';
import { PLAN_UNDERLAY, type Underlay } from './underlay.ts';

export interface MapView {
  readonly show: (scene: Scene) => void;
  readonly select: (station: string | null) => void;
  readonly goTo: (bounds: Bounds, deepest: number, room: Padding) => void;
  readonly goToWhole: () => void;
  readonly cursor: (at: LonLat | null) => void;
  /** The place about which somebody asks. */
  readonly asked: (at: LonLat | null) => void;
  /** What somebody draws. */
  readonly sketch: (shapes: FeatureCollection) => void;
  /** Race day at the clock's time. */
  readonly clock: ClockOnMap['put'];
  readonly handles: (handles: readonly Handle[]) => void;
  /** Whether places are all in sight. */
  readonly sees: (bounds: Bounds) => boolean;
  readonly middle: () => LonLat;
  /** Opens what can be done in the middle. */
  readonly menuInMiddle: () => void;
  /** Moves the map so far that a place is not covered by what stands over its foot. */
  readonly uncover: (at: LonLat, foot: DOMRect) => void;
  readonly units: (units: Units) => void;
  /** What lies under the course. */
  readonly underlay: (under: Underlay) => void;
  /** Reads the palette again, after the page has turned light or dark. */
  readonly repaint: () => void;
  /** Where a place is on the page, pixels. */
  readonly place: (at: LonLat) => readonly [number, number];
  /** The place on the ground under a place on the page, in pixels of it. */
  readonly ground: (at: readonly [number, number]) => readonly [number, number];
  /** Draws once more what is drawn. */
  readonly redraw: () => void;
  /** Once, when all that it shows is drawn. */
  readonly whenDrawn: (act: () => void) => void;
  /** Asks why nothing has been drawn; the answer is a fault. */
  readonly askWhy: () => void;
  readonly close: () => void;
}

interface State {
  scene: Scene;
  /** What the sources hold, or will when the style has loaded. */
  fed: Scene;
  selected: string | null;
  whole: Bounds | null;
  under: Underlay;
}

const wholeOf = (scene: Scene): Bounds | null => {
  if (scene.courses.features.length === 0) return null;
  const [west, south, east, north] = bbox(featureCollection([...scene.courses.features, ...scene.stations.features]));
  return [west, south, east, north];
};

/** Degrees that change a true width by too little to be seen. */
const LATITUDES = 0.1;

/** By which true widths are drawn. */
const latitudeOf = (whole: Bounds | null): number => (whole === null ? 0 : (whole[1] + whole[3]) / 2);

/** No host is asked of which the person was not told, whatever a style or a list of tiles leads to. */
const onlyTo =
  (state: State): RequestTransformFunction =>
  (url) => {
    const host = hostOf(url);
    return { url: host === null || host === location.host || state.under.hosts.includes(host) ? url : 'data:,' };
  };

function makeMap(container: HTMLElement, state: State): MapLibreMap {
  setWorkerUrl(workerUrl);
  const map = new MapLibreMap({
    container,
    style: styleOf(EMPTY_SCENE, readPalette(document.documentElement), 0, PLAN_UNDERLAY),
    center: [0, 0],
    zoom: 1,
    maxZoom: 22,
    attributionControl: false,
    dragRotate: false,
    doubleClickZoom: false,
    pitchWithRotate: false,
    touchPitch: false,
    fadeDuration: 0,
    renderWorldCopies: true,
    transformRequest: onlyTo(state),
  });
  map.touchZoomRotate.disableRotation();
  map.keyboard.disableRotation();
  map.addControl(new NavigationControl({ showCompass: false }), 'top-right');
  map
    .getCanvas()
    .setAttribute(
      'aria-label',
      'Map of the course. Arrow keys move it, plus and minus zoom, Enter opens what can be done at its middle. The table of stations holds the same places.',
    );
  return map;
}

/** How long the map may stay busy before it is told to be idle counts for nothing: it says so itself. */
function reportIdle(map: MapLibreMap, container: HTMLElement, state: State): void {
  map.on('dataloading', () => container.setAttribute('data-map', 'busy'));
  map.on('movestart', () => container.setAttribute('data-map', 'busy'));
  map.on('idle', () => {
    container.setAttribute('data-map', 'idle');
    container.setAttribute('data-zoom', map.getZoom().toFixed(2));
    container.setAttribute(
      'data-features',
      String(SOURCES.reduce((sum, name) => sum + state.scene[name].features.length, 0)),
    );
  });
}

/** Gives each source what has changed since it was last given anything; false where the map has no style yet. */
function feed(map: MapLibreMap, before: Scene, scene: Scene): boolean {
  if (map.getSource('stations') === undefined) return false;
  for (const name of SOURCES) {
    const source = map.getSource<GeoJSONSource>(name);
    if (source === undefined || scene[name] === before[name]) continue;
    if (!KEPT_IDS.has(name)) void source.setData(scene[name]);
    else {
      const diff = sourceDiff(before[name].features, scene[name].features);
      if (diff !== null) void source.updateData(diff);
    }
  }
  return true;
}

export interface Hands {
  readonly pointing: Pointing;
  readonly dragging: Dragging;
  /** Steps along the course, negative towards the start. */
  readonly nudge: (steps: number) => void;
  /** Any other key on the map. */
  readonly key: (event: KeyboardEvent) => void;
}

/** The map's style and what it is filled with, in step with the state. */
interface Drawing {
  /** Gives the sources what has changed. */
  readonly sync: () => void;
  readonly restyle: () => void;
  /** Shows the selected station as such. */
  readonly pick: () => void;
}

function drawOn(map: MapLibreMap, state: State, spots: readonly Pick<Spot, 'again'>[], faults: MapFaults): Drawing {
  const sync = (): void => {
    if (feed(map, state.fed, state.scene)) state.fed = state.scene;
  };
  const pick = (): void => {
    for (const [id, ticks] of PICKED_LAYERS)
      if (map.getLayer(id) !== undefined) map.setFilter(id, pickedFilter(state.selected, ticks));
  };
  const drawGraticule = (): void => {
    if (!state.under.graticule) return;
    const bounds = map.getBounds();
    void map
      .getSource<GeoJSONSource>('graticule')
      ?.setData(graticule([bounds.getWest(), bounds.getSouth(), bounds.getEast(), bounds.getNorth()]));
  };
  map.on('moveend', drawGraticule);
  // What came while a style was loading is given to it now.
  map.on('style.load', () => {
    pick();
    drawGraticule();
    for (const spot of spots) spot.again();
    sync();
  });
  const restyle = (): void => {
    watched.loading();
    state.fed = state.scene;
    map.setStyle(styleOf(state.scene, readPalette(document.documentElement), latitudeOf(state.whole), state.under), {
      diff: false,
    });
  };
  const watched = watchFaults(map, {
    faults,
    underlay: () => state.under,
    fallBack: () => {
      state.under = PLAN_UNDERLAY;
      restyle();
    },
  });
  return { sync, restyle, pick };
}

function showScene(state: State, { sync, restyle }: Drawing, scene: Scene): void {
  const before = state.scene;
  state.scene = scene;
  const latitude = latitudeOf(state.whole);
  if (scene.courses !== before.courses) state.whole = wholeOf(scene);
  // What layers are drawn with, and not only what they draw.
  const redrawn = scene.context !== before.context || Math.abs(latitudeOf(state.whole) - latitude) > LATITUDES;
  return redrawn ? restyle() : sync();
}

export function createMapView(container: HTMLElement, hands: Hands, faults: MapFaults): MapView {
  const state: State = { scene: EMPTY_SCENE, fed: EMPTY_SCENE, selected: null, whole: null, under: PLAN_UNDERLAY };
  const map = makeMap(container, state);
  void checkWorker(workerUrl, faults.worker);
  const scale = new ScaleControl({ maxWidth: 120 });
  const [cursor, asked, sketch] = [spotOn(map, 'cursor'), spotOn(map, 'asked'), shapesOn(map, 'sketch')];
  const clock = clockOn(map);
  const refit = refitting(map);
  map.addControl(scale, 'bottom-left');
  reportIdle(map, container, state);
  const { menuInMiddle } = listenForPointing(map, hands.pointing, listenForDragging(map, hands.dragging));
  listenForNudges(map.getCanvas(), hands.nudge);
  map.getCanvas().addEventListener('keydown', hands.key);
  map.setMissingStyleImageResolver((id) => {
    const image = drawImage(id, readPalette(document.documentElement));
    if (image !== null && !map.hasImage(id)) map.addImage(id, image.data, { pixelRatio: image.pixelRatio });
  });
  const drawing = drawOn(map, state, [cursor, asked, sketch, clock], faults);
  return {
    show: (scene) => showScene(state, drawing, scene),
    select: (station) => {
      state.selected = station;
      drawing.pick();
    },
    goTo: (bounds, deepest, room) => fitTo(map, bounds, deepest, room, false),
    goToWhole: () =>
      refit(() => {
        const whole = wholeOf(state.scene);
        if (whole !== null) fitTo(map, whole, 17, labelPadding(state.scene.stations, whole), true);
      }),
    cursor: cursor.put,
    asked: asked.put,
    sketch: sketch.put,
    clock: clock.put,
    handles: createHandles(map),
    sees: (bounds) => seesAll(map, bounds),
    menuInMiddle,
    middle: () => [map.getCenter().lng, map.getCenter().lat],
    uncover: (at, foot) => uncover(map, at, foot),
    units: (units) => scale.setUnit(units),
    underlay: (under) => {
      state.under = under;
      drawing.restyle();
    },
    repaint: drawing.restyle,
    place: (at) => placeOnPage(map, at),
    ground: (at) => groundUnder(map, at),
    redraw: () => map.triggerRepaint(),
    whenDrawn: (act) => void map.once('idle', act),
    askWhy: () => tryWorker(workerUrl, faults.worker),
    close: () => map.remove(),
  };
}
