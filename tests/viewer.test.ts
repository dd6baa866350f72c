/** The viewer as a person meets it, built, in a real browser. */
import { prePourText, voiceOf } from '@halfcup/core/sentences';
import { type Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  type Visit,
  LOOKS,
  dropFiles,
  during,
  PANEL,
  expectNoAxeFaults,
  foreignOf,
  inLooks,
  mapIdle,
  openStage,
  sharedVisit,
} from './support/browser.ts';
import { analysedDemo, demoText } from './support/demo.ts';
import { OCEAN, gpxText, straight } from './support/courses.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const PLAN = JSON.parse(demoText('plan.json')) as {
  readonly name: string;
  readonly stations: readonly { readonly name: string }[];
};

const DEMO = analysedDemo(demoText('plan.json'));

const on = (act: (seen: Visit) => Promise<void>): Promise<void> => during(stage, act);

const rows = (page: Page): ReturnType<Page['locator']> => page.getByRole('table').first().locator('tbody tr');
const row = (page: Page, name: string): ReturnType<Page['locator']> => page.getByRole('button', { name, exact: true });
const panel = (page: Page): ReturnType<Page['locator']> =>
  page.getByRole('complementary', { name: 'Selected station' });

describe('the viewer, the plan left as it is', () => {
  const seen = sharedVisit();
  const on = async (act: (seen: Visit) => Promise<void>): Promise<void> => {
    await seen().page.getByRole('tab', { name: 'Stations' }).click();
    await act(seen());
  };

  it('opens on the demo: its name, its stations, its findings, a drawn map, and the caution', async () => {
    await on(async ({ page, faults }) => {
      await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe(PLAN.name);
      expect(await rows(page).count()).toBe(PLAN.stations.length);
      for (const { name } of PLAN.stations) expect(await row(page, name).count()).toBe(1);
      expect(await page.locator('canvas').count()).toBe(1);
      expect(await page.getByText('Halfcup is starting').count()).toBe(0);
      expect(await page.getByRole('tab', { name: /Review/u }).textContent()).toBe(`Review${DEMO.findings.length}`);
      expect(await page.getByText('Local codes, the road authority, the police').count()).toBe(1);
      expect(faults).toEqual([]);
    });
  });

  it('asks no host but its own for anything, and only for its own files', async () => {
    await on(async ({ page, requests }) => {
      await row(page, PLAN.stations[3]!.name).click();
      await page.getByRole('tab', { name: /Review/u }).click();
      await mapIdle(page);
      expect(foreignOf(stage, requests)).toEqual([]);
      expect(requests.length).toBeGreaterThan(4);
    });
  });

  it('goes from a row of the table to the station on the map, on the strip and in the panel', async () => {
    await on(async ({ page }) => {
      const { name } = PLAN.stations[4]!;
      await mapIdle(page);
      const before = await page.locator('canvas').screenshot();
      await row(page, name).click();
      await mapIdle(page);
      await expect.poll(() => panel(page).getByRole('heading', { level: 2 }).textContent()).toContain(name);
      expect(
        await page
          .getByRole('button', { name: new RegExp(`^Station 5, ${name}`, 'u') })
          .first()
          .getAttribute('aria-pressed'),
      ).toBe('true');
      await expect.poll(async () => (await page.locator('canvas').screenshot()).equals(before)).toBe(false);
      for (const word of ['Sign', 'Sports drink', 'Water', 'Trash'])
        expect(await panel(page).textContent()).toContain(word);
    });
  });

  it('goes from the strip, and from the map, to the row', async () => {
    await on(async ({ page }) => {
      const { name } = PLAN.stations[6]!;
      await page
        .getByRole('button', { name: /^Station 7, / })
        .first()
        .click();
      await expect.poll(() => row(page, name).getAttribute('aria-pressed')).toBe('true');
      await mapIdle(page);
      // The station fills the map now: its ring stands within some pixels of its middle.
      await page
        .getByRole('button', { name: /^Station 1, / })
        .first()
        .click();
      await mapIdle(page);
      const box = (await page.locator('canvas').boundingBox())!;
      const found = await spiral(page, box, PLAN.stations[0]!.name);
      expect(found).toBe(true);
    });
  });

  it('changes units for display only', async () => {
    await on(async ({ page }) => {
      const { name } = PLAN.stations[0]!;
      await row(page, name).click();
      expect(await panel(page).textContent()).toContain('2.62 km');
      await page.getByRole('button', { name: /Imperial/u }).click();
      await expect.poll(() => panel(page).textContent()).toContain('1.63 mi');
      expect(await panel(page).textContent()).toContain('98 yd');
      await page.getByRole('button', { name: /Metric/u }).click();
      await expect.poll(() => panel(page).textContent()).toContain('2.62 km');
    });
  });

  it('lists the findings by severity, and goes to the place of one', async () => {
    await on(async ({ page }) => {
      await page.getByRole('tab', { name: /Review/u }).click();
      const list = page.getByRole('tabpanel');
      await list.getByRole('button', { name: 'Severity', exact: true }).click();
      await expect.poll(() => list.textContent()).toContain('sign-distance');
      const words = (await list.textContent())!;
      expect(words.indexOf('sign-distance')).toBeLessThan(words.indexOf('leg-long'));
      expect(words.indexOf('leg-long')).toBeGreaterThan(0);
      expect(words.indexOf('leg-long')).toBeLessThan(words.indexOf('seen-not-served'));
      await list.getByRole('button', { name: /^The sign is 70 m before the first table/u }).click();
      await expect.poll(() => panel(page).textContent()).toContain('Stennick Chapel');
    });
  });

  it.each([
    ['a page.gpx', '<!doctype html><html></html>', /a page\.gpx:1:1: /u],
    ['cut.gpx', demoText('full.gpx').slice(0, 4000), /cut\.gpx:\d+:\d+: /u],
    ['north.gpx', demoText('full.gpx').replace(/lat="[^"]+"/u, 'lat="north"'), /north\.gpx:\d+:\d+: .*north/u],
    ['plan.json', demoText('plan.json').replace('"races"', '"raecs"'), /plan\.json:\d+:\d+: .*raecs/u],
  ])('refuses %s with file, line and column, and leaves the open plan as it was', async (name, text, message) => {
    await on(async ({ page, faults }) => {
      await dropFiles(page, { [name]: text });
      await expect.poll(() => page.getByRole('alert').textContent()).toMatch(message);
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(PLAN.name);
      expect(await rows(page).count()).toBe(PLAN.stations.length);
      expect(faults).toEqual([]);
    });
  });

  it('shows race day at a station: a chart with a text of its own, the clock, what is poured, who serves', async () => {
    await on(async ({ page, faults }) => {
      await row(page, PLAN.stations[0]!.name).click();
      await page.getByRole('tab', { name: 'Race day' }).click();
      const day = page.getByRole('tabpanel');
      expect(await day.getByRole('img').first().getAttribute('aria-label')).toMatch(/07:08/u);
      const words = (await day.textContent())!;
      for (const text of ['Crew arrives', 'Open until', 'All packed by']) expect(words).toContain(text);
      // The very words of papers and terminal.
      const { day: own, plan } = DEMO;
      for (const { name } of PLAN.stations.slice(0, 3)) {
        await page.getByRole('tab', { name: 'Stations' }).click();
        await row(page, name).click();
        await page.getByRole('tab', { name: 'Race day' }).click();
        const { prePour, crew } = own!.stations[plan.stations.findIndex((one) => one.name === name)]!;
        for (const { cups, tables, cupsPerLayer } of Object.values(prePour)) {
          const told = prePourText({ cups, tables, cupsPerLayer: cupsPerLayer! }, { ...voiceOf(plan), language: 'en' });
          await expect.poll(() => day.textContent()).toContain(told);
        }
        expect(await day.textContent()).toContain(`Needed at once${crew.total}`);
      }
      expect(faults).toEqual([]);
    });
  });

  it('works by keyboard: from row to row, into a station, between the panels', async () => {
    await on(async ({ page }) => {
      await row(page, PLAN.stations[0]!.name).focus();
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
      await expect.poll(() => panel(page).textContent()).toContain(PLAN.stations[1]!.name);
      await page.getByRole('tab', { name: 'Stations' }).focus();
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => page.getByRole('tab', { name: 'Plan' }).getAttribute('aria-selected')).toBe('true');
    });
  });
});

