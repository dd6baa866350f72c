/** Makes the plan that the start sheet asks for, in a worker. */
import type { Finding } from '@halfcup/core';
import type { SetUpAnswers } from '@halfcup/core/plan';
import { showStarted, startPlan } from '../state/edits/startPlan.ts';
import type { Starting, Store } from '../state/store/store.ts';
import { FAULT } from '../trouble.ts';
import { elsewhere } from './elsewhere.ts';
import { planOf } from './messages.ts';

/** Empty where it is done or a person has stopped it; else why not, and nothing is changed. */
export async function makePlan(store: Store, starting: Starting, answers: SetUpAnswers): Promise<readonly Finding[]> {
  // What was offered is worked out anew there, from the answers.
  const files = starting.files.map(({ name, document, original }) => ({ name, document, original }));
  const told = await elsewhere(store, `Making ${answers.name}`, {
    kind: 'start',
    starting: { ...starting, files },
    answers,
  });
  if (told === null) store.notice.value = { text: 'Stopped. The plan was not made.' };
  if (told === null || store.starting.value === null) return [];
  if (told.kind === 'unstarted') return told.findings;
  if (told.kind === 'started') {
    showStarted(store, starting, planOf(told.bare), planOf(told.whole));
    return [];
  }
  if (told.kind === 'failed' && told.absent === true) return startPlan(store, starting, answers);
  const message = `The plan could not be made: ${told.kind === 'failed' ? told.message : FAULT}.`;
  return [{ code: 'start-failed', severity: 'error', message, where: {} }];
}
