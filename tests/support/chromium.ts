/** The Chromium that tests use: where it is, and how it is started. */
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const APPLICATIONS = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** `CHROMIUM_PATH`, else a Chromium or Chrome of the system, else one that Playwright has downloaded; throws with what to install. */
export function browserPath(): string {
  const given = process.env['CHROMIUM_PATH'];
  if (given !== undefined && given !== '') {
    if (runs(given)) return given;
    throw new Error(`CHROMIUM_PATH is "${given}", which is no program; set it to a Chromium or Chrome.`);
  }
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const found = [
    ...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))),
    ...APPLICATIONS,
    chromium.executablePath(),
  ].find((path) => path !== '' && runs(path));
  if (found !== undefined) return found;
  throw new Error(
    'The browser tests found no Chromium and no Chrome. Install one (Debian: apt-get install chromium), or set CHROMIUM_PATH to its program.',
  );
}

export const FLAGS: readonly string[] = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--enable-unsafe-swiftshader',
  // Without a graphics card, drawing the page itself by one is only slower.
  '--disable-gpu-rasterization',
];

/** A browser of its own without a window, with `env` beside the environment of the test; the caller closes it. */
export const openBrowser = (env: Readonly<Record<string, string>> = {}): Promise<Browser> =>
  chromium.launch({ executablePath: browserPath(), args: [...FLAGS], env: { ...process.env, ...env } });
