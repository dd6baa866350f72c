/** What a person can do, as functions over the store. */
import type { Finding } from '@halfcup/core';
import { batch } from '@preact/signals';
import { takeTiles } from './view/background.ts';
import { coursesOf } from './view/derive.ts';
import { openBlobs } from '../work/opening.ts';
import type { Opening } from './open/open.ts';
import { EMPTY_HISTORY } from './store/history.ts';
import type { Origin, Store } from './store/store.ts';

/** A name that no other kept plan has. */
export const freshId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');

/** Shows what came of opening files; a refusal leaves the open plan as it was. `origin`: what is known of where the files came from. */
export function receive(store: Store, names: readonly string[], opening: Opening, origin: Partial<Origin> = {}): void {
  batch(() => {
    store.loading.value = false;
    store.refusal.value = null;
    if (opening.kind === 'refused') {
      store.refusal.value = { files: names, findings: opening.findings };
      return;
    }
    if (opening.kind === 'waiting') {
      store.waiting.value = opening.plan;
      return;
    }
    const { plan } = opening;
    store.waiting.value = null;
    store.trial.value = null;
    store.history.value = EMPTY_HISTORY;
    store.origin.value = {
      id: freshId(),
      from: 'file',
      saved: opening.started === true ? null : plan.document.text,
      handle: null,
      modified: null,
      copy: false,
      ...origin,
    };
    store.open.value = plan;
    store.selected.value = null;
    store.cursor.value = null;
    store.asked.value = null;
    store.against.value = null;
    store.placed.value = null;
    store.improved.value = null;
    store.stripView.value = null;
    store.units.value = plan.document.plan.units;
    store.course.value = plan.document.plan.races[0]?.course ?? coursesOf(plan.analysis)[0]?.id ?? null;
    store.destination.value = { kind: 'whole' };
  });
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Reads files from a drop or a file chooser, then opens them; `handles`: by which the page may write to them again, by name. */
export async function openDropped(
  store: Store,
  dropped: readonly File[],
  handles: ReadonlyMap<string, FileSystemFileHandle> = new Map(),
): Promise<void> {
  const files = takeTiles(store, dropped);
  if (files.length === 0) return;
  const named = files.map((file) => ({ name: file.webkitRelativePath || file.name, blob: file }));
  const names = named.map(({ name }) => name);
  try {
    const opening = await openBlobs(store, named);
    if (opening === null) {
      store.notice.value = {
        text: `Stopped: ${names.length === 1 ? names[0] : `the ${names.length} files`} not opened`,
      };
      return;
    }
    const plan = opening.kind === 'opened' ? opening.plan.document.file : null;
    const handle = plan === null ? undefined : handles.get(plan);
    const modified = files.find(({ name }) => name === plan)?.lastModified ?? null;
    receive(store, names, opening, handle === undefined ? {} : { handle, modified });
  } catch (error) {
    // A file can vanish, or lose its permission, between being chosen and being read.
    const message = `The file could not be read (${reasonOf(error)}). Choose it again.`;
    receive(store, names, {
      kind: 'refused',
      findings: [{ code: 'file-unreadable', severity: 'error', message, where: { file: names[0] ?? '' } }],
    });
  }
}

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
