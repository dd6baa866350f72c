/** What the page says where something of it, or of the browser, is missing or broken: truly, in plain words, and the rest works. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Stage, dropFiles, during, mapIdle, openStage } from './support/browser.ts';
import { FLAGS, browserPath } from './support/chromium.ts';
import { ROOT } from './support/build.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const demoText = (name: string): string => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');

/** A busy machine takes its time. */
const SOON = { timeout: 30_000 };

/** Words of browsers and programmers, which no person is to read. */
const INTERNAL =
  /fetch|dynamically|destructure|undefined|null|Exception|Error:|\w+Error\b|TypeError|https?:\/\/|\bat \w+ \(/u;

/** A visit whose context is prepared before the page is opened; `ready` is what the page needs to have shown. */
async function prepared(
  prepare: (context: BrowserContext) => Promise<unknown>,
  act: (page: Page) => Promise<void>,
): Promise<void> {
  const context = await stage.browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
  try {
    await prepare(context);
    const page = await context.newPage();
    await page.goto(`${stage.address}#example`);
    await act(page);
  } finally {
    await context.close();
  }
}

const tableWorks = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Wrack Fork', exact: true }).click();
  await expect
    .poll(() => page.getByRole('complementary', { name: 'Selected station' }).textContent(), SOON)
    .toContain('11.56 km');
  await page.getByRole('tab', { name: /Review/u }).click();
  await expect
    .poll(() => page.getByRole('tabpanel').textContent(), SOON)
    .toContain('The sign is 70 m before the first table');
};

const mapTrouble = (page: Page): ReturnType<Page['locator']> => page.locator('.map-trouble');

const block =
  (pattern: RegExp) =>
  (context: BrowserContext): Promise<unknown> =>
    context.route(pattern, (route) => route.abort());

/** The same without the map, which is most of what opening the page costs, where a test is not about it. */
const preparedPlain: typeof prepared = (prepare, act) =>
  prepared(async (context) => {
    await block(/\/connect-[^/]*\.js$/u)(context);
    await prepare(context);
  }, act);

const noPreparation = (): Promise<void> => Promise.resolve();

/** The plan is open, and the map has said that it cannot be drawn. */
async function ready(page: Page): Promise<void> {
  await page.locator('[data-map="failed"]').waitFor({ state: 'attached', timeout: 60_000 });
  await page.locator('h1:not(:empty)').waitFor({ timeout: 60_000 });
}

describe('where the map cannot be drawn', () => {
  it('the page says that the browser has no WebGL, and tables, panel and strip work', async () => {
    const browser = await chromium.launch({
      executablePath: browserPath(),
      args: [
        ...FLAGS.filter((flag) => !flag.includes('swiftshader')),
        '--disable-gpu',
        '--disable-software-rasterizer',
      ],
    });
    try {
      const page = await browser.newPage({ serviceWorkers: 'block' });
      await page.goto(`${stage.address}#example`);
      await expect.poll(() => mapTrouble(page).textContent(), SOON).toContain('no WebGL');
      await tableWorks(page);
    } finally {
      await browser.close();
    }
  });

  it.each([
    ['the script that draws it', /connect-[^/]*\.js$/u],
    ['the script that prepares it', /maplibre-gl-worker[^/]*$/u],
  ])('because %s cannot be loaded, the page says that, and not that WebGL is missing', async (_, pattern) => {
    await prepared(block(pattern), async (page) => {
      await expect.poll(() => mapTrouble(page).textContent(), SOON).toContain('could not be loaded');
      const words = (await mapTrouble(page).textContent())!;
      expect(words).not.toContain('WebGL');
      expect(words).not.toMatch(INTERNAL);
      await tableWorks(page);
    });
  });

  it('the worker is built under a name that every server knows, and one sent as octets is told by its type', async () => {
    const worker = /maplibre-gl-worker[^/]*\.js$/u;
    await prepared(
      (context) =>
        context.route(worker, async (route) =>
          route.fulfill({
            response: await route.fetch(),
            headers: { 'content-type': 'application/octet-stream', 'x-content-type-options': 'nosniff' },
          }),
        ),
      async (page) => {
        await expect.poll(() => mapTrouble(page).textContent(), SOON).toContain('as “application/octet-stream”');
        expect(await mapTrouble(page).textContent()).toContain('The table and the strip work without it.');
        await page.context().unroute(worker);
        await page.getByRole('button', { name: 'Try again' }).click();
        await mapIdle(page);
        expect(await mapTrouble(page).count()).toBe(0);
      },
    );
  });

  it('because the browser starts no worker, the page says so after some seconds', async () => {
    await prepared(
      (context) =>
        context.addInitScript(() => {
          window.Worker = class extends Worker {
            constructor(url: string | URL, options?: WorkerOptions) {
              super(String(url).includes('maplibre') ? 'data:text/plain,blocked' : url, options);
            }
          };
        }),
      async (page) => {
        await expect.poll(() => mapTrouble(page).textContent(), SOON).toContain('does not start the script');
        await tableWorks(page);
      },
    );
  });
});

