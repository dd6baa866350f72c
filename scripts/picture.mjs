/**
 * Draws the README's pictures (the page, race day, a captain's sheet) from the built viewer and core:
 * `node scripts/picture.mjs [FOLDER]`, after a build. Takes CHROMIUM_PATH, else /usr/bin/chromium. Fails if the page asks for
 * anything but its own files, and if a picture is over 400 kB.
 */
import { analyse, readPlan } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import { captainSheet } from '@halfcup/core/papers';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { ROOT } from './build.mjs';

const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--enable-unsafe-swiftshader',
];
const LARGEST = 400_000;

/** The map is drawn once it has nothing left to do. */
async function drawn(page) {
  await page.waitForTimeout(300);
  await page.locator('[data-map="idle"]').waitFor({ timeout: 60_000 });
}

/** The page as it opens: the whole island and a station's panel. */
async function takePage(page) {
  await page.getByRole('button', { name: 'Wrack Fork', exact: true }).first().click();
  await drawn(page);
  await page.mouse.move(2, 2);
  await page.getByRole('button', { name: 'Whole plan', exact: true }).click();
  await page.evaluate(() => document.activeElement?.blur());
  await drawn(page);
  await page.screenshot({ path: fileOf('viewer') });
}

/** Race day of one station, as its pane shows it. */
async function takeRaceDay(page) {
  await page.getByRole('tab', { name: 'Race day' }).click();
  await drawn(page);
  await page.mouse.move(2, 2);
  await page.locator('.side-left').screenshot({ path: fileOf('raceday') });
}

/** The first page of a captain's sheet. */
async function takeSheet(page) {
  const text = (name) => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');
  const read = readPlan(text('plan.json'), 'plan.json');
  if (!read.ok) throw new Error(read.findings[0].message);
  const { plan } = read.value;
  const gpx = new Map();
  for (const name of new Set(plan.courses.flatMap((course) => course.gpx ?? []))) {
    const file = readGpx(text(name), name);
    if (!file.ok) throw new Error(file.findings[0].message);
    gpx.set(name, file.value);
  }
  const result = analyse(plan, { gpx });
  if (!result.ok) throw new Error(result.findings[0].message);
  const station = result.value.stations.find(({ id }) => id === 's3');
  const html = captainSheet(result.value, station, { paper: 'a4', printedAt: '2027-08-30 12:00' });
  await page.setViewportSize({ width: 794, height: 1123 });
  await page.emulateMedia({ media: 'print' });
  await page.setContent(html);
  // A screenshot knows no page margins, which printing gives by the paper's own @page.
  await page.addStyleTag({ content: 'body { padding: 12mm; }' });
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: fileOf('captain') });
}

const folder = process.argv[2] ?? join(ROOT, 'fixtures/demo');
const fileOf = (name) => join(folder, `${name}.png`);
const server = await preview({ root: join(ROOT, 'packages/viewer'), preview: { port: 0, host: '127.0.0.1' } });
const address = server.resolvedUrls.local[0];
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
  args: FLAGS,
});
try {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    colorScheme: 'light',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const foreign = [];
  page.on('request', (request) => {
    if (
      !/^(?:data|about):/u.test(request.url()) &&
      !request
        .url()
        .replace(/^blob:/u, '')
        .startsWith(address)
    )
      foreign.push(request.url());
  });
  await page.goto(`${address}#example`);
  await drawn(page);
  await takePage(page);
  await takeRaceDay(page);
  await takeSheet(await context.newPage());
  if (foreign.length > 0) throw new Error(`The page asked for ${foreign.join(', ')}; expected only its own files.`);
  for (const name of ['viewer', 'raceday', 'captain']) {
    const { size } = statSync(fileOf(name));
    if (size > LARGEST)
      throw new Error(`${name}.png has ${size} bytes; expected at most ${LARGEST}. Take a smaller window.`);
    console.log(`${name}.png: ${Math.round(size / 1000)} kB`);
  }
} finally {
  await browser.close();
  await server.close();
}
