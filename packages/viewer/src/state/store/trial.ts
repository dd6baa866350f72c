/** The open plan with and without the trial: a station that somebody moves, or a course that somebody draws up, and has not put down yet. */
import { batch } from '@preact/signals';
import type { OpenPlan, Store } from './store.ts';

/** The open plan without the trial, where there is one. */
export const planWithoutTrial = (store: Store): OpenPlan | null => store.trial.value?.from ?? store.open.value;

/** Puts the station of the trial back. */
export function dropTrial(store: Store): void {
  const trial = store.trial.value;
  if (trial === null) return;
  batch(() => {
    store.trial.value = null;
    store.open.value = trial.from;
    // A course that was only tried is shown no more.
    const { courses } = trial.from.analysis;
    if (!courses.some(({ course }) => course.id === store.course.value)) {
      store.course.value = courses[0]?.course.id ?? null;
      store.stripView.value = null;
    }
  });
}
