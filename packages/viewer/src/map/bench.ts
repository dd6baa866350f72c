/** For the bench and the browser tests alone, at an address that ends in #bench: the plan's text, bare repaints, and how long each move takes. */
import type { LonLat } from '@halfcup/core';
import type { Store } from '../state/store/store.ts';
import type { MapView } from './mapView.ts';

export interface Bench {
  /** The text of the open plan. */
  readonly text: () => string | null;
  /** Where the stations shown stand, as coordinates by station. */
  readonly pins: () => Readonly<Record<string, readonly [number, number]>>;
  readonly findings: () => readonly string[];
  /** Where a place is on the page, pixels. */
  readonly place: (at: LonLat) => readonly [number, number];
  /** Asks for a frame of the map in which nothing is changed. */
  readonly redraw: () => void;
  /** Milliseconds of our own code in each move of a drag, and in each drawing of the panels during a trial. */
  readonly times: number[];
}

export interface BenchHook {
  /** Carries out a piece of work and notes how long it took, with the panels that follow from it. */
  readonly measured: (work: () => void) => void;
  readonly expose: (view: MapView) => void;
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
    expose: (view) => {
      const bench: Bench = {
        text: () => store.open.value?.document.text ?? null,
        pins: () =>
          Object.fromEntries(
            (store.open.value?.analysis.stations ?? []).map(({ id, at }) => [id, [at[0], at[1]] as const]),
          ),
        findings: () => (store.open.value?.findings ?? []).map(({ code, message }) => `${code}: ${message}`),
        place: view.place,
        redraw: view.redraw,
        times,
      };
      Object.assign(window, { halfcupBench: bench });
    },
  };
}
