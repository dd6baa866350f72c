/** On the road: a walk from sign to trash drop of two stations, recorded as placed and judged. */
import { type LonLat } from '@halfcup/core';
import { pointAt } from '@halfcup/core/geometry';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  type Visit,
  type VisitOptions,
  LOOKS,
  downloadedText,
  during,
  expectNoAxeFaults,
  foreignOf,
  inLooks,
  openStage,
} from './support/browser.ts';
import { ROOT } from './support/build.ts';
import { analysedDemo, demoText } from './support/demo.ts';
import { folderWith, halfcupIn } from './support/halfcup.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const DEMO = join(ROOT, 'fixtures/demo');

const ANALYSIS = analysedDemo(demoText('plan.json'));

/** Where sign, first table and the trash drop's ends of a station stand; `moved`: metres by which the sign stands too far on. */
function places(id: string, moved = 0): readonly (readonly [name: string, at: LonLat])[] {
  const station = ANALYSIS.stations.find((one) => one.id === id)!;
  const lead = station.directions.find((direction) => direction.lead)!;
  const { course } = ANALYSIS.courses.find((one) => one.course.id === lead.course)!;
  const sign = lead.items.find((item) => item.kind === 'sign')!;
  const [first] = lead.items
    .filter(({ kind }) => kind === 'gel' || kind === 'sportsDrink' || kind === 'water')
    .toSorted((a, b) => a.from - b.from);
  const trash = lead.items.find((item) => item.kind === 'trash')!;
  const table = { gel: 'gel table', sportsDrink: 'sports drink table', water: 'water table' }[
    first!.kind as 'gel' | 'sportsDrink' | 'water'
  ];
  return [
    [`${id} sign`, pointAt(course, sign.from + moved, sign.offset)!.at],
    [`${id} ${table}`, first!.at[0]!],
    [`${id} trash first box`, trash.at[0]!],
    [`${id} trash last box`, trash.at[1]!],
  ];
}

const TELEPHONE = {
  viewport: { width: 360, height: 740 },
  permissions: ['geolocation'],
  geolocation: { longitude: -17.4, latitude: -33.2, accuracy: 2 },
};
const onMap = (act: (seen: Visit) => Promise<void>, options?: VisitOptions): Promise<void> =>
  during(
    stage,
    async (seen) => {
      await seen.page.getByRole('tab', { name: 'On the road' }).click();
      await act(seen);
      expect(foreignOf(stage, seen.requests)).toEqual([]);
    },
    { ...TELEPHONE, ...options },
  );
const on = (act: (seen: Visit) => Promise<void>, options?: VisitOptions): Promise<void> =>
  onMap(act, { map: false, ...options });

async function walk({ page, context }: Visit, way: ReturnType<typeof places>): Promise<void> {
  for (const [name, at] of way) {
    await page.getByRole('combobox', { name: 'Next to place' }).selectOption(name);
    await context.setGeolocation({ longitude: at[0], latitude: at[1], accuracy: 2 });
    await expect.poll(() => page.locator('.road-way').textContent()).toMatch(/^Here, (left|right)-hand side$/u);
    await page.getByRole('button', { name: 'Record here' }).click();
  }
}

async function savedPoints(page: Page): Promise<string> {
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
  const [given] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save points' }).click(),
  ]);
  return downloadedText(given);
}

interface Judged {
  readonly placed: readonly { readonly station: string; readonly item: string; readonly verdict: string }[];
}

/** What `halfcup review --placed` says of the points. */
async function judged(gpx: string): Promise<readonly string[]> {
  const folder = folderWith({
    'placed.gpx': gpx,
    ...Object.fromEntries(
      ['plan.json', 'full.gpx', 'half.gpx', 'context.geojson', 'ground.geojson'].map((name) => [
        name,
        readFileSync(join(DEMO, name)),
      ]),
    ),
  });
  const { out } = await halfcupIn(folder, 'review', 'plan.json', '--placed', 'placed.gpx', '--json');
  const { placed } = JSON.parse(out) as Judged;
  return placed.map(({ station, item, verdict }) => `${station} ${item} ${verdict}`);
}

describe('on the road', () => {
  it('records sign, first table and trash drop of two stations, which read holds, with hdop a fifth of the accuracy', async () => {
    await onMap(async (seen) => {
      const { page } = seen;
      await page.getByRole('button', { name: /^Start/u }).click();
      await walk(seen, [...places('s3'), ...places('s4')]);
      expect(await page.getByText(/^8 of \d+ recorded/u).count()).toBe(1);
      const gpx = await savedPoints(page);
      expect([...gpx.matchAll(/<hdop>0\.4<\/hdop>/gu)]).toHaveLength(8);
      const verdicts = await judged(gpx);
      for (const one of ['s3 sign holds', 's3 trash holds', 's4 sign holds', 's4 trash holds'])
        expect(verdicts).toContain(one);
      await page.reload();
      await page.getByRole('tab', { name: 'On the road' }).click();
      await expect.poll(() => page.getByText(/^8 of \d+ recorded/u).count()).toBe(1);
      await page.getByRole('button', { name: /^Undo: 4 · /u }).click();
      await expect.poll(() => page.getByText(/^7 of \d+ recorded/u).count()).toBe(1);
    });
  });

  it('reads fails for a sign moved 20 m', async () => {
    await on(async (seen) => {
      await seen.page.getByRole('button', { name: /^Start/u }).click();
      const [sign, ...rest] = places('s3', 20);
      await walk(seen, rest);
      await seen.page.getByRole('combobox', { name: 'Next to place' }).selectOption('s3 sign');
      await seen.context.setGeolocation({ longitude: sign![1][0], latitude: sign![1][1], accuracy: 2 });
      await expect.poll(() => seen.page.locator('.road-way').textContent()).toBe('20 m back, left-hand side');
      await seen.page.getByRole('button', { name: 'Record here' }).click();
      expect(await judged(await savedPoints(seen.page))).toContain('s3 sign fails');
      await seen.page.getByRole('button', { name: 'Check against the plan' }).click();
      await expect.poll(() => seen.page.getByRole('tabpanel').textContent()).toContain('out of place');
    });
  });

  it('says what to do where the position may not be read', async () => {
    await on(
      async ({ page }) => {
        await page.getByRole('button', { name: /^Start/u }).click();
        await expect.poll(() => page.getByRole('alert').textContent()).toContain('Allow it in the browser’s settings');
      },
      { permissions: [] },
    );
  });

  it('has big targets and nothing that axe objects to, light and dark', async () => {
    await on(async ({ page }) => {
      await page.getByRole('button', { name: /^Start/u }).click();
      await expect.poll(() => page.getByText(/position within/u).count()).toBe(1);
      await inLooks(
        page,
        LOOKS.filter(({ width }) => width === 360),
        async (look) => {
          await expectNoAxeFaults(page, look);
          const heights = await page
            .locator('.road button, .road select')
            .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
          expect(Math.min(...heights)).toBeGreaterThanOrEqual(48);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
        },
      );
    });
  });
});
