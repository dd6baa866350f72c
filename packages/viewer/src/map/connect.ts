/** Ties the map to the store: what is drawn, pointed at, asked about and moved. Fetched after the first paint. */
import type { LonLat } from '@halfcup/core';
import { pointAt } from '@halfcup/core/geometry';
import { effect, untracked, type ReadonlySignal } from '@preact/signals';
import { courseOf, leadOf } from '../state/view/derive.ts';
import type { CoursePlace, Destination, Store } from '../state/store/store.ts';
import { draggingOf, nudgeSelected, trialView } from './dragging.ts';
import { AROUND_PLACE, stationPadding, type Bounds } from './fit.ts';
import { away } from './layers/directions.ts';
import { stationBounds } from './layers/items.ts';
import { createMapView, type MapView } from './mapView.ts';
import type { MapFaults } from './mapFaults.ts';
import { PLAN_BACKGROUND } from '../state/store/backgrounds.ts';
import { planWithoutTrial } from '../state/store/trial.ts';
import { FAULT, plainError } from '../trouble.ts';
import { clockShown } from './clockShown.ts';
import { changedPlaces } from './following.ts';
import { sketchOf } from './layers/sketch.ts';
import { pointingOf } from './pointing.ts';
import { createScenes } from './scene.ts';
import { toolKey } from '../state/edits/tools.ts';
import { zoneHandles } from './zoneHandles.ts';
import { watchBackground } from './watchBackground.ts';
import { placedView, reviewList } from '../state/view/placed.ts';

/** Deepest zoom for a place on the course that is no station. */
const PLACE_ZOOM = 16.5;
const STATION_ZOOM = 19;

function groundOf(store: Store, place: CoursePlace | null): LonLat | null {
  const course = courseOf(store.open.value, place?.course);
  return course === undefined || place === null ? null : (pointAt(course, place.measure)?.at ?? null);
}

function go(store: Store, view: MapView, destination: Destination): void {
  if (destination.kind === 'whole') return view.goToWhole();
  if (destination.kind === 'station') {
    const station = store.open.value?.analysis.stations.find((one) => one.id === destination.station);
    if (station === undefined) return undefined;
    const lead = leadOf(station);
    const bearing = lead === undefined || lead.side === 'unclear' ? null : away(lead.azimuthDeg, lead.side);
    return view.goTo(stationBounds(station), STATION_ZOOM, stationPadding(bearing));
  }
  const { course, measure } = destination;
  const at = destination.at ?? (course === null || measure === null ? null : groundOf(store, { course, measure }));
  const around: Bounds | null = at === null ? null : [at[0], at[1], at[0], at[1]];
  return around === null ? undefined : view.goTo(around, PLACE_ZOOM, AROUND_PLACE);
}

/** A pinned map goes only where its own button sends it. */
const stays = (store: Store, destination: Destination): boolean => store.pinned.value && destination.kind !== 'whole';

/** Brings what an edit has changed into sight, unless the map is pinned or it was changed here. */
function followEdits(store: Store, view: MapView): () => void {
  let before = store.open.peek();
  return effect(() => {
    const [after, trial] = [store.open.value, store.trial.value];
    if (trial !== null) return;
    const was = before;
    before = after;
    if (was === null || after === null || was === after) return;
    const changed = changedPlaces(was, after);
    // After the effect that shows the plan.
    queueMicrotask(() => {
      if (changed === null || store.pinned.peek() || view.sees(changed)) return;
      view.goTo(changed, PLACE_ZOOM, AROUND_PLACE);
    });
  });
}

/** Keys on the map: those of a tool, else what can be done in its middle, where its cross is. */
function mapKey(store: Store, view: MapView, event: KeyboardEvent): void {
  if (event.defaultPrevented || toolKey(store, event, view.middle)) return;
  const asks = event.key === 'Enter' || event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey);
  if (!asks || event.ctrlKey || event.altKey || event.metaKey) return;
  event.preventDefault();
  view.menuInMiddle();
}

