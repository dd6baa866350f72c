/** The plan's panel: every value that a plan holds, typed by keyboard, refused with what is accepted, undone. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  type Visit,
  type VisitOptions,
  LOOKS,
  PANEL,
  expectNoAxeFaults,
  faultless,
  inLooks,
  openStage,
  savedPlan as saved,
  sharedVisit,
} from './support/browser.ts';
import { ROOT } from './support/build.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const DEMO = readFileSync(join(ROOT, 'fixtures/demo/plan.json'), 'utf8');

const onMap = (act: (seen: Visit) => Promise<void>, options?: VisitOptions): Promise<void> =>
  faultless(
    stage,
    async (seen) => {
      await seen.page.getByRole('tab', { name: 'Plan' }).click();
      await act(seen);
    },
    options,
  );
const on = (act: (seen: Visit) => Promise<void>): Promise<void> => onMap(act, { map: false });

const panel = (page: Page): Locator => page.getByRole('tabpanel');
const section = async (page: Page, title: string): Promise<Locator> => {
  const found = panel(page)
    .locator('details.plan-section')
    .filter({ has: page.getByText(title, { exact: true }) })
    .first();
  await found.locator('summary').first().focus();
  await page.keyboard.press('Enter');
  return found;
};

describe('the plan’s panel, the plan left as it is', () => {
  const seen = sharedVisit({ map: false });
  const on = async (act: (seen: Visit) => Promise<void>): Promise<void> => {
    const { page } = seen();
    await page.getByRole('tab', { name: 'Stations' }).click();
    await page.getByRole('tab', { name: 'Plan' }).click();
    await act(seen());
  };

  it('keeps a bad entry as it was typed, says what is accepted, and changes nothing', async () => {
    await on(async ({ page }) => {
      const practice = await section(page, 'Distances');
      const field = practice.getByLabel('Gap between tables');
      await field.fill('ten furlongs');
      await field.press('Enter');
      await expect
        .poll(() => practice.getByRole('alert').textContent())
        .toMatch(/“ten furlongs”\. It should be a length/u);
      expect(await field.inputValue()).toBe('ten furlongs');
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      await field.press('Escape');
      expect(await field.inputValue()).toBe('3');
      expect(await saved(page)).toBe(DEMO);
    });
  });

  it('refuses to delete a race that stations name, and says who names it', async () => {
    await on(async ({ page }) => {
      const races = await section(page, 'Races');
      await races.locator('summary').filter({ hasText: 'Half marathon' }).last().click();
      await races.getByRole('button', { name: 'Delete race Half marathon' }).click();
      await expect
        .poll(() => races.getByRole('alert').first().textContent())
        .toMatch(/^Half marathon is still in use: Strand Road, .*Remove it there first\.$/u);
      expect(await saved(page)).toBe(DEMO);
    });
  });

  it('has nothing that axe objects to with all of it open, and fits, light and dark, 1440 and 360 px wide', async () => {
    await on(async ({ page }) => {
      await page.evaluate(() => {
        for (const one of document.querySelectorAll('details')) one.open = true;
      });
      await inLooks(page, LOOKS, async (look) => {
        await expectNoAxeFaults(page, look, PANEL);
        const wide = await panel(page).evaluate((element) => element.scrollWidth - element.clientWidth);
        expect(wide).toBeLessThanOrEqual(0);
      });
    });
  });
});

describe('the plan’s panel', () => {
  it('takes a value by keyboard, follows with the findings, changes only its bytes, and undo brings them back', async () => {
    await on(async ({ page }) => {
      const practice = await section(page, 'Distances');
      const field = practice.getByLabel('Sign before the first table');
      await field.focus();
      await page.keyboard.press('Control+A');
      await page.keyboard.type('70 m');
      await page.keyboard.press('Enter');
      expect(await saved(page)).toBe(DEMO.replace('"signAhead": "90 m"', '"signAhead": "70 m"'));
      await page.getByRole('tab', { name: /^Review/u }).click();
      // The demo's sign that stands at 70 m is right now.
      await expect.poll(() => panel(page).textContent()).not.toContain('The sign is 70 m before the first table');
      await page.getByRole('heading', { level: 1 }).click();
      await page.keyboard.press('Control+z');
      expect(await saved(page)).toBe(DEMO);
      await page.keyboard.press('Control+Shift+z');
      expect(await saved(page)).toContain('"signAhead": "70 m"');
    });
  });

  it('adds a wave, a vehicle, a zone, a place of the road clock and a time of the weather, and deletes them again', async () => {
    await onMap(async ({ page }) => {
      const counts = async (): Promise<readonly number[]> => {
        const plan = JSON.parse(await saved(page)) as Record<
          'vehicles' | 'zones' | 'clock' | 'weather',
          unknown[] | undefined
        >;
        return [plan.vehicles, plan.zones, plan.clock, plan.weather].map((list) => list?.length ?? 0);
      };
      const before = await counts();
      for (const [title, label] of [
        ['Vehicles', 'Add a vehicle'],
        ['Zones', /^Add a zone/u],
        ['Road times', 'Add a place'],
        ['Weather', 'Add a time'],
      ] as const) {
        const found = await section(page, title);
        await found.getByRole('button', { name: label }).focus();
        await page.keyboard.press('Enter');
        await expect.poll(() => found.locator('details.more').count()).toBeGreaterThan(0);
      }
      expect(await counts()).toEqual(before.map((count) => count + 1));
      for (const title of ['Vehicles', 'Zones', 'Road times', 'Weather']) {
        const found = panel(page)
          .locator('details.plan-section')
          .filter({ has: page.getByText(title, { exact: true }) });
        await found.locator('details.more').last().locator('summary').first().click();
        await found
          .locator('details.more')
          .last()
          .getByRole('button', { name: /^Delete/u })
          .click();
      }
      expect(await counts()).toEqual(before);
    });
  });

  it('changes the form of finish times, and takes shares with times line by line', async () => {
    await on(async ({ page }) => {
      const races = await section(page, 'Races');
      await races
        .locator('summary')
        .filter({ hasText: /^Full marathon on /u })
        .click();
      const race = races.locator('details.more').filter({ hasText: 'Delete race Full marathon' }).first();
      await race.getByLabel('Finish times from').last().selectOption('quantiles');
      const lines = race.getByLabel('Share, time');
      await lines.fill('0, 2:31:00\n0.5, 4:10:00\n1, 6:50:00');
      await lines.press('Control+Enter');
      const plan = JSON.parse(await saved(page)) as { readonly races: readonly { readonly finish: unknown }[] };
      expect(plan.races[0]!.finish).toEqual({
        quantiles: [
          [0, '2:31:00'],
          [0.5, '4:10:00'],
          [1, '6:50:00'],
        ],
      });
    });
  });
});
