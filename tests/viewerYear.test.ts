/** The year around race day on the page: counts of what is left, what they teach, and rates applied and undone. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import {
  type Stage,
  type Visit,
  LOOKS,
  PANEL,
  downloadedText,
  expectNoAxeFaults,
  faultless,
  inLooks,
  openStage,
  savedPlan,
} from './support/browser.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const DEMO = readFileSync(join(ROOT, 'fixtures/demo/plan.json'), 'utf8');

const onDay = (act: (seen: Visit) => Promise<void>): Promise<void> =>
  faultless(
    stage,
    async (seen) => {
      await seen.page.getByRole('tab', { name: 'Race day' }).click();
      await act(seen);
    },
    { map: false },
  );

const learning = (page: Page): Locator => page.getByRole('region', { name: 'Learning' });
/** The row of runners and water: plan, proposed, single stations. */
const waterOf = async (page: Page): Promise<string[]> =>
  learning(page)
    .getByRole('row')
    .filter({ hasText: 'Runners' })
    .filter({ hasText: 'Water' })
    .getByRole('cell')
    .allTextContents();

async function count(page: Page, station: string, counts: Readonly<Record<string, string>>): Promise<void> {
  await page.locator(PANEL).getByRole('button', { name: station, exact: true }).click();
  const form = page.getByRole('form', { name: `Left at ${station} after the race` });
  for (const [label, text] of Object.entries(counts)) await form.getByLabel(label).fill(text);
  await form.getByRole('button', { name: 'Save counts' }).click();
}

const undo = async (page: Page): Promise<void> => {
  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('Control+z');
};

const EMPTY = { 'Water jugs, full': '0', 'Sports-drink jugs, full': '0', 'Packs of cups': '0' };

describe('counts of what is left', () => {
  it('of three stations, typed in, change the proposed rates with their spread; one click applies them, one undo takes them back', async () => {
    await onDay(async ({ page }) => {
      const [plan, before, range] = (await waterOf(page)).slice(1);
      expect([plan, before, range]).toEqual([
        expect.stringMatching(/^\d\.\d\d$/u),
        expect.stringMatching(/^\d\.\d\d ± \d\.\d\d$/u),
        expect.stringMatching(/^\d\.\d\d to \d\.\d\d$/u),
      ]);
      for (const station of ['Norra Slip', 'Lantern Foot', 'Tidewaiters’ Green']) {
        await count(page, station, EMPTY);
        await expect
          .poll(() => page.getByRole('form', { name: `Left at ${station} after the race` }).textContent())
          .toMatch(/Counted: [\d,]+ cups of water, [\d,]+ cups of sports drink used/u);
      }
      const after = (await waterOf(page))[2]!;
      expect(after).not.toBe(before);
      const counted = await savedPlan(page);
      const { stations, supplies } = JSON.parse(counted) as {
        readonly stations: readonly { readonly id: string; readonly used?: { readonly water: number } }[];
        readonly supplies?: { readonly take?: unknown };
      };
      expect(stations.filter(({ used }) => used !== undefined).map(({ id }) => id)).toEqual([
        's1',
        's2',
        's3',
        's4',
        's5',
        's7',
      ]);
      expect(supplies?.take).toBeUndefined();
      await learning(page).getByRole('button', { name: 'Use the proposed rates' }).click();
      await learning(page).getByRole('button', { name: 'The plan has these rates' }).waitFor();
      const applied = JSON.parse(await savedPlan(page)) as { supplies: { drinkRate: number; waterShare: number } };
      expect(applied.supplies.drinkRate).toBeGreaterThan(0);
      expect(applied.supplies.waterShare).toBeGreaterThan(0);
      // The plan now expects what it proposed, but for cups that the bounds hold up or down.
      expect(Math.abs(Number((await waterOf(page))[1]) - Number(after.slice(0, 4)))).toBeLessThan(0.1);
      await undo(page);
      expect(await savedPlan(page)).toBe(counted);
      for (let k = 0; k < 3; k++) await undo(page);
      expect(await savedPlan(page)).toBe(DEMO);
    });
  });

  it('that cannot be are refused beside their fields, and change nothing', async () => {
    await onDay(async ({ page }) => {
      await count(page, 'Norra Slip', { 'Water jugs, full': '9999', 'Packs of cups': '2' });
      const form = page.getByRole('form', { name: /Norra Slip/u });
      await expect
        .poll(() => form.getByRole('alert').textContent())
        .toMatch(/^9,999 jugs of water are counted, and \d+ were sent\. Count again/u);
      await count(page, 'Norra Slip', { 'Water jugs, full': 'some', 'Packs of cups': '2' });
      await expect
        .poll(() => form.getByRole('alert').textContent())
        .toMatch(/^“some” is no number of water jugs full\./u);
      expect(await form.getByLabel('Water jugs, full').getAttribute('aria-invalid')).toBe('true');
      expect(await savedPlan(page)).toBe(DEMO);
    });
  });

  it('come from a form that is saved empty and read filled in, with what is wrong told by line and column', async () => {
    await onDay(async ({ page }) => {
      await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
      const [given] = await Promise.all([
        page.waitForEvent('download'),
        learning(page).getByRole('button', { name: 'Save the empty form (CSV)' }).click(),
      ]);
      const form = await downloadedText(given);
      expect(form.split('\r\n')[0]).toMatch(/^station,name,water jugs full,/u);
      const filled = form
        .replace(/^s4,Norra Slip,,,,,,/mu, 's4,Norra Slip,3,,2,,1,')
        .replace(/^s5,([^,]*),,/mu, 's5,$1,many,');
      await page
        .locator('.leftovers-file')
        .setInputFiles({ name: 'left.csv', mimeType: 'text/csv', buffer: Buffer.from(filled) });
      await expect
        .poll(() => learning(page).getByRole('alert').textContent())
        .toMatch(/^left\.csv:6:17: “many” is no number of water jugs full\./u);
      const saved = await savedPlan(page);
      expect(saved).not.toBe(DEMO);
      expect((JSON.parse(saved) as { stations: { used?: object }[] }).stations.filter(({ used }) => used).length).toBe(
        4,
      );
      await undo(page);
      expect(await savedPlan(page)).toBe(DEMO);
    });
  });

  it('have nothing that axe objects to, and fit, light and dark, 1440 and 360 px wide', async () => {
    await onDay(async ({ page }) => {
      await count(page, 'Norra Slip', { 'Water jugs, full': 'some' });
      await inLooks(page, LOOKS, async (look) => {
        await expectNoAxeFaults(page, look, PANEL);
        const wide = await page.locator(PANEL).evaluate((element) => element.scrollWidth - element.clientWidth);
        expect(wide).toBeLessThanOrEqual(0);
      });
    });
  });
});

