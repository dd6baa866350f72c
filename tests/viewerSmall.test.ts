/** Small and large windows: nothing scrolls sideways, the map keeps its share, parts fold; and the cutoff in both its forms. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Stage, expectNoAxeFaults, faultless, openStage, savedPlan } from './support/browser.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

/** What is wider than what it stands in. */
const sideways = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const wide = [...document.querySelectorAll<HTMLElement>('body, body *')].filter((element) => {
      const { overflowX } = getComputedStyle(element);
      const scrolls = element === document.body || overflowX === 'auto' || overflowX === 'scroll';
      return scrolls && element.checkVisibility() && element.scrollWidth > element.clientWidth + 1;
    });
    const page = document.documentElement.scrollWidth > window.innerWidth ? ['the page'] : [];
    return [...page, ...wide.map((one) => `${one.tagName}.${one.className} ${one.scrollWidth} in ${one.clientWidth}`)];
  });

const mapShare = (page: Page): Promise<number> =>
  page.locator('.map-pane').evaluate((map) => map.getBoundingClientRect().height / window.innerHeight);

/** 200 % of a window of 1440 × 900 is one of half that. */
const WINDOWS = [
  [360, 740, 0.45],
  [390, 844, 0.45],
  [720, 450, 0.45],
  [1024, 768, 0.45],
  [1440, 900, 0],
  [1920, 1080, 0],
] as const;

describe('the page in a window', () => {
  it.each(WINDOWS)(
    '%i × %i scrolls nothing sideways in any pane, and leaves the map its share',
    async (width, height, share) => {
      await faultless(
        stage,
        async ({ page }) => {
          await page.getByRole('button', { name: 'Wrack Fork', exact: true }).click();
          for (const tab of await page.getByRole('tab').all()) {
            const name = await tab.textContent();
            await tab.click();
            await page.evaluate(() => {
              for (const one of document.querySelectorAll<HTMLDetailsElement>('.panel details:not(.strip-keys)'))
                one.open = true;
            });
            expect([name, await sideways(page)]).toEqual([name, []]);
            expect(await mapShare(page)).toBeGreaterThanOrEqual(share);
          }
          await page.getByRole('tab', { name: 'Stations' }).click();
          await page.getByRole('button', { name: 'Edit', exact: true }).click();
          await page.getByLabel('Select Wrack Fork').click();
          expect(await sideways(page)).toEqual([]);
          if (width === 360 || width === 1024) await expectNoAxeFaults(page, { width });
        },
        { map: false, viewport: { width, height } },
      );
    },
  );

  it('folds the panel under the map, by pointer and by key, and a tab brings it back', async () => {
    await faultless(
      stage,
      async ({ page }) => {
        const before = await mapShare(page);
        await page.getByRole('button', { name: 'Panel under the map: fold', exact: true }).click();
        expect(await mapShare(page)).toBeGreaterThan(before + 0.2);
        expect(await page.getByRole('tabpanel').isVisible()).toBe(false);
        await page.getByRole('tab', { name: 'Plan' }).click();
        expect(await page.getByRole('tabpanel').isVisible()).toBe(true);
        await page.getByRole('button', { name: 'Panel under the map: fold', exact: true }).press('Enter');
        expect(await page.getByRole('tabpanel').isVisible()).toBe(false);
        await page.getByRole('button', { name: 'Panel under the map: unfold' }).press('Enter');
        expect(await page.getByRole('tabpanel').isVisible()).toBe(true);
      },
      { map: false, viewport: { width: 360, height: 740 } },
    );
  });

  it.each([1024, 1440])('folds the strip and the station panel, %i px wide', async (width) => {
    await faultless(
      stage,
      async ({ page }) => {
        const before = await mapShare(page);
        await page.getByRole('button', { name: 'Course strip: fold', exact: true }).click();
        expect(await mapShare(page)).toBeGreaterThan(before + 0.15);
        await page.getByRole('button', { name: 'Station panel: fold', exact: true }).click();
        expect(await page.getByText('No station chosen').isVisible()).toBe(false);
        expect(await sideways(page)).toEqual([]);
        await expectNoAxeFaults(page, { folded: width });
        await page.getByRole('button', { name: 'Station panel: unfold' }).click();
        await page.getByRole('button', { name: 'Course strip: unfold' }).click();
        expect(await mapShare(page)).toBeCloseTo(before, 2);
        expect(await page.getByText('No station chosen').isVisible()).toBe(true);
      },
      { map: false, viewport: { width, height: 768 } },
    );
  });
});

describe('a cutoff', () => {
  it('is typed as a time of day or as a time after the last start, and the plan has the time of day', async () => {
    await faultless(
      stage,
      async ({ page }) => {
        const plan = async (): Promise<{
          readonly races: readonly { readonly cutoff?: string; readonly waves: readonly { readonly time: string }[] }[];
        }> => JSON.parse(await savedPlan(page)) as Awaited<ReturnType<typeof plan>>;
        const start = (await plan()).races[0]!.waves.map(({ time }) => time)
          .toSorted()
          .at(-1)!;
        const [hours = 0, minutes = 0] = start.split(':').map(Number);
        await page.getByRole('tab', { name: 'Plan' }).click();
        const races = page.locator('#plan-races');
        await races.locator('summary').first().click();
        const race = races.locator('details.more').first();
        await race.locator('summary').first().click();
        await race.getByLabel('after the last start', { exact: true }).check();
        const after = race.getByLabel('Cutoff after the last start');
        await after.fill('6:15:00');
        await after.press('Enter');
        const wanted = `${String(hours + 6 + Math.floor((minutes + 15) / 60)).padStart(2, '0')}:${String((minutes + 15) % 60).padStart(2, '0')}`;
        expect((await plan()).races[0]!.cutoff).toBe(wanted);
        await race.getByText(new RegExp(`^At ${wanted}, .* after the last start at ${start}`, 'u')).waitFor();
        await after.fill('soon');
        await after.press('Enter');
        expect(await race.getByRole('alert').textContent()).toMatch(/soon/u);
        await after.press('Escape');
        await race.getByLabel('Cutoff as a time of day').check();
        const clock = race.getByLabel('Cutoff', { exact: true });
        await clock.fill('14:45');
        await clock.press('Enter');
        expect((await plan()).races[0]!.cutoff).toBe('14:45');
      },
      { map: false },
    );
  });
});
