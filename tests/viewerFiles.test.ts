/** Plans as files, plans that the browser keeps, long files, and the page without its server: in a real browser. */
import { courseLength } from '@halfcup/core/geometry';
import { readPlan } from '@halfcup/core';
import { courseStage } from '@halfcup/core/stages';
import { readGpx } from '@halfcup/core/gpx';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serviceWorkerText } from '../packages/viewer/offline.ts';
import {
  type Stage,
  type Visit,
  builtViewer,
  dropFiles,
  during,
  mapIdle,
  openStage,
  savedPlan,
  serve,
  visit,
} from './support/browser.ts';
import { ROOT } from './support/build.ts';
import { OCEAN, gpxText, straight } from './support/courses.ts';

const DEMO = readFileSync(join(ROOT, 'fixtures/demo/plan.json'), 'utf8');

let stage: Stage;
const folder = mkdtempSync(join(tmpdir(), 'halfcup-files-'));
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
});

const on = <T>(act: (seen: Visit) => Promise<T>): Promise<T> => during(stage, act, { map: false });
/** With its map, which draws what is opened. */
const onMap = <T>(act: (seen: Visit) => Promise<T>): Promise<T> => during(stage, act);

async function another(context: BrowserContext, address = stage.address): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${address}#example`);
  await mapIdle(page);
  return page;
}

const rows = (page: Page): Promise<number> => page.getByRole('table').first().locator('tbody tr').count();
const title = (page: Page): Promise<string | null> => page.getByRole('heading', { level: 1 }).textContent();
const notice = (page: Page): ReturnType<Page['locator']> => page.locator('.notice');
const says = async (page: Page, words: string | RegExp): Promise<void> =>
  notice(page).filter({ hasText: words }).waitFor({ timeout: 20_000 });
const answer = (page: Page, label: string): Promise<void> => notice(page).getByRole('button', { name: label }).click();
const keeping = (page: Page): Promise<string | null> => page.locator('[data-keeping]').getAttribute('data-keeping');
const kept = (page: Page): Promise<void> => page.locator('[data-keeping="kept"]').waitFor({ timeout: 20_000 });

/** One change: a copy of the first station. */
async function change(page: Page): Promise<void> {
  const before = await rows(page);
  await page.getByRole('button', { name: 'Strand Road', exact: true }).click();
  await page.getByRole('button', { name: 'Duplicate', exact: true }).click();
  await expect.poll(() => rows(page)).toBe(before + 1);
}

const choose = (page: Page, files: Parameters<ReturnType<Page['locator']>['setInputFiles']>[0]): Promise<void> =>
  page.locator('input[type=file][accept*=".gpx"]').first().setInputFiles(files);

interface Row {
  readonly id: string;
  readonly revision: number;
  readonly text: string;
  readonly name: string;
}

/** All of one store of the page's database, as it stands. */
const stored = (page: Page, store: 'plans' | 'aside' | 'files'): Promise<unknown[]> =>
  page.evaluate(
    (name) =>
      new Promise<unknown[]>((resolve, reject) => {
        const opening = indexedDB.open('halfcup');
        opening.addEventListener('error', () => reject(opening.error));
        opening.addEventListener('success', () => {
          const asked = opening.result.transaction(name).objectStore(name).getAll();
          asked.addEventListener('success', () => {
            opening.result.close();
            resolve(asked.result);
          });
        });
      }),
    store,
  );
const plans = (page: Page): Promise<Row[]> => stored(page, 'plans') as Promise<Row[]>;

/** Puts records into the page's database by hand, in the way of a version. */
const putByHand = (page: Page, version: number, records: readonly object[]): Promise<void> =>
  page.evaluate(
    ([wanted, given]) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('halfcup', wanted);
        opening.addEventListener('error', () => reject(opening.error));
        opening.addEventListener('upgradeneeded', () => opening.result.createObjectStore('plans', { keyPath: 'id' }));
        opening.addEventListener('success', () => {
          const transaction = opening.result.transaction('plans', 'readwrite');
          for (const record of given) transaction.objectStore('plans').put(record);
          transaction.addEventListener('complete', () => {
            opening.result.close();
            resolve();
          });
        });
      }),
    [version, records] as const,
  );

