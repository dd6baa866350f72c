/** Chooses a station or what a finding points at: selects it, and has the map and the strip go there. */
import type { Finding } from '@halfcup/core';
import { batch } from '@preact/signals';
import type { Store } from '../store/store.ts';

/** Selects a station and goes there on the map and on the strip. */
export function chooseStation(store: Store, station: string): void {
  batch(() => {
    store.selected.value = station;
    store.destination.value = { kind: 'station', station };
    keepInStrip(store, station);
  });
}

/** The strip follows to the station's first served pass of the course shown, or to the course that has one. */
function keepInStrip(store: Store, id: string): void {
  const station = store.open.value?.analysis.stations.find((one) => one.id === id);
  const passes = station?.passes.filter((pass) => pass.served) ?? [];
  const pass = passes.find((one) => one.course === store.course.value) ?? passes[0] ?? station?.passes[0];
  if (pass !== undefined) showOnStrip(store, pass.course, pass.measure);
}

function showOnStrip(store: Store, course: string, measure: number): void {
  if (store.course.value !== course) {
    store.course.value = course;
    store.stripView.value = null;
  }
  const view = store.stripView.value;
  if (view === null || (measure > view[0] && measure < view[1])) return;
  const half = (view[1] - view[0]) / 2;
  store.stripView.value = [measure - half, measure + half];
}

/** Goes to what a finding points at. */
export function chooseFinding(store: Store, finding: Finding): void {
  const { station, course, measure, at } = finding.where;
  const known = store.open.value?.analysis.stations.some((one) => one.id === station) ?? false;
  batch(() => {
    if (known && station !== undefined) {
      chooseStation(store, station);
      return;
    }
    if (course !== undefined && measure !== undefined) {
      showOnStrip(store, course, measure);
      store.cursor.value = { course, measure };
    }
    if (at !== undefined || (course !== undefined && measure !== undefined)) {
      store.destination.value = { kind: 'place', course: course ?? null, measure: measure ?? null, at: at ?? null };
    }
  });
}

/** Goes to what a finding points at, and to its card in the review. */
export function seekFinding(store: Store, finding: Finding): void {
  batch(() => {
    chooseFinding(store, finding);
    store.pane.value = 'review';
    store.sought.value = { finding };
  });
}
