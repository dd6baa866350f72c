/** Drawing on the map by mouse and by keys: zones, distances, stations added, and what opens at a place. */
import type { LonLat } from '@halfcup/core';
import { segmentLength } from '@halfcup/core/geometry';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Stage, type Visit, during, expectNoAxeFaults, mapIdle, openStage } from './support/browser.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

interface Bench {
  readonly text: () => string;
  readonly measured: () => string | null;
  readonly pins: () => Readonly<Record<string, LonLat>>;
  readonly place: (at: LonLat) => readonly [number, number];
  readonly ground: (at: readonly [number, number]) => readonly [number, number];
}

const ask = <K extends keyof Bench>(
  page: Page,
  name: K,
  ...given: Parameters<Bench[K]>
): Promise<ReturnType<Bench[K]>> =>
  page.evaluate(
    ([key, values]) =>
      (window as unknown as { halfcupBench: Record<string, (...all: unknown[]) => unknown> }).halfcupBench[key]!(
        ...values,
      ) as never,
    [name, given as unknown[]] as const,
  );

interface Raw {
  readonly zones: readonly { readonly name: string; readonly polygon: readonly (readonly [number, number])[] }[];
  readonly stations: readonly {
    readonly id: string;
    readonly on?: { readonly side: string };
    readonly side?: string;
  }[];
}
const planOf = async (page: Page): Promise<Raw> => JSON.parse(await ask(page, 'text')) as Raw;

const onMap = (act: (seen: Visit) => Promise<void>): Promise<void> =>
  during(
    { ...stage, address: `${stage.address}#bench` },
    async (seen) => {
      await mapIdle(seen.page);
      await act(seen);
      expect(seen.faults).toEqual([]);
    },
    { reducedMotion: 'reduce' },
  );

/** The middle of the map on the page. */
async function middleOf(page: Page): Promise<readonly [number, number]> {
  const box = (await page.locator('.map canvas').boundingBox())!;
  return [box.x + box.width / 2, box.y + box.height / 2];
}

async function goTo(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click();
  await page.waitForTimeout(200);
  await mapIdle(page);
}

const near = (one: readonly [number, number], other: readonly [number, number]): number =>
  segmentLength(one[0], one[1], other[0], other[1]);

async function drag(page: Page, from: readonly [number, number], to: readonly [number, number]): Promise<void> {
  await page.mouse.move(from[0], from[1]);
  await page.mouse.down();
  await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
  await page.mouse.move(to[0], to[1]);
  await page.mouse.up();
}

async function centreOf(page: Page, label: RegExp): Promise<readonly [number, number]> {
  const box = (await page.getByRole('button', { name: label }).boundingBox())!;
  return [box.x + box.width / 2, box.y + box.height / 2];
}

const last = (plan: Raw): Raw['zones'][number] => plan.zones.at(-1)!;

