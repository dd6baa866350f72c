/** The first hour on the page: the ways to begin, the start sheet, courses from parts, and a GPX file beside an open plan. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  dropFiles,
  expectNoAxeFaults,
  faultless,
  inLooks,
  LOOKS,
  openStage,
  savedPlan,
} from './support/browser.ts';
import { OCEAN, go, gpxText, straight } from './support/courses.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

/** A visit with nothing kept and no example asked for. */
const first = (act: (page: Page) => Promise<void>): Promise<void> =>
  faultless({ ...stage, address: `${stage.address}#` }, async ({ page }) => act(page), { map: false });
const onExample = (act: (page: Page) => Promise<void>): Promise<void> =>
  faultless(stage, async ({ page }) => act(page), { map: false });

const button = (page: Page, name: string): ReturnType<Page['getByRole']> =>
  page.getByRole('button', { name, exact: true });
const sheet = (page: Page): ReturnType<Page['getByRole']> => page.getByRole('dialog');
const title = (page: Page): Promise<string | null> => page.getByRole('heading', { level: 1 }).textContent();

interface Saved {
  readonly name: string;
  readonly courses: readonly { readonly id: string; readonly gpx?: string; readonly parts?: readonly object[] }[];
  readonly races: readonly { readonly name: string; readonly cutoff?: string; readonly waves?: readonly object[] }[];
  readonly stations: readonly { readonly name: string }[];
}
const saved = async (page: Page): Promise<Saved> => JSON.parse(await savedPlan(page)) as Saved;

const FULL = gpxText([straight(OCEAN, 90, 101, 100)], [{ at: go(OCEAN, 90, 3000), name: 'Tap' }]);
/** Along the full for 3 km, then off to the north for 2. */
const HALF = gpxText([[...straight(OCEAN, 90, 31, 100), ...straight(go(OCEAN, 90, 3000), 0, 21, 100).slice(1)]]);
const LIST =
  'name\tdistance\tside\tserves\nMill\t1.5\tleft\twater\nBay\tfar\tleft\twater\nPier\t2\tup\twater\nCape\t4,5\tright\tagua\nEnd\t60\tleft\twater\n';

describe('with nothing kept', () => {
  it('the page says what it is and how to begin, in every look, by keyboard too, and the example says that it is one', async () => {
    await first(async (page) => {
      await button(page, 'Look at the example').waitFor();
      await inLooks(page, LOOKS, async (look) => {
        await expectNoAxeFaults(page, look, '.first-screen');
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(look.width);
      });
      await button(page, 'Open your course (GPX)').focus();
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await expect.poll(() => title(page)).toBe('Ganneth Island Marathon and Half');
      expect(await page.locator('.example-mark').textContent()).toBe('Example');
    });
  });

  it('files that cannot be used are told there', async () => {
    await first(async (page) => {
      await dropFiles(page, { 'bad.gpx': '<gpx>' });
      await expect.poll(() => page.getByRole('alert').textContent()).toContain('Could not open bad.gpx');
      expect(await button(page, 'Look at the example').isVisible()).toBe(true);
    });
  });
});

describe('two courses and a list', () => {
  it('become one plan: shared road, fields checked where typed, faults by row, good rows in, one undo for all', async () => {
    await first(async (page) => {
      await dropFiles(page, { 'full.gpx': FULL, 'half.gpx': HALF });
      const dialog = sheet(page);
      await dialog.getByText('half follows full for 3.0').waitFor();
      await dialog.getByText('1 waypoint: 1 looks like a station, 0 like distances.').waitFor();
      await button(page, 'Make the plan').click();
      expect(await dialog.getByText('Give the plan a name.').isVisible()).toBe(true);
      await dialog.getByLabel('Name of the plan').fill('Ganneth Island');
      const race = dialog.getByRole('region', { name: 'Race full' });
      await race.getByLabel('Start time').fill('8 am');
      expect(await race.getByText('“8 am” is not a start time.').isVisible()).toBe(true);
      await race.getByLabel('Start time').fill('08:00');
      await race.getByLabel('Runners entered').fill('1200');
      await race.getByLabel('A typical runner takes').fill('55:00');
      expect(await race.getByText('Write minutes and seconds as 0:55:00.').isVisible()).toBe(true);
      await race.getByLabel('A typical runner takes').fill('0:55');
      await race.getByLabel('Time limit').fill('1:45');
      await dialog.getByLabel('From a list').check();
      await dialog.getByLabel('Paste rows').fill(LIST);
      const result = dialog.locator('.start-list-result');
      await expect.poll(() => result.textContent()).toContain('2 stations can be taken; 3 rows left out.');
      expect(await result.textContent()).toContain('Columns understood: name, distance, side, serves.');
      expect(await dialog.getByLabel('Its distances are along').inputValue()).toBe('0');
      for (const row of ['Row 3, Distance: “far”', 'Row 4, Side: “up”', 'Row 6 is at 60.00 km'])
        expect(await result.textContent()).toContain(row);
      await expectNoAxeFaults(page, { sheet: 1 }, '.start-sheet');
      await button(page, 'Make the plan').click();
      await expect.poll(() => title(page)).toBe('Ganneth Island');
      const plan = await saved(page);
      expect(plan.stations.map(({ name }) => name)).toEqual(['Mill', 'Cape']);
      expect(plan.races).toMatchObject([
        { name: 'full', cutoff: '09:45', waves: [{ time: '08:00', entrants: 1200 }] },
        { name: 'half' },
      ]);
      expect(plan.courses.map(({ gpx }) => gpx)).toEqual(['full.gpx', 'half.gpx']);
      await button(page, 'Undo').click();
      await expect.poll(async () => (await saved(page)).stations).toEqual([]);
    });
  });

  it('can take stations every so far, or of waypoints, or none yet, and the track without its spikes', async () => {
    const spiked = straight(OCEAN, 90, 41, 100);
    const spike = gpxText([
      [...spiked.slice(0, 21), go(spiked[20]!, 0, 80), go(spiked[20]!, 90, 2), ...spiked.slice(21)],
    ]);
    await first(async (page) => {
      await dropFiles(page, { 'spike.gpx': spike });
      const dialog = sheet(page);
      await dialog.getByLabel('Name of the plan').fill('Fixed');
      await dialog.getByText('Faults of the track: 1').waitFor();
      await dialog.getByLabel('Fix: take out').check();
      await dialog.getByLabel('Every', { exact: true }).fill('1');
      await button(page, 'Make the plan').click();
      await expect.poll(() => title(page)).toBe('Fixed');
      const plan = await saved(page);
      expect(plan.courses[0]!.gpx).toBe('spike-fixed.gpx');
      expect(plan.stations.map(({ name }) => name)).toEqual(['1 km', '2 km', '3 km']);
    });
  });
});

