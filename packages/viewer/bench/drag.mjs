/**
 * How the page keeps up while a station is dragged, and while the clock plays: the time of a frame against that of a bare repaint of the same map
 * in the same run, and the time in our own code in each move. A 20,000-point course with 30 stations in a window of
 * 1920 × 1080, one move a frame, near (items drawn) and far (the whole course), without and with race day. Builds the
 * viewer into a folder of its own. `node packages/viewer/bench/drag.mjs`; writes results.json beside it; `drag.mjs clock`
 * measures the clock alone and puts its rows among the others. Takes CHROMIUM_PATH, else /usr/bin/chromium.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { POINTS, STATIONS, benchFiles } from './data.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '..');
const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--enable-unsafe-swiftshader',
  '--use-gl=angle',
  '--use-angle=swiftshader',
];
/** The station that is dragged, in the middle of the course. */
const HELD = 's15';
/** Turns of bare repaints and of moves, one after the other, so that their ratio holds when the machine's speed drifts. */
const TURNS = 12;
const FRAMES = 10;

/** Frames last whole refreshes of the screen, sixty a second; what the clock adds to that is jitter of its own. */
const REFRESH = 1000 / 60;
const whole = (times) => times.map((time) => Math.max(1, Math.round(time / REFRESH)) * REFRESH);

const quantile = (values, share) =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))];

