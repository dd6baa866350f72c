/** Stations moved on the map by mouse, finger and keys, and the answer to "where is this?", held to what core makes of the resulting plan. */
import { type Analysis, type LonLat, type StationLayout } from '@halfcup/core';
import { gridReference } from '@halfcup/core/units';
import { courseLength, passesOf, pointAt } from '@halfcup/core/geometry';
import { type Page } from 'playwright-core';
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
  sharedVisit,
  visit,
} from './support/browser.ts';
import { analysedDemo } from './support/demo.ts';
import { geodesicLength } from './support/courses.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

interface Hook {
  readonly text: () => string;
  readonly pins: () => Readonly<Record<string, LonLat>>;
  readonly findings: () => readonly string[];
  readonly place: (at: LonLat) => readonly [number, number];
}

/** The page's hook for tests, which is there at an address with #bench only. */
const hook = <K extends keyof Hook>(page: Page, name: K, ...given: Parameters<Hook[K]>): Promise<ReturnType<Hook[K]>> =>
  page.evaluate(
    ([key, values]) => {
      const held = (window as unknown as { halfcupBench: Record<string, (...args: unknown[]) => unknown> })
        .halfcupBench;
      return held[key]!(...values) as never;
    },
    [name, given as unknown[]] as const,
  );

const on = <T>(act: (seen: Visit) => Promise<T>, options: VisitOptions = {}): Promise<T> =>
  during({ ...stage, address: `${stage.address}#bench` }, act, { reducedMotion: 'reduce', ...options });

const NAME = 'Wrack Fork';
const ID = 's3';

/** Goes to a station and tells where its pin is on the page. */
async function goTo(page: Page): Promise<readonly [number, number]> {
  await page.getByRole('button', { name: NAME, exact: true }).click();
  await page.waitForTimeout(200);
  await mapIdle(page);
  return pinOf(page);
}

const pinOf = async (page: Page): Promise<readonly [number, number]> =>
  hook(page, 'place', (await hook(page, 'pins'))[ID]!);

async function drag(page: Page, [x, y]: readonly [number, number], [dx, dy]: readonly [number, number]): Promise<void> {
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 8; step++) await page.mouse.move(x + (dx * step) / 8, y + (dy * step) / 8);
  // The last move is told in the next frame.
  await page.waitForTimeout(100);
}

const stationOf = (analysis: Analysis): StationLayout => analysis.stations.find(({ id }) => id === ID)!;
const leadOf = (analysis: Analysis): StationLayout['directions'][number] =>
  stationOf(analysis).directions.find(({ lead }) => lead)!;
const leadPass = (analysis: Analysis): StationLayout['passes'][number] =>
  stationOf(analysis).passes[leadOf(analysis).passes[0]!]!;

/** As a crew can lay it out: whole metres from 10 on, one decimal below, and never less than nothing. */
const laidOut = (value: number): string => {
  const text = String(Number(Math.abs(value).toFixed(Math.abs(value) < 9.95 ? 1 : 0)));
  return value < 0 && text !== '0' ? `−${text}` : text;
};

/** Row, panel, findings and pins shown are those of core for the text that the page holds. */
async function expectAsComputed(page: Page): Promise<Analysis> {
  const analysis = analysedDemo(await hook(page, 'text'));
  const lead = leadOf(analysis);
  const row = page.getByRole('row').filter({ has: page.getByRole('button', { name: NAME, exact: true }) });
  await expect.poll(() => row.textContent()).toContain((lead.measure / 1000).toFixed(2));
  expect(await row.textContent()).toContain(lead.side);
  const panel = page.getByRole('complementary', { name: 'Selected station' });
  const shown = (await panel.textContent())!;
  expect(shown).toContain(`${(lead.measure / 1000).toFixed(2)} km`);
  const wheels = lead.items.flatMap((item) => (item.wheel === null ? [item.along] : [item.along, item.wheel])).flat();
  expect(wheels.length).toBeGreaterThan(8);
  for (const figure of wheels) expect(shown).toContain(laidOut(figure));
  expect((await hook(page, 'findings')).toSorted()).toEqual(
    analysis.findings.map(({ code, message }) => `${code}: ${message}`).toSorted(),
  );
  expect(await hook(page, 'pins')).toEqual(
    Object.fromEntries(analysis.stations.map(({ id, at }) => [id, [at[0], at[1]]])),
  );
  return analysis;
}