const SMALL = {
  'small.json': JSON.stringify(
    {
      format: 'halfcup-plan',
      version: 1,
      name: 'Small',
      courses: [
        { id: 'c', name: 'C', line: straight(OCEAN, 80, 30, 100).map(([lon, lat]) => [lon, lat]), drawn: 'centre' },
      ],
      races: [{ id: 'r', name: 'R', course: 'c' }],
      stations: [],
    },
    null,
    2,
  ),
};

describe('what the browser keeps', () => {
  it('is there after the tab was killed in the middle of changes, the last one too, and undo still leads to the very bytes', async () => {
    await on(async ({ page, context }) => {
      for (let k = 0; k < 4; k++) await change(page);
      const before = await rows(page);
      const session = await context.newCDPSession(page);
      void session.send('Page.crash').catch(() => undefined);
      await page.waitForEvent('crash');
      await page.close();
      const again = await another(context);
      expect(await rows(again)).toBe(before);
      for (let left = (await rows(again)) - 9; left > 0; left--)
        await again.getByRole('button', { name: 'Undo' }).click();
      expect(await savedPlan(again)).toBe(DEMO);
    });
  });

  it('is there after a reload, with its variant, and the demo can be opened again beside it', async () => {
    await onMap(async ({ page }) => {
      await change(page);
      await kept(page);
      const text = await savedPlan(page);
      await page.reload();
      await mapIdle(page);
      expect(await savedPlan(page)).toBe(text);
      await page.getByRole('button', { name: 'Plans' }).click();
      await page.getByRole('button', { name: 'Open the demo' }).click();
      await expect.poll(() => rows(page)).toBe(9);
      expect(await savedPlan(page)).toBe(DEMO);
      expect((await plans(page)).map((plan) => plan.text)).toEqual([text]);
    });
  });

  it('is there after a reload in the very frame of a change, without a question, and after storage was cleared', async () => {
    await on(async ({ page, context }) => {
      let asked = 0;
      page.on('dialog', (dialog) => {
        asked++;
        void dialog.accept();
      });
      const changeAndReload = async (): Promise<void> => {
        await page.getByRole('button', { name: 'Strand Road', exact: true }).click();
        await page.getByRole('button', { name: 'Duplicate', exact: true }).waitFor();
        await Promise.all([
          page.waitForNavigation(),
          page.evaluate(() => {
            [...document.querySelectorAll('button')].find((one) => one.textContent === 'Duplicate')!.click();
            location.reload();
          }),
        ]);
        await mapIdle(page);
      };
      await changeAndReload();
      await expect.poll(() => rows(page)).toBe(10);
      await changeAndReload();
      await expect.poll(() => rows(page)).toBe(11);
      const session = await context.newCDPSession(page);
      const origin = new URL(stage.address).origin;
      await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
      // Asking by opening it would make an empty one.
      const versions = (): Promise<unknown[]> =>
        page.evaluate(async () => (await indexedDB.databases()).map(({ version }) => version));
      await expect.poll(versions).toEqual([3]);
      await expect.poll(async () => (await plans(page)).length).toBe(1);
      await page.reload();
      await mapIdle(page);
      await expect.poll(() => rows(page)).toBe(11);
      expect(asked).toBe(0);
    });
  });

  it('lists the plans, opens one, forgets one, and brings a forgotten one back', async () => {
    await on(async ({ page }) => {
      await dropFiles(page, SMALL);
      await expect.poll(() => title(page)).toBe('Small');
      await kept(page);
      await dropFiles(page, { 'other.json': SMALL['small.json'].replace('"Small"', '"Other"') });
      await expect.poll(() => title(page)).toBe('Other');
      await kept(page);
      await page.getByRole('button', { name: 'Plans' }).click();
      await page.getByRole('button', { name: /^Delete Small/u }).click();
      await says(page, 'Deleted “Small” from this browser');
      expect((await plans(page)).map(({ name }) => name)).toEqual(['Other']);
      await answer(page, 'Restore');
      await page.getByRole('button', { name: /^Open Small/u }).click();
      await expect.poll(() => title(page)).toBe('Small');
      expect(await savedPlan(page)).toBe(SMALL['small.json']);
    });
  });

  it('is told where there is no room left; the plan stays, can be saved to a file, and is kept when there is room again', async () => {
    await on(async ({ page, context }) => {
      const session = await context.newCDPSession(page);
      const origin = new URL(stage.address).origin;
      await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
      await change(page);
      await says(page, 'no room left');
      await expect.poll(() => keeping(page)).toBe('failed');
      expect(await rows(page)).toBe(10);
      const text = await savedPlan(page);
      expect(text).not.toBe(DEMO);
      await session.send('Storage.overrideQuotaForOrigin', { origin });
      await change(page);
      await kept(page);
      expect((await plans(page)).map((plan) => plan.text)).toEqual([await savedPlan(page)]);
    });
  });

  it('of an earlier version is brought to this one, and set aside as it was', async () => {
    const old = {
      id: 'old',
      name: 'Earlier',
      file: 'earlier.json',
      text: JSON.stringify({
        format: 'halfcup-plan',
        version: 1,
        name: 'Earlier',
        courses: [{ id: 'c', name: 'C', gpx: 'way.gpx', drawn: 'centre' }],
        races: [{ id: 'r', name: 'R', course: 'c' }],
        stations: [],
      }),
      gpx: { 'way.gpx': gpxText([straight(OCEAN, 80, 40, 50)]) },
      changed: 1_700_000_000_000,
    };
    const strange = { id: 'strange', words: 'of no version' };
    const context = await stage.browser.newContext({ serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(`${stage.address}serviceWorker.js`);
    await putByHand(page, 1, [old, strange]);
    await page.goto(`${stage.address}#example`);
    await mapIdle(page);
    expect(await title(page)).toBe('Earlier');
    expect(await savedPlan(page)).toBe(old.text);
    const aside = (await stored(page, 'aside')) as { why: string; record: unknown }[];
    expect(aside.map(({ why }) => why)).toEqual(['before-migration', 'before-migration']);
    expect(aside.map(({ record }) => record)).toEqual(expect.arrayContaining([old, strange]));
    await context.close();
  });

  it('that is damaged is told and set aside, and the page opens', async () => {
    await on(async ({ page }) => {
      await dropFiles(page, SMALL);
      await expect.poll(() => title(page)).toBe('Small');
      await kept(page);
      const [record] = await plans(page);
      const broken = { ...record!, text: record!.text.slice(0, 50) };
      await page.goto(`${stage.address}serviceWorker.js`);
      await putByHand(page, 3, [broken]);
      await page.goto(`${stage.address}#example`);
      await mapIdle(page);
      await says(page, 'could not be opened');
      expect(await title(page)).toBe((JSON.parse(DEMO) as { name: string }).name);
      expect(((await stored(page, 'aside')) as { record: unknown }[]).map(({ record: one }) => one)).toEqual([broken]);
      expect(await plans(page)).toEqual([]);
    });
  });
});

describe('two tabs on one plan', () => {
  it('the second is told at once; its change begins a copy, and the first keeps its own', async () => {
    await on(async ({ page, context }) => {
      await change(page);
      await kept(page);
      const first = await savedPlan(page);
      const second = await another(context);
      await says(second, 'is open in another tab');
      expect(await savedPlan(second)).toBe(first);
      await change(second);
      await kept(second);
      const texts = (await plans(page)).map(({ text }) => text);
      expect(texts.toSorted()).toEqual([first, await savedPlan(second)].toSorted());
      expect(await savedPlan(page)).toBe(first);
    });
  });

  it('the second can take over, of which the first is told, and the second goes on by itself when the first is closed', async () => {
    await on(async ({ page, context }) => {
      await change(page);
      await kept(page);
      const second = await another(context);
      await says(second, 'is open in another tab');
      await answer(second, 'Edit it here');
      await says(page, 'is now edited in another tab');
      await kept(second);
      await change(second);
      await kept(second);
      expect((await plans(second)).map(({ text }) => text)).toEqual([await savedPlan(second)]);
      await second.close();
      await says(page, 'This tab now edits the plan');
      await expect.poll(() => rows(page)).toBe(11);
    });
  });

  it('a change that another tab has written meanwhile is never written over: what stands here goes on as a copy', async () => {
    await on(async ({ page }) => {
      await change(page);
      await kept(page);
      const [mine] = await plans(page);
      const theirs = { ...mine!, revision: mine!.revision + 1, text: mine!.text.replace('Strand Road', 'Strand Way') };
      await putByHand(page, 3, [theirs]);
      await change(page);
      await says(page, 'meanwhile');
      await kept(page);
      const now = await plans(page);
      expect(now.find(({ id }) => id === mine!.id)).toEqual(theirs);
      expect(now.filter(({ id }) => id !== mine!.id).map(({ text }) => text)).toEqual([await savedPlan(page)]);
      await answer(page, 'Open the other tab’s version');
      await expect.poll(() => page.getByRole('button', { name: 'Strand Way', exact: true }).count()).toBe(1);
      expect(await savedPlan(page)).toBe(theirs.text);
    });
  });
});

describe('a file whose name fits two of the plan', () => {
  it('is asked about, and answers for one of them alone', async () => {
    await on(async ({ page }) => {
      const plan = JSON.parse(DEMO) as { name: string; courses: { gpx?: string }[] };
      const named = plan.courses.filter(({ gpx }) => gpx !== undefined);
      named[0]!.gpx = 'a/course.gpx';
      named[1]!.gpx = 'b/course.gpx';
      plan.name = 'Two of one name';
      const gpx = (name: string): string => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');
      await dropFiles(page, { 'plan.json': JSON.stringify(plan), 'course.gpx': gpx('full.gpx') });
      const waits = page.getByRole('alert');
      await waits.getByText('Which file is course.gpx?').waitFor();
      await waits.getByRole('button', { name: 'a/course.gpx' }).click();
      await waits.getByText('needs 1 more file').waitFor();
      expect(await waits.locator('li').allTextContents()).toEqual(['b/course.gpx']);
      await dropFiles(page, { 'course.gpx': gpx('half.gpx') });
      await expect.poll(() => title(page)).toBe('Two of one name');
    });
  });
});

describe('files', () => {
  it('saving gives the very bytes that were opened, mark and line ends too, and those of a change open again as they are', async () => {
    await on(async ({ page }) => {
      const bytes = `\uFEFF${SMALL['small.json'].replaceAll('\n', '\r\n')}\r\n`;
      await dropFiles(page, { 'odd.json': bytes });
      await expect.poll(() => title(page)).toBe('Small');
      expect(await savedPlan(page)).toBe(bytes);
      await page.getByRole('button', { name: 'Plans' }).click();
      await page.getByRole('button', { name: 'Open the demo' }).click();
      await expect.poll(() => rows(page)).toBe(9);
      await change(page);
      await page.getByRole('button', { name: /^Save, unsaved changes/u }).waitFor();
      const changed = await savedPlan(page);
      await page.getByRole('button', { name: /^Save$/u }).waitFor();
      const demo = (name: string): string => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');
      await dropFiles(page, { 'plan.json': changed, 'full.gpx': demo('full.gpx'), 'half.gpx': demo('half.gpx') });
      await expect.poll(() => rows(page)).toBe(10);
      expect(await savedPlan(page)).toBe(changed);
    });
  });

  it('a plan goes back to the file that it was saved to; a file changed elsewhere is told before it is written over', async () => {
    await on(async ({ page }) => {
      // The page's own private files have the same handles as those that a person chooses.
      await page.evaluate(() =>
        Object.assign(window, {
          showSaveFilePicker: async () =>
            (await navigator.storage.getDirectory()).getFileHandle('mine.json', { create: true }),
        }),
      );
      const held = (): Promise<string> =>
        page.evaluate(async () =>
          (await (await (await navigator.storage.getDirectory()).getFileHandle('mine.json')).getFile()).text(),
        );
      const press = (): Promise<void> => page.getByRole('button', { name: /^Save(,|$)/u }).click();
      await press();
      await says(page, 'Saved to mine.json');
      expect(await held()).toBe(DEMO);
      await change(page);
      await press();
      await expect.poll(held).not.toBe(DEMO);
      await page.evaluate(async () => {
        const stream = await (
          await (await navigator.storage.getDirectory()).getFileHandle('mine.json')
        ).createWritable();
        await stream.write('from elsewhere');
        await stream.close();
      });
      await change(page);
      await press();
      await says(page, 'was changed by another program');
      expect(await held()).toBe('from elsewhere');
      await answer(page, 'Overwrite');
      await expect.poll(held).not.toBe('from elsewhere');
      expect((JSON.parse(await held()) as { stations: unknown[] }).stations.length).toBe(11);
    });
  });

  it('a plan is packed with its files into one ZIP that opens by itself elsewhere; a cut one is refused with the reason', async () => {
    const path = join(folder, 'demo.zip');
    await on(async ({ page }) => {
      await change(page);
      const text = await savedPlan(page);
      await page.getByRole('button', { name: 'Plans' }).click();
      const [given] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'Save packed (ZIP)' }).click(),
      ]);
      expect(given.suggestedFilename()).toBe('ganneth-island-marathon-and-half.zip');
      await given.saveAs(path);
      writeFileSync(join(folder, 'text.json'), text);
    });
    const zip = readFileSync(path);
    expect(zip.subarray(0, 4)).toEqual(Buffer.from([0x50, 0x4b, 3, 4]));
    await on(async ({ page }) => {
      await choose(page, { name: 'cut.zip', mimeType: 'application/zip', buffer: zip.subarray(0, zip.length / 2) });
      await page.getByRole('alert').filter({ hasText: 'could not be unpacked' }).waitFor();
      expect(await rows(page)).toBe(9);
      await choose(page, path);
      // Unpacked, read and analysed in a worker, beside a map that still loads.
      await expect.poll(() => rows(page), { timeout: 30_000 }).toBe(10);
      expect(await savedPlan(page)).toBe(readFileSync(join(folder, 'text.json'), 'utf8'));
    });
  });
});

