/** Long names, with and without spaces, push nothing out of the page: every control can be reached, on a desk and on a telephone. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Stage, PANEL, dropFiles, during, openStage } from './support/browser.ts';
import { ROOT } from './support/build.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const demo = (name: string): string => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');
const WORDS = 'The long road past the pier and the chapel '.repeat(6).trim();
const UNBROKEN = 'Llanfairpwllgwyngyll'.repeat(10);

interface Named {
  name?: string;
  revision?: string;
}

/** The demo with a long text in every name. */
function named(long: string): string {
  const plan = JSON.parse(demo('plan.json')) as Named & Record<'courses' | 'races' | 'stations' | 'variants', Named[]>;
  plan.name = long;
  plan.revision = long;
  for (const one of [...plan.courses, ...plan.races, ...plan.stations]) one.name = `${long} ${one.name}`;
  plan.variants = [{ name: `rain ${long}`, stations: {} } as Named];
  return JSON.stringify(plan);
}

/** Controls that stand beyond the sides of the window, where no scrolling of their own part brings them. */
const beyond = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const scrolls = (one: Element): boolean => {
      for (let up = one.parentElement; up !== null; up = up.parentElement)
        if (up.scrollWidth > up.clientWidth && ['auto', 'scroll'].includes(getComputedStyle(up).overflowX)) return true;
      return false;
    };
    return [...document.querySelectorAll('button, select, input, summary, a[href]')]
      .filter((one) => one.checkVisibility())
      .filter((one) => {
        const { left, right, width } = one.getBoundingClientRect();
        return width > 1 && (left < -1 || right > innerWidth + 1) && !scrolls(one);
      })
      .map((one) => one.textContent?.slice(0, 40) || one.outerHTML.slice(0, 80));
  });

describe.each([
  ['of many words', WORDS],
  ['of one word', UNBROKEN],
])('names %s', (_, long) => {
  it.each([1440, 360])('leave every control in reach, %i px wide', async (width) => {
    await during(
      stage,
      async ({ page }) => {
        await page.setViewportSize({ width, height: width === 360 ? 740 : 900 });
        await dropFiles(page, { 'plan.json': named(long), 'full.gpx': demo('full.gpx'), 'half.gpx': demo('half.gpx') });
        await page
          .getByRole('heading', { level: 1 })
          .filter({ hasText: long.slice(0, 20) })
          .waitFor();
        const found: Record<string, unknown> = {};
        for (const tab of await page.getByRole('tab').all()) {
          await tab.click();
          await page.locator(PANEL).waitFor();
          const out = await beyond(page);
          const wide = await page.evaluate(() => document.documentElement.scrollWidth);
          if (out.length > 0 || wide > width) found[(await tab.textContent()) ?? ''] = { out, wide };
        }
        expect(found).toEqual({});
      },
      { map: false },
    );
  });
});
