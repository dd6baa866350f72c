/**
 * What the page holds: the open plan, what is selected and pointed at, and how it is shown.
 * One store is made at the start and handed down; selection and view are never part of a plan.
 */
import type { Analysis, Finding, GpxDocument, LonLat, PlanDocument, Units } from '@halfcup/core';
import { signal, type Signal } from '@preact/signals';
import type { FeatureCollection } from 'geojson';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

/** A plan with everything that was read to compute it. */
export interface OpenPlan {
  readonly document: PlanDocument;
  readonly gpx: ReadonlyMap<string, GpxDocument>;
  readonly context: FeatureCollection | null;
  readonly analysis: Analysis;
  /** Of reading and of checking, together. */
  readonly findings: readonly Finding[];
}

/** A plan that cannot be computed yet, because files that it names are not here. */
export interface WaitingPlan {
  readonly document: PlanDocument;
  readonly gpx: ReadonlyMap<string, GpxDocument>;
  readonly context: FeatureCollection | null;
  readonly missing: readonly string[];
}

/** Why what was dropped or chosen did not open. */
export interface Refusal {
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
}

/** A place on a course. */
export interface CoursePlace {
  readonly course: string;
  readonly measure: number;
}

/** Where the map and the strip are asked to go; a new object each time, so that asking twice goes twice. */
export type Destination =
  | { readonly kind: 'whole' }
  | { readonly kind: 'station'; readonly station: string }
  | { readonly kind: 'place'; readonly course: string | null; readonly measure: number | null; readonly at: LonLat | null };

export type Pane = 'strip' | 'stations' | 'review' | 'day' | 'station';

export interface Store {
  readonly open: Signal<OpenPlan | null>;
  readonly waiting: Signal<WaitingPlan | null>;
  readonly refusal: Signal<Refusal | null>;
  readonly selected: Signal<string | null>;
  readonly destination: Signal<Destination>;
  /** Shared by map and strip. */
  readonly cursor: Signal<CoursePlace | null>;
  readonly course: Signal<string | null>;
  /** Course distance at the two ends of the strip; `null` for the whole course. */
  readonly stripView: Signal<readonly [number, number] | null>;
  readonly units: Signal<Units>;
  readonly pane: Signal<Pane>;
  /** The window has room for one column only. */
  readonly narrow: Signal<boolean>;
  readonly loading: Signal<boolean>;
}

export const createStore = (): Store => ({
  open: signal(null),
  waiting: signal(null),
  refusal: signal(null),
  selected: signal(null),
  destination: signal({ kind: 'whole' }),
  cursor: signal(null),
  course: signal(null),
  stripView: signal(null),
  units: signal('metric'),
  pane: signal('stations'),
  narrow: signal(false),
  loading: signal(true),
});

const StoreContext = createContext<Store | null>(null);
export const StoreProvider = StoreContext.Provider;

export function useStore(): Store {
  const store = useContext(StoreContext);
  if (store === null) throw new Error('a component was rendered outside StoreProvider');
  return store;
}
