/** A station moved along the course strip and edited in its panel: by mouse, by finger, by keyboard; what is shown is what core finds. */
import { type Analysis, type Item } from '@halfcup/core';
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
  mapIdle,
  openStage,
  savedPlan as saved,
  sharedVisit,
} from './support/browser.ts';
import { analysedDemo, demoText } from './support/demo.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const DEMO = demoText('plan.json');
const on = (act: (seen: Visit) => Promise<void>, options?: VisitOptions): Promise<void> =>
  faultless(stage, act, { map: false, ...options });
/** The map follows what is changed: nothing goes wrong in it either. */
const onMap = (act: (seen: Visit) => Promise<void>): Promise<void> => faultless(stage, act);

const panel = (page: Page): Locator => page.getByRole('complementary', { name: 'Selected station' });
const ring = (page: Page, number: number): Locator =>
  page.getByRole('button', { name: new RegExp(`^Station ${number}, `, 'u') }).first();
const row = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });
const heading = (page: Page): Promise<string | null> =>
  panel(page).getByRole('heading', { level: 2 }).first().textContent();

const WORD: Readonly<Record<Item['kind'], string>> = {
  sign: 'Sign',
  gel: 'Gel',
  sportsDrink: 'Sports drink',
  water: 'Water',
  handOut: 'Hand-out line',
  trash: 'Trash',
};
const figure = (value: number, decimals: number): string => {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
};
/** As a crew can lay it out: whole metres from 10 on, one decimal below, and never less than nothing. */
const laidOut = (value: number): string => {
  const text = String(Number(Math.abs(value).toFixed(Math.abs(value) < 9.95 ? 1 : 0)));
  return value < 0 && text !== '0' ? `−${text}` : text;
};
const range = ([from, to]: readonly [number, number]): string =>
  laidOut(from) === laidOut(to) ? laidOut(from) : `${laidOut(from)} to ${laidOut(to)}`;

/** The rows of the table as core has them, by number: name, course distance, side, legs, sign. */
function coreRows(analysis: Analysis): string[] {
  return analysis.stations
    .toSorted((a, b) => a.number! - b.number!)
    .map((station) => {
      const lead = station.directions[0]!;
      const legs = analysis.spacing.map(
        ({ legs: all }) =>
          all
            .filter(({ to }) => to === station.id)
            .map(({ length }) => figure(length / 1000, 2))
            .join('') || '–',
      );
      const served = lead.items.filter(({ kind }) => kind !== 'sign' && kind !== 'trash').map(({ from }) => from);
      const sign = lead.items.find(({ kind }) => kind === 'sign')!;
      return [
        station.name,
        figure(lead.measure / 1000, 2),
        lead.side,
        ...legs,
        laidOut(Math.min(...served) - sign.to),
      ].join(' | ');
    });
}

async function shownRows(page: Page, races: number): Promise<string[]> {
  const rows = await page.getByRole('table', { name: 'Stations by number' }).locator('tbody tr').all();
  return Promise.all(
    rows.map(async (one) => {
      const cells = await one.locator('td, th').allTextContents();
      const side = (await one.locator('td.side span').first().textContent()) ?? '';
      return [cells[1]!, cells[2]!, side, ...cells.slice(4, 4 + races), cells[4 + races]!].join(' | ');
    }),
  );
}

/** The table, and the items and findings of the station chosen, are those of core's analysis of the text. */
async function sameAsCore(page: Page, text: string, id: string): Promise<void> {
  const analysis = analysedDemo(text);
  expect(await shownRows(page, analysis.spacing.length)).toEqual(coreRows(analysis));
  const { directions } = analysis.stations.find((one) => one.id === id)!;
  const items = directions.flatMap(({ items: laid }) =>
    laid.toSorted((a, b) => a.from - b.from).map((item) => `${WORD[item.kind]}: ${range(item.along)}`),
  );
  const shown = await panel(page).locator('table.items tbody tr').all();
  expect(
    await Promise.all(
      shown.map(
        async (one) =>
          `${await one.locator('th').evaluate((cell) => cell.firstChild?.textContent ?? '')}: ${await one.locator('td').first().textContent()}`,
      ),
    ),
  ).toEqual(items);
  const own = analysis.findings.filter(({ where }) => where.station === id);
  const GRAVE = ['error', 'warning', 'note'];
  const messages = own
    .toSorted((a, b) => GRAVE.indexOf(a.severity) - GRAVE.indexOf(b.severity))
    .map(({ message }) => message);
  const told = await panel(page).locator('.finding-message').allTextContents();
  expect(told.map((one) => one.replace(/ Show$/u, ''))).toEqual(messages);
  const open = analysis.findings.filter(({ waived }) => waived === undefined).length;
  expect(await page.getByRole('tab', { name: /^Review/u }).textContent()).toBe(`Review${open}`);
}

