/** For the bench and the browser tests alone, at an address that ends in #bench: the plan's text, bare repaints, and how long each move takes. */
import type { LonLat } from '@halfcup/core';
import { leadOf } from '../state/view/derive.ts';
import type { OpenPlan, Store } from '../state/store/store.ts';
import { sketchOf } from './layers/sketch.ts';
import type { MapView } from './mapView.ts';

export interface Bench {
  /** The text of the open plan. */
  readonly text: () => string | null;
  /** Where the stations shown stand, as coordinates by station. */
  readonly pins: () => Readonly<Record<string, readonly [number, number]>>;
  /** Where a station stands as the map shows it, while it is held too, and on which side. */
  readonly held: (station: string) => { readonly at: readonly [number, number]; readonly side: string } | null;
  /** What stands at the pointer while somebody measures. */
  readonly measured: () => string | null;
  readonly findings: () => readonly string[];
  /** Where a place is on the page, pixels. */
  readonly place: (at: LonLat) => readonly [number, number];
  /** The place on the ground under a place on the page. */
  readonly ground: (at: readonly [number, number]) => readonly [number, number];
  /** Asks for a frame of the map in which nothing is changed. */
  readonly redraw: () => void;
  /** Milliseconds of our own code in each move of a drag, and in each drawing of the panels during a trial. */
  readonly times: number[];
}

export interface BenchHook {
  /** Carries out a piece of work and notes how long it took, with the panels that follow from it. */
  readonly measured: (work: () => void) => void;
  /** `now`: the plan as the map shows it. */
  readonly expose: (view: MapView, now: () => OpenPlan | null) => void;
}

export function createBench(store: Store): BenchHook {
  const times: number[] = [];
  return {
    measured: (work) => {
      const from = performance.now();
      work();
      // The panels are drawn in a microtask that was asked for before this one.
      queueMicrotask(() => times.push(performance.now() - from));
    },
    expose: (view, now) => {
      const bench: Bench = {
        text: () => store.open.value?.document.text ?? null,
        pins: () =>
          Object.fromEntries(
            (store.open.value?.analysis.stations ?? []).map(({ id, at }) => [id, [at[0], at[1]] as const]),
          ),
        held: (id) => {
          const station = now()?.analysis.stations.find((one) => one.id === id);
          return station === undefined
            ? null
            : { at: [station.at[0], station.at[1]], side: leadOf(station)?.side ?? 'unclear' };
        },
        measured: () => {
          const shapes = sketchOf(store.tool.value, store.pointer.value, store.units.value).features;
          const texts = shapes.map(({ properties }): unknown => properties?.['text']);
          return texts.find((text) => typeof text === 'string') ?? null;
        },
        findings: () => (store.open.value?.findings ?? []).map(({ code, message }) => `${code}: ${message}`),
        place: view.place,
        ground: view.ground,
        redraw: view.redraw,
        times,
      };
      Object.assign(window, { halfcupBench: bench });
    },
  };
}