describe('a zone', () => {
  it('is drawn, reshaped and moved by mouse, each as one step of undo', async () => {
    await onMap(async ({ page }) => {
      await goTo(page, 'Strand Road');
      const first = await planOf(page);
      const [x, y] = await middleOf(page);
      await page.getByRole('button', { name: 'Draw a zone' }).click();
      const pressed = [
        [x - 120, y - 60],
        [x - 40, y - 60],
        [x - 40, y - 120],
      ] as const;
      const wanted = await Promise.all(pressed.map((at) => ask(page, 'ground', at)));
      await page.mouse.click(...pressed[0]);
      await page.mouse.click(...pressed[1]);
      await page.mouse.dblclick(...pressed[2]);
      const drawn = await planOf(page);
      expect(drawn.zones.length).toBe(first.zones.length + 1);
      expect(last(drawn).polygon.length).toBe(3);
      for (const [index, at] of wanted.entries()) expect(near(last(drawn).polygon[index]!, at)).toBeLessThan(0.5);
      // A corner.
      const to = [x - 150, y - 20] as const;
      await drag(page, await centreOf(page, /^Corner 1 of Zone/u), to);
      const reshaped = await planOf(page);
      expect(near(last(reshaped).polygon[0]!, await ask(page, 'ground', to))).toBeLessThan(0.5);
      expect(last(reshaped).polygon.slice(1)).toEqual(last(drawn).polygon.slice(1));
      // The middle of an edge becomes a corner.
      const out = [x - 60, y - 10] as const;
      await drag(page, await centreOf(page, /^Add a corner after corner 1 of/u), out);
      const four = await planOf(page);
      expect(last(four).polygon.length).toBe(4);
      expect(near(last(four).polygon[1]!, await ask(page, 'ground', out))).toBeLessThan(0.5);
      // The whole.
      const whole = await centreOf(page, /^Move Zone/u);
      await drag(page, whole, [whole[0] + 40, whole[1] + 30]);
      const moved = await planOf(page);
      const shifts = last(moved).polygon.map((at, index) => near(at, last(four).polygon[index]!));
      expect(Math.max(...shifts) - Math.min(...shifts)).toBeLessThan(0.2);
      expect(Math.min(...shifts)).toBeGreaterThan(1);
      for (const before of [four, reshaped, drawn, first]) {
        await page.getByRole('button', { name: 'Undo' }).click();
        expect((await planOf(page)).zones).toEqual(before.zones);
      }
    });
  });

  it('is drawn, reshaped and deleted by keys alone', async () => {
    await onMap(async ({ page }) => {
      await goTo(page, 'Strand Road');
      const first = await planOf(page);
      await page.getByRole('button', { name: 'Draw a zone' }).press('Enter');
      await page.locator('.map canvas').focus();
      for (const key of ['ArrowRight', 'ArrowDown', 'ArrowLeft']) {
        await page.keyboard.press('Enter');
        await page.keyboard.press(key);
        await page.waitForTimeout(300);
        await mapIdle(page);
      }
      await page.keyboard.press('Enter');
      await page.keyboard.press('Backspace');
      await page.getByText(/^New zone, 3 corners/u).waitFor();
      await page.keyboard.press('Shift+Enter');
      const drawn = await planOf(page);
      expect(last(drawn).polygon.length).toBe(3);
      const corner = page.getByRole('button', { name: /^Corner 2 of Zone/u });
      await corner.focus();
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('Shift+ArrowUp');
      await page.keyboard.press('ArrowRight');
      const moved = await planOf(page);
      const [one, other] = [last(drawn).polygon[1]!, last(moved).polygon[1]!];
      expect(near(one, [one[0], other[1]])).toBeCloseTo(11, 1);
      expect(near([one[0], other[1]], other)).toBeCloseTo(1, 1);
      expect(await corner.evaluate((element) => element === document.activeElement)).toBe(true);
      await page.getByRole('button', { name: /^Add a corner after corner 3/u }).focus();
      await page.keyboard.press('Enter');
      expect(last(await planOf(page)).polygon.length).toBe(4);
      await page.getByRole('button', { name: /^Corner 4 of Zone/u }).focus();
      await page.keyboard.press('Delete');
      expect(last(await planOf(page)).polygon.length).toBe(3);
      await page.getByRole('button', { name: /^Move Zone/u }).focus();
      await page.keyboard.press('Shift+ArrowDown');
      expect(last(await planOf(page)).polygon).not.toEqual(last(moved).polygon);
      await expectNoAxeFaults(page, { tool: 'reshape' });
      await page.keyboard.press('Escape');
      expect(await page.getByRole('button', { name: /^Corner 2 of Zone/u }).count()).toBe(0);
      for (let step = 0; step < 5; step++) await page.keyboard.press('Control+z');
      expect((await planOf(page)).zones).toEqual(first.zones);
    });
  });
});