/** Undoes until there is nothing left, and finds the first bytes; does all again, and finds the last. */
async function undoAll(page: Page, last: string): Promise<number> {
  await page.getByRole('tab', { name: 'Stations', exact: true }).focus();
  let steps = 0;
  while (await page.getByRole('button', { name: 'Undo' }).isEnabled()) {
    await page.keyboard.press('Control+z');
    steps++;
    if (steps > 80) throw new Error('undo has no end');
  }
  expect(await saved(page)).toBe(DEMO);
  await page.getByRole('tab', { name: 'Stations', exact: true }).focus();
  for (let step = 0; step < steps; step++) await page.keyboard.press('Control+Shift+z');
  expect(await saved(page)).toBe(last);
  return steps;
}

async function hold(page: Page, number: number): Promise<{ readonly x: number; readonly y: number }> {
  const circle = (await ring(page, number).locator('circle').nth(1).boundingBox())!;
  const at = { x: circle.x + circle.width / 2, y: circle.y + circle.height / 2 };
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  return at;
}

describe('a station on the course strip', () => {
  it('is dragged along and across by mouse: all follows, the old place stays as a ghost, and it is one step of undo', async () => {
    await onMap(async ({ page }) => {
      const at = await hold(page, 4);
      await page.mouse.move(at.x + 40, at.y, { steps: 5 });
      await expect.poll(() => page.locator('.strip-ghost text').textContent()).toMatch(/^\+\d/u);
      // Norra Slip stands on the right; above the line is the left-hand side.
      await page.mouse.move(at.x + 60, at.y - 60, { steps: 5 });
      await expect.poll(() => page.locator('.strip-ghost text').textContent()).toMatch(/to the left$/u);
      await page.mouse.up();
      expect(await page.locator('.strip-ghost').count()).toBe(0);
      const after = await saved(page);
      const before = analysedDemo(DEMO).stations[3]!;
      const now = analysedDemo(after).stations[3]!;
      expect(now.directions[0]!.side).toBe('left');
      expect(now.station.side).toBe('left');
      // 60 pixels of a strip of 1,370 that shows 42.195 km.
      expect(now.directions[0]!.measure - before.directions[0]!.measure).toBeCloseTo((60 * 42_195) / 1370, -2);
      expect(Math.abs(now.passes[0]!.offset)).toBeCloseTo(Math.abs(before.passes[0]!.offset), 1);
      await sameAsCore(page, after, 's4');
      expect(await undoAll(page, after)).toBe(1);
    });
  });

  it('is put back by Escape while it is held, and a press that does not move only chooses it', async () => {
    await on(async ({ page }) => {
      const at = await hold(page, 5);
      await page.mouse.move(at.x - 50, at.y, { steps: 5 });
      await expect.poll(() => page.locator('.strip-ghost text').textContent()).toMatch(/^−\d/u);
      await page.keyboard.press('Escape');
      await page.mouse.move(at.x - 80, at.y, { steps: 3 });
      await page.mouse.up();
      expect(await page.locator('.strip-ghost').count()).toBe(0);
      await hold(page, 7);
      await page.mouse.up();
      await expect.poll(() => heading(page)).toContain('Tidewaiters');
      expect(await page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false);
      expect(await saved(page)).toBe(DEMO);
      await sameAsCore(page, DEMO, 's7');
    });
  });

  it('is moved by keys: by 1, 10 and 100 m in one step, across, and in yards with imperial units', async () => {
    await on(async ({ page }) => {
      await ring(page, 4).focus();
      for (const key of ['ArrowRight', 'Shift+ArrowRight', 'Shift+ArrowRight', 'Alt+ArrowRight', 'ArrowLeft', 'PageUp'])
        await page.keyboard.press(key);
      expect(await saved(page)).toContain('"measure": "16.3 km"');
      await ring(page, 4).focus();
      await page.keyboard.press('s');
      await page.keyboard.press('ArrowUp');
      const crossed = await saved(page);
      expect(analysedDemo(crossed).stations[3]!.station).toMatchObject({
        side: 'left',
        on: { measure: 16_300, side: 'left', offset: 4.5 },
      });
      await sameAsCore(page, crossed, 's4');
      expect(await undoAll(page, crossed)).toBe(2);
      await page.getByRole('button', { name: /Imperial/u }).focus();
      await page.keyboard.press('Enter');
      await ring(page, 2).focus();
      await page.keyboard.press('Alt+ArrowLeft');
      const moved = analysedDemo(await saved(page)).stations[1]!.directions[0]!.measure;
      expect(analysedDemo(crossed).stations[1]!.directions[0]!.measure - moved).toBeCloseTo(91.44, 1);
    });
  });

  it('keeps the focus on its ring while it passes another, is duplicated and deleted by keys', async () => {
    await on(async ({ page }) => {
      await ring(page, 8).focus();
      for (let step = 0; step < 20; step++) await page.keyboard.press('Alt+ArrowRight');
      expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^Station 8, /u);
      await page.keyboard.press('d');
      await expect.poll(() => heading(page)).toContain('Quillet Park (copy)');
      await ring(page, 10).focus();
      await page.keyboard.press('Delete');
      await expect.poll(() => ring(page, 10).count()).toBe(0);
      expect(await page.evaluate(() => document.activeElement?.matches('.strip-ring, .strip-ground'))).toBe(true);
      await undoAll(page, await saved(page));
    });
  });

  it('is dragged by a finger at 360 px, and two fingers come closer', async () => {
    await on(
      async ({ page, context }) => {
        await page.getByRole('tab', { name: 'Strip', exact: true }).click();
        const touch = await context.newCDPSession(page);
        const send = (
          type: 'touchStart' | 'touchMove' | 'touchEnd',
          ...points: readonly { readonly x: number; readonly y: number }[]
        ): Promise<unknown> =>
          touch.send('Input.dispatchTouchEvent', { type, touchPoints: points.map((point, id) => ({ ...point, id })) });
        const box = (await ring(page, 6).locator('circle').nth(1).boundingBox())!;
        const [x, y] = [box.x + 9, box.y + 9];
        await send('touchStart', { x, y });
        for (let step = 1; step <= 8; step++) await send('touchMove', { x: x - step * 3, y });
        await expect.poll(() => page.locator('.strip-ghost text').textContent()).toMatch(/^−\d/u);
        await send('touchEnd');
        const moved = analysedDemo(await saved(page)).stations[5]!.directions[0]!.measure;
        expect(25_850 - moved).toBeCloseTo((24 * 42_195) / 290, -3);
        await page.locator('.strip-chart').evaluate((chart) => chart.scrollIntoView({ block: 'end' }));
        const strip = (await page.locator('.strip-chart').boundingBox())!;
        const low = strip.y + strip.height - 40;
        await send('touchStart', { x: 150, y: low }, { x: 200, y: low });
        for (let step = 1; step <= 8; step++)
          await send('touchMove', { x: 150 - step * 5, y: low }, { x: 200 + step * 5, y: low });
        await send('touchEnd');
        expect(await page.getByRole('button', { name: 'Whole course' }).isEnabled()).toBe(true);
      },
      { viewport: { width: 360, height: 740 }, hasTouch: true },
    );
  });
});

