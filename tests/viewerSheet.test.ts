/** Stations as a sheet: edited in place, many at once, numbered along the course, found, sorted and copied. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Stage, type Visit, expectNoAxeFaults, faultless, openStage, savedPlan } from './support/browser.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

interface Raw {
  readonly numbers?: Readonly<Record<string, number>>;
  readonly stations: readonly {
    readonly id: string;
    readonly name: string;
    readonly side?: string;
    readonly serves?: readonly string[];
    readonly tables?: Readonly<Record<string, number>>;
    readonly on?: { readonly side: string; readonly measure: string | number };
  }[];
}

const planOf = async (page: Page): Promise<Raw> => JSON.parse(await savedPlan(page)) as Raw;
const stationIn = (plan: Raw, id: string): Raw['stations'][number] => plan.stations.find((one) => one.id === id)!;

const onSheet = (act: (seen: Visit) => Promise<void>): Promise<void> =>
  faultless(
    stage,
    async (seen) => {
      await seen.page.getByRole('button', { name: 'Edit', exact: true }).click();
      await act(seen);
    },
    { map: false },
  );

const sheet = (page: Page): ReturnType<Page['locator']> =>
  page.getByRole('table', { name: 'Stations, edited in place' });
const names = (page: Page): Promise<string[]> =>
  sheet(page)
    .getByLabel(/^Name, /u)
    .evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value));
const many = (page: Page): ReturnType<Page['locator']> => page.getByRole('group', { name: 'Selected stations' });

async function setForAll(page: Page, what: string, value: string): Promise<void> {
  await many(page).getByLabel('What to set').selectOption({ label: what });
  const field = many(page).getByLabel('Value for all selected');
  if ((await field.evaluate((one) => one.tagName)) === 'SELECT') await field.selectOption(value);
  else await field.fill(value);
  await many(page)
    .getByRole('button', { name: /^Set for/u })
    .click();
}

describe('the sheet of stations', () => {
  it('sets side and tables of a range and one more row, each as one step of undo', async () => {
    await onSheet(async ({ page }) => {
      const first = await savedPlan(page);
      await page.getByLabel('Select Wrack Fork').click();
      await page.getByLabel('Select Lantern Foot').click({ modifiers: ['Shift'] });
      // With Ctrl anywhere on a row.
      await page
        .getByRole('row')
        .filter({ has: page.getByLabel('Select Strand Road') })
        .getByRole('cell')
        .nth(0)
        .click({ modifiers: ['Control'], position: { x: 2, y: 2 } });
      await many(page).getByText('4 selected').waitFor();
      await setForAll(page, 'Side', 'right');
      const sided = await planOf(page);
      for (const id of ['s1', 's3', 's4', 's5']) {
        const { side, on } = stationIn(sided, id);
        expect([id, side ?? on?.side]).toEqual([id, 'right']);
      }
      for (const id of ['s2', 's6', 's7', 's8', 's9'])
        expect(stationIn(sided, id)).toEqual(stationIn(JSON.parse(first) as Raw, id));
      await setForAll(page, 'Tables of water', '7');
      const laid = await planOf(page);
      for (const id of ['s1', 's3', 's4', 's5']) expect(stationIn(laid, id).tables?.['water']).toBe(7);
      await page.getByRole('button', { name: 'Undo' }).click();
      expect(await planOf(page)).toEqual(sided);
      await page.getByRole('button', { name: 'Undo' }).click();
      expect(await savedPlan(page)).toBe(first);
    });
  });

  it('does the same by keys alone, and says what is wrong with a value that no station can have', async () => {
    await onSheet(async ({ page }) => {
      const first = await savedPlan(page);
      await page.getByLabel('Select Norra Slip').focus();
      await page.keyboard.press('Space');
      await page.keyboard.press('Shift+ArrowDown');
      await page.keyboard.press('Shift+ArrowDown');
      await many(page).getByText('3 selected').waitFor();
      await many(page).getByLabel('What to set').focus();
      await many(page).getByLabel('What to set').selectOption({ label: 'Tables of water' });
      await page.keyboard.press('Tab');
      await page.keyboard.type('many');
      await page.keyboard.press('Enter');
      expect(await many(page).getByRole('alert').textContent()).toMatch(/many/u);
      expect(await savedPlan(page)).toBe(first);
      await many(page).getByLabel('Value for all selected').focus();
      await page.keyboard.press('Control+a');
      await page.keyboard.type('3');
      await page.keyboard.press('Enter');
      const plan = await planOf(page);
      for (const id of ['s4', 's5', 's6']) expect(stationIn(plan, id).tables?.['water']).toBe(3);
      await page.getByLabel('Select Norra Slip').focus();
      await page.keyboard.press('Control+a');
      await many(page).getByText('9 selected').waitFor();
      await many(page).getByRole('button', { name: 'Select none' }).press('Enter');
      await page.getByLabel('Name, Strand Road').focus();
      await page.keyboard.press('Control+a');
      await page.keyboard.type('Quay Steps');
      await page.keyboard.press('Enter');
      expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
        'Name, Stennick Chapel',
      );
      expect(stationIn(await planOf(page), 's1').name).toBe('Quay Steps');
    });
  });

  it('edits distance, side, what is served and the width in the row, and refuses what cannot be', async () => {
    await onSheet(async ({ page }) => {
      const distance = page.getByLabel('Distance, Strand Road');
      await distance.fill('3.1');
      await distance.press('Enter');
      expect(stationIn(await planOf(page), 's1').on?.measure).toBe('3.1 km');
      await distance.fill('99');
      await distance.press('Enter');
      expect(await sheet(page).getByRole('alert').textContent()).toMatch(/42\.\d+ km long/u);
      await distance.press('Escape');
      await page.getByLabel('Side, Strand Road').selectOption('right');
      expect(stationIn(await planOf(page), 's1').side).toBe('right');
      await page.getByLabel('Serves gel, Strand Road').check();
      expect(stationIn(await planOf(page), 's1').serves).toContain('gel');
      await page.getByLabel('Road width, Strand Road').fill('6.5');
      await page.getByLabel('Road width, Strand Road').press('Enter');
      expect(stationIn(await planOf(page), 's1')).toMatchObject({ width: '6.5 m' });
    });
  });

  it('numbers along the course, and keeps the numbers where the plan says so', async () => {
    await onSheet(async ({ page }) => {
      const order = await names(page);
      expect(order[0]).toBe('Strand Road');
      const distance = page.getByLabel('Distance, Strand Road');
      await distance.fill('9');
      await distance.press('Enter');
      // Past Stennick Chapel at 7.08 km.
      await expect.poll(() => names(page)).toEqual([order[1], order[0], ...order.slice(2)]);
      await page.getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => names(page)).toEqual(order);
      await page.getByLabel('Keep these numbers').check();
      expect((await planOf(page)).numbers).toMatchObject({ s1: 1, s2: 2, s9: 9 });
      await distance.fill('9');
      await distance.press('Enter');
      await expect.poll(async () => stationIn(await planOf(page), 's1').on?.measure).toMatch(/^9/u);
      expect(await names(page)).toEqual(order);
      await page.getByLabel('Keep these numbers').uncheck();
      await expect.poll(() => names(page)).toEqual([order[1], order[0], ...order.slice(2)]);
      expect((await planOf(page)).numbers).toBeUndefined();
    });
  });

  it('finds, sorts and copies rows with heads that a spreadsheet takes', async () => {
    await onSheet(async ({ page, context }) => {
      await context.grantPermissions(['clipboard-read', 'clipboard-write']);
      await page.getByLabel(/^Find stations/u).fill('gel');
      await expect.poll(() => names(page)).toEqual(['Wrack Fork', 'Keeper’s Path']);
      await page.getByLabel(/^Find stations/u).fill('nowhere');
      await page.getByText('No station fits “nowhere”.').waitFor();
      await page.getByLabel(/^Find stations/u).fill('');
      await sheet(page).getByRole('button', { name: 'Station' }).click();
      const sorted = await names(page);
      expect(sorted).toEqual(sorted.toSorted((a, b) => a.localeCompare(b)));
      await page.getByLabel('Select Wrack Fork').click();
      await many(page).getByRole('button', { name: 'Copy rows' }).click();
      await page.getByText(/^Copied 1 row/u).waitFor();
      const [heads, row] = (await page.evaluate(() => navigator.clipboard.readText())).split('\n');
      expect(heads!.split('\t').slice(0, 5)).toEqual(['Number', 'Name', 'Distance (km)', 'Side', 'Serves']);
      expect(row!.split('\t').slice(0, 2)).toEqual(['3', 'Wrack Fork']);
      await expectNoAxeFaults(page, { pane: 'sheet' });
    });
  });

  it('takes pasted rows, tells the faults by row, and one undo takes all back', async () => {
    await onSheet(async ({ page }) => {
      const first = await savedPlan(page);
      const rows = [
        'Name\tDistance\tSide\tServes\tWidth',
        'Cliff Steps\t5.2 km\tleft\twater\t7 m',
        'Nowhere\tfar\tleft\twater\t7 m',
        'Strand Road\t3.4 km\tright\twater\t6.5 m',
        'Harbour Wall\t12.4 km\tright\twater, gel\t',
      ].join('\n');
      await page.getByText('Paste rows', { exact: true }).click();
      await page.getByLabel(/^Rows of a spreadsheet/u).fill(rows);
      await page.getByRole('button', { name: 'Take these rows' }).press('Enter');
      await page.getByText(/^2 stations added, 1 station changed/u).waitFor();
      await page.getByText(/^Row 3, Distance: “far” is not a course distance/u).waitFor();
      await expect.poll(() => names(page)).toContain('Cliff Steps');
      const plan = await planOf(page);
      expect(plan.stations.length).toBe((JSON.parse(first) as Raw).stations.length + 2);
      expect(stationIn(plan, 's1')).toMatchObject({ on: { measure: '3.4 km', side: 'right' }, width: '6.5 m' });
      await page.getByRole('button', { name: 'Undo' }).click();
      expect(await savedPlan(page)).toBe(first);
    });
  });

  it('takes the rows that it copied, and nothing moves', async () => {
    await onSheet(async ({ page, context }) => {
      await context.grantPermissions(['clipboard-read', 'clipboard-write']);
      const places = async (): Promise<unknown> =>
        (await planOf(page)).stations.map(({ id, on, side }) => [id, on, side]);
      const before = await places();
      await page.getByLabel('Select all shown').check();
      await many(page).getByRole('button', { name: 'Copy rows' }).click();
      await page.getByText(/^Copied 9 rows/u).waitFor();
      await page.getByLabel('Select Wrack Fork').focus();
      await page.keyboard.press('Control+v');
      await page.getByText(/^9 stations changed/u).waitFor();
      expect(await places()).toEqual(before);
    });
  });
});
