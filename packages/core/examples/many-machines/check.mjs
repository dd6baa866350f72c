/**
 * Proves the example: a Redis of its own, 200 plans, three workers of which one after the other is killed in the midst
 * of its work and replaced. Then each plan must have one review, equal to that of a direct call. `node check.mjs`.
 */
import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { Queue } from 'bullmq';
import { DEMO, demoPlans, seeded } from '../plans.mjs';

const PLANS = 200;
const WORKERS = 3;
/** Reviews between two kills. */
const [FEWEST, MOST] = [5, 25];
const LOCK_MS = 3000;
/** Everything is done in a fraction of this, or never. */
const LIMIT_MS = 300_000;

const began = Date.now();
const folder = mkdtempSync(join(tmpdir(), 'halfcup-queue-'));
const port = await freePort();
process.env['REDIS_URL'] = `redis://127.0.0.1:${port}`;
const { QUEUE, RESULTS, connection, openRedis, sha256 } = await import('./queue.mjs');
const { review } = await import('./review.mjs');

/** Every process that was started here and has not ended. */
const running = new Set();
const workers = [];
let started = 0;

process.once('exit', () => {
  for (const child of running) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});
process.once('SIGTERM', () => process.exit(1));

const server = start(
  'redis-server',
  ['--port', String(port), '--bind', '127.0.0.1', '--dir', folder, '--save', '', '--appendonly', 'no'],
  'ignore',
);
await until(async () => accepts(port));
const redis = openRedis();
const queue = new Queue(QUEUE, { connection });
try {
  // Putting all of them twice must not double any.
  for (let k = 0; k < 2; k++) put();
  const expected = directReviews();
  for (let k = 0; k < WORKERS; k++) startWorker();
  const { kills, held } = await killWhileTheyWork();
  await until(async () => (await queue.getJobCountByTypes('completed', 'failed')) >= PLANS);
  await compare(expected);
  const recovered = await recoveredJobs(held);
  const again = (await queue.getJobs(['completed'])).filter(({ attemptsStarted }) => attemptsStarted > 1).length;
  console.log(
    `${PLANS} plans, each with one review equal to a direct call's; ${kills} workers killed, ${recovered} of them with a plan in hand; ${again} plans begun more than once; ${((Date.now() - began) / 1000).toFixed(0)} s`,
  );
} finally {
  await queue.close();
  redis.disconnect();
  await Promise.all([...running].filter((child) => child !== server).map(kill));
  await kill(server);
}

function put() {
  const { status, stderr } = spawnSync(process.execPath, [here('put.mjs'), String(PLANS)], { encoding: 'utf8' });
  assert.equal(status, 0, stderr);
}

/** The review of each plan by its key, made here, without a queue. */
function directReviews() {
  const files = new Map(['full.gpx', 'half.gpx'].map((name) => [name, readFileSync(new URL(name, DEMO), 'utf8')]));
  const keys = Object.fromEntries(Array.from(files, ([name, text]) => [name, sha256(text)]));
  const reviews = new Map();
  for (const plan of demoPlans(PLANS))
    reviews.set(sha256(JSON.stringify({ plan, files: keys })), JSON.stringify(review(plan, files)));
  assert.equal(reviews.size, PLANS);
  return reviews;
}

/** Kills one worker after the other, each after some reviews, and starts another in its place. Which had a plan in hand is what Redis says after their death. */
async function killWhileTheyWork() {
  const random = seeded(7);
  const held = [];
  let kills = 0;
  let next = FEWEST;
  while (next < PLANS - MOST) {
    const wanted = next;
    await until(async () => (await redis.hlen(RESULTS)) >= wanted);
    const [victim] = workers.splice(Math.floor(random() * workers.length), 1);
    await kill(victim.child);
    kills += 1;
    const active = await queue.getJobs(['active']);
    held.push(...active.filter(({ processedBy }) => processedBy === victim.name).map(({ id }) => id));
    startWorker();
    next = (await redis.hlen(RESULTS)) + FEWEST + Math.floor(random() * (MOST - FEWEST));
  }
  return { kills, held };
}

async function compare(expected) {
  const { completed, failed } = await queue.getJobCounts('completed', 'failed');
  assert.deepEqual({ completed, failed }, { completed: PLANS, failed: 0 }, 'every plan on the queue is done, once');
  const results = new Map(Object.entries(await redis.hgetall(RESULTS)));
  assert.deepEqual(new Set(results.keys()), new Set(expected.keys()), 'there is one result for each plan and no other');
  for (const [key, text] of expected) assert.equal(results.get(key), text, `the review of plan ${key}`);
}

/** How many plans were in the hands of a killed worker: at least one, and each was taken up by another. */
async function recoveredJobs(held) {
  assert.ok(held.length > 0, 'no kill hit a worker in the midst of a plan: this run proves nothing');
  for (const id of new Set(held)) {
    const { stalledCounter } = await queue.getJob(id);
    assert.ok(stalledCounter > 0, `plan ${id} was in the hands of a killed worker and was not taken up again`);
  }
  return held.length;
}

function startWorker() {
  started += 1;
  const name = `worker ${started}`;
  workers.push({ name, child: start(process.execPath, [here('work.mjs'), name], 'inherit') });
}

function start(command, args, output) {
  const child = spawn(command, args, {
    stdio: ['ignore', output, output],
    env: { ...process.env, LOCK_MS: String(LOCK_MS) },
  });
  running.add(child);
  child.once('exit', () => running.delete(child));
  child.once('error', (error) => {
    console.error(`${command} cannot be started (${error.message}); on Debian: apt-get install redis-server`);
    process.exit(1);
  });
  return child;
}

/** Ends a process at once, as a power cut does, and waits until it is gone. */
async function kill(child) {
  if (!running.has(child)) return;
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
}

async function until(holds) {
  while (!(await holds())) {
    assert.ok(Date.now() - began < LIMIT_MS, `not done after ${LIMIT_MS / 1000} s`);
    await sleep(10);
  }
}

/** Whether something listens there already. */
async function accepts(port) {
  const socket = connect(port, '127.0.0.1');
  try {
    await once(socket, 'connect');
    return true;
  } catch {
    return false;
  } finally {
    socket.destroy();
  }
}

async function freePort() {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address();
  probe.close();
  await once(probe, 'close');
  return port;
}

function here(name) {
  return fileURLToPath(new URL(name, import.meta.url));
}
