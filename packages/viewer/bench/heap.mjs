/**
 * The page's memory after long work: used heap, with garbage collected, before and after 3,000 drags, 1,000 edits and
 * 1,000 undos of the demo. `node packages/viewer/bench/heap.mjs [SHARE]`, a share of that work; takes VIEWER_DIST or
 * dist, and CHROMIUM_PATH, else /usr/bin/chromium. Exits with 1 where it has grown by more than 20 %.
 */
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const share = Number(process.argv[2] ?? 1);
const [DRAGS, EDITS, UNDOS] = [3000, 1000, 1000].map((count) => Math.round(count * share));

const server = await preview({
  root,
  build: { outDir: resolve(root, process.env.VIEWER_DIST ?? 'dist') },
  preview: { port: 0, host: '127.0.0.1' },
  logLevel: 'error',
});
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH || '/usr/bin/chromium',
  args: ['--no-sandbox', '--enable-unsafe-swiftshader', '--disable-gpu-rasterization'],
});
const page = await browser.newPage({ viewport: { width: 900, height: 620 } });
await page.goto(`${server.resolvedUrls.local[0]}#bench`);
await page.waitForFunction(() => typeof window.halfcupBench?.text() === 'string', null, { timeout: 60_000 });
await page.locator('[data-map="idle"]').waitFor({ state: 'attached', timeout: 60_000 });
const client = await page.context().newCDPSession(page);
await client.send('HeapProfiler.enable');

async function heap() {
  await page.waitForTimeout(500);
  await page.locator('[data-keeping="kept"]').waitFor({ timeout: 60_000 });
  for (let k = 0; k < 3; k++) await client.send('HeapProfiler.collectGarbage');
  return (await client.send('Runtime.getHeapUsage')).usedSize;
}

/** Drags a station there and back along the strip by its ring, with real pointer events, several moves a drag. */
const drags = (count) =>
  page.evaluate(async (times) => {
    const canvas = document.querySelector('.map canvas');
    const fire = (type, x, y, buttons) => {
      const place = {
        clientX: x,
        clientY: y,
        bubbles: true,
        button: 0,
        buttons,
        pointerId: 1,
        pointerType: 'mouse',
        isPrimary: true,
      };
      canvas.dispatchEvent(new PointerEvent(`pointer${type}`, place));
      canvas.dispatchEvent(new MouseEvent(`mouse${type}`, place));
      if (type === 'up') window.dispatchEvent(new MouseEvent('mouseup', place));
    };
    const frame = () => new Promise(requestAnimationFrame);
    let changed = 0;
    for (let k = 0; k < times; k++) {
      const pins = window.halfcupBench.pins();
      const [x, y] = window.halfcupBench.place(pins[Object.keys(pins)[2]]);
      const way = k % 2 === 0 ? 1 : -1;
      const before = window.halfcupBench.text();
      fire('move', x, y, 0);
      fire('down', x, y, 1);
      for (let step = 1; step <= 3; step++) fire('move', x + way * 6 * step, y + way * 4 * step, 1);
      await frame();
      fire('up', x + way * 18, y + way * 12, 0);
      await frame();
      if (window.halfcupBench.text() !== before) changed++;
    }
    return changed;
  }, count);

async function edits(count) {
  await page.getByRole('tab', { name: 'Plan', exact: true }).click();
  const name = page.getByLabel('Name', { exact: true }).first();
  return name.evaluate(async (field, times) => {
    let changed = 0;
    for (let k = 0; k < times; k++) {
      const before = window.halfcupBench.text();
      field.focus();
      field.value = `Pier run ${k}`;
      field.dispatchEvent(new Event('input', { bubbles: true }));
      await new Promise((done) => setTimeout(done, 4));
      field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
      await new Promise(requestAnimationFrame);
      if (window.halfcupBench.text() !== before) changed++;
    }
    field.blur();
    return changed;
  }, count);
}

const undos = (count) =>
  page.getByRole('button', { name: 'Undo' }).evaluate(async (button, times) => {
    let changed = 0;
    for (let k = 0; k < times; k++) {
      const before = window.halfcupBench.text();
      button.click();
      await new Promise(requestAnimationFrame);
      if (window.halfcupBench.text() !== before) changed++;
    }
    return changed;
  }, count);

// What is compiled and made in the first tenth of each kind of work is no growth.
const opened = await heap();
await drags(DRAGS / 10);
await edits(EDITS / 10);
await undos(UNDOS / 10);
const first = await heap();
console.log(
  `${(opened / 1e6).toFixed(1)} MB as it was opened, ${(first / 1e6).toFixed(1)} MB after a tenth of all work`,
);
const done = [];
for (const [what, work, count] of [
  ['drags', drags, DRAGS],
  ['edits', edits, EDITS],
  ['undos', undos, UNDOS],
]) {
  const changed = await work(count);
  const now = await heap();
  done.push(now);
  console.log(
    `${String(count)} ${String(what)} (${String(changed)} changed the plan): ${(now / 1e6).toFixed(1)} MB, ${((now / first - 1) * 100).toFixed(1)} % over ${(first / 1e6).toFixed(1)} MB`,
  );
}
await browser.close();
await server.close();
process.exit(done.at(-1) / first > 1.2 ? 1 : 0);