/** How near another pass must come to be at the same place, and how good places are, as the card has them. */
const PASSING = { snapRadius: 20, pinR95: 5, courseR95: 3, sideConfidence: 0.95 };

const foreign = ({ requests }: Visit): string[] => foreignOf(stage, requests);

describe('a station on the map', () => {
  it('is dragged by mouse: all that is shown is what core makes of the plan; undo and redo give the very bytes', async () => {
    await on(async (seen) => {
      const { page, faults } = seen;
      const first = await hook(page, 'text');
      const pin = await goTo(page);
      await drag(page, pin, [60, 35]);
      expect(await hook(page, 'text')).toBe(first);
      await page.mouse.up();
      const moved = await hook(page, 'text');
      expect(moved).not.toBe(first);
      const analysis = await expectAsComputed(page);
      expect(leadOf(analysis).measure).not.toBeCloseTo(leadOf(analysedDemo(first)).measure, 0);
      const [x, y] = await pinOf(page);
      expect(Math.hypot(x - pin[0] - 60, y - pin[1] - 35)).toBeLessThan(1.5);
      await page.keyboard.press('Control+z');
      expect(await hook(page, 'text')).toBe(first);
      await expectAsComputed(page);
      await page.keyboard.press('Control+y');
      expect(await hook(page, 'text')).toBe(moved);
      expect(foreign(seen)).toEqual([]);
      expect(faults).toEqual([]);
    });
  });

  it('is taken by its ring too: the pin comes under the pointer, and the table follows while it is held', async () => {
    await on(async ({ page }) => {
      const first = await hook(page, 'text');
      const pin = await goTo(page);
      const ring = await ringNear(page, pin);
      await page.mouse.move(...ring);
      await page.mouse.down();
      await page.mouse.move(ring[0] + 24, ring[1] + 10);
      await page.mouse.move(ring[0] + 48, ring[1] + 20);
      const row = page.getByRole('row').filter({ has: page.getByRole('button', { name: NAME, exact: true }) });
      const before = (leadOf(analysedDemo(first)).measure / 1000).toFixed(2);
      await expect.poll(() => row.textContent(), { timeout: 4000 }).not.toContain(before);
      await page.mouse.up();
      const [x, y] = await pinOf(page);
      expect(Math.hypot(x - ring[0] - 48, y - ring[1] - 20)).toBeLessThan(1.5);
    });
  });

  it('is put back by Escape, and what remains of the gesture does nothing', async () => {
    await on(async ({ page }) => {
      const first = await hook(page, 'text');
      const pins = await hook(page, 'pins');
      await drag(page, await goTo(page), [50, 20]);
      await page.keyboard.press('Escape');
      await page.mouse.move(700, 300);
      await page.mouse.up();
      expect(await hook(page, 'text')).toBe(first);
      expect(await hook(page, 'pins')).toEqual(pins);
      await expectAsComputed(page);
      expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    });
  });

  it.each(['button', 'Shift'])('keeps its offset along the course, asked for by %s', async (by) => {
    await on(async ({ page }) => {
      const first = analysedDemo(await hook(page, 'text'));
      if (by === 'button') await page.getByRole('button', { name: /^Keep offset/u }).click();
      const pin = await goTo(page);
      if (by === 'Shift') await page.keyboard.down('Shift');
      await drag(page, pin, [70, 60]);
      await page.mouse.up();
      const after = await expectAsComputed(page);
      expect(Math.abs(leadPass(after).measure - leadPass(first).measure)).toBeGreaterThan(5);
      expect(leadPass(after).offset).toBeCloseTo(leadPass(first).offset, 1);
    });
  });

  it('is dragged by a finger, and the map stays where it is', async () => {
    await on(
      async ({ page, context }) => {
        const first = await hook(page, 'text');
        const pin = await goTo(page);
        const corner = await hook(page, 'place', [-17.4, -33.2]);
        const finger = await context.newCDPSession(page);
        const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number): Promise<unknown> =>
          finger.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y, id: 1 }] });
        await touch('touchStart', pin[0], pin[1]);
        for (let step = 1; step <= 6; step++) await touch('touchMove', pin[0] + 8 * step, pin[1] + 6 * step);
        await page.waitForTimeout(100);
        await touch('touchEnd', 0, 0);
        await expect.poll(() => hook(page, 'text')).not.toBe(first);
        expect(await hook(page, 'place', [-17.4, -33.2])).toEqual(corner);
        const [x, y] = await pinOf(page);
        expect(Math.hypot(x - pin[0] - 48, y - pin[1] - 36)).toBeLessThan(1.5);
      },
      { hasTouch: true },
    );
  });

  it('is nudged by Alt with the arrow keys on the map, one metre or ten, as one step of undo', async () => {
    await on(async ({ page }) => {
      const first = await hook(page, 'text');
      await goTo(page);
      await page.locator('canvas').focus();
      await page.keyboard.press('Alt+ArrowRight');
      await page.keyboard.press('Alt+ArrowRight');
      await page.keyboard.press('Alt+Shift+ArrowUp');
      await page.keyboard.press('Alt+ArrowLeft');
      const after = await expectAsComputed(page);
      expect(leadOf(after).measure - leadOf(analysedDemo(first)).measure).toBeCloseTo(11, 1);
      await page.keyboard.press('Control+z');
      expect(await hook(page, 'text')).toBe(first);
    });
  });
});

