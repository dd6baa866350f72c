/**
 * Draws the README's picture from the built viewer: `node scripts/picture.mjs [FILE.png]`, after a build.
 * Takes CHROMIUM_PATH, else /usr/bin/chromium. Fails if the page asks for anything but its own files,
 * and if the picture is over 400 kB.
 */
import { statSync } from 'node:fs';
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

async function take(page, address, file) {
  const foreign = [];
  page.on('request', (request) => {
    if (!request.url().startsWith(address) && !request.url().startsWith(`blob:${address}`)) foreign.push(request.url());
  });
  await page.goto(address);
  await drawn(page);
  // Its row is chosen and the map then shows the whole again: the picture has the island and a station's panel.
  const station = page.getByRole('button', { name: /^Station 3, / }).first();
  await station.click();
  await drawn(page);
  await page.mouse.move(2, 2);
  await page.getByRole('button', { name: 'Station', exact: true }).click();
  await page.getByRole('button', { name: 'Whole plan', exact: true }).click();
  await page.evaluate(() => document.activeElement?.blur());
  await drawn(page);
  await page.screenshot({ path: file });
  if (foreign.length > 0) throw new Error(`The page asked for ${foreign.join(', ')}; expected only its own files.`);
}

const file = process.argv[2] ?? join(ROOT, 'fixtures/demo/viewer.png');
const server = await preview({ root: join(ROOT, 'packages/viewer'), preview: { port: 0, host: '127.0.0.1' } });
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
  await take(await context.newPage(), server.resolvedUrls.local[0], file);
  const { size } = statSync(file);
  if (size > LARGEST) throw new Error(`${file} has ${size} bytes; expected at most ${LARGEST}. Take a smaller window.`);
  console.log(`${file}: ${Math.round(size / 1000)} kB`);
} finally {
  await browser.close();
  await server.close();
}
