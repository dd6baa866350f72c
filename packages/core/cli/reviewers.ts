/** What reviews several plans: this thread, or a pool of worker threads. A fault at one plan is reported in its line and stops no other. */
import { type ReviewJob, type ReviewedLine, faultLine } from './reviewedLine.ts';

export interface Reviewers {
  /** Never rejects. */
  readonly review: (job: ReviewJob) => Promise<ReviewedLine>;
  readonly close: () => void;
}

export async function inThisThread(): Promise<Reviewers> {
  const { default: reviewLine } = await import('./reviewWorker.ts');
  return {
    review: async (job) => reviewLine(job).catch((error: unknown) => faultLine(job.file, error)),
    close: () => undefined,
  };
}

/**
 * Memory for young objects in each thread, MB. With Node's own 48 MB the heaps go on growing over many hundreds of
 * plans before the collector looks at what is old: see bench/batch.mjs.
 */
const YOUNG = 24;

/** So many threads; one that runs out of memory is replaced. Where threads cannot be had, this one does their work. */
export async function inThreads(count: number): Promise<Reviewers> {
  const { Tinypool } = await import('tinypool');
  const filename = new URL('reviewWorker.js', import.meta.url).href;
  const pool = new Tinypool({
    filename,
    minThreads: count,
    maxThreads: count,
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
  });
  // A thread that dies without a plan, at its start, is not replaced, and its tasks would wait for ever.
  let here: Promise<Reviewers> | undefined;
  pool.on('error', () => {
    here ??= inThisThread();
    pool.cancelPendingTasks();
  });
  // The pool's threads do not keep the program alive: not while they start, which this does, and not when they are done.
  // They are not ended by `destroy`, which throws where one of them is just failing.
  const awake = setInterval(() => undefined, 60_000);
  const review = async (job: ReviewJob): Promise<ReviewedLine> => {
    try {
      if (here === undefined) return (await pool.run(job)) as ReviewedLine;
    } catch (error) {
      if (here === undefined) return faultLine(job.file, error);
    }
    return (await here).review(job);
  };
  return { review, close: () => clearInterval(awake) };
}