/** Unfolds every part of the station's panel. */
const unfold = async (page: Page): Promise<void> => {
  await page.locator('.edit details').evaluateAll((all) => {
    for (const one of all) (one as HTMLDetailsElement).open = true;
  });
};

async function typeIn(field: Locator, text: string): Promise<void> {
  await field.focus();
  await field.press('Control+a');
  await field.pressSequentially(text);
  await field.press('Enter');
}

describe('the station panel', () => {
  it('leaves undo to the field while somebody types in it, and takes it once that is committed', async () => {
    await on(async ({ page }) => {
      await row(page, 'Norra Slip').click();
      const name = panel(page).getByLabel('Name', { exact: true }).first();
      await typeIn(name, 'Norra Quay');
      await expect.poll(() => heading(page)).toContain('Norra Quay');
      await name.pressSequentially('s');
      await page.keyboard.press('Control+z');
      expect(await heading(page)).toContain('Norra Quay');
      await name.press('Escape');
      await page.keyboard.press('Control+z');
      await expect.poll(() => heading(page)).toContain('Norra Slip');
      expect(await saved(page)).toBe(DEMO);
    });
  });

  it('does all that a course designer does to a station by keyboard alone, and undo brings the first bytes back', async () => {
    await on(async ({ page }) => {
      await page.getByRole('button', { name: 'Add station' }).focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => heading(page)).toContain('Station 10');
      for (const summary of await panel(page).locator('.edit summary').all()) {
        await summary.focus();
        await page.keyboard.press('Enter');
      }
      const field = (label: string): Locator => panel(page).getByLabel(label, { exact: true }).first();
      const press = async (name: string | RegExp): Promise<void> => {
        await panel(page).getByRole('button', { name }).first().focus();
        await page.keyboard.press('Enter');
      };
      const tick = async (name: string): Promise<void> => {
        await panel(page).getByRole('checkbox', { name, exact: true }).focus();
        await page.keyboard.press('Space');
      };
      const pick = async (label: string, letters: string): Promise<void> => {
        await field(label).focus();
        await page.keyboard.type(letters);
      };
      await typeIn(field('Name'), 'Herring Steps');
      await typeIn(field('Course distance'), '19.5');
      await press('100 m forward along the course');
      await press('10 m back along the course');
      await press(/^Move to the/u);
      await tick('gel');
      await typeIn(field('Tables of gel'), '2');
      await typeIn(field('Trash boxes'), '7');
      await typeIn(field('Road width'), '7.5');
      await tick('Half marathon');
      await pick('Serves runners who come', 'every');
      await pick('Side', 'r');
      await typeIn(field('Captain'), 'Captain, Herring Steps');
      await typeIn(field('Why it is here'), 'wide pavement');
      await typeIn(field('Checked on foot by'), 'course designer');
      await typeIn(field('Checked on foot on'), '2027-06-21');
      await tick('Fixed: leave it out when searching for better places');
      await typeIn(field('Sign before the first table'), '80');
      await typeIn(field('Cup holds'), '250');
      await typeIn(field('Share left when ordering a second delivery'), '0.3');
      await typeIn(field('Minimum crew'), '9');
      await typeIn(field('Ready before the first runner'), '45');
      await press('Add a point at the pin');
      await typeIn(field('Street'), 'Shore Road');
      await typeIn(panel(page).getByLabel('Street', { exact: true }).last(), 'Quay Street');
      await pick('Kind', 'm');
      await typeIn(field('Used: water'), '1200');
      const sign = field('Sign');
      const where = (await sign.getAttribute('placeholder'))!;
      await typeIn(sign, where);
      const byHand = JSON.parse(await saved(page)) as { readonly stations: readonly { readonly items?: unknown }[] };
      expect(byHand.stations[9]!.items).toEqual({ sign: { at: where.split(', ').map(Number) } });
      await press('Put sign back in its standard place');
      const text = await saved(page);
      const station = (JSON.parse(text) as { readonly stations: readonly Record<string, unknown>[] }).stations[9]!;
      expect(station).toMatchObject({
        name: 'Herring Steps',
        street: 'Shore Road',
        races: ['m'],
        serves: ['gel', 'sportsDrink', 'water'],
        tables: { gel: 2 },
        boxes: 7,
        passes: 'all',
        side: 'right',
        people: { captain: 'Captain, Herring Steps' },
        why: 'wide pavement',
        walked: { by: 'course designer', date: '2027-06-21' },
        fixed: true,
        practice: { signAhead: 80 },
        supplies: { cup: '250 ml', resupply: { at: 0.3, takes: '40 min' } },
        crew: { minimum: 9, ready: '45 min' },
        points: [{ kind: 'medical', street: 'Quay Street' }],
        used: { water: 1200 },
        width: 7.5,
      });
      expect(analysedDemo(text).stations[9]!.directions[0]!.measure).toBeCloseTo(19_590, 1);
      await sameAsCore(page, text, station['id'] as string);
      await press('Delete point 1');
      await press('Duplicate');
      await expect.poll(() => heading(page)).toContain('Herring Steps (copy)');
      await press('Delete');
      await expect
        .poll(() => page.getByRole('table', { name: 'Stations by number' }).locator('tbody tr').count())
        .toBe(10);
      expect(await undoAll(page, await saved(page))).toBeGreaterThan(25);
    });
  });

  it('writes what is changed while a variant is shown into that variant', async () => {
    await onMap(async ({ page }) => {
      const { variants, stations } = JSON.parse(DEMO) as {
        readonly variants: readonly { readonly name: string }[];
        readonly stations: readonly { readonly width?: string }[];
      };
      await page.getByRole('combobox', { name: 'Variant shown' }).selectOption({ label: variants[0]!.name });
      await row(page, 'Norra Slip').click();
      await unfold(page);
      await typeIn(panel(page).getByLabel('Road width', { exact: true }), '6 m');
      const text = await saved(page);
      const plan = JSON.parse(text) as {
        readonly stations: readonly Record<string, unknown>[];
        readonly variants: readonly { readonly stations: Record<string, Record<string, unknown>> }[];
      };
      expect(plan.variants[0]!.stations['s4']!['width']).toBe('6 m');
      expect(plan.stations[3]!['width']).toBe(stations[3]!.width);
      await undoAll(page, text);
    });
  });
});

