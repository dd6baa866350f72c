/** Searches for better places in a worker of its own, with a line that shows how far it is and stops it. */
import { coursesOf } from '../state/view/derive.ts';
import type { Improved, OpenPlan, Store } from '../state/store/store.ts';
import { workerTrouble } from '../trouble.ts';
import { SEARCHING, type ImproveTask, type ImproveTold } from './improveMessages.ts';

export interface Asked {
  /** Ids of the stations that may move. */
  readonly only: readonly string[];
  /** Metres along the course to either side. */
  readonly within: number;
}

/** What was found for the plan as it is shown; a text where that failed; `null` where a person has stopped it. */
export function searchPlaces(store: Store, open: OpenPlan, { only, within }: Asked): Promise<Improved | string | null> {
  store.job.value?.stop();
  const { analysis, files, document, variant } = open;
  const worker = new Worker(new URL('./improve.worker.ts', import.meta.url), { type: 'module' });
  const task: ImproveTask = {
    plan: analysis.plan,
    courses: coursesOf(analysis),
    courseFindings: analysis.kept?.courseFindings ?? [],
    results: files.results,
    ground: files.ground,
    only,
    within,
  };
  return new Promise((resolve) => {
    const end = (value: Improved | string | null): void => {
      worker.terminate();
      store.job.value = null;
      resolve(value);
    };
    const stop = (): void => end(null);
    store.job.value = { label: SEARCHING, share: 0, stop };
    worker.addEventListener('message', ({ data }: MessageEvent<ImproveTold>) => {
      if (data.kind === 'progress') store.job.value = { label: SEARCHING, share: data.share, stop };
      else end(data.kind === 'failed' ? data.message : { ...data.improvement, text: document.text, variant, within });
    });
    worker.addEventListener('error', (event) => end(workerTrouble(event)));
    worker.postMessage(task, []);
  });
}
