/**
 * The longest tasks of the page's thread (W3C Long Tasks) while files are opened: a course of 20 MB, the plan made of it,
 * the course dropped on an open plan, a plan of 2 MB. `node packages/viewer/bench/longTasks.mjs`; takes VIEWER_DIST or
 * dist, and CHROMIUM_PATH, else /usr/bin/chromium. Exits with 1 where a task took over 300 ms.
 */
import { dirname, join, resolve } from 'node:path';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const demo = (name) => readFileSync(join(root, '../../fixtures/demo', name), 'utf8');
const MOST = 300;

/** A course that winds over the sea, as many bytes as asked. */
function longCourse(bytes) {
  const rows = [];
  let size = 0;
  for (let k = 0; size < bytes; k++) {
    const lat = (-33.2 + 0.05 * Math.sin(k / 9000)).toFixed(7);
    const lon = (-17.4 + k * 2e-6).toFixed(7);
    const row = `<trkpt lat="${lat}" lon="${lon}"><ele>${(20 + 10 * Math.sin(k / 500)).toFixed(1)}</ele><time>2027-09-12T08:00:00Z</time></trkpt>`;
    rows.push(row);
    size += row.length;
  }
  return `<?xml version="1.0"?><gpx version="1.1" creator="Halfcup" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Long</name><trkseg>${rows.join('\n')}</trkseg></trk></gpx>`;
}

/** The demo's plan with a note that makes it as long as asked. */
function longPlan(bytes) {
  const plan = JSON.parse(demo('plan.json'));
  const words = 'Keep the ramp clear for the ambulance. ';
  return JSON.stringify({
    ...plan,
    name: 'A long plan',
    notes: undefined,
    stations: plan.stations.map((one) => ({
      ...one,
      note: words.repeat(Math.ceil(bytes / plan.stations.length / words.length)),
    })),
  });
}

const server = await preview({
  root,
  build: { outDir: resolve(root, process.env.VIEWER_DIST ?? 'dist') },
  preview: { port: 0, host: '127.0.0.1' },
  logLevel: 'error',
});
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH || '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-background-networking',
    '--enable-unsafe-swiftshader',
    '--disable-gpu-rasterization',
  ],
});

async function fresh(hash) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  // Drawing without a graphics card is the map's own time, and no file's.
  await page.route(/\/connect-[^/]*\.js$/u, (route) => route.abort());
  await page.goto(server.resolvedUrls.local[0] + hash);
  await page.locator('[data-keeping]').waitFor({ state: 'attached' });
  await page.waitForTimeout(1500);
  await page.evaluate(() => {
    window.longTasks = [];
    new PerformanceObserver((list) =>
      window.longTasks.push(...list.getEntries().map(({ duration }) => Math.round(duration))),
    ).observe({ type: 'longtask' });
  });
  return page;
}

const folder = mkdtempSync(join(tmpdir(), 'halfcup-long-'));

/** By the file chooser's field and from the disk: else bringing the bytes into the page would be measured. */
async function give(page, files) {
  const paths = Object.entries(files).map(([name, text]) => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  });
  await page.locator('input[type=file][accept*=".gpx"]').first().setInputFiles(paths);
}

/** Milliseconds of processor time of the page's longest task: the same on a machine that does other things too. */
async function longestOfProcessor() {
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString('utf8'));
  const names = new Map(
    traceEvents.filter(({ name }) => name === 'thread_name').map((one) => [`${one.pid}/${one.tid}`, one.args.name]),
  );
  const own = traceEvents.filter(
    ({ ph, pid, tid, tdur }) => ph === 'X' && tdur !== undefined && names.get(`${pid}/${tid}`) === 'CrRendererMain',
  );
  return Math.round(Math.max(0, ...own.map(({ tdur }) => tdur / 1000)));
}

const begin = (page) => browser.startTracing(page, { categories: ['toplevel', '__metadata'] });

let worst = 0;
async function report(what, page) {
  await page.waitForTimeout(1200);
  const processor = await longestOfProcessor();
  const tasks = await page.evaluate(() => window.longTasks.splice(0));
  const longest = Math.max(0, ...tasks);
  worst = Math.max(worst, processor);
  console.log(
    `${what}: longest ${longest} ms, ${processor} ms of the processor${processor > MOST ? ' (too long)' : ''}; all over 50 ms: ${tasks.join(', ') || 'none'}`,
  );
}

const course = longCourse(20e6);
const page = await fresh('');
await begin(page);
await give(page, { 'long.gpx': course });
await page.locator('.start-sheet').waitFor({ timeout: 120_000 });
await report('a course of 20 MB, to the start sheet', page);
await begin(page);
await page.getByRole('button', { name: 'Make the plan' }).click();
await page.locator('.start-sheet').waitFor({ state: 'detached', timeout: 120_000 });
await page.locator('[data-keeping="kept"]').waitFor({ timeout: 60_000 });
await report('the plan made of it', page);
await begin(page);
await page.reload();
await page.evaluate(() => {
  window.longTasks = [];
  new PerformanceObserver((list) =>
    window.longTasks.push(...list.getEntries().map(({ duration }) => Math.round(duration))),
  ).observe({ type: 'longtask', buffered: true });
});
await page.locator('h1:not(:empty)').waitFor();
await page.waitForFunction(() => document.querySelectorAll('tbody tr').length > 0, null, { timeout: 120_000 });
await report('the same plan after a reload', page);
await page.close();

const second = await fresh('#example');
await begin(second);
await second.locator('h1:not(:empty)').waitFor();
await report('the example', second);
await begin(second);
await give(second, { 'long.gpx': course });
await second.locator('dialog[open]').waitFor({ timeout: 120_000 });
await report('the course beside an open plan, to the question what it is', second);
await second.close();

const third = await fresh('');
await begin(third);
await give(third, {
  'plan.json': longPlan(2e6),
  'full.gpx': demo('full.gpx'),
  'half.gpx': demo('half.gpx'),
  'context.geojson': demo('context.geojson'),
});
await third.locator('h1').filter({ hasText: 'A long plan' }).waitFor({ timeout: 120_000 });
await report('a plan of 2 MB', third);
await third.close();
await browser.close();
rmSync(folder, { recursive: true, force: true });
await server.close();
process.exit(worst > MOST ? 1 : 0);