describe('the station panel, the plan left as it is', () => {
  const seen = sharedVisit({ map: false });
  const on = async (act: (seen: Visit) => Promise<void>): Promise<void> => {
    await seen().page.getByRole('tab', { name: 'Stations', exact: true }).click();
    await act(seen());
  };

  it.each([
    ['Course distance', 'far', /“far” cannot be used\. It should be a length/u],
    ['Course distance', '50', /The course is 42\.20 km long\. Choose a distance from 0 to 42\.20 km\./u],
    ['Pin: longitude, latitude', '-17.4, -95', /latitude -95\. It should be from -90 to 90\./u],
    ['Trash boxes', '2.5', /is 2\.5\. It should be a whole number\./u],
    ['Road width', '8 furlongs', /is “8 furlongs”\. It should be a length over 0/u],
    ['Sign before the first table', '-5', /-5 cannot be used|is “?-5/u],
    ['Cup filled to', '2', /is 2\. It should be/u],
  ])('keeps a bad %s of “%s” as it was typed, and says what is accepted', async (label, typed, message) => {
    await on(async ({ page }) => {
      await row(page, 'Norra Slip').click();
      await unfold(page);
      const field = panel(page).getByLabel(label, { exact: true }).first();
      const before = await field.inputValue();
      await field.fill(typed);
      await field.press('Tab');
      await expect.poll(() => panel(page).getByRole('alert').textContent()).toMatch(message);
      expect(await field.inputValue()).toBe(typed);
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      const told = (await field.getAttribute('aria-describedby'))!.split(' ');
      expect(told).toContain(await panel(page).getByRole('alert').getAttribute('id'));
      await field.focus();
      await field.press('Escape');
      expect(await field.inputValue()).toBe(before);
      expect(await panel(page).getByRole('alert').count()).toBe(0);
      expect(await saved(page)).toBe(DEMO);
    });
  });

  it('has every control of the unfolded panel on the way of the Tab key', async () => {
    await on(async ({ page }) => {
      await row(page, 'Wrack Fork').click();
      await unfold(page);
      const controls =
        '.station-actions button, .edit summary, .edit input, .edit select, .edit textarea, .edit button';
      const count = await panel(page).locator(controls).count();
      expect(count).toBeGreaterThan(100);
      await panel(page).getByRole('button', { name: 'Show', exact: true }).first().focus();
      const names = new Set<string>();
      // Some more steps than controls: a list that scrolls is a stop of its own.
      for (let step = 0; step < count + 5; step++) {
        const at = await page.evaluate(
          (selector) => [...document.querySelectorAll(selector)].indexOf(document.activeElement!),
          controls,
        );
        names.add(String(at));
        await page.keyboard.press('Tab');
      }
      names.delete('-1');
      expect(names.size).toBe(count);
    });
  });
});

