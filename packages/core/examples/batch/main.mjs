/**
 * Reviews many plans, a worker thread for each processor: `node main.mjs [how many]`, 1,000 where none is said.
 * Prints how many plans have errors, and which errors there are.
 */
import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import { demoPlans } from '../plans.mjs';

const count = Number(process.argv[2] ?? 1000);
const threads = availableParallelism();
const pool = new Tinypool({
  filename: new URL('worker.mjs', import.meta.url).href,
  minThreads: threads,
  maxThreads: threads,
});

const reviews = await Promise.all(Array.from(demoPlans(count), (text) => pool.run(text)));
await pool.destroy();

const withErrors = reviews.filter(({ counts }) => counts.error > 0);
console.log(`${reviews.length} plans, ${withErrors.length} with errors`);
for (const code of new Set(reviews.flatMap(({ errors }) => errors))) {
  console.log(`${code}: in ${reviews.filter(({ errors }) => errors.includes(code)).length} plans`);
}