describe('one course and a shorter race on it', () => {
  it('is made in the sheet: there and back with its length, grouped counts, the day, names that follow', async () => {
    await first(async (page) => {
      await dropFiles(page, { 'full.gpx': FULL });
      const dialog = sheet(page);
      await dialog.getByLabel('Name of the plan').fill('Pier');
      await dialog.getByLabel('Date').fill('2027-09-12');
      await dialog.getByLabel('Emergency').fill('5550');
      await dialog.getByLabel('Course name').fill('Long');
      const long = dialog.getByRole('region', { name: 'Race Long' });
      expect(await long.getByLabel('Race', { exact: true }).inputValue()).toBe('Long');
      await button(page, 'Add a race').click();
      const short = dialog
        .getByRole('region')
        .filter({ has: page.getByLabel('Runs on') })
        .last();
      expect(await short.locator('[aria-invalid=true]').count()).toBe(0);
      await short.getByLabel('Race', { exact: true }).fill('Five');
      await short.getByLabel('Runs on').selectOption('there and back, turning at …');
      await short.getByLabel('Turn at').fill('2,5');
      await short.getByText('The race is 5.00 km.').waitFor();
      await short.getByLabel('Start time').fill('09:00');
      await short.getByLabel('Runners entered').fill('1,000');
      await short.getByLabel('A typical runner takes').fill('0:28');
      expect(await short.getByLabel('Runners entered').inputValue()).toBe('1000');
      expect(await short.locator('[aria-invalid=true]').count()).toBe(0);
      await button(page, 'Make the plan').click();
      await expect.poll(() => title(page)).toBe('Pier');
      expect(await saved(page)).toMatchObject({
        date: '2027-09-12',
        contacts: { emergency: '5550' },
        courses: [{ name: 'Long' }, { name: 'Five', parts: [{ to: '2.5 km' }, { to: '2.5 km', reverse: true }] }],
        races: [{ name: 'Long' }, { name: 'Five', course: 'five', waves: [{ time: '09:00', entrants: 1000 }] }],
      });
      await page.getByRole('tab', { name: 'Plan' }).click();
      await page.locator('#plan-races > summary').click();
      await page.locator('#plan-races').getByText('on Five').waitFor();
      // Folding outlives the tab.
      await page.getByRole('tab', { name: 'Papers' }).click();
      await page.getByRole('tab', { name: 'Plan' }).click();
      expect(await page.locator('#plan-races').evaluate((one) => (one as HTMLDetailsElement).open)).toBe(true);
      // A finding about the plan leads to its field.
      await page.getByRole('tab', { name: /^Review/u }).click();
      const finding = page.locator('.finding', { hasText: 'Add them under Contacts.' });
      await finding.getByRole('button', { name: 'Show where' }).click();
      await expect
        .poll(() => page.evaluate(() => (document.activeElement as HTMLElement).dataset['path']))
        .toBe('/contacts/raceControl');
    });
  });
});

