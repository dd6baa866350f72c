/** A map of streets dropped on the page: read in a worker, stopped, refused, kept with the plan, taken back, there after a reload. */
import { readPlan } from '@halfcup/core';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  type Visit,
  dropFiles,
  during,
  foreignOf,
  mapIdle,
  openStage,
  savedPlan,
} from './support/browser.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
const on = <T>(act: (seen: Visit) => Promise<T>): Promise<T> => during(stage, act);

/** Along the demo's first kilometres, in OpenStreetMap's XML; a name that would be markup if anything took it for such. */
const NAME = '<b>Old</b> Strand "Road"';
const escaped = NAME.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
const STREET: readonly (readonly [number, number])[] = [
  [-17.4237, -33.2299],
  [-17.4254, -33.2291],
  [-17.4264, -33.2284],
  [-17.4281, -33.2268],
];
const node = (id: number, [lon, lat]: readonly [number, number]): string =>
  `<node id="${id}" lat="${lat}" lon="${lon}"/>`;
const osm = (more: string): string => `<?xml version="1.0"?>
<osm version="0.6">${more}${STREET.map((at, k) => node(k + 1, at)).join('\n')}
<way id="7">${STREET.map((_, k) => `<nd ref="${k + 1}"/>`).join('')}<tag k="highway" v="secondary"/><tag k="name" v="${escaped}"/></way>
</osm>`;
const TOWN = osm('');
/** Some 14 MB, most of it far from the course. */
const LARGE = osm(
  Array.from({ length: 260_000 }, (_, k) =>
    node(1000 + k, [Number((10 + (k % 1000) / 1000).toFixed(4)), Number((50 + k / 1e6).toFixed(6))]),
  ).join('\n'),
);

const choose = (page: Page, name: string, text: string): Promise<void> =>
  page
    .locator('input[type=file][accept*=".gpx"]')
    .first()
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });
const says = (page: Page, words: string | RegExp): Promise<void> =>
  page.locator('.notice').filter({ hasText: words }).waitFor({ timeout: 60_000 });
const mapOf = async (page: Page): Promise<string | undefined> => {
  const read = readPlan(await savedPlan(page), 'plan.json');
  if (!read.ok) throw new Error('the saved plan does not read');
  return read.value.plan.ground;
};
const credit = (page: Page): ReturnType<Page['locator']> =>
  page.locator('.map-credit').filter({ hasText: '© OpenStreetMap contributors, ODbL 1.0' });
const place = async (page: Page): Promise<string | null> => {
  await page.getByRole('button', { name: 'Strand Road', exact: true }).click();
  return page.locator('.station-place bdi').textContent();
};

describe('a map of streets', () => {
  it('that is large is read in a worker of its own, and can be stopped', async () => {
    await on(async ({ page, faults }) => {
      const before = await mapOf(page);
      await choose(page, 'large.osm', LARGE);
      await page.locator('.job').filter({ hasText: 'Reading streets from large.osm' }).waitFor({ timeout: 20_000 });
      expect(page.workers().some((worker) => worker.url().includes('streets'))).toBe(true);
      await page.getByRole('button', { name: 'Stop' }).click();
      await says(page, 'Stopped. No streets taken from large.osm');
      expect(await mapOf(page)).toBe(before);
      await choose(page, 'large.osm', LARGE);
      await says(page, /Streets from large\.osm added: 1 pieces? of streets/u);
      expect(faults).toEqual([]);
    });
  }, 180_000);

  it('is kept with the plan as one step, credited, named at the station, and there after a reload', async () => {
    await on(async ({ page, faults, requests }) => {
      const before = await mapOf(page);
      await dropFiles(page, { 'town.osm': TOWN });
      await says(page, 'Streets from town.osm added');
      await credit(page).waitFor();
      expect(await place(page)).toContain(NAME);
      expect(await page.locator('.station-place b').count()).toBe(0);
      const kept = await mapOf(page);
      expect(kept).toMatch(/^ground(?:-\d+)?\.geojson$/u);
      expect(kept).not.toBe(before);

      await page.getByRole('button', { name: 'Undo', exact: true }).click();
      await credit(page).waitFor({ state: 'detached' });
      expect(await mapOf(page)).toBe(before);
      await page.getByRole('button', { name: 'Redo', exact: true }).click();
      await credit(page).waitFor();

      await page.locator('[data-keeping="kept"]').waitFor({ timeout: 20_000 });
      await page.goto(stage.address);
      await mapIdle(page);
      await credit(page).waitFor({ timeout: 20_000 });
      expect(await place(page)).toContain(NAME);
      expect(foreignOf(stage, requests)).toEqual([]);
      expect(faults).toEqual([]);
    });
  }, 120_000);

  it.each([
    ['cut.osm', TOWN.slice(0, -40), /cut\.osm/u],
    ['elsewhere.osm', TOWN.replaceAll('lon="-17', 'lon="17'), /elsewhere\.osm/u],
    ['empty.geojson', '{ "type": "FeatureCollection", "features": [', /empty\.geojson/u],
  ])('is refused in words where it is of no use: %s', async (name, text, words) => {
    await on(async ({ page, faults }) => {
      const before = await mapOf(page);
      await dropFiles(page, { [name]: text });
      const problem = page.getByRole('alert').filter({ hasText: `Could not open ${name}` });
      await problem.waitFor({ timeout: 20_000 });
      const reasons = await problem.getByRole('listitem').allTextContents();
      expect(reasons.length).toBeGreaterThan(0);
      expect(reasons.join(' ')).toMatch(words);
      expect(reasons.join(' ')).not.toMatch(/undefined|NaN|Error:|\bat \w+ \(/u);
      expect(await mapOf(page)).toBe(before);
      expect(faults).toEqual([]);
    });
  });

  it('is chosen under Background, and hides where another background is chosen', async () => {
    await on(async ({ page, faults }) => {
      await page.getByRole('button', { name: 'Background' }).click();
      await page
        .getByLabel(/treets from a map file/u)
        .setInputFiles({ name: 'town.osm', mimeType: 'application/octet-stream', buffer: Buffer.from(TOWN) });
      await credit(page).waitFor({ timeout: 20_000 });
      await page.getByRole('radio', { name: /^Plain/u }).check();
      await credit(page).waitFor({ state: 'detached' });
      await page.getByRole('radio', { name: 'Map and drawing in the plan' }).check();
      await credit(page).waitFor();
      expect(faults).toEqual([]);
    });
  });
});
