/** The built viewer in a real browser: a server on this machine, a Chromium, and a record of every request. */
import { accessSync, constants, readFileSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import { type Browser, type BrowserContext, type BrowserContextOptions, type Page, chromium } from 'playwright-core';
import { preview } from 'vite';
import { expect } from 'vitest';
import { ROOT } from './build.ts';

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

const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--enable-unsafe-swiftshader',
];

/** A browser without a window, with `env` beside the environment of the test; the caller closes it. */
export const openBrowser = (env: Readonly<Record<string, string>> = {}): Promise<Browser> =>
  chromium.launch({ executablePath: browserPath(), args: FLAGS, env: { ...process.env, ...env } });

export interface Stage {
  readonly address: string;
  readonly browser: Browser;
  readonly close: () => Promise<void>;
}

/** Serves a built viewer on a free port. */
export async function serve(dist: string): Promise<Pick<Stage, 'address' | 'close'>> {
  const server = await preview({
    root: join(ROOT, 'packages/viewer'),
    build: { outDir: dist },
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'error',
  });
  return { address: server.resolvedUrls!.local[0]!, close: () => server.close() };
}

/** Where the built viewer lies: `VIEWER_DIST`, else packages/viewer/dist. */
export const builtViewer = (): string => resolve(ROOT, 'packages/viewer', process.env['VIEWER_DIST'] ?? 'dist');

/** Serves packages/viewer/dist (or the folder that `VIEWER_DIST` names) on a free port and starts the browser. */
export async function openStage(): Promise<Stage> {
  const server = await serve(builtViewer());
  const { address } = server;
  const browser = await openBrowser();
  const close = async (): Promise<void> => {
    await browser.close();
    await server.close();
  };
  return { address, browser, close };
}

export type VisitOptions = BrowserContextOptions;

export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Every address that the page asked for. */
  readonly requests: readonly string[];
  /** What went wrong in the page: exceptions, and errors on its console. */
  readonly faults: readonly string[];
}

/** A fresh visit with the demo open and its map drawn; without a service worker unless a test asks for one, so that each test meets the server. */
export async function visit({ address, browser }: Stage, options: VisitOptions = {}): Promise<Visit> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
    ...options,
  });
  const page = await context.newPage();
  const requests: string[] = [];
  const faults: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(address);
  await mapIdle(page);
  return { page, context, requests, faults };
}

/** A visit for as long as a test acts on it; it ends whatever happens. */
export async function during<T>(stage: Stage, act: (seen: Visit) => Promise<T>, options?: VisitOptions): Promise<T> {
  const seen = await visit(stage, options);
  try {
    return await act(seen);
  } finally {
    await seen.context.close();
  }
}

/** The same, with nothing gone wrong in the page. */
export const faultless = (stage: Stage, act: (seen: Visit) => Promise<void>, options?: VisitOptions): Promise<void> =>
  during(
    stage,
    async (seen) => {
      await act(seen);
      expect(seen.faults).toEqual([]);
    },
    options,
  );

/** Addresses that the page asked for and that are not its own server's. */
export const foreignOf = ({ address }: Stage, requests: readonly string[]): string[] =>
  requests.filter((asked) => !asked.startsWith(address) && !asked.startsWith(`blob:${address}`));

/** Drops files on the page, as from a folder of the desktop. */
export async function dropFiles(page: Page, files: Readonly<Record<string, string>>): Promise<void> {
  const data = await page.evaluateHandle((given) => {
    const transfer = new DataTransfer();
    for (const [name, text] of Object.entries(given)) transfer.items.add(new File([text], name));
    return transfer;
  }, files);
  await page.dispatchEvent('.page', 'drop', { dataTransfer: data });
}

/** Waits until the map has drawn what it was given. */
export const mapIdle = async (page: Page): Promise<void> => {
  await page.locator('[data-map="idle"]').waitFor({ state: 'attached', timeout: 60_000 });
};

/** The bytes of the plan as the Save button gives them out, through the browser's downloads. */
export async function savedPlan(page: Page): Promise<string> {
  // A chooser of the system cannot be worked by a test; without one the page downloads.
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
  const [given] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save(\s*,|$)/u }).click(),
  ]);
  return readFileSync(await given.path(), 'utf8');
}