/** As many as a file may have where continuous integration has the time; by itself enough to be seen on its way. */
const MANY = process.env['CI'] === undefined ? 300_000 : 500_000;

describe('a very long course', () => {
  it('is read elsewhere, tells how far it is, can be stopped, opens whole, and takes a change', async () => {
    const points = Array.from({ length: MANY }, (_, k): [number, number] => {
      const turn = (k / MANY) * 6.1;
      const out = 0.05 * (1 + 0.25 * Math.cos(5 * turn));
      return [-18.2 + 1.18 * out * Math.cos(turn), -32.5 + out * Math.sin(turn)];
    });
    const file = join(folder, 'long.gpx');
    const text = gpxText([points]);
    writeFileSync(file, text);
    const gpx = readGpx(text, 'long.gpx');
    if (!gpx.ok) throw new Error('the long course does not read');
    await onMap(async ({ page, faults }) => {
      await choose(page, file);
      const bar = page.locator('.job progress');
      await expect.poll(() => bar.getAttribute('value'), { timeout: 20_000 }).not.toBeNull();
      const early = Number(await bar.getAttribute('value'));
      expect(early).toBeLessThan(1);
      await page.getByRole('button', { name: 'Stop' }).click();
      await says(page, 'Stopped. long.gpx not opened');
      expect(await rows(page)).toBe(9);
      expect(await savedPlan(page)).toBe(DEMO);
      await choose(page, file);
      await page.getByRole('button', { name: 'A new plan' }).click({ timeout: 90_000 });
      await page.getByRole('radio', { name: /none yet/iu }).check({ timeout: 60_000 });
      await page.getByRole('button', { name: 'Make the plan' }).click();
      await expect.poll(() => title(page), { timeout: 90_000 }).toBe('long');
      const plan = readPlan(await savedPlan(page), 'long.plan.json');
      if (!plan.ok) throw new Error('the plan that was begun does not read');
      const courses = courseStage(plan.value.plan, { gpx: new Map([['long.gpx', gpx.value]]) });
      if (!courses.ok) throw new Error('the long course does not measure');
      const middle = courseLength(courses.value[0]!.course) / 2000;
      await page.getByText(`at ${middle.toFixed(2)} km, the middle of the longest leg`).waitFor();
      await page.getByRole('button', { name: 'Add station' }).click();
      await expect.poll(() => rows(page)).toBe(1);
      await kept(page);
      const after = await savedPlan(page);
      await page.reload();
      await expect.poll(() => title(page), { timeout: 60_000 }).toBe('long');
      expect(await savedPlan(page)).toBe(after);
      expect(faults).toEqual([]);
    });
  });
});