describe('a course from parts', () => {
  const begin = async (page: Page): Promise<void> => {
    await page.getByRole('tab', { name: 'Plan' }).click();
    await page.locator('#plan-courses').evaluate((element) => void ((element as HTMLDetailsElement).open = true));
    await button(page, 'Make a course from parts of others').click();
  };
  const outcome = (page: Page): Promise<string | null> => page.locator('.parts-outcome').textContent();

  it('runs there and back, is drawn before it is taken, and is one step of undo', async () => {
    await onExample(async (page) => {
      const before = await savedPlan(page);
      await begin(page);
      await page.locator('.parts-form').getByLabel('Name').fill('Island 5');
      await page.getByLabel('Turn at').fill('2,5');
      await expect.poll(() => outcome(page)).toContain('5.00 km, drawn on the map');
      await page.locator('.strip select').first().waitFor();
      expect(await page.locator('.strip option:checked').first().textContent()).toBe('Island 5');
      expect(await savedPlan(page)).toBe(before);
      await button(page, 'Take the course').click();
      await expect
        .poll(async () => (await saved(page)).courses.at(-1)!.parts)
        .toEqual([
          { of: 'full', to: '2.5 km' },
          { of: 'full', to: '2.5 km', reverse: true },
        ]);
      expect((await saved(page)).races.at(-1)!.name).toBe('Island 5');
      await button(page, 'Undo').click();
      await expect.poll(() => savedPlan(page)).toBe(before);

      await button(page, 'Make a course from parts of others').click();
      await page.getByLabel('Turn at').fill('2,5');
      await page.getByLabel('Which race runs on it?').selectOption('Half marathon');
      await button(page, 'Take the course').click();
      await expect.poll(async () => (await saved(page)).courses.length).toBe(3);
      const { courses, races } = await saved(page);
      expect(races.length).toBe(2);
      expect(races[1]).toMatchObject({ name: 'Half marathon', course: courses.at(-1)!.id });
    });
  });

  it('of laps that do not join is kept as a draft with its reason; stretches from and to make a course', async () => {
    await onExample(async (page) => {
      await begin(page);
      await page.getByLabel('It runs').selectOption('laps');
      await expect.poll(() => outcome(page)).toMatch(/begins .* from the end of the one before it/u);
      expect(await button(page, 'Take the course').isDisabled()).toBe(true);
      await button(page, 'Close').last().click();
      await button(page, 'Make a course from parts of others').click();
      expect(await page.getByLabel('It runs').inputValue()).toBe('laps');
      await page.getByLabel('It runs').selectOption('stretches');
      await page.getByRole('group', { name: 'Part 1' }).getByLabel('To').fill('3');
      await button(page, 'Add a part').click();
      const second = page.getByRole('group', { name: 'Part 2' });
      await second.getByLabel('From').fill('1');
      await second.getByLabel('To').fill('3');
      await expect.poll(() => outcome(page)).toMatch(/begins .* from the end of the one before it/u);
      await second.getByLabel('Run backwards').check();
      await expect.poll(() => outcome(page)).toContain('5.00 km');
      await page.getByLabel('It runs').selectOption('laps');
      await page.getByLabel('Laps').fill('1');
      await expect.poll(() => outcome(page)).toContain('42.20 km');
    });
  });
});

describe('a GPX file beside an open plan', () => {
  it('is asked about, and is a course of the plan, another line of one, something to compare with, or points', async () => {
    await onExample(async (page) => {
      const before = await savedPlan(page);
      const give = (): Promise<void> => dropFiles(page, { 'half.gpx': FULL });
      const courses = async (): Promise<(string | undefined)[]> => (await saved(page)).courses.map(({ gpx }) => gpx);
      await give();
      await sheet(page).getByText('is open and stays as it is').waitFor();
      await expectNoAxeFaults(page, { arrived: 1 }, '.start-sheet');
      await page.keyboard.press('Escape');
      await expect.poll(() => sheet(page).count()).toBe(0);
      expect(await savedPlan(page)).toBe(before);

      await give();
      await button(page, 'Compare with it').click();
      await sheet(page).getByText('They run the same way on one road for 0.00 km.').waitFor();
      await button(page, 'A new course of this plan').click();
      // Never under the name of a file that the plan has.
      await expect.poll(courses).toEqual(['full.gpx', 'half.gpx', 'half-2.gpx']);
      await button(page, 'Undo').click();
      await expect.poll(() => savedPlan(page)).toBe(before);

      await give();
      await button(page, 'Points recorded on the ground').click();
      await expect.poll(() => page.getByRole('tab', { name: /^Review/u }).getAttribute('aria-selected')).toBe('true');
      expect(await savedPlan(page)).toBe(before);
    });
  });

  it('replaces a course that stations stand along, as one step', async () => {
    await first(async (page) => {
      await dropFiles(page, { 'full.gpx': FULL });
      await sheet(page).getByLabel('Name of the plan').fill('Long');
      await button(page, 'Make the plan').click();
      await expect.poll(() => title(page)).toBe('Long');
      const before = await savedPlan(page);
      await dropFiles(page, { 'new.gpx': gpxText([straight(OCEAN, 90, 121, 100)]) });
      await button(page, 'Replace the course').click();
      await expect.poll(async () => (await saved(page)).courses[0]!.gpx).toBe('new.gpx');
      await button(page, 'Undo').click();
      await expect.poll(() => savedPlan(page)).toBe(before);
    });
  });
});
