/**
 * Many plans by the command line, one worker against two: time, plans a second, and the memory of the whole process
 * while it comes through the plans. Run by hand after a build, on a quiet Linux: `node packages/core/bench/batch.mjs`.
 * Writes bench/batch.json, from which the README's table is made. Exits 1 where a figure misses its target.
 *
 * Memory is what the process really holds (resident set, all threads), which the machine must have; the heap after a
 * collection would hide what is not collected in time. It goes up and down with each collection: so the mean of every
 * hundred plans, after the first, is held against the mean of them all.
 */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { DEMO, demoPlans } from '../examples/plans.mjs';

const PLANS = Number(process.argv[2] ?? 1000);
const ROUNDS = Number(process.argv[3] ?? 2);
const MAIN = fileURLToPath(new URL('../dist/cli/main.js', import.meta.url));

const mean = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Writes the plans side by side with the GPX files that all of them name; gives their names. */
function writePlans(folder) {
  for (const name of ['full.gpx', 'half.gpx']) copyFileSync(new URL(name, DEMO), join(folder, name));
  return Array.from(demoPlans(PLANS), (text, k) => {
    const name = `plan-${String(k + 1).padStart(4, '0')}.json`;
    writeFileSync(join(folder, name), text);
    return name;
  });
}

/** Resident set of a process, MB, from Linux's account of it. */
const residentMb = (pid) => Number(/^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))[1]) / 1000;

/** One run over all plans: seconds, the digest of what it printed, and the mean of memory in each hundred plans. */
async function run(folder, files, workers) {
  const from = performance.now();
  const child = spawn(process.execPath, [MAIN, 'review', ...files, '--json-lines', '--workers', String(workers)], { cwd: folder, stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = once(child, 'exit');
  const digest = createHash('sha256');
  const hundreds = [];
  let lines = 0;
  for await (const line of createInterface({ input: child.stdout })) {
    digest.update(line);
    // The last lines may be read when the process is gone.
    if (lines % 5 === 0 && lines < PLANS - 50) (hundreds[Math.floor(lines / 100)] ??= []).push(residentMb(child.pid));
    lines += 1;
  }
  const [exit] = await ended;
  if (lines !== PLANS || exit === 2) throw new Error(`${lines} of ${PLANS} plans, exit ${exit}`);
  return { seconds: (performance.now() - from) / 1000, digest: digest.digest('hex'), memory: hundreds.map(mean) };
}

/** How far the memory of a hundred plans is from the mean after the first hundred, percent, and that mean, MB. */
function steadiness(memory) {
  const later = memory.slice(1);
  const middle = mean(later);
  return { middle, off: Math.max(...later.map((value) => (100 * Math.abs(value - middle)) / middle)) };
}

const rows = [];
function report(peer, figure, unit, bound, target) {
  const work = `${PLANS.toLocaleString('en')} plans of the size of the demo`;
  const met = bound === undefined || (bound === 'at least' ? figure >= target : figure <= target);
  rows.push({ work, peer, figure, unit, ...(bound === undefined ? {} : { bound, target }), met });
  console.log(`${met ? ' ' : '!'} ${work}; ${peer}: ${figure.toPrecision(3)}${unit}${bound === undefined ? '' : ` (${bound} ${target}${unit})`}`);
}

const folder = mkdtempSync(join(tmpdir(), 'halfcup-batch-'));
try {
  const files = writePlans(folder);
  const runs = [];
  for (let round = 0; round < ROUNDS; round++) for (const workers of [1, 2]) runs.push({ workers, ...(await run(folder, files, workers)) });
  if (new Set(runs.map(({ digest }) => digest)).size !== 1) throw new Error('one worker and two printed different lines');
  const best = (workers) => Math.min(...runs.filter((one) => one.workers === workers).map(({ seconds }) => seconds));
  for (const { workers, seconds, memory } of runs) console.log(`  ${workers} at work: ${seconds.toFixed(1)} s; MB by hundreds of plans: ${memory.map((value) => value.toFixed(0)).join(' ')}`);
  report('plans a second, one worker', PLANS / best(1), '', undefined);
  report('plans a second, two workers', PLANS / best(2), '', undefined);
  report('time with one worker over that with two', best(1) / best(2), '×', 'at least', 1.5);
  for (const [workers, word] of [[1, 'one worker'], [2, 'two workers']]) {
    const steady = runs.filter((one) => one.workers === workers).map(({ memory }) => steadiness(memory));
    report(`resident memory, ${word}`, mean(steady.map(({ middle }) => middle)), ' MB', undefined);
    report(`the same, a hundred plans off the mean of all after the first hundred, ${word}`, Math.max(...steady.map(({ off }) => off)), ' %', 'at most', 10);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
const processors = availableParallelism();
writeFileSync(fileURLToPath(new URL('batch.json', import.meta.url)), `${JSON.stringify({ node: process.version, processors, rows }, null, 2)}\n`);
process.exitCode = rows.every(({ met }) => met) ? 0 : 1;