/** When the panels that follow from a change stand on the page. */
const afterDrawn = (act: () => void): number => requestAnimationFrame(() => requestAnimationFrame(act));

function uncover(view: MapView, container: HTMLElement, at: LonLat): void {
  const card = container.parentElement?.querySelector('.place');
  if (card !== null && card !== undefined) view.uncover(at, card.getBoundingClientRect());
}

/** What is shown of a fault of the map. */
function faultsOf(store: Store, failed: (error: unknown) => void): MapFaults {
  const notify = (text: string): void => void (store.notice.value = { text });
  return {
    worker: failed,
    style: () => failed(plainError(FAULT)),
    background: () => {
      store.background.value = PLAN_BACKGROUND;
      notify(
        'This background could not be used: its address sent no valid map style. The drawing in the plan is shown.',
      );
    },
    tiles: () => notify('Parts of this background could not be loaded. The course and all distances are not affected.'),
  };
}

const followDestination = (store: Store, view: MapView): (() => void) =>
  effect(() => {
    const destination = store.destination.value;
    // After the effect that shows the plan, in whichever order the two are told.
    queueMicrotask(() => untracked(() => stays(store, destination) || go(store, view, destination)));
  });

const followAsked = (store: Store, view: MapView, container: HTMLElement): (() => void) =>
  effect(() => {
    const at = groundOf(store, store.asked.value);
    view.asked(at);
    if (at !== null) afterDrawn(() => uncover(view, container, at));
  });

export interface Connected {
  /** Asks why nothing has been drawn; the answer comes as `failed`. */
  readonly askWhy: () => void;
  readonly close: () => void;
}

/** `along`: whether stations are dragged along the course even without Shift. `failed`: the map cannot be drawn. `drawn`: it stands for the first time. */
export async function connect(
  store: Store,
  container: HTMLElement,
  along: ReadonlySignal<boolean>,
  failed: (error: unknown) => void,
  drawn: () => void,
): Promise<Connected> {
  const bench = location.hash === '#bench' ? (await import('./bench.ts')).createBench(store) : null;
  const measured = bench?.measured ?? ((work: () => void): void => work());
  const trial = trialView(store, measured);
  const atMiddle = (event: KeyboardEvent): void => mapKey(store, view, event);
  const view: MapView = createMapView(
    container,
    {
      pointing: pointingOf(store),
      dragging: draggingOf(store, along, trial, measured),
      nudge: (steps) => nudgeSelected(store, steps),
      key: atMiddle,
    },
    faultsOf(store, failed),
  );
  view.whenDrawn(drawn);
  bench?.expose(view, () => trial.open.value ?? store.open.value);
  const scenes = createScenes();
  const dark = matchMedia('(prefers-color-scheme: dark)');
  dark.addEventListener('change', view.repaint);
  const ends = [
    watchBackground(store, view),
    effect(() => view.units(store.units.value)),
    effect(() => {
      const runsOf = store.pane.value === 'day' ? store.selected.value : null;
      // Not of the trial, so that nothing is judged again at every move.
      const kept = planWithoutTrial(store);
      const placed = kept === null || store.placed.value === null ? [] : placedView(kept, store.placed.value).verdicts;
      view.show(
        scenes({
          open: trial.open.value ?? store.open.value,
          course: store.course.value,
          units: store.units.value,
          trial: store.trial.value,
          against: store.against.value,
          runsOf,
          placed,
          findings: kept === null ? [] : reviewList(kept, store.placed.value),
        }),
      );
    }),
    effect(() => view.select(store.selected.value)),
    effect(() => view.sketch(sketchOf(store.tool.value, store.pointer.value, store.units.value))),
    effect(() => measured(() => view.clock(clockShown(store)))),
    effect(() => view.handles(zoneHandles(store))),
    followEdits(store, view),
    followDestination(store, view),
    effect(() => view.cursor(groundOf(store, store.cursor.value))),
    followAsked(store, view, container),
  ];
  return {
    askWhy: view.askWhy,
    close: () => {
      for (const end of ends) end();
      dark.removeEventListener('change', view.repaint);
      view.close();
    },
  };
}
