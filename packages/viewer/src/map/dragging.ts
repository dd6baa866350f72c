/** What dragging and nudging on the map do to the plan: the station is held, tried at each place, and let go or put back. */
import { formatMeasure, type Finding, type LonLat, type StationLayout } from '@halfcup/core';
import { nearestOn, passesOf, type IndexedCourse } from '@halfcup/core/geometry';
import type { ReadonlySignal } from '@preact/signals';
import { leadOf } from '../state/derive.ts';
import { differenceOf, differenceText } from '../state/difference.ts';
import { nudge } from '../state/moves.ts';
import { alongPlacement, freePlacement, leadHold } from '../state/placing.ts';
import type { Store } from '../state/store.ts';
import { dropTrial, holdStation, letGo, tryPlace } from '../state/workbench.ts';
import type { Dragging } from './gestures/drag.ts';

/** Passes that come this much nearer than others, metres, are meant; among the rest the one is that was held before. */
const CLEARLY = 15;

/** The measure of a course that is meant by a place: of the near passes the one that goes on from `last`, so that lanes are not changed by a hair. */
export function measureMeant(course: IndexedCourse, at: LonLat, last: number): number {
  const passes = passesOf(course, at);
  const nearest = Math.min(...passes.map(({ distance }) => distance));
  const near = passes.filter(({ distance }) => distance <= nearest + CLEARLY).toSorted((a, b) => Math.abs(a.measure - last) - Math.abs(b.measure - last));
  return (near[0] ?? nearestOn(course, at)).measure;
}

const tell = (store: Store, findings: readonly Finding[], done: string): void => {
  store.notice.value = { text: findings.length > 0 ? findings.map(({ message }) => message).join(' ') : done };
};

const stationOf = (store: Store, id: string): StationLayout | undefined => store.open.value?.analysis.stations.find((one) => one.id === id);

/** `along`: whether stations are dragged along the course even without Shift. */
export function draggingOf(store: Store, along: ReadonlySignal<boolean>): Dragging {
  let last = 0;
  return {
    pinOf: (id) => stationOf(store, id)?.at,
    pins: () => store.open.value?.analysis.stations ?? [],
    hold: (id) => {
      const station = stationOf(store, id);
      last = (station === undefined ? null : leadHold(station))?.measure ?? 0;
      store.cursor.value = null;
      holdStation(store, id);
    },
    move: (pin, shift) => {
      const trial = store.trial.value;
      const station = trial?.from.analysis.stations.find(({ id }) => id === trial.station);
      if (trial === null || station === undefined) return false;
      const { analysis } = trial.from;
      const hold = shift || along.value ? leadHold(station) : null;
      const course = hold === null ? undefined : analysis.courses.find((one) => one.course.id === hold.course);
      if (hold === null || course === undefined) {
        tryPlace(store, freePlacement(analysis, station, pin));
        return true;
      }
      last = measureMeant(course, pin, last);
      const placement = alongPlacement(analysis, station, hold, last);
      if (placement !== null) tryPlace(store, placement);
      return true;
    },
    letGo: () => {
      const id = store.trial.value?.station ?? '';
      const before = store.trial.value?.from.analysis.stations.find((one) => one.id === id);
      const findings = letGo(store);
      const now = stationOf(store, id);
      if (before === undefined || now === undefined || (before === now && findings.length === 0)) return;
      tell(store, findings, `${now.name} moved: ${differenceText(differenceOf(before, now), store.units.value)}.`);
    },
    drop: () => dropTrial(store),
  };
}

/** Metres and yards of one nudge. */
const STEP = { metric: 1, imperial: 0.9144 } as const;

/** Nudges the selected station, and says where it stands now. */
export function nudgeSelected(store: Store, steps: number): void {
  const id = store.selected.value;
  if (id === null) {
    store.notice.value = { text: 'No station is chosen. Choose one first; then Alt with an arrow key moves it along its course.' };
    return;
  }
  const findings = nudge(store, id, steps * STEP[store.units.value]);
  const station = stationOf(store, id);
  const lead = station === undefined ? undefined : leadOf(station);
  if (station !== undefined) tell(store, findings, lead === undefined ? station.name : `${station.name} at ${formatMeasure(lead.measure, store.units.value)}`);
}
