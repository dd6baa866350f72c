/** The clock of race day: slider, keys, play and pause, and figures that equal core's. */
import { readFileSync } from 'node:fs';
import { type Analysis, filesNamedBy, readPlan, reviewPlan } from '@halfcup/core';
import { clockSpan, crowdAlong, stateAt } from '@halfcup/core/raceday';
import { formatMinute } from '@halfcup/core/units';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  LOOKS,
  dropFiles,
  expectNoAxeFaults,
  faultless,
  inLooks,
  openStage,
  sharedVisit,
} from './support/browser.ts';

const demo = (name: string): string => readFileSync(new URL(`../fixtures/demo/${name}`, import.meta.url), 'utf8');

/** The demo as core works it out. */
function demoAnalysis(): Analysis {
  const text = demo('plan.json');
  const read = readPlan(text, 'plan.json');
  if (!read.ok) throw new Error(read.findings[0]?.message);
  const { gpx, results, context } = filesNamedBy(read.value.plan);
  const names = [...gpx, ...results, ...context];
  const reviewed = reviewPlan({ plan: text, files: Object.fromEntries(names.map((name) => [name, demo(name)])) });
  if (!reviewed.ok) throw new Error(reviewed.findings[0]?.message);
  return reviewed.value.analysis;
}

const clock = (page: Page) => page.getByRole('button', { name: 'Clock', exact: true });
const slider = (page: Page) => page.getByRole('slider', { name: 'Time of race day' });
const time = (page: Page): Promise<string | null> => page.locator('.clock-time').textContent();
const grouped = (count: number): string => new Intl.NumberFormat('en-GB').format(count);

/** Turned on afresh, on a wide page. */
async function turnedOn(page: Page): Promise<void> {
  if ((await clock(page).getAttribute('aria-pressed')) === 'true') await clock(page).click();
  await clock(page).click();
}

