/**
 * Many plans by the command line, one worker against two: time, plans a second, and memory while it comes through the
 * plans. Run by hand after a build, on a quiet Linux: `node packages/core/bench/batch.mjs`. Writes bench/batch.json,
 * from which the table of packages/core/BENCHMARKS.md is made. Exits 1 where a figure misses its target.
 *
 * What is held is told by each full collection that V8 makes of itself (`--trace-gc`), summed over the threads: what grows
 * there would never come back. The resident set is what the machine must have; it also holds what is not collected yet, of
 * which Node lets each thread keep more and more until a limit, in the first thread about 30 MB in the first thousand plans.
 * Both go up and down with each collection: so the mean of every hundred plans, after the first, is held against the mean of them all.
 */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { DEMO, demoPlans } from '../examples/plans.mjs';

const PLANS = Number(process.argv[2] ?? 1000);
const ROUNDS = Number(process.argv[3] ?? 2);
const MAIN = fileURLToPath(new URL('../dist/cli/main.js', import.meta.url));

const sum = (values) => values.reduce((total, value) => total + value, 0);
const mean = (values) => sum(values) / values.length;

/** Writes the plans side by side with the GPX files that all of them name; gives their names. */
function writePlans(folder) {
  for (const name of ['full.gpx', 'half.gpx']) copyFileSync(new URL(name, DEMO), join(folder, name));
  return Array.from(demoPlans(PLANS), (text, k) => {
    const name = `plan-${String(k + 1).padStart(4, '0')}.json`;
    writeFileSync(join(folder, name), text);
    return name;
  });
}

/** Resident set of a process, MB, from Linux's account of it; of one that is ending there is none. */
function residentMb(pid) {
  const [, kb] = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
  return kb === undefined ? [] : [Number(kb) / 1000];
}

/** Lines of V8 about a full collection: which heap, and the MB that it held after it. */
const COLLECTED = /^\[\d+:(0x[0-9a-f]+)\].*Mark-Compact.*-> ([\d.]+) \(/;

/** One run over all plans: seconds, the digest of what it wrote, and means of memory in each hundred plans, MB. */
async function run(folder, files, workers) {
  const out = join(folder, 'lines');
  rmSync(out, { force: true });
  const written = () => statSync(out, { throwIfNoEntry: false })?.size ?? 0;
  const from = performance.now();
  const child = spawn(
    process.execPath,
    ['--trace-gc', MAIN, 'review', ...files, '--json-lines', '--workers', String(workers), '--out', out],
    { cwd: folder, stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const ended = once(child, 'exit');
  const heaps = new Map();
  const held = [];
  const resident = [];
  const sampling = setInterval(() => resident.push(...residentMb(child.pid).map((mb) => ({ at: written(), mb }))), 50);
  child.once('exit', () => clearInterval(sampling));
  for await (const line of createInterface({ input: child.stdout })) {
    const [, heap, mb] = COLLECTED.exec(line) ?? [];
    if (heap === undefined) continue;
    heaps.set(heap, Number(mb));
    held.push({ at: written(), mb: sum([...heaps.values()]) });
  }
  const [exit] = await ended;
  const seconds = (performance.now() - from) / 1000;
  const lines = readFileSync(out);
  const count = lines.toString('latin1').split('\n').length - 1;
  if (count !== PLANS || exit === 2) throw new Error(`${count} of ${PLANS} plans, exit ${exit}`);
  return {
    seconds,
    digest: createHash('sha256').update(lines).digest('hex'),
    held: byHundreds(held, lines.length),
    resident: byHundreds(resident, lines.length),
  };
}

/** Means by hundreds of plans of what was seen when so many of all bytes were written: the lines are of about one length. */
function byHundreds(seen, bytes) {
  const hundreds = Array.from({ length: Math.ceil(PLANS / 100) }, () => []);
  for (const { at, mb } of seen)
    hundreds[Math.min(Math.floor((at / bytes) * hundreds.length), hundreds.length - 1)].push(mb);
  return hundreds.filter((values) => values.length > 0).map(mean);
}

/** The mean of memory after the first hundred plans, MB, and how far a hundred is from it, percent. */
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
  console.log(
    `${met ? ' ' : '!'} ${work}; ${peer}: ${figure.toPrecision(3)}${unit}${bound === undefined ? '' : ` (${bound} ${target}${unit})`}`,
  );
}

const folder = mkdtempSync(join(tmpdir(), 'halfcup-batch-'));
try {
  const files = writePlans(folder);
  const runs = [];
  for (let round = 0; round < ROUNDS; round++)
    for (const workers of [1, 2]) runs.push({ workers, ...(await run(folder, files, workers)) });
  if (new Set(runs.map(({ digest }) => digest)).size !== 1)
    throw new Error('one worker and two printed different lines');
  const best = (workers) => Math.min(...runs.filter((one) => one.workers === workers).map(({ seconds }) => seconds));
  const shown = (values) => values.map((value) => value.toFixed(0)).join(' ');
  for (const { workers, seconds, held, resident } of runs)
    console.log(
      `  ${workers} at work: ${seconds.toFixed(1)} s; MB by hundreds of plans: held ${shown(held)}, resident ${shown(resident)}`,
    );
  report('plans a second, one worker', PLANS / best(1), '', undefined);
  report('plans a second, two workers', PLANS / best(2), '', undefined);
  report(
    'time with one worker over that with two (alone it takes 1.2 processors: Node compiles and collects beside it)',
    best(1) / best(2),
    '×',
  );
  for (const [workers, word] of [
    [1, 'one worker'],
    [2, 'two workers'],
  ]) {
    const of = (memory) => runs.filter((one) => one.workers === workers).map((one) => steadiness(one[memory]));
    const farthest = (steady) => Math.max(...steady.map(({ off }) => off));
    report(`heap after garbage collection, ${word}`, mean(of('held').map(({ middle }) => middle)), ' MB', undefined);
    report(
      `the same, farthest hundred plans off the mean after the first hundred, ${word}`,
      farthest(of('held')),
      ' %',
      'at most',
      10,
    );
    report(`process memory (RSS), ${word}`, mean(of('resident').map(({ middle }) => middle)), ' MB', undefined);
    report(
      `the same, farthest hundred plans off the mean after the first hundred, ${word}`,
      farthest(of('resident')),
      ' %',
      'at most',
      15,
    );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
const processors = availableParallelism();
writeFileSync(
  fileURLToPath(new URL('batch.json', import.meta.url)),
  `${JSON.stringify({ node: process.version, processors, rows }, null, 2)}\n`,
);
process.exitCode = rows.every(({ met }) => met) ? 0 : 1;
