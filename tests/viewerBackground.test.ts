/** What lies under the course: nothing is asked of anybody until an address is typed. */
import type { Page } from 'playwright-core';
import { deflateSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  type Visit,
  type VisitOptions,
  LOOKS,
  during,
  expectNoAxeFaults,
  foreignOf,
  inLooks,
  mapIdle,
  openStage,
} from './support/browser.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

/** CRC-32 as PNG wants it (ISO 3309). */
function crc32(bytes: Buffer): number {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}

/** A PNG of one colour, 256 by 256 (W3C PNG, third edition). */
function picture([red, green, blue]: readonly [number, number, number]): Buffer {
  const chunk = (kind: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
    const [size, crc] = [Buffer.alloc(4), Buffer.alloc(4)];
    size.writeUInt32BE(data.length);
    crc.writeUInt32BE(crc32(body));
    return Buffer.concat([size, body, crc]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(256, 0);
  head.writeUInt32BE(256, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const rows = Buffer.alloc(256 * (1 + 256 * 3));
  for (let y = 0; y < 256; y++) for (let x = 0; x < 256; x++) rows.set([red, green, blue], y * 769 + 1 + x * 3);
  return Buffer.concat([
    Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** An archive of one picture for the whole world, by the public specification of PMTiles, version 3. */
function archive(tile: Buffer): Buffer {
  const varint = (value: number): number[] => (value < 128 ? [value] : [(value & 127) | 128, ...varint(value >>> 7)]);
  const directory = Buffer.from([...varint(1), ...varint(0), ...varint(1), ...varint(tile.length), ...varint(1)]);
  const about = Buffer.from('{}');
  const head = Buffer.alloc(127);
  head.write('PMTiles', 'latin1');
  head[7] = 3;
  const offsets = [
    127,
    directory.length,
    127 + directory.length,
    about.length,
    0,
    0,
    127 + directory.length + about.length,
    tile.length,
    1,
    1,
    1,
  ];
  offsets.forEach((value, index) => head.writeBigUInt64LE(BigInt(value), 8 + index * 8));
  // Clustered; nothing compressed; PNG; zoom 0 to 0.
  head.set([1, 1, 1, 2, 0, 0], 96);
  [-1_800_000_000, -850_000_000, 1_800_000_000, 850_000_000].forEach((value, index) =>
    head.writeInt32LE(value, 102 + index * 4),
  );
  return Buffer.concat([head, directory, about, tile]);
}

const on = (act: (seen: Visit) => Promise<void>, options?: VisitOptions): Promise<void> => during(stage, act, options);

const openChoice = async (page: Page): Promise<void> => page.getByRole('button', { name: 'Background' }).click();
const foreign = (requests: readonly string[]): string[] => foreignOf(stage, requests);

/** Share of the map's pixels that are about a colour. */
async function shareOf(page: Page, colour: readonly [number, number, number]): Promise<number> {
  const shot = (await page.locator('canvas').screenshot({ type: 'png' })).toString('base64');
  return page.evaluate(
    async ([data, [red, green, blue]]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = new OffscreenCanvas(image.width, image.height);
      const context = canvas.getContext('2d')!;
      context.drawImage(image, 0, 0);
      const pixels = context.getImageData(0, 0, image.width, image.height).data;
      let near = 0;
      for (let at = 0; at < pixels.length; at += 4) {
        if (Math.abs(pixels[at]! - red) + Math.abs(pixels[at + 1]! - green) + Math.abs(pixels[at + 2]! - blue) < 60)
          near++;
      }
      return near / (pixels.length / 4);
    },
    [shot, colour] as const,
  );
}

describe('what lies under the course', () => {
  it('shows pictures from an address that was typed, with its credit, and remembers both', async () => {
    await on(async ({ page, context, requests }) => {
      const asked: string[] = [];
      await context.route('https://tiles.example.invalid/**', (route) => {
        asked.push(route.request().url());
        return route.fulfill({
          contentType: 'image/png',
          headers: { 'access-control-allow-origin': '*' },
          body: picture([40, 200, 90]),
        });
      });
      expect(foreign(requests)).toEqual([]);
      await openChoice(page);
      await page.getByRole('radio', { name: 'Online map (URL)' }).check();
      await page.getByRole('button', { name: 'Use this map' }).click();
      await expect
        .poll(() => page.getByRole('group', { name: 'Background' }).textContent())
        .toContain('Use an https URL of a map style');
      await page.getByLabel(/^URL of a map style/u).fill('https://tiles.example.invalid/{z}/{x}/{y}.png');
      await page.getByRole('button', { name: 'Use this map' }).click();
      expect(await page.getByLabel(/^URL of a map style/u).inputValue()).toContain('{z}');
      expect(asked).toEqual([]);
      await page.getByLabel(/^Credit line/u).fill('Survey of an island');
      await page.getByRole('button', { name: 'Use this map' }).click();
      await expect.poll(() => asked.length).toBeGreaterThan(0);
      await expect
        .poll(() => page.getByText('Background: Survey of an island. Loaded from tiles.example.invalid').count())
        .toBe(1);
      await mapIdle(page);
      // Mixed with the paper beneath by its opacity of 0.75.
      await expect.poll(() => shareOf(page, [90, 209, 122]), { timeout: 20_000 }).toBeGreaterThan(0.5);
      await page.reload();
      await mapIdle(page);
      await expect.poll(() => page.getByText('Survey of an island').count()).toBe(1);
      await openChoice(page);
      await page.getByRole('radio', { name: 'Map and drawing in the plan' }).check();
      expect(await page.getByText('Survey of an island').count()).toBe(0);
    });
  });

  it('tells a style that cannot be had, and keeps what was there', async () => {
    await on(async ({ page, context }) => {
      await context.route('https://style.example.invalid/**', (route) =>
        route.fulfill({ status: 404, headers: { 'access-control-allow-origin': '*' }, body: '' }),
      );
      await openChoice(page);
      await page.getByRole('radio', { name: 'Online map (URL)' }).check();
      await page.getByLabel(/^URL of a map style/u).fill('https://style.example.invalid/style.json');
      await page.getByLabel(/^Credit line/u).fill('Somebody');
      await page.getByRole('button', { name: 'Use this map' }).click();
      await expect
        .poll(() => page.getByRole('status').filter({ hasText: 'style.example.invalid answered 404' }).count())
        .toBe(1);
    });
  });

  it('of a style tells every other host that it would ask, and asks none of them before it may', async () => {
    await on(async ({ page, context }) => {
      const asked: string[] = [];
      const open = { 'access-control-allow-origin': '*' };
      const answers: Readonly<Record<string, object>> = {
        'style.example.invalid': {
          version: 8,
          sprite: 'https://icons.example.invalid/sprite',
          sources: { land: { type: 'vector', url: 'https://lists.example.invalid/tiles.json' } },
          layers: [{ id: 'land', type: 'fill', source: 'land', 'source-layer': 'land' }],
        },
        'lists.example.invalid': { tilejson: '3.0.0', tiles: ['https://tiles.example.invalid/{z}/{x}/{y}.pbf'] },
        'icons.example.invalid': {},
      };
      await context.route('https://*.example.invalid/**', (route) => {
        const { host } = new URL(route.request().url());
        asked.push(host);
        return route.fulfill(
          answers[host] === undefined ? { status: 404, headers: open } : { json: answers[host], headers: open },
        );
      });
      await openChoice(page);
      await page.getByRole('radio', { name: 'Online map (URL)' }).check();
      await page.getByLabel(/^URL of a map style/u).fill('https://style.example.invalid/style.json');
      await page.getByLabel(/^Credit line/u).fill('Somebody');
      await page.getByRole('button', { name: 'Use this map' }).click();
      const question = page.getByRole('status');
      await question.getByText('also loads from lists.example.invalid and icons.example.invalid').waitFor();
      expect(new Set(asked)).toEqual(new Set(['style.example.invalid']));
      await question.getByRole('button', { name: 'Use it', exact: true }).click();
      // The list of tiles names one more.
      await question.getByText('also loads from tiles.example.invalid').waitFor();
      expect(asked).toContain('lists.example.invalid');
      expect(asked).not.toContain('icons.example.invalid');
      expect(asked).not.toContain('tiles.example.invalid');
      await question.getByRole('button', { name: 'Do not use it' }).click();
      await expect.poll(() => question.getByText('also loads from').count()).toBe(0);
      expect(asked).not.toContain('tiles.example.invalid');
    });
  });

  it('draws paper with lines of longitude and latitude, and asks nobody', async () => {
    await on(async ({ page, requests }) => {
      const before = await page.locator('canvas').screenshot();
      await openChoice(page);
      await page.getByRole('radio', { name: /^Plain, with/u }).check();
      await mapIdle(page);
      await expect.poll(async () => (await page.locator('canvas').screenshot()).equals(before)).toBe(false);
      expect(foreign(requests)).toEqual([]);
    });
  });

  it('draws an archive of tiles from this device, and asks nobody', async () => {
    await on(async ({ page, requests, faults }) => {
      await openChoice(page);
      await page.getByRole('radio', { name: /pmtiles/u }).check();
      await page.locator('input[accept=".pmtiles"]').setInputFiles({
        name: 'island.pmtiles',
        mimeType: 'application/octet-stream',
        buffer: archive(picture([200, 60, 200])),
      });
      await mapIdle(page);
      await expect.poll(() => shareOf(page, [210, 104, 208]), { timeout: 20_000 }).toBeGreaterThan(0.5);
      expect(await page.getByText('island.pmtiles, from this device').count()).toBe(1);
      expect(foreign(requests)).toEqual([]);
      expect(faults).toEqual([]);
    });
  });

  it('has nothing that axe objects to, light and dark, and closes by Escape', async () => {
    await on(
      async ({ page }) => {
        await openChoice(page);
        await page.getByRole('radio', { name: 'Online map (URL)' }).check();
        await inLooks(
          page,
          LOOKS.filter(({ width }) => width === 360),
          (look) => expectNoAxeFaults(page, look),
        );
        await page.keyboard.press('Escape');
        expect(await page.getByRole('group', { name: 'Background' }).count()).toBe(0);
        expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Background');
      },
      { viewport: { width: 360, height: 740 } },
    );
  });
});
