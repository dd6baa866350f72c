/** Puts plans on the queue: `node put.mjs [how many]`. Putting them twice does not double them. */
import { readFile } from 'node:fs/promises';
import { Queue } from 'bullmq';
import { DEMO, demoPlans } from '../plans.mjs';
import { FILES, QUEUE, connection, openRedis, sha256 } from './queue.mjs';

const redis = openRedis();
const files = {};
for (const name of ['full.gpx', 'half.gpx']) {
  const text = await readFile(new URL(name, DEMO), 'utf8');
  files[name] = sha256(text);
  await redis.hset(FILES, files[name], text);
}

const queue = new Queue(QUEUE, { connection });
let count = 0;
for (const plan of demoPlans(Number(process.argv[2] ?? 1000))) {
  // The key of a plan is made from all that its review depends on. A key that is on the queue already is not put again.
  const jobId = sha256(JSON.stringify({ plan, files }));
  await queue.add('review', { plan, files }, { jobId });
  count += 1;
}
console.log(`${count} plans put`);
await queue.close();
redis.disconnect();