describe('the viewer', () => {
  it('keeps a content security policy that lets no foreign and no inline script run', async () => {
    await on(async ({ page }) => {
      const header = (await page.request.get(stage.address)).headers()['content-security-policy'];
      const meta = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
      for (const policy of [header, meta]) {
        expect(policy).toContain("default-src 'self'");
        expect(policy).not.toContain('unsafe');
      }
      const ran = await page.evaluate(async () => {
        const script = document.createElement('script');
        script.textContent = 'document.body.dataset.ran = "yes"';
        document.body.append(script);
        const reached = await fetch('https://example.invalid/').then(
          () => true,
          () => false,
        );
        return { inline: document.body.dataset['ran'] ?? 'no', reached };
      });
      expect(ran).toEqual({ inline: 'no', reached: false });
    });
  });

  it('opens a GPX that is dropped: its course, its waypoints as stations', async () => {
    await on(async ({ page, faults }) => {
      const line = straight(OCEAN, 80, 61, 100);
      const waypoint = `<wpt lat="${line[30]![1]}" lon="${line[30]![0]}"><name>Kittiwake Corner</name></wpt>`;
      await dropFiles(page, { 'shore.gpx': gpxText([line]).replace('<trk>', `${waypoint}<trk>`) });
      await page.getByRole('button', { name: 'A new plan', exact: true }).click();
      await page.getByLabel('Name of the plan').fill('Shore');
      await page.getByRole('button', { name: 'Make the plan' }).click();
      await expect.poll(() => rows(page).count()).toBe(1);
      await row(page, 'Kittiwake Corner').click();
      await expect.poll(() => panel(page).textContent()).toContain('3.00 km');
      expect(faults).toEqual([]);
    });
  });

  it('opens a plan with its GPX files, and tells which file is missing', async () => {
    await on(async ({ page }) => {
      const plan = demoText('plan.json').replace(PLAN.name, 'Another name');
      await dropFiles(page, { 'plan.json': plan, 'full.gpx': demoText('full.gpx') });
      const alert = page.getByRole('alert');
      await expect.poll(() => alert.textContent()).toContain('half.gpx');
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(PLAN.name);
      await dropFiles(page, { 'half.gpx': demoText('half.gpx') });
      await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('Another name');
      expect(await alert.count()).toBe(0);
    });
  });

  it('has nothing that axe objects to on every panel, nor is wider than the page, light and dark, 1440 and 360 px wide', async () => {
    const act = async ({ page }: Visit): Promise<void> => {
      const check = (where: string): Promise<void> =>
        inLooks(page, LOOKS, (look) => expectNoAxeFaults(page, { where, ...look }));
      await inLooks(page, LOOKS, async (look) => {
        // On a telephone the station and the strip are tabs too.
        await expect.poll(() => page.getByRole('tab').count()).toBe(look.width === 360 ? 9 : 7);
        // Light is to dark on a desk what it is on a telephone: of each panel two looks, of the page around them all four.
        const tabs = await page.getByRole('tab').all();
        const some = (look.colorScheme === 'light') === (look.width === 1440) ? tabs : tabs.slice(0, 1);
        for (const [k, tab] of some.entries()) {
          await tab.click();
          // What is around the panels is the same for all of them, and papers are white in every look.
          const paper = (await tab.textContent()) === 'Papers';
          const whole = k === 0 || (paper && look === LOOKS[0]);
          const but = paper && !whole ? '.paper-preview' : undefined;
          await expectNoAxeFaults(page, { tab: k, ...look }, whole ? undefined : PANEL, but);
          if (look.width === 360) expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
        }
      });
      await page.setViewportSize({ width: 1440, height: 900 });
      await page.getByRole('tab', { name: 'Stations' }).click();
      await row(page, PLAN.stations[1]!.name).click();
      await mapIdle(page);
      await check('a station chosen');
      await dropFiles(page, { 'bad.gpx': '<gpx>' });
      await page.getByRole('alert').waitFor();
      await check('a file refused');
    };
    // The map itself is looked at in its own test.
    await during(stage, act, { map: false });
  });

  it('moves nothing while it loads', async () => {
    const context = await stage.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    await page.addInitScript(() => {
      const held = window as unknown as { shift: number };
      held.shift = 0;
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) held.shift += (entry as unknown as { value: number }).value;
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto(`${stage.address}#example`);
    await mapIdle(page);
    expect(await page.evaluate(() => (window as unknown as { shift: number }).shift)).toBeLessThan(0.02);
    await context.close();
  });
});

/** Clicks on the map, from its middle outwards, until a station other than none is chosen; true where it is the one looked for. */
async function spiral(
  page: Page,
  box: { x: number; y: number; width: number; height: number },
  name: string,
): Promise<boolean> {
  await row(page, PLAN.stations[1]!.name).focus();
  for (let ring = 0; ring < 14; ring++) {
    for (let step = 0; step < 12; step++) {
      const angle = (step * Math.PI) / 6;
      await page.mouse.move(
        box.x + box.width / 2 + ring * 14 * Math.cos(angle),
        box.y + box.height / 2 + ring * 14 * Math.sin(angle),
      );
      const pointer = await page.locator('canvas').evaluate((canvas) => getComputedStyle(canvas).cursor);
      if (pointer !== 'pointer') continue;
      await page.mouse.down();
      await page.mouse.up();
      await page.waitForTimeout(100);
      if ((await row(page, name).getAttribute('aria-pressed')) === 'true') return true;
    }
  }
  return false;
}