describe('the roster', () => {
  const CREW =
    'Nombre;Puesto;Desde;Hasta\nAda Tern;Norra Slip;06:00;23:00\nIvo Skua;s4;;\nUna Gull;Nowhere;;\nOle Puffin;s5;late;\n';

  it('is read from a table, shows who is missing, is a finding where too few come, and is removed and undone', async () => {
    await onDay(async ({ page }) => {
      const card = page.getByRole('region', { name: 'Roster' });
      await page
        .locator('.roster-file')
        .setInputFiles({ name: 'crew.csv', mimeType: 'text/csv', buffer: Buffer.from(CREW) });
      await expect
        .poll(() => card.getByRole('alert').getByRole('listitem').allTextContents())
        .toEqual([
          expect.stringMatching(/^crew\.csv:4:10: Somebody is put at “Nowhere”/u),
          expect.stringMatching(/^crew\.csv:5:15: “late” is no clock time\./u),
        ]);
      const [there, , needed, missing] = (
        await card.getByRole('row').filter({ hasText: 'Norra Slip' }).getByRole('cell').allTextContents()
      ).map(Number);
      // Two of the roster and the captain whom the plan names.
      expect(there).toBe(3);
      expect(missing).toBe(needed! - 3);
      const saved = await savedPlan(page);
      expect((JSON.parse(saved) as { people: object }).people).toEqual({
        crew: [
          { name: 'Ada Tern', station: 's4', from: '06:00', until: '23:00' },
          { name: 'Ivo Skua', station: 's4' },
        ],
      });
      await inLooks(page, LOOKS.slice(0, 1), (look) => expectNoAxeFaults(page, look, PANEL));
      await page.getByRole('tab', { name: /^Review/u }).click();
      await expect
        .poll(() => page.locator(PANEL).textContent())
        .toMatch(/3 people of the roster are there at \d\d:\d\d: \d+ are missing/u);
      await page.getByRole('tab', { name: 'Race day' }).click();
      await card.getByRole('button', { name: 'Remove the roster' }).click();
      expect(await savedPlan(page)).toBe(DEMO);
      await undo(page);
      expect(await savedPlan(page)).toBe(saved);
    });
  });
});

describe('the supply order', () => {
  it('has costs and a day to order by once prices are typed in, and is saved as a table', async () => {
    await onDay(async ({ page }) => {
      const totals = page.getByRole('region', { name: 'All stations together' });
      await totals.getByRole('button', { name: 'Plan › Prices' }).click();
      const prices = page.locator('#plan-prices');
      await prices.getByRole('button', { name: 'Add a price' }).click();
      await prices.locator('summary').filter({ hasText: 'Pack of cups' }).click();
      for (const [label, text] of [
        ['Currency', 'EUR'],
        ['Price of one', '2.5'],
        ['Sold together', '10'],
        ['Days of delivery', '21'],
      ] as const) {
        await prices.getByLabel(label).fill(text);
        await prices.getByLabel(label).press('Enter');
      }
      await inLooks(page, LOOKS.slice(0, 1), (look) => expectNoAxeFaults(page, look, PANEL));
      await page.getByRole('tab', { name: 'Race day' }).click();
      const words = (await totals.textContent())!;
      expect(words).toMatch(/Cost of the order[\d,]+\.\d\d EUR, \d+ of \d+ lines without a price/u);
      // 11 September less 21 days.
      expect(words).toMatch(/Order firstCups, by Saturday,? 21 August 2027/u);
      await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
      const [given] = await Promise.all([
        page.waitForEvent('download'),
        totals.getByRole('button', { name: 'Save the order (CSV)' }).click(),
      ]);
      expect((await downloadedText(given)).split('\r\n')[1]).toMatch(
        /^Packs of cups,\d+,\d+0,100,2\.5,[\d.]+,EUR,21,2027-08-21$/u,
      );
    });
  });
});
