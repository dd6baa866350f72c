/** The papers in the viewer: seen, printed, saved, and the layout handed to other tools. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  type Visit,
  LOOKS,
  downloadedText,
  expectNoAxeFaults,
  faultless,
  foreignOf,
  inLooks,
  openStage,
  sharedVisit,
} from './support/browser.ts';
import { ROOT } from './support/build.ts';
import { halfcupIn } from './support/halfcup.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const PLAN = JSON.parse(readFileSync(join(ROOT, 'fixtures/demo/plan.json'), 'utf8')) as {
  readonly stations: readonly { readonly name: string }[];
};

async function openPapers({ page }: Visit): Promise<void> {
  await page.getByRole('tab', { name: 'Papers' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Print', exact: true }).waitFor();
}

const on = (act: (seen: Visit) => Promise<void>): Promise<void> =>
  faultless(
    stage,
    async (seen) => {
      await openPapers(seen);
      await act(seen);
      expect(foreignOf(stage, seen.requests)).toEqual([]);
    },
    { map: false },
  );

const preview = async (page: Page): Promise<string> =>
  (await page.frameLocator('.paper-preview').locator('body').textContent()) ?? '';

async function downloaded(page: Page, button: string): Promise<string> {
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
  const [given] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return downloadedText(given);
}

describe('papers', () => {
  const seen = sharedVisit({ map: false });
  const on = async (act: (seen: Visit) => Promise<void>): Promise<void> => {
    await openPapers(seen());
    await act(seen());
    expect(foreignOf(stage, seen().requests)).toEqual([]);
  };

  it('shows every paper of the demo, with the stations it is about', async () => {
    await on(async ({ page }) => {
      const choice = page.getByRole('combobox', { name: 'Paper', exact: true });
      const names = await choice
        .locator('option')
        .evaluateAll((options) => options.map((option) => (option as HTMLOptionElement).value));
      expect(names).toEqual(
        expect.arrayContaining([
          'overview.html',
          'captains.html',
          'cards.html',
          'placement.html',
          'supplies.html',
          'run-v1.html',
          'collection.html',
          'report.html',
        ]),
      );
      let before = '';
      for (const name of names.filter((one) => one !== 'captains.html')) {
        await choice.selectOption(name);
        await expect.poll(() => preview(page), { message: name }).not.toBe(before);
        before = await preview(page);
        expect(before.length).toBeGreaterThan(400);
      }
      await choice.selectOption('captains.html');
      for (const { name } of PLAN.stations) await expect.poll(() => preview(page)).toContain(name);
    });
  });

  it('shows one station’s own sheet by the box beside, which follows what is selected and keeps the paper', async () => {
    await on(async ({ page }) => {
      const [paper, station] = ['Paper', 'Station'].map((name) => page.getByRole('combobox', { name, exact: true }));
      await paper!.selectOption('captains.html');
      const [first, second] = PLAN.stations.map(({ name }) => name);
      await station!.selectOption({ index: 1 });
      await expect.poll(() => preview(page)).not.toContain(second);
      expect(await preview(page)).toContain(first);
      await paper!.selectOption('overview.html');
      expect(await station!.count()).toBe(0);
      await page.getByRole('tab', { name: 'Stations' }).click();
      await page.getByRole('button', { name: second!, exact: true }).first().click();
      await openPapers({ page } as Visit);
      expect(await paper!.inputValue()).toBe('overview.html');
      await page.getByRole('button', { name: 'Captain’s sheet', exact: true }).click();
      await expect.poll(() => paper!.inputValue()).toBe('captains.html');
      expect(await station!.locator('option:checked').textContent()).toContain(second);
      await expect.poll(() => page.locator('.paper-preview').getAttribute('title')).toContain(`${second!} only`);
      await station!.selectOption('all stations');
      await expect.poll(() => preview(page)).toContain(first);
    });
  });

  it('hands over the layout as the command line does', async () => {
    await on(async ({ page }) => {
      for (const [button, format] of [
        ['GPX for handheld devices', 'gpx'],
        ['CSV for spreadsheets', 'csv'],
        ['GeoJSON for maps', 'geojson'],
      ] as const) {
        const { out } = await halfcupIn(ROOT, 'export', 'fixtures/demo/plan.json', '--to', format);
        const given = await downloaded(page, button);
        if (format === 'geojson') expect(JSON.parse(given)).toEqual(JSON.parse(out));
        else expect(given.trimEnd()).toBe(out.trimEnd());
      }
      expect(await downloaded(page, 'Calendar for crews')).toContain('BEGIN:VEVENT');
    });
  });

  it('has nothing that axe objects to, and is no wider than its room, light and dark, 1440 and 360 px wide', async () => {
    await on(async ({ page }) => {
      await inLooks(page, LOOKS, async (look) => {
        await expectNoAxeFaults(page, look, undefined, '.paper-preview');
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(look.width);
      });
    });
  });
});

describe('a paper', () => {
  it('prints the paper chosen, in the language chosen', async () => {
    await on(async ({ page }) => {
      await page.addInitScript(() => {
        window.print = () =>
          Object.assign(window.top!, {
            printed: document.body.textContent,
            fonts: Array.from(document.fonts, ({ family, status }) => `${family} ${status}`),
          });
      });
      await page.getByLabel('Language').selectOption('es');
      await expect.poll(() => preview(page)).toContain('control de carrera');
      await page.getByRole('button', { name: 'Print', exact: true }).click();
      await expect
        .poll(() => page.evaluate(() => (window as unknown as { printed?: string }).printed ?? ''))
        .toContain('control de carrera');
      // The page's policy lets the paper have its own font, and printing waits for it.
      expect(await page.evaluate(() => (window as unknown as { fonts?: string[] }).fonts)).toEqual([
        'Arimo loaded',
        'Arimo loaded',
      ]);
      const html = await downloaded(page, 'Save as HTML');
      expect(html).toContain('<html lang="es"');
      expect(html).toContain('Strand Road');
    });
  });
});
