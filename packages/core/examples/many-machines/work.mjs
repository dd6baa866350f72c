/**
 * A worker: `node work.mjs [name]`, as many as you like on as many machines as you like. It may be killed at any time:
 * what it had in hand is taken by another once its lock has run out.
 */
import { hostname } from 'node:os';
import { Worker } from 'bullmq';
import { FILES, QUEUE, RESULTS, connection, openRedis } from './queue.mjs';
import { review } from './review.mjs';

/** How long a worker may be silent before others take its plan, milliseconds. */
const patience = Number(process.env['LOCK_MS'] ?? 30_000);
const redis = openRedis();

async function work({ id, data: { plan, files } }) {
  const texts = new Map();
  for (const [name, key] of Object.entries(files)) texts.set(name, await redis.hget(FILES, key));
  // Written once: whoever does the same plan again has the same review, and finds this one.
  await redis.hsetnx(RESULTS, id, JSON.stringify(review(plan, texts)));
}

const worker = new Worker(QUEUE, work, {
  connection,
  name: process.argv[2] ?? `${hostname()} ${process.pid}`,
  lockDuration: patience,
  stalledInterval: patience / 2,
  // A plan whose workers have died so often is set aside as failed: it may be what kills them.
  maxStalledCount: 20,
});
worker.on('error', (error) => console.error(error.message));

// Asked to stop, it finishes the plan in hand.
process.once('SIGTERM', async () => {
  await worker.close();
  redis.disconnect();
});
