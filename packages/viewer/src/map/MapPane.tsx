/** The map's place on the page. The map itself is fetched after the first paint. */
import type { LonLat } from '@halfcup/core';
import { pointAt } from '@halfcup/core/geometry';
import { effect, signal, untracked, type Signal } from '@preact/signals';
import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { chooseStation } from '../state/actions.ts';
import { courseOf, leadOf, nearestSample, samplesOf } from '../state/derive.ts';
import { useStore, type Destination, type Store } from '../state/store.ts';
import type { Bounds } from './fit.ts';
import { away } from './layers/directions.ts';
import type { MapView } from './mapView.ts';
import { watchBackground } from './watchBackground.ts';

/** Pixels from the course within which pointing at the map counts as pointing at the course. */
const NEAR = 24;
/** Deepest zoom for a place on the course that is no station. */
const PLACE_ZOOM = 16.5;
const STATION_ZOOM = 19;

function pointOver(store: Store, lon: number, lat: number, metresAPixel: number): void {
  const course = courseOf(store.open.value, store.course.value);
  if (course === undefined) return;
  const near = nearestSample(samplesOf(course), lon, lat);
  store.cursor.value = near.distance < NEAR * metresAPixel + 6 ? { course: course.id, measure: near.measure } : null;
}

function placeOf(store: Store, destination: Extract<Destination, { kind: 'place' }>): LonLat | null {
  if (destination.at !== null) return destination.at;
  const course = courseOf(store.open.value, destination.course);
  return course === undefined || destination.measure === null ? null : (pointAt(course, destination.measure)?.at ?? null);
}

async function connect(store: Store, container: HTMLElement): Promise<() => void> {
  const [{ createMapView }, { sceneOf }, { stationBounds }, { AROUND_PLACE, stationPadding }] = await Promise.all([import('./mapView.ts'), import('./scene.ts'), import('./layers/items.ts'), import('./fit.ts')]);
  const view: MapView = createMapView(container, {
    choose: (station) => chooseStation(store, station),
    over: (lon, lat, metresAPixel) => pointOver(store, lon, lat, metresAPixel),
    left: () => {
      store.cursor.value = null;
    },
  });
  const go = (destination: Destination): void => {
    if (destination.kind === 'whole') return view.goToWhole();
    if (destination.kind === 'station') {
      const station = store.open.value?.analysis.stations.find((one) => one.id === destination.station);
      if (station === undefined) return undefined;
      const lead = leadOf(station);
      const bearing = lead === undefined || lead.side === 'unclear' ? null : away(lead.azimuthDeg, lead.side);
      return view.goTo(stationBounds(station), STATION_ZOOM, stationPadding(bearing));
    }
    const at = placeOf(store, destination);
    const around: Bounds | null = at === null ? null : [at[0], at[1], at[0], at[1]];
    return around === null ? undefined : view.goTo(around, PLACE_ZOOM, AROUND_PLACE);
  };
  const dark = matchMedia('(prefers-color-scheme: dark)');
  dark.addEventListener('change', view.repaint);
  const ends = [
    watchBackground(store, view),
    effect(() => view.units(store.units.value)),
    effect(() => view.show(sceneOf(store.open.value, store.course.value, store.units.value))),
    effect(() => view.select(store.selected.value)),
    effect(() => {
      const destination = store.destination.value;
      // After the effect that shows the plan, in whichever order the two are told.
      queueMicrotask(() => untracked(() => go(destination)));
    }),
    effect(() => {
      const place = store.cursor.value;
      const course = courseOf(store.open.value, place?.course);
      view.cursor(course === undefined || place === null ? null : (pointAt(course, place.measure)?.at ?? null));
    }),
  ];
  return () => {
    for (const end of ends) end();
    dark.removeEventListener('change', view.repaint);
    view.close();
  };
}

/** `children`: what stands over the map's foot. */
export function MapPane({ children }: { readonly children?: ComponentChildren }): JSX.Element {
  const store = useStore();
  const container = useRef<HTMLDivElement>(null);
  const trouble: Signal<string | null> = useMemo(() => signal(null), []);
  useEffect(() => {
    const element = container.current;
    if (element === null) return undefined;
    let closed = false;
    let close: (() => void) | undefined;
    const start = async (): Promise<void> => {
      try {
        close = await connect(store, element);
        if (closed) close();
      } catch (error) {
        trouble.value = error instanceof Error ? error.message : String(error);
      }
    };
    // Two frames: the first paint is the page without the map.
    requestAnimationFrame(() => requestAnimationFrame(() => void start()));
    return () => {
      closed = true;
      close?.();
    };
  }, []);
  return (
    <main class="map-pane" aria-label="Map">
      <div ref={container} class="map" data-map="waiting" />
      <button type="button" class="map-whole" disabled={store.open.value === null} onClick={() => void (store.destination.value = { kind: 'whole' })}>
        Whole plan
      </button>
      {trouble.value === null ? null : (
        <p class="map-trouble" role="status">
          The map cannot be drawn here, because this browser gives no WebGL. The course strip and the tables show the same places and distances.
        </p>
      )}
      <div class="map-foot">{children}</div>
    </main>
  );
}