describe('the clock', () => {
  const visit = sharedVisit({ map: false });

  it('begins with the first start, and moves by key and by hand within race day', async () => {
    const { page } = visit();
    const [from, to] = clockSpan(demoAnalysis())!;
    await turnedOn(page);
    expect(await time(page)).toBe('07:00');
    await slider(page).press('ArrowRight');
    expect(await time(page)).toBe('07:01');
    await slider(page).press('ArrowLeft');
    await slider(page).press('ArrowLeft');
    expect(await time(page)).toBe('06:59');
    await slider(page).press('PageUp');
    expect(await time(page)).toBe('07:14');
    expect(await slider(page).getAttribute('aria-valuetext')).toBe('07:14');
    await slider(page).press('Home');
    expect(await time(page)).toBe(formatMinute(Math.floor(from / 60) * 60));
    await slider(page).press('ArrowLeft');
    expect(await time(page)).toBe(formatMinute(Math.floor(from / 60) * 60));
    await slider(page).press('End');
    expect(await time(page)).toBe(formatMinute(Math.ceil(to / 60) * 60));
    await slider(page).fill(String(9.5 * 3600));
    expect(await time(page)).toBe('09:30');
  });

  it('says what core says of the runners, the stations and the chosen station', async () => {
    const { page } = visit();
    const analysis = demoAnalysis();
    await turnedOn(page);
    await page.getByRole('button', { name: 'Wrack Fork', exact: true }).click();
    const id = analysis.stations.find(({ name }) => name === 'Wrack Fork')!.id;
    for (const at of [6.5, 8.25, 9, 10.5, 14].map((hours) => hours * 3600)) {
      await slider(page).fill(String(at));
      // Words follow the clock a quarter of a second later at most.
      const told = page.getByRole('region', { name: 'At the time of the clock' }).first();
      await expect.poll(() => told.textContent()).toContain(`${formatMinute(at)}: `);
      const runners = await page.locator('.clock-runners li').allTextContents();
      for (const [k, { race, onRoad, finished }] of crowdAlong(analysis, at).entries()) {
        const { name } = analysis.plan.races.find((one) => one.id === race)!;
        expect(runners[k]).toContain(`${name}: ${grouped(onRoad)} on the road`);
        if (finished > 0) expect(runners[k]).toContain(`${grouped(finished)} finished`);
      }
      const states = analysis.stations.map((station) => stateAt(analysis, station.id, at)!);
      const words = (await page.locator('.clock-stations').textContent())!;
      const count = (phase: string): number => states.filter((state) => state.phase === phase).length;
      expect(words.includes(`${count('open')} open`)).toBe(count('open') > 0);
      const state = stateAt(analysis, id, at)!;
      const here = (await page.getByRole('region', { name: 'At the time of the clock' }).first().textContent())!;
      expect(here).toContain(`${formatMinute(at)}: `);
      expect(here).toContain(`Water, cups poured${grouped(Math.round(state.drinks.water!.poured))}`);
      expect(here).toContain(`Left to pour${grouped(Math.round(state.drinks.water!.left))}`);
      expect(here).toContain(`Hands busy${state.handsBusy} of`);
      expect(here).toContain(`Full jugs left${state.drinks.water!.jugs!.full} of ${state.drinks.water!.jugs!.sent}`);
    }
  });

  it('plays and pauses by button and space bar; with less motion it steps once a second', async () => {
    const { page } = visit();
    await turnedOn(page);
    await slider(page).press('Space');
    const pause = page.getByRole('button', { name: 'Pause the clock' });
    await pause.waitFor();
    // Five minutes at once: no frames between.
    await page.locator('.clock-time', { hasText: '07:05' }).waitFor();
    await pause.click();
    const stood = await time(page);
    await page.waitForTimeout(1200);
    expect(await time(page)).toBe(stood);
    await slider(page).press('End');
    // From the end it plays from the beginning again.
    await page.getByRole('button', { name: 'Play the clock' }).click();
    expect(await time(page)).toBe('03:30');
    await pause.click();
  });

  it('leaves the page as it was when it is turned off', async () => {
    const { page } = visit();
    if ((await clock(page).getAttribute('aria-pressed')) === 'true') await clock(page).click();
    const shown = (): Promise<string> => page.locator('.strip-chart').evaluate((chart) => chart.outerHTML);
    const before = await shown();
    await clock(page).click();
    expect(await shown()).not.toBe(before);
    await clock(page).click();
    expect(await shown()).toBe(before);
    expect(await slider(page).count()).toBe(0);
  });

  it('draws all stations on one time axis, and a row leads to its station', async () => {
    const { page } = visit();
    await page.getByRole('tab', { name: 'Race day' }).click();
    const rows = page.locator('.multiples-row');
    const { stations } = demoAnalysis();
    expect(await rows.count()).toBe(stations.length);
    await rows.nth(4).click();
    expect(await page.getByRole('heading', { level: 2, name: stations[4]!.name }).count()).toBeGreaterThan(0);
    await page.getByText('As a table').click();
    expect(await page.locator('.multiples-table tbody tr').count()).toBe(stations.length);
    await page.getByRole('tab', { name: 'Stations' }).click();
  });

  it('has no faults that axe finds, and scrolls nothing sideways, in light and dark, wide and narrow', async () => {
    const { page } = visit();
    await turnedOn(page);
    await slider(page).fill(String(9 * 3600));
    await inLooks(page, LOOKS, async (look) => {
      if (look.width === 360) await page.getByRole('tab', { name: 'Strip' }).click();
      await page.getByRole('region', { name: 'Race-day clock' }).waitFor();
      await expectNoAxeFaults(page, look);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(
        0,
      );
      await page.getByRole('tab', { name: 'Race day' }).click();
      await expectNoAxeFaults(page, look, '.multiples');
      await page.getByRole('tab', { name: 'Stations' }).click();
    });
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.emulateMedia({ colorScheme: 'light' });
  });
});

describe('the clock of other plans', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });

  it('is hidden where nobody runs, and runs frame by frame where motion is welcome', async () => {
    await faultless(
      stage,
      async ({ page }) => {
        await clock(page).click();
        await page.getByRole('button', { name: 'Play the clock' }).click();
        await page.locator('.clock-time', { hasText: /07:0[1-9]/u }).waitFor();
        await page.getByRole('button', { name: 'Pause the clock' }).click();
        const plan = {
          format: 'halfcup-plan',
          version: 1,
          name: 'No field',
          courses: [
            {
              id: 'c',
              line: [
                [-30.2, 12.2],
                [-30.1, 12.2],
              ],
            },
          ],
          races: [{ id: 'r', course: 'c' }],
          stations: [{ id: 's', on: { course: 'c', measure: '5 km', side: 'right' } }],
        };
        await dropFiles(page, { 'plan.json': JSON.stringify(plan) });
        await page.getByRole('heading', { level: 1, name: 'No field' }).waitFor();
        expect(await clock(page).count()).toBe(0);
        expect(await slider(page).count()).toBe(0);
      },
      { map: false, reducedMotion: 'no-preference' },
    );
  });
});