describe('a background', () => {
  const useMap = async (page: Page): Promise<void> => {
    await page.getByRole('button', { name: 'Background' }).click();
    await page.getByRole('radio', { name: /Online map/u }).check();
    await page.getByLabel(/URL of a map style/u).fill('https://maps.example.invalid/style.json');
    await page.getByLabel(/Credit/u).fill('Island survey');
    await page.getByRole('button', { name: 'Use this map' }).click();
  };

  it.each([
    ['answers with a page', '<!doctype html>', 'did not send a map style'],
    ['answers with another version', '{"version":7}', 'did not send a map style'],
    [
      'answers with a style that is none',
      '{"version":8,"sources":{},"layers":[{"id":"a","type":"nothing"},{"id":"b","type":"line","source":"gone"}]}',
      'no valid map style',
    ],
  ])('whose address %s is refused, and the course stays on the map', async (_, body, words) => {
    await during(stage, async ({ page }) => {
      await page.route('https://maps.example.invalid/**', (route) =>
        route.fulfill({ body, headers: { 'access-control-allow-origin': '*' } }),
      );
      await useMap(page);
      const notice = page.locator('.notice-place');
      await expect.poll(() => notice.textContent(), SOON).toContain(words);
      expect(await notice.textContent()).not.toMatch(/JSON|Unexpected|layers\[/u);
      await mapIdle(page);
      expect(Number(await page.locator('.map').getAttribute('data-features'))).toBeGreaterThan(20);
      await tableWorks(page);
    });
  });

  it('whose host cannot be reached is told as such', async () => {
    await during(stage, async ({ page }) => {
      await page.route('https://maps.example.invalid/**', (route) => route.abort());
      await useMap(page);
      const notice = page.locator('.notice-place');
      await expect.poll(() => notice.textContent(), SOON).toContain('there is no connection');
      expect(await notice.textContent()).not.toMatch(INTERNAL);
    });
  });

  it('that is drawn in the plan loses its broken features with a note, and the map is drawn', async () => {
    await during(stage, async ({ page, faults }) => {
      const context = JSON.parse(demoText('context.geojson')) as { features: unknown[] };
      const broken = [
        { type: 'Feature', properties: { kind: 'road' } },
        { type: 'Feature', properties: { kind: 'road' }, geometry: null },
        { type: 'Feature', properties: { kind: 'road' }, geometry: { type: 'LineString' } },
        { type: 'Feature', properties: { kind: 'land' }, geometry: { type: 'Polygon', coordinates: [] } },
        { type: 'Feature', properties: null, geometry: { type: 'Star', coordinates: [0, 0] } },
        null,
      ];
      await dropFiles(page, {
        'plan.json': demoText('plan.json'),
        'full.gpx': demoText('full.gpx'),
        'half.gpx': demoText('half.gpx'),
        'context.geojson': JSON.stringify({ ...context, features: [...broken, ...context.features] }),
      });
      await page.getByRole('tab', { name: /Review/u }).click();
      await expect
        .poll(() => page.getByRole('tabpanel').textContent(), SOON)
        .toContain('6 features of the background drawing are left out');
      await mapIdle(page);
      expect(faults).toEqual([]);
    });
  });
});

describe('where a part of the page is missing', () => {
  it('that starts it, the page says so by itself', async () => {
    await preparedPlain(block(/assets\/index-[^/]*\.js$/u), async (page) => {
      await expect.poll(() => page.getByText('a part of the page could not be loaded').isVisible(), SOON).toBe(true);
    });
  });

  it('the demo, the page says so and opens other files', async () => {
    await preparedPlain(block(/full-[^/]*\.gpx$/u), async (page) => {
      await expect.poll(() => page.getByRole('alert').textContent(), SOON).toContain('The demo could not be loaded');
      expect(await page.getByRole('alert').textContent()).not.toMatch(INTERNAL);
      await dropFiles(page, { 'full.gpx': demoText('full.gpx') });
      await page.getByRole('button', { name: 'Make the plan' }).click();
      await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent(), SOON).not.toBe('Halfcup');
      expect(await page.getByRole('alert').count()).toBe(0);
    });
  });

  it('that makes papers, each button that needs it says so', async () => {
    await preparedPlain(block(/(?:papers|report)-[^/]*\.js$/u), async (page) => {
      await ready(page);
      await page.getByRole('tab', { name: 'Papers' }).click();
      await expect.poll(() => page.getByRole('alert').textContent(), SOON).toContain('could not be loaded');
      expect(await page.getByRole('alert').textContent()).not.toMatch(INTERNAL);
      await page.getByRole('tab', { name: /Review/u }).click();
      await page.getByRole('button', { name: 'Print report' }).click();
      const notice = page.locator('.notice-place');
      await expect.poll(() => notice.textContent(), SOON).toMatch(/report could not be made: .*could not be loaded/u);
      expect(await notice.textContent()).not.toMatch(INTERNAL);
    });
  });

  it.each([
    ['the script that begins the search', /improving-[^/]*\.js$/u],
    ['the script that searches', /improve\.worker-[^/]*\.js$/u],
  ])('%s, searching for better places says so', async (_, pattern) => {
    await preparedPlain(block(pattern), async (page) => {
      await ready(page);
      await page.getByRole('tab', { name: 'Variants' }).click();
      await page.getByRole('button', { name: 'Find better places' }).click();
      const notice = page.locator('.notice-place');
      await expect.poll(() => notice.textContent(), SOON).toContain('could not be loaded');
      expect(await notice.textContent()).not.toMatch(INTERNAL);
    });
  });

  it.each([
    ['the script that packs files', /work-[^/]*\.js$/u],
    ['the script of the worker', /reader\.worker-[^/]*\.js$/u],
  ])('%s, packing says so', async (_, pattern) => {
    await preparedPlain(block(pattern), async (page) => {
      await ready(page);
      await page.getByRole('button', { name: 'Plans', exact: true }).click();
      await page.getByRole('button', { name: 'Save packed (ZIP)' }).click();
      const notice = page.locator('.notice-place');
      await expect.poll(() => notice.textContent(), SOON).toMatch(/could not be packed: .*could not be loaded/u);
      expect(await notice.textContent()).not.toMatch(INTERNAL);
    });
  });
});

