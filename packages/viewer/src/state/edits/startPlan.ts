/** Opens the plan that the start sheet asks for: its courses first, then all that was answered as one step of undo. */
import type { Finding } from '@halfcup/core';
import type { SetUpAnswers } from '@halfcup/core/plan';
import { batch } from '@preact/signals';
import { receive } from '../open/receive.ts';
import { startedFrom, wholeOf } from '../open/starting.ts';
import type { OpenPlan, Starting, Store } from '../store/store.ts';
import { stepTo } from './workbench.ts';

/** Shows a plan that was made: `bare`, with its courses alone, is one step back from `whole`. */
export function showStarted(store: Store, starting: Starting, bare: OpenPlan, whole: OpenPlan): void {
  batch(() => {
    receive(
      store,
      starting.files.map(({ name }) => name),
      { kind: 'opened', plan: bare, started: true },
    );
    // One record of files lives as long as no file is added.
    stepTo(store, { ...whole, files: bare.files }, 'set up the plan');
  });
}

/** Empty where it is done; else why not, and nothing is changed. */
export function startPlan(store: Store, starting: Starting, answers: SetUpAnswers): readonly Finding[] {
  const started = startedFrom(starting, answers);
  if (!started.ok) return started.findings;
  const whole = wholeOf(started.value);
  if (!whole.ok) return whole.findings;
  showStarted(store, starting, started.value.bare, whole.value);
  return [];
}