describe('the station panel', () => {
  it('has nothing that axe objects to with all unfolded and a bad entry, and nothing wider than the page, light and dark, 1440 and 360 px wide', async () => {
    await on(async ({ page }) => {
      await row(page, 'Wrack Fork').click();
      await mapIdle(page);
      const boxes = page.getByLabel('Trash boxes', { exact: true });
      await inLooks(page, LOOKS, async (look) => {
        const { width } = look;
        if (width === 360) await page.getByRole('tab', { name: 'Station', exact: true }).click();
        await unfold(page);
        await boxes.fill('many');
        await boxes.press('Enter');
        await page.locator('.entry-trouble').waitFor();
        expect(await page.locator('.entry-trouble').count()).toBe(1);
        await expectNoAxeFaults(page, look, '.edit');
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
        const wide = await page
          .locator('.edit')
          .evaluate(
            (edit) =>
              [...edit.querySelectorAll('*')].filter(
                (one) => one.getBoundingClientRect().right > edit.getBoundingClientRect().right + 1,
              ).length,
          );
        expect(wide).toBe(0);
      });
      for (const look of LOOKS.filter(({ width }) => width === 360)) {
        await inLooks(page, [look], async () => {
          await page.getByRole('tab', { name: 'Strip', exact: true }).click();
          const keys = page.locator('details').filter({ has: page.getByText('Keys', { exact: true }) });
          if ((await keys.getAttribute('open')) === null) await page.getByText('Keys', { exact: true }).click();
          await expectNoAxeFaults(page, { strip: true, ...look }, PANEL);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
        });
      }
    });
  });
});