/** A place on the ring of the station, found by its pointer: it stands in some direction from the pin, beyond the words of its tables. */
async function ringNear(page: Page, [x, y]: readonly [number, number]): Promise<[number, number]> {
  for (let angle = 0; angle < 360; angle += 5) {
    const place: [number, number] = [
      x + 99 * Math.sin((angle * Math.PI) / 180),
      y - 99 * Math.cos((angle * Math.PI) / 180),
    ];
    await page.mouse.move(...place);
    if ((await page.locator('canvas').evaluate((canvas) => getComputedStyle(canvas).cursor)) === 'pointer')
      return place;
  }
  throw new Error('no ring was found around the pin');
}

describe('"where is this?"', () => {
  const seen = sharedVisit({ reducedMotion: 'reduce' }, '#bench');
  /** With no card open yet. */
  const asked = async (act: (seen: Visit) => Promise<void>): Promise<void> => {
    const { page } = seen();
    const close = page.getByRole('region', { name: 'Where is this?' }).getByRole('button', { name: 'Close' });
    if ((await close.count()) > 0) await close.click();
    await page.getByRole('button', { name: 'Whole plan' }).click();
    await mapIdle(page);
    await act(seen());
  };

  const MEASURE = 9300;

  /** Presses the map on the course, away from every station. */
  async function askOn(page: Page): Promise<string[]> {
    const { course } = analysedDemo(await hook(page, 'text')).courses.find((one) => one.course.id === 'full')!;
    const [x, y] = await hook(page, 'place', pointAt(course, MEASURE)!.at);
    await page.mouse.click(x, y);
    const card = page.getByRole('region', { name: 'Where is this?' });
    await card.waitFor();
    return card.locator('li').allTextContents();
  }

  it('says measure in both units, coordinates, grid reference and the stations about, as core has them', async () => {
    await asked(async (seen) => {
      const { page } = seen;
      const lines = await askOn(page);
      const analysis = analysedDemo(await hook(page, 'text'));
      const indexed = analysis.courses.find((one) => one.course.id === 'full')!;
      const race = analysis.plan.races.find(({ course }) => course === 'full')!;
      const [, km, mi] = /, ([\d.]+) km \(([\d.]+) mi\) from the start/u.exec(
        lines.find((line) => line.startsWith(race.name))!,
      )!;
      const [, lat, lon] = /: (-?\d+\.\d{6}), (-?\d+\.\d{6}) /u.exec(
        lines.find((line) => line.startsWith('Latitude, longitude'))!,
      )!;
      const { measure } = passesOf(indexed, [Number(lon), Number(lat)], PASSING).toSorted(
        (a, b) => Math.abs(a.measure - MEASURE) - Math.abs(b.measure - MEASURE),
      )[0]!;
      expect(Math.abs(measure - MEASURE)).toBeLessThan(300);
      const place = pointAt(indexed.course, measure)!.at;
      expect(geodesicLength([Number(lon), Number(lat)], [place[0], place[1]])).toBeLessThan(1);
      // Two decimals of both; the international mile is 1609.344 m exactly.
      expect(Math.abs(Number(km) * 1000 - measure)).toBeLessThan(5.2);
      expect(Math.abs(Number(mi) * 1609.344 - measure)).toBeLessThan(8.3);
      expect(lines).toContain(`Grid reference (MGRS): ${gridReference([Number(lon), Number(lat)], 4).text}`);
      const half = analysis.courses.find((one) => one.course.id === 'half')!;
      const others = passesOf(half, place, PASSING);
      expect(lines.filter((line) => line.startsWith('Also Half')).length).toBe(others.length);
      const served = analysis.stations.flatMap((station) =>
        station.passes
          .filter((pass) => pass.served && pass.course === 'full')
          .map((pass) => ({ name: station.name, number: station.index + 1, by: pass.measure - measure })),
      );
      const before = served.filter(({ by }) => by <= 0).toSorted((a, b) => b.by - a.by)[0]!;
      const after = served.filter(({ by }) => by > 0).toSorted((a, b) => a.by - b.by)[0]!;
      expect(lines).toContainEqual(
        expect.stringMatching(new RegExp(` past station ${before.number}, ${before.name}$`, 'u')) as string,
      );
      const [, away] = new RegExp(`^([\\d.]+) km .* before station ${after.number}, ${after.name}$`, 'u').exec(
        lines.find((line) => line.includes(' before station '))!,
      )!;
      expect(Number(away) * 1000).toBeCloseTo(after.by, -1);
      expect(measure).toBeLessThan(courseLength(indexed.course));
      expect(foreign(seen)).toEqual([]);
    });
  });

  it('copies exactly what it shows, says the caution, and closes by Escape and by its button', async () => {
    await on(
      async ({ page }) => {
        const lines = await askOn(page);
        const card = page.getByRole('region', { name: 'Where is this?' });
        expect(await card.textContent()).toContain('call the local emergency number first');
        await card.getByRole('button', { name: 'Copy this text' }).click();
        await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toBe(lines.join('\n'));
        await page.keyboard.press('Escape');
        await expect.poll(() => card.count()).toBe(0);
        await askOn(page);
        await card.getByRole('button', { name: 'Close' }).click();
        expect(await card.count()).toBe(0);
      },
      { permissions: ['clipboard-read', 'clipboard-write'] },
    );
  });

  it('adds a station on the side that is chosen, as one step of undo', async () => {
    await asked(async ({ page }) => {
      const first = await hook(page, 'text');
      await askOn(page);
      await page
        .getByRole('group', { name: 'Add a station here' })
        .getByRole('button', { name: 'Right-hand side' })
        .click();
      const added = analysedDemo(await hook(page, 'text')).stations.at(-1)!;
      expect(Math.abs(added.directions[0]!.measure - MEASURE)).toBeLessThan(300);
      expect(added.directions[0]!.side).toBe('right');
      await page.keyboard.press('Control+z');
      expect(await hook(page, 'text')).toBe(first);
    });
  });

  it('has nothing that axe objects to, light and dark', async () => {
    await asked(async ({ page }) => {
      await askOn(page);
      await inLooks(
        page,
        LOOKS.filter(({ width }) => width === 1440),
        (look) => expectNoAxeFaults(page, look, '.map-pane'),
      );
    });
  });

  it('is asked by nobody who presses ground away from the course', async () => {
    await asked(async ({ page }) => {
      const box = (await page.locator('canvas').boundingBox())!;
      await page.mouse.click(box.x + 20, box.y + box.height - 60);
      await page.mouse.dblclick(box.x + 20, box.y + box.height - 60);
      expect(await page.getByRole('region', { name: 'Where is this?' }).count()).toBe(0);
    });
  });
});

it('leaks no hook into a page that is opened as it is', async () => {
  const seen = await visit(stage);
  expect(await seen.page.evaluate(() => 'halfcupBench' in window)).toBe(false);
  await seen.close();
});