describe('without its server', () => {
  const lead = async (page: Page): Promise<void> => {
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await expect
      .poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state), { timeout: 20_000 })
      .toBe('activated');
  };

  it('the page reloads, opens, changes, keeps and prints, and asks no other host for anything', async () => {
    const served = await serve(builtViewer());
    const seen = await visit({ ...stage, address: served.address }, { serviceWorkers: 'allow' });
    const { page, context, requests } = seen;
    await lead(page);
    await served.close();
    await page.reload();
    await mapIdle(page);
    await change(page);
    await kept(page);
    await page.reload();
    await mapIdle(page);
    expect(await rows(page)).toBe(10);
    await dropFiles(page, SMALL);
    await expect.poll(() => title(page)).toBe('Small');
    expect((await page.pdf()).subarray(0, 5).toString()).toBe('%PDF-');
    expect(requests.filter((address) => !address.startsWith(served.address) && !address.startsWith('blob:'))).toEqual(
      [],
    );
    await context.close();
  });

  it('what is kept for that is every file of the build, under a name that changes with any of them', () => {
    const dist = join(folder, 'small');
    mkdirSync(join(dist, 'assets'), { recursive: true });
    writeFileSync(join(dist, 'index.html'), '<p>one</p>');
    writeFileSync(join(dist, 'assets/map.mjs'), 'export {};');
    const first = serviceWorkerText(dist);
    expect(first).toContain('const FILES = ["assets/map.mjs","index.html"];');
    writeFileSync(join(dist, 'serviceWorker.js'), first);
    expect(serviceWorkerText(dist)).toBe(first);
    writeFileSync(join(dist, 'index.html'), '<p>two</p>');
    const buildOf = (text: string): string => /const BUILD = '([0-9a-f]{16})'/u.exec(text)![1]!;
    expect(buildOf(serviceWorkerText(dist))).not.toBe(buildOf(first));
  });

  it('a newer version waits until a person says so, and then it is what is shown', async () => {
    const dist = join(folder, 'dist');
    cpSync(builtViewer(), dist, { recursive: true });
    const served = await serve(dist);
    const { page, context } = await visit({ ...stage, address: served.address }, { serviceWorkers: 'allow' });
    await lead(page);
    await change(page);
    await kept(page);
    const index = join(dist, 'index.html');
    writeFileSync(index, readFileSync(index, 'utf8').replace('<title>Halfcup</title>', '<title>Newer</title>'));
    // As the build writes it.
    writeFileSync(join(dist, 'serviceWorker.js'), serviceWorkerText(dist));
    await page.reload();
    await mapIdle(page);
    expect(await page.title()).toBe('Halfcup');
    await says(page, 'A new version of Halfcup is ready');
    expect(await page.title()).toBe('Halfcup');
    await answer(page, 'Reload');
    await expect.poll(() => page.title(), { timeout: 20_000 }).toBe('Newer');
    await mapIdle(page);
    expect(await rows(page)).toBe(10);
    await context.close();
    await served.close();
  });
});
