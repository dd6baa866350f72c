/** Opens the plan that the start sheet asks for: its courses first, then all that was answered as one step of undo. */
import type { Finding } from '@halfcup/core';
import type { SetUpAnswers } from '@halfcup/core/plan';
import { batch } from '@preact/signals';
import { receive } from '../open/receive.ts';
import { startedFrom } from '../open/starting.ts';
import type { Starting, Store } from '../store/store.ts';
import { replaceText } from './workbench.ts';

/** Empty where it is done; else why not, and nothing is changed. */
export function startPlan(store: Store, starting: Starting, answers: SetUpAnswers): readonly Finding[] {
  const started = startedFrom(starting, answers);
  if (!started.ok) return started.findings;
  const { bare, text } = started.value;
  return batch(() => {
    receive(
      store,
      starting.files.map(({ name }) => name),
      { kind: 'opened', plan: bare, started: true },
    );
    return replaceText(store, text, 'set up the plan');
  });
}
