/** A task given to a worker, by a script that is fetched when it is first needed. */
import type { Store } from '../state/store/store.ts';
import { PART_MISSING } from '../trouble.ts';
import type { Task } from './messages.ts';
import type { Answer, runInWorker } from './work.ts';

/** As `runInWorker`; where its script cannot be had, the answer is that the worker is absent. */
export async function elsewhere(store: Store, label: string, task: Task): Promise<Answer | null> {
  let run: typeof runInWorker;
  try {
    ({ runInWorker: run } = await import('./work.ts'));
  } catch (error) {
    console.warn(error);
    return { kind: 'failed', message: PART_MISSING, absent: true };
  }
  return run(store, label, task);
}