describe('where the browser refuses', () => {
  const failing =
    (name: string) =>
    async (context: BrowserContext): Promise<void> => {
      await context.addInitScript((error) => {
        IDBObjectStore.prototype.put = () => {
          throw new DOMException(`Failed to execute 'put' on 'IDBObjectStore'`, error);
        };
      }, name);
    };

  it.each([
    ['QuotaExceededError', 'there is no room left for it'],
    ['DataCloneError', 'this page has a fault'],
    ['InvalidStateError', 'reload the page'],
  ])('%s, the page says that the change is not saved, why, and what to do', async (name, words) => {
    await preparedPlain(failing(name), async (page) => {
      await ready(page);
      await page.getByRole('button', { name: 'Add station' }).click();
      const notice = page.locator('.notice-place');
      await expect.poll(() => notice.textContent(), SOON).toContain('The last change is not saved in this browser');
      expect(await notice.textContent()).toContain(words);
      expect(await notice.textContent()).not.toMatch(INTERNAL);
      await expect.poll(() => notice.getByRole('button', { name: 'Save to a file' }).count(), SOON).toBe(1);
    });
  });

  it('a database at all, the page says so and works', async () => {
    await preparedPlain(
      async (context) => {
        await context.addInitScript(() => {
          IDBFactory.prototype.open = () => {
            throw new DOMException('The user denied permission to access the database.', 'SecurityError');
          };
        });
      },
      async (page) => {
        const notice = page.locator('.notice-place');
        await expect.poll(() => notice.textContent(), SOON).toContain('This browser saves nothing for this page');
        expect(await notice.textContent()).not.toMatch(INTERNAL);
        await ready(page);
        await tableWorks(page);
      },
    );
  });

  it('to write a file, the page says so and keeps the plan open', async () => {
    await preparedPlain(noPreparation, async (page) => {
      await ready(page);
      await page.evaluate(() =>
        Object.assign(window, {
          showSaveFilePicker: () =>
            Promise.reject(new DOMException('Must be handling a user gesture', 'SecurityError')),
        }),
      );
      await page.getByRole('button', { name: /^Save(?:,|$)/u }).click();
      const notice = page.locator('.notice-place');
      await expect
        .poll(() => notice.textContent(), SOON)
        .toContain('could not be saved: the browser does not allow it');
      expect(await notice.textContent()).not.toMatch(INTERNAL);
    });
  });

  it('to read a file that has gone, the page says so', async () => {
    // The worker reads it: there the browser answers for a file of six bytes as it does for one that is no longer on the disk.
    const gone = `{
      const read = FileReaderSync.prototype.readAsArrayBuffer;
      FileReaderSync.prototype.readAsArrayBuffer = function (blob) {
        if (blob.size === 6) throw new DOMException('A requested file or directory could not be found', 'NotFoundError');
        return read.call(this, blob);
      };
    }\n`;
    const prepare = (context: BrowserContext): Promise<unknown> =>
      context.route(/reader\.worker-[^/]*\.js$/u, async (route) => {
        const response = await route.fetch();
        await route.fulfill({ response, body: gone + (await response.text()) });
      });
    await preparedPlain(prepare, async (page) => {
      await ready(page);
      await dropFiles(page, { 'course.gpx': '<gpx/>' });
      await expect.poll(() => page.getByRole('alert').textContent(), SOON).toContain('the file is no longer there');
      expect(await page.getByRole('alert').textContent()).not.toMatch(INTERNAL);
    });
  });
});