describe('a place of the map', () => {
  it('adds a station beside the course when pressed twice, on the side of the pointer', async () => {
    await onMap(async ({ page }) => {
      await goTo(page, 'Strand Road');
      const first = await planOf(page);
      const [x, y] = await middleOf(page);
      await page.mouse.dblclick(x + 60, y - 30);
      await page.getByText(/^Added a station, (left|right)-hand side/u).waitFor();
      const plan = await planOf(page);
      expect(plan.stations.length).toBe(first.stations.length + 1);
      const side = plan.stations.at(-1)!.side!;
      expect(plan.stations.at(-1)!.on!.side).toBe(side);
      await page.getByText(new RegExp(`^Added a station, ${side}-hand side`, 'u')).waitFor();
    });
  });

  it('opens what can be done there by the other button and by Enter, and does it', async () => {
    await onMap(async ({ page }) => {
      await goTo(page, 'Strand Road');
      const first = await planOf(page);
      const [x, y] = await middleOf(page);
      await page.mouse.click(x, y - 60, { button: 'right' });
      const menu = page.getByRole('menu', { name: 'At this place' });
      await menu.waitFor();
      await expectNoAxeFaults(page, { menu: 'place' }, '.map-menu');
      await page.keyboard.press('Escape');
      await expect.poll(() => menu.count()).toBe(0);
      await page.keyboard.press('Enter');
      await menu.waitFor();
      const items = await menu.getByRole('menuitem').allTextContents();
      expect(items).toContain('Measure from here');
      await page.keyboard.press('End');
      await page.keyboard.press('Home');
      await menu.getByRole('menuitem', { name: /^(Duplicate|Add a station here)/u }).press('Enter');
      await expect.poll(async () => (await planOf(page)).stations.length).toBe(first.stations.length + 1);
    });
  });

  it('is measured from, and the distance stands at the pointer', async () => {
    await onMap(async ({ page }) => {
      await goTo(page, 'Strand Road');
      const [x, y] = await middleOf(page);
      await page.getByRole('button', { name: 'Measure' }).click();
      await page.mouse.click(x, y);
      await page.mouse.move(x + 200, y);
      const metres = near(await ask(page, 'ground', [x, y]), await ask(page, 'ground', [x + 200, y]));
      await expect.poll(() => ask(page, 'measured')).toBe(`${Math.round(metres)} m`);
      await page.keyboard.press('Escape');
      await expect.poll(() => ask(page, 'measured')).toBe(null);
    });
  });

  it('comes into sight when it is edited elsewhere, unless the map is held', async () => {
    await onMap(async ({ page }) => {
      const inSight = async (id: string): Promise<boolean> => {
        const pins = await ask(page, 'pins');
        const [x, y] = await ask(page, 'place', pins[id]!);
        const box = (await page.locator('.map canvas').boundingBox())!;
        return x > box.x && y > box.y && x < box.x + box.width && y < box.y + box.height;
      };
      await goTo(page, 'Strand Road');
      expect(await inSight('s7')).toBe(false);
      await page.getByRole('button', { name: 'Edit', exact: true }).click();
      const width = page.getByLabel('Road width, Tidewaiters’ Green');
      await width.fill('7');
      await width.press('Enter');
      await expect.poll(() => inSight('s7')).toBe(true);
      await page.getByRole('button', { name: 'Hold the map' }).click();
      await page.getByLabel('Road width, Strand Road').fill('7');
      await page.getByLabel('Road width, Strand Road').press('Enter');
      await page.waitForTimeout(300);
      expect(await inSight('s1')).toBe(false);
    });
  });

  it('opens the same under a finger that rests', async () => {
    await during(
      { ...stage, address: `${stage.address}#bench` },
      async ({ page, context }) => {
        await mapIdle(page);
        await goTo(page, 'Strand Road');
        const [x, y] = await middleOf(page);
        const session = await context.newCDPSession(page);
        await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x: x + 40, y: y + 90 }] });
        await page.getByRole('menu', { name: 'At this place' }).waitFor();
        await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
        await page.getByRole('menuitem', { name: 'Measure from here' }).click();
        await page.getByText(/^The distance stands at the pointer/u).waitFor();
      },
      { reducedMotion: 'reduce', hasTouch: true },
    );
  });
});

describe('findings on the map', () => {
  it('stand there while a station is dragged, and what mends them is carried out when it is put down', async () => {
    await onMap(async ({ page }) => {
      // Its sign is placed by hand, too near the tables.
      await goTo(page, 'Stennick Chapel');
      const pins = await ask(page, 'pins');
      const pin = await ask(page, 'place', pins['s2']!);
      await page.mouse.move(pin[0], pin[1]);
      await page.mouse.down();
      await page.mouse.move(pin[0] + 8, pin[1] + 6);
      await page.mouse.move(pin[0] + 12, pin[1] + 8);
      const found = page.getByRole('region', { name: 'Findings at Stennick Chapel' });
      await found.waitFor();
      const remedy = found.locator('button.remedy').first();
      await remedy.waitFor();
      expect(await remedy.isDisabled()).toBe(true);
      await page.mouse.up();
      await expect.poll(() => remedy.isEnabled()).toBe(true);
      const before = await ask(page, 'text');
      await remedy.click();
      await expect.poll(() => ask(page, 'text')).not.toBe(before);
    });
  });
});
