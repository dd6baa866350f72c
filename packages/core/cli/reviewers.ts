/** Whoever reviews several plans: this thread, or a pool of worker threads. A fault at one plan is told in its line and stops no other. */
import { type ReviewJob, type ReviewedLine, faultLine } from './reviewedLine.ts';

export interface Reviewers {
  /** Never rejects. */
  readonly review: (job: ReviewJob) => Promise<ReviewedLine>;
  readonly close: () => Promise<void>;
}

export async function inThisThread(): Promise<Reviewers> {
  const { default: reviewLine } = await import('./reviewWorker.ts');
  return { review: async (job) => reviewLine(job).catch((error: unknown) => faultLine(job.file, error)), close: async () => undefined };
}

/** So many threads; one that runs out of memory is replaced. */
export async function inThreads(count: number): Promise<Reviewers> {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({ filename: new URL('reviewWorker.js', import.meta.url).href, minThreads: count, maxThreads: count });
  let failed: unknown;
  // A thread that dies without a plan, at its start perhaps, is not replaced: whatever waits for it must not wait for ever.
  pool.on('error', (error) => {
    failed = error;
    void pool.destroy();
  });
  const review = async (job: ReviewJob): Promise<ReviewedLine> => {
    try {
      return (await pool.run(job)) as ReviewedLine;
    } catch (error) {
      return faultLine(job.file, failed ?? error);
    }
  };
  return { review, close: async () => pool.destroy() };
}
