/** A project's page, built by Vite and opened in Chromium: what its output elements say. */
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';

const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

async function read(page, address, ids) {
  const faults = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  page.on('request', (request) => {
    if (!request.url().startsWith(address) && !request.url().startsWith('data:'))
      faults.push(`asked for ${request.url()}`);
  });
  await page.goto(address);
  const shown = {};
  for (const id of ids) {
    const output = page.locator(`output#${id}`);
    await output.waitFor({ state: 'attached', timeout: 60_000 }).catch((error) => faults.push(error.message));
    if (faults.length > 0) throw new Error(`the page: ${faults.join('; ')}`);
    shown[id] = JSON.parse(await output.textContent());
  }
  return shown;
}

/** What each element shows, by its id. Anything that goes wrong in the page, or a request to another host, throws. */
export async function inBrowser(root, ids) {
  const outDir = join(root, 'site');
  // No configuration of this workspace, whose export conditions lead to the sources: this is a stranger's project.
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    worker: { format: 'es' },
    build: { outDir, target: 'es2023' },
  });
  const server = await preview({
    root,
    configFile: false,
    logLevel: 'error',
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1' },
  });
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: FLAGS,
  });
  try {
    return await read(await browser.newPage(), server.resolvedUrls.local[0], ids);
  } finally {
    await browser.close();
    await server.close();
  }
}
