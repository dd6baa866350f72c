/** The built viewer in a real browser: a page opened on it, and a record of every request. */
import { AxeBuilder } from '@axe-core/playwright';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  type Download,
  type Page,
  chromium,
} from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';

export { builtViewer, serve } from './served.ts';

let connected: Promise<Browser> | undefined;

/** The one browser of the run. Nobody closes it: what a test opens in it, it closes. */
export const sharedBrowser = (): Promise<Browser> => (connected ??= chromium.connect(inject('browser')));

export interface Stage {
  readonly address: string;
  readonly browser: Browser;
}

/** The built viewer as one server serves it to all files of the run, and the one browser. */
export const openStage = async (): Promise<Stage> => ({ address: inject('viewer'), browser: await sharedBrowser() });

export interface VisitOptions extends BrowserContextOptions {
  /** Without, the page says that its map cannot be drawn, and all else works: drawing it is most of what opening the page costs. */
  readonly map?: false;
}

export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Every address that the page asked for. */
  readonly requests: readonly string[];
  /** What went wrong in the page: exceptions, and errors on its console. */
  readonly faults: readonly string[];
  /** Ends the visit. */
  readonly close: () => Promise<void>;
}

/** Contexts that wait for their next visit, by their options: opening a new one costs about as much as a page of it. */
const waiting = new Map<string, BrowserContext>();

/** A test may give or take these during its visit, or what it began goes on by itself: such a context serves once. */
const servesAgain = ({ permissions, geolocation, serviceWorkers }: VisitOptions): boolean =>
  permissions === undefined && geolocation === undefined && serviceWorkers === undefined;

/** The script that draws the map. */
const MAP_SCRIPT = /\/connect-[^/]*\.js$/u;
const withoutMap = new WeakSet<BrowserContext>();

async function newContext(browser: Browser, { map, ...options }: VisitOptions): Promise<BrowserContext> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
    // A flight of the map is drawn without a graphics card, frame by frame, and no test is about one.
    reducedMotion: 'reduce',
    ...options,
  });
  if (map === false) withoutMap.add(context);
  // Its window stays open while no visit has a page in it.
  await context.newPage();
  return context;
}

async function contextFor(browser: Browser, options: VisitOptions): Promise<BrowserContext> {
  const key = JSON.stringify(options);
  const context = waiting.get(key) ?? (await newContext(browser, options));
  waiting.delete(key);
  if (withoutMap.has(context)) await context.route(MAP_SCRIPT, (route) => route.abort());
  return context;
}

/** Ends a visit's pages; what they kept is cleared before the next, when nothing can write any more. */
async function putBack(context: BrowserContext, options: VisitOptions): Promise<void> {
  if (!servesAgain(options)) return context.close();
  const [, ...pages] = context.pages();
  for (const page of pages) await page.close();
  await context.unrouteAll();
  waiting.set(JSON.stringify(options), context);
}

/** Nothing kept by an earlier visit is there: no plan, no setting, no file, and there is room for more. */
async function clear(context: BrowserContext, page: Page, origin: string): Promise<void> {
  const session = await context.newCDPSession(page);
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
  await session.send('Storage.overrideQuotaForOrigin', { origin });
  await session.detach();
}

/** A fresh visit with the demo open and its map drawn; without a service worker unless a test asks for one, so that each test meets the server. */
export async function visit({ address, browser }: Stage, options: VisitOptions = {}): Promise<Visit> {
  const context = await contextFor(browser, options);
  const page = await context.newPage();
  await clear(context, page, new URL(address).origin);
  const requests: string[] = [];
  const faults: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    const isMap = withoutMap.has(context) && MAP_SCRIPT.test(message.location().url);
    if (message.type() === 'error' && !isMap) faults.push(message.text());
  });
  await page.goto(address.includes('#') ? address : `${address}#example`, { timeout: 60_000 });
  await mapIdle(page);
  return { page, context, requests, faults, close: () => putBack(context, options) };
}

/** A visit for as long as a test acts on it; it ends whatever happens. */
export async function during<T>(stage: Stage, act: (seen: Visit) => Promise<T>, options?: VisitOptions): Promise<T> {
  const seen = await visit(stage, options);
  try {
    return await act(seen);
  } finally {
    await seen.close();
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

/**
 * One visit for the tests of a group that all leave the plan, and what is kept, as they were: opening the page is most of
 * what a test in a browser costs. Each test goes first where it needs to be, and nothing may go wrong in the page.
 */
export function sharedVisit(options?: VisitOptions, hash = ''): () => Visit {
  let seen: Visit | undefined;
  beforeAll(async () => {
    const { address, browser } = await openStage();
    seen = await visit({ address: address + hash, browser }, options);
  });
  afterEach(() => expect(seen?.faults).toEqual([]));
  afterAll(() => seen?.close());
  return () => seen!;
}

export interface Look {
  readonly colorScheme: 'light' | 'dark';
  readonly width: number;
}

/** Light and dark, on a desk and on a telephone. */
export const LOOKS: readonly Look[] = (['light', 'dark'] as const).flatMap((colorScheme) =>
  [1440, 360].map((width) => ({ colorScheme, width })),
);

/** Does the same in each look; what fails in it says which. */
export async function inLooks(page: Page, looks: readonly Look[], act: (look: Look) => Promise<void>): Promise<void> {
  for (const look of looks) {
    await page.emulateMedia({ colorScheme: look.colorScheme });
    await page.setViewportSize({ width: look.width, height: look.width === 360 ? 740 : 900 });
    await act(look);
  }
}

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

/** Waits until the map has drawn what it was given; in a visit without a map, until the plan is open. */
export async function mapIdle(page: Page): Promise<void> {
  const state = withoutMap.has(page.context()) ? 'failed' : 'idle';
  // The map of a page without a plan is idle too.
  await page.locator('h1:not(:empty)').waitFor({ timeout: 60_000 });
  if (state === 'idle')
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  await page.locator(`[data-map="${state}"]`).waitFor({ state: 'attached', timeout: 60_000 });
}

/** The bytes of the plan as the Save button gives them out, through the browser's downloads. */
export async function savedPlan(page: Page): Promise<string> {
  // A chooser of the system cannot be worked by a test; without one the page downloads.
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
  const [given] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save(\s*,|$)/u }).click(),
  ]);
  return downloadedText(given);
}

/** What a page gave to be kept. */
export async function downloadedText(given: Download): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of await given.createReadStream()) pieces.push(piece as Buffer);
  return Buffer.concat(pieces).toString('utf8');
}

/** The pane of the tabs; what is around it is the same whichever tab is chosen. */
export const PANEL = '[role=tabpanel]';

/** Axe finds nothing to object to on a page, or in a part of it, `but` left out; `where` says at which place of the test. */
export async function expectNoAxeFaults(page: Page, where: object, part?: string, but?: string): Promise<void> {
  // By itself it gathers its results in a page of its own, which only frames make necessary.
  const axe = new AxeBuilder({ page }).setLegacyMode(page.frames().length === 1);
  if (part !== undefined) axe.include(part);
  if (but !== undefined) axe.exclude(but);
  const { violations } = await axe.analyze();
  const faults = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
  expect({ ...where, faults }).toEqual({ ...where, faults: [] });
}