async function open(browser, address, runners) {
  const context = await browser.newContext({
    viewport: { width: 1920, height: 1080 },
    colorScheme: 'light',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto(`${address}#bench`);
  await drawn(page);
  const data = await page.evaluateHandle((files) => {
    const transfer = new DataTransfer();
    for (const [name, text] of Object.entries(files)) transfer.items.add(new File([text], name));
    return transfer;
  }, benchFiles(runners));
  await page.dispatchEvent('.page', 'drop', { dataTransfer: data });
  await page.getByRole('button', { name: 'Station 15', exact: true }).waitFor();
  await drawn(page);
  return page;
}

async function drawn(page) {
  await page.waitForTimeout(500);
  await page.locator('[data-map="idle"]').waitFor({ state: 'attached', timeout: 60_000 });
}

/** Frame times of bare repaints. */
const bare = (page, frames) =>
  page.evaluate(async (count) => {
    const times = [];
    let last = 0;
    for (let k = 0; k <= count; k++) {
      const now = await new Promise(requestAnimationFrame);
      if (k > 0) times.push(now - last);
      last = now;
      window.halfcupBench.redraw();
    }
    return times;
  }, frames);

/** Frame times of moves, one a frame, on a small round about the place where the station was taken. */
const dragged = (page, from, frames, radius) =>
  page.evaluate(
    async ([x, y, count, reach]) => {
      const canvas = document.querySelector('.map canvas');
      const times = [];
      let last = 0;
      for (let k = 0; k <= count; k++) {
        const now = await new Promise(requestAnimationFrame);
        if (k > 0) times.push(now - last);
        last = now;
        const turn = (2 * Math.PI * (k + 1)) / count;
        const place = {
          clientX: x + reach * Math.sin(turn),
          clientY: y + reach * (1 - Math.cos(turn)) + 6,
          bubbles: true,
          pointerId: 1,
          pointerType: 'mouse',
          buttons: 1,
          isPrimary: true,
        };
        canvas.dispatchEvent(new PointerEvent('pointermove', place));
        canvas.dispatchEvent(new MouseEvent('mousemove', place));
      }
      return times;
    },
    [from[0], from[1], frames, radius],
  );

/** One hold of the station, in which bare repaints and moves take turns. */
async function measure(page, radius) {
  const [x, y] = await page.evaluate((id) => window.halfcupBench.place(window.halfcupBench.pins()[id]), HELD);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 6);
  await dragged(page, [x, y], FRAMES, radius);
  await drawn(page);
  await page.evaluate(() => window.halfcupBench.times.splice(0));
  const [bares, drags] = [[], []];
  for (let turn = 0; turn < TURNS; turn++) {
    bares.push(...(await bare(page, FRAMES)));
    drags.push(...(await dragged(page, [x, y], FRAMES, radius)));
    // The panels come to rest.
    await page.waitForTimeout(300);
  }
  const times = await page.evaluate(() => [...window.halfcupBench.times]);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await drawn(page);
  return {
    bares: whole(bares),
    drags: whole(drags),
    own: times.reduce((sum, one) => sum + one, 0) / (TURNS * (FRAMES + 1)),
  };
}

/** Frame times while the clock is set on, a step a frame: what playing does, whatever the machine's speed. */
const clocked = (page, frames, from) =>
  page.evaluate(
    async ([count, begin]) => {
      const slider = document.querySelector('.clock-slider');
      const times = [];
      let last = 0;
      for (let k = 0; k <= count; k++) {
        const now = await new Promise(requestAnimationFrame);
        if (k > 0) times.push(now - last);
        last = now;
        slider.value = String(begin + k * 60);
        slider.dispatchEvent(new Event('input', { bubbles: true }));
      }
      return times;
    },
    [frames, from],
  );

/** Bare repaints and steps of the clock in turn, from half past nine on, when the road is full. */
async function measureClock(page) {
  await page.getByRole('button', { name: 'Clock', exact: true }).click();
  await clocked(page, FRAMES, 9.5 * 3600);
  await drawn(page);
  await page.evaluate(() => window.halfcupBench.times.splice(0));
  const [bares, drags] = [[], []];
  for (let turn = 0; turn < TURNS; turn++) {
    bares.push(...(await bare(page, FRAMES)));
    drags.push(...(await clocked(page, FRAMES, 9.5 * 3600 + turn * FRAMES * 60)));
    await page.waitForTimeout(300);
  }
  const times = await page.evaluate(() => [...window.halfcupBench.times]);
  await page.getByRole('button', { name: 'Clock', exact: true }).click();
  return {
    bares: whole(bares),
    drags: whole(drags),
    own: times.reduce((sum, one) => sum + one, 0) / (TURNS * (FRAMES + 1)),
  };
}

const rows = [];

function report(what, { bares, drags, own }, step = 'a move') {
  const bare50 = quantile(bares, 0.5);
  const row = (peer, figure, unit, target) => {
    rows.push({
      work: what,
      peer,
      figure,
      unit,
      ...(target === undefined ? {} : { bound: 'at most', target, met: figure <= target + 1e-9 }),
    });
    console.log(
      `${what}: ${peer} ${figure.toFixed(2)}${unit}${target === undefined ? '' : ` (at most ${target}${unit}: ${figure <= target + 1e-9 ? 'met' : 'MISSED'})`}`,
    );
  };
  console.log(
    `${what}: bare repaint p50 ${bare50.toFixed(1)} ms, p95 ${quantile(bares, 0.95).toFixed(1)} ms; ours p50 ${quantile(drags, 0.5).toFixed(1)} ms; own code ${own.toFixed(2)} ms ${step}`,
  );
  row('time of a frame over a bare repaint, p50', quantile(drags, 0.5) / bare50, '×', 1.25);
  row('time of a frame over a bare repaint, p95', quantile(drags, 0.95) / quantile(bares, 0.95), '×');
  row(`time in our own code ${step}, panels and all, over a bare repaint, mean over p50`, own / bare50, '×', 0.25);
}

const only = process.argv[2];
if (only !== undefined && only !== 'clock') throw new Error(`found the part "${only}"; expected clock, or nothing`);
const folder = mkdtempSync(join(tmpdir(), 'halfcup-bench-'));
await build({ root, build: { outDir: folder, emptyOutDir: true }, logLevel: 'error' });
const server = await preview({
  root,
  build: { outDir: folder },
  preview: { port: 0, host: '127.0.0.1' },
  logLevel: 'error',
});
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
  args: FLAGS,
});
try {
  const address = server.resolvedUrls.local[0];
  for (const runners of only === 'clock' ? [] : [0, 20_000]) {
    const page = await open(browser, address, runners);
    const what = `dragging one of ${STATIONS} stations on a course of ${POINTS.toLocaleString('en')} points${runners > 0 ? ', with race day' : ''}`;
    report(`${what}, whole course in view`, await measure(page, 30));
    await page.getByRole('button', { name: 'Station 15', exact: true }).click();
    await drawn(page);
    report(`${what}, near, items drawn`, await measure(page, 30));
    await page.context().close();
  }
  const page = await open(browser, address, 50_000);
  const what = `the clock of 50,000 runners, ${STATIONS} stations and a course of ${POINTS.toLocaleString('en')} points`;
  report(`${what}, whole course in view`, await measureClock(page), 'a step');
  await page.getByRole('button', { name: 'Station 15', exact: true }).click();
  await drawn(page);
  report(`${what}, near, a station chosen`, await measureClock(page), 'a step');
  await page.context().close();
} finally {
  await browser.close();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
}
const file = join(here, 'results.json');
const isNew = (row) => rows.some(({ work, peer }) => work === row.work && peer === row.peer);
const kept = only === undefined ? [] : JSON.parse(readFileSync(file, 'utf8')).rows.filter((row) => !isNew(row));
writeFileSync(file, `${JSON.stringify({ node: process.version, rows: [...kept, ...rows] }, null, 2)}\n`);
process.exitCode = rows.every((row) => row.met !== false) ? 0 : 1;
