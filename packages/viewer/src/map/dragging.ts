/** What dragging and nudging on the map do to the plan: a trial shows the station at each place, and puts it down or back. */
import { type Finding, type LonLat, type StationLayout } from '@halfcup/core';
import { formatMeasure } from '@halfcup/core/units';
import { nearestOn, passesOf, type IndexedCourse } from '@halfcup/core/geometry';
import { effect, signal, type ReadonlySignal } from '@preact/signals';
import { leadOf } from '../state/view/derive.ts';
import { messageOf } from '../state/view/voice.ts';
import { differenceOf, differenceText } from '../state/view/difference.ts';
import { nudge } from '../state/edits/moves.ts';
import { alongPlacement, freePlacement, leadOffsetLine, type Placement } from '../state/edits/placing.ts';
import type { OpenPlan, Store, Trial } from '../state/store/store.ts';
import type { Dragging } from './gestures/drag.ts';
import { dropTrial } from '../state/store/trial.ts';
import { beginTrial, finishTrial, trialAt } from '../state/trial/trial.ts';

/** Passes that come this much nearer than others, metres, are meant; among the rest the one that was meant before. */
const CLEARLY = 15;

/** The measure of a course that is meant by a place: of the near passes the one that goes on from `last`, so that lanes are not changed by a hair. */
export function measureMeant(course: IndexedCourse, at: LonLat, last: number): number {
  const passes = passesOf(course, at);
  const nearest = Math.min(...passes.map(({ distance }) => distance));
  const near = passes
    .filter(({ distance }) => distance <= nearest + CLEARLY)
    .toSorted((a, b) => Math.abs(a.measure - last) - Math.abs(b.measure - last));
  return (near[0] ?? nearestOn(course, at)).measure;
}

const notify = (store: Store, findings: readonly Finding[], done: string): void => {
  store.notice.value = {
    text: findings.length > 0 ? findings.map((one) => messageOf(store, one)).join(' ') : done,
  };
};

const stationOf = (store: Store, id: string): StationLayout | undefined =>
  store.open.value?.analysis.stations.find((one) => one.id === id);

/**
 * Milliseconds between two drawings of the panels during a trial: they are read, and cost more than the map.
 * Where they take long, so much longer apart that they take no more than a fifth of the time.
 */
const PANELS_EVERY = 200;
const PANELS_SHARE = 5;
/** After so long without a move the panels follow at once. */
const AT_REST = 100;

/** A plan that the map shows at once, and the panels at their own beat. */
export interface TrialView {
  /** With the station at the place tried; `null` where there is no trial on the map. */
  readonly open: ReadonlySignal<OpenPlan | null>;
  readonly put: (open: OpenPlan) => void;
  /** Brings the panels up to the map. */
  readonly flush: () => void;
}

/** `measured`: carries out a piece of our own work, as a bench may want to time it. */
export function trialView(store: Store, measured: (work: () => void) => void): TrialView {
  const open = signal<OpenPlan | null>(null);
  let beat: ReturnType<typeof setTimeout> | undefined;
  let rest: ReturnType<typeof setTimeout> | undefined;
  let cost = 0;
  const show = (): void => {
    clearTimeout(beat);
    clearTimeout(rest);
    beat = undefined;
    if (store.trial.value === null || open.value === null || store.open.value === open.value) return;
    const from = performance.now();
    store.open.value = open.value;
    // After the frame that paints them.
    requestAnimationFrame(() => setTimeout(() => void (cost = performance.now() - from)));
  };
  effect(() => {
    if (store.trial.value === null) open.value = null;
  });
  return {
    open,
    flush: show,
    put: (shown) => {
      open.value = shown;
      clearTimeout(rest);
      rest = setTimeout(() => measured(show), Math.max(AT_REST, cost));
      beat ??= setTimeout(() => measured(show), Math.max(PANELS_EVERY, PANELS_SHARE * cost));
    },
  };
}

/** Where the station of a trial goes with its pin at a place; `null` in a skipped gap. `last`: the measure it had, and has then. */
function placementFor(
  trial: Trial,
  station: StationLayout,
  pin: LonLat,
  last: number | null,
): { readonly placement: Placement | null; readonly measure: number | null } {
  const { analysis } = trial.from;
  const line = last === null ? null : leadOffsetLine(station);
  const course = line === null ? undefined : analysis.courses.find((one) => one.course.id === line.course);
  if (line === null || course === undefined) return { placement: freePlacement(analysis, station, pin), measure: null };
  const measure = measureMeant(course, pin, last!);
  return { placement: alongPlacement(analysis, station, line, measure), measure };
}

/** `along`: whether stations are dragged along the course even without Shift. */
export function draggingOf(
  store: Store,
  along: ReadonlySignal<boolean>,
  view: TrialView,
  measured: (work: () => void) => void,
): Dragging {
  let last = 0;
  return {
    pins: () => store.open.value?.analysis.stations ?? [],
    off: () => store.tool.value !== null,
    begin: (id) => {
      const station = stationOf(store, id);
      last = (station === undefined ? null : leadOffsetLine(station))?.measure ?? 0;
      store.cursor.value = null;
      store.foundAt.value = id;
      beginTrial(store, id);
    },
    move: (pin, shift) => {
      const trial = store.trial.value;
      const station = trial?.from.analysis.stations.find(({ id }) => id === trial.station);
      if (trial === null || station === undefined) return false;
      measured(() => {
        const { placement, measure } = placementFor(trial, station, pin, shift || along.value ? last : null);
        last = measure ?? last;
        const shown = placement === null ? null : trialAt(store, placement, view.open.value ?? store.open.value);
        if (shown !== null) view.put(shown);
      });
      return true;
    },
    finish: () => {
      view.flush();
      const id = store.trial.value?.station ?? '';
      const before = store.trial.value?.from.analysis.stations.find((one) => one.id === id);
      const findings = finishTrial(store);
      const now = stationOf(store, id);
      if (before === undefined || now === undefined || (before === now && findings.length === 0)) return;
      notify(store, findings, `${now.name} moved: ${differenceText(differenceOf(before, now), store.units.value)}.`);
    },
    drop: () => dropTrial(store),
  };
}

/** Metres and yards of one nudge. */
const STEP = { metric: 1, imperial: 0.9144 } as const;

/** Nudges the selected station, and shows where it stands now. */
export function nudgeSelected(store: Store, steps: number): void {
  const id = store.selected.value;
  if (id === null) {
    store.notice.value = {
      text: 'No station is selected. Select one first; then Alt with an arrow key moves it along its course.',
    };
    return;
  }
  const findings = nudge(store, id, steps * STEP[store.units.value]);
  const station = stationOf(store, id);
  const lead = station === undefined ? undefined : leadOf(station);
  if (station !== undefined)
    notify(
      store,
      findings,
      lead === undefined ? station.name : `${station.name} at ${formatMeasure(lead.measure, store.units.value)}`,
    );
}
