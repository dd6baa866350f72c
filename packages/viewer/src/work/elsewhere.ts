/** A task given to a worker, by a script that is fetched when it is first needed. */
import type { Store } from '../state/store/store.ts';
import { PART_MISSING } from '../trouble.ts';
import type { Task } from './messages.ts';
import type { Answer } from './work.ts';

/** As `runInWorker`; where its script cannot be had, the answer is that the worker is absent. */
export async function elsewhere(store: Store, label: string, task: Task): Promise<Answer | null> {
  let work: typeof import('./work.ts');
  try {
    work = await import('./work.ts');
  } catch (error) {
    console.warn(error);
    return { kind: 'failed', message: PART_MISSING, absent: true };
  }
  return work.runInWorker(store, label, task);
}
