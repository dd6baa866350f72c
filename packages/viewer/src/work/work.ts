/** Gives a task to a worker of its own, with a line that shows how far it is and stops it. */
import { PART_MISSING, workerTrouble } from '../trouble.ts';
import type { Job, Store } from '../state/store/store.ts';
import type { Task, Told } from './messages.ts';

const MEGA = 1e6;
const megabytes = (bytes: number): string => (bytes / MEGA).toFixed(bytes < 10 * MEGA ? 1 : 0);

function jobOf(label: string, told: Extract<Told, { kind: 'progress' }>, stop: () => void): Job {
  const { read } = told;
  if (read === null) return { label: `${label}: measuring the course`, share: null, stop };
  return {
    label: `${label}: ${megabytes(read.done)} of ${megabytes(read.total)} MB`,
    share: read.total === 0 ? null : read.done / read.total,
    stop,
  };
}

export type Answer = Exclude<Told, { kind: 'progress' }>;

function started(): Worker | null {
  try {
    return new Worker(new URL('./reader.worker.ts', import.meta.url), { type: 'module' });
  } catch (error) {
    console.warn(error);
    return null;
  }
}

/** One that has done its task and waits for the next: starting one takes longer than reading a plan. */
let idle: Worker | null = null;

/** Bytes beyond which a worker goes with its memory when its task is done. */
const LARGE = 5_000_000;

const sizeOf = (task: Task): number =>
  'files' in task ? task.files.reduce((sum, { blob }) => sum + blob.size, 0) : Infinity;

/** What the worker has to say at the end; `null` where a person has stopped it. One task at a time: another one stops it too. */
export function runInWorker(store: Store, label: string, task: Task): Promise<Answer | null> {
  store.job.value?.stop();
  const worker = idle ?? started();
  idle = null;
  if (worker === null) return Promise.resolve({ kind: 'failed', message: PART_MISSING, absent: true });
  return new Promise((resolve) => {
    const ears = new AbortController();
    const end = (told: Answer | null): void => {
      ears.abort();
      const goes = told === null || told.kind === 'failed' || sizeOf(task) > LARGE || idle !== null;
      if (goes) worker.terminate();
      else idle = worker;
      store.job.value = null;
      resolve(told);
    };
    const stop = (): void => end(null);
    store.job.value = { label, share: null, stop };
    const { signal } = ears;
    worker.addEventListener(
      'message',
      ({ data }: MessageEvent<Told>) => {
        if (data.kind === 'progress') store.job.value = jobOf(label, data, stop);
        else end(data);
      },
      { signal },
    );
    // One without a message has not begun: its script cannot be had.
    worker.addEventListener(
      'error',
      (event) =>
        end({ kind: 'failed', message: workerTrouble(event), ...(event.message ? {} : { absent: true as const }) }),
      { signal },
    );
    worker.postMessage(task, []);
  });
}
