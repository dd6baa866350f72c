/** Prints how far the queue has come: `node results.mjs`. */
import { Queue } from 'bullmq';
import { QUEUE, RESULTS, connection, openRedis } from './queue.mjs';

const redis = openRedis();
const queue = new Queue(QUEUE, { connection });
const { waiting, active, failed } = await queue.getJobCounts('waiting', 'active', 'failed');
const reviews = (await redis.hvals(RESULTS)).map((text) => JSON.parse(text));
const unusable = reviews.filter(({ problems }) => problems !== undefined);
const withErrors = reviews.filter(({ counts }) => counts?.error > 0);
console.log(
  `${reviews.length} plans reviewed: ${withErrors.length} with errors, ${unusable.length} that cannot be used`,
);
console.log(`${waiting} waiting, ${active} in hand, ${failed} set aside`);
await queue.close();
redis.disconnect();
