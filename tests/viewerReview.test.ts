/** Positions side by side, review with waivers, points as placed, the report, race day and better positions: built, in a real browser. */
import {
  type Analysis,
  type PlanDocument,
  analyse,
  compareAnalyses,
  improve,
  readPlan,
  withVariant,
} from '@halfcup/core';
import { type PlanVariant } from '@halfcup/core/plan';
import { THEMES, movedText } from '@halfcup/core/stages';
import { formatMinute } from '@halfcup/core/units';
import { themeText } from '@halfcup/core/sentences';
import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Stage,
  type Visit,
  LOOKS,
  dropFiles,
  PANEL,
  expectNoAxeFaults,
  faultless,
  foreignOf,
  inLooks,
  mapIdle,
  openStage,
  savedPlan,
  sharedVisit,
} from './support/browser.ts';
import { DEMO_FILES, DEMO_SOURCES, demoText } from './support/demo.ts';
import { must } from './support/exported.ts';
import { folderWith, halfcupIn } from './support/halfcup.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
}, 120_000);

const PLAN = demoText('plan.json');

const documentOf = (text: string): PlanDocument => must(readPlan(text, 'plan.json'));
const analysisOf = (text: string, variant: string | null = null): Analysis =>
  must(
    analyse((variant === null ? documentOf(text) : must(withVariant(documentOf(text), variant))).plan, DEMO_SOURCES),
  );

const on = (act: (seen: Visit) => Promise<void>): Promise<void> => faultless(stage, act, { map: false });
/** The map follows what is changed: nothing goes wrong in it either. */
const onMap = (act: (seen: Visit) => Promise<void>): Promise<void> => faultless(stage, act);

const tab = (page: Page, name: string): Promise<void> =>
  page.getByRole('tab', { name: new RegExp(`^${name}( ?\\d+)?$`, 'u') }).click();
const undo = (page: Page): Promise<void> => page.getByRole('button', { name: /^Undo/u }).click();
const button = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });

/** Moves a station by 100 m along its course, by keys on the strip. */
const moveOn = (page: Page, number: number): Promise<void> =>
  page
    .getByRole('button', { name: new RegExp(`^Station ${number}, `, 'u') })
    .first()
    .press('Alt+ArrowRight');

/** The cells of the rows of a table, as they are read. */
const cells = (table: Locator): Promise<string[][]> =>
  table
    .locator('tbody tr')
    .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => (cell as HTMLElement).innerText.trim())));

const drop = (page: Page, name: string, text: string): Promise<void> => dropFiles(page, { [name]: text });

/** Waypoints at the places of three stations' items; the second station's sign 33 m off, the third's told too roughly. */
function recordedPoints(): string {
  const { stations } = analysisOf(PLAN);
  const points = stations.slice(0, 3).flatMap(({ id, directions }, index) =>
    directions
      .find(({ lead }) => lead)!
      .items.filter(({ kind }) => kind !== 'handOut')
      .map(({ kind, at }) => {
        const [lon, lat] = at[0]!;
        // The third's trash a little off, so that no distance lies between two whole metres.
        const off = index === 1 && kind === 'sign' ? 0.0003 : index === 2 && kind === 'trash' ? 0.00002 : 0;
        const word = kind === 'sportsDrink' ? 'sports drink' : kind;
        return `  <wpt lat="${lat + off}" lon="${lon}"><name>${id} ${word}</name><hdop>${index === 2 ? 4 : 0.2}</hdop></wpt>`;
      }),
  );
  return [
    '<gpx version="1.1" creator="halfcup tests" xmlns="http://www.topografix.com/GPX/1/1">',
    ...points,
    '</gpx>',
    '',
  ].join('\n');
}

interface CliPlaced {
  readonly placed: readonly {
    readonly item: string;
    readonly verdict: 'holds' | 'fails' | 'cannot tell';
    readonly measured: number;
    readonly limit: readonly [number, number];
    readonly margin: number;
    readonly move: number;
  }[];
  readonly built: readonly { readonly station: string; readonly distance: number; readonly margin: number }[];
  readonly findings: readonly { readonly waived?: object; readonly built?: true }[];
}

/** What the command line says of the same files. */
async function placedByCommandLine(plan: string, points: string): Promise<CliPlaced> {
  const folder = folderWith({ ...DEMO_FILES, 'plan.json': plan });
  writeFileSync(join(folder, 'points.gpx'), points);
  return JSON.parse(
    (await halfcupIn(folder, 'review', 'plan.json', '--placed', 'points.gpx', '--json')).out,
  ) as CliPlaced;
}

/** As a crew can lay it out: whole metres from 10 on, one decimal below, and never less than nothing. */
const metres = (value: number): string => {
  const text = String(Number(Math.abs(value).toFixed(Math.abs(value) < 9.95 ? 1 : 0)));
  return value < 0 && text !== '0' ? `−${text}` : text;
};

describe('the plan left, or brought back, as it was', () => {
  const seen = sharedVisit({ map: false });
  const on = (act: (seen: Visit) => Promise<void>): Promise<void> => act(seen());

  describe('positions under names', () => {
    it('keeps the positions shown: every station’s place and declared side, and undo gives the bytes', async () => {
      await on(async ({ page }) => {
        await tab(page, 'Variants');
        await page.getByLabel('Name of a variant', { exact: true }).fill('first idea');
        await button(page, 'Save current as variant').click();
        const saved = documentOf(await savedPlan(page));
        const kept = saved.plan.variants.find(({ name }: PlanVariant) => name === 'first idea')!;
        expect(Object.keys(kept.stations)).toEqual(saved.plan.stations.map(({ id }) => id));
        const raw = JSON.parse(PLAN) as { stations: { id: string; at?: unknown; on?: unknown; side?: unknown }[] };
        for (const { id, at, on: along, side } of raw.stations) {
          expect(kept.stations[id]).toEqual({
            ...(at === undefined ? {} : { at }),
            ...(along === undefined ? {} : { on: along }),
            ...(side === undefined ? {} : { side }),
          });
        }
        await undo(page);
        expect(await savedPlan(page)).toBe(PLAN);
      });
    });

    it('says at the field what is wrong with a name, and keeps nothing', async () => {
      await on(async ({ page }) => {
        await tab(page, 'Variants');
        const known = documentOf(PLAN).plan.variants[0]!.name;
        const field = page.getByLabel('Name of a variant', { exact: true });
        for (const [typed, said] of [
          ['  ', /Type a name/u],
          [known.toUpperCase(), /already a variant/u],
          ['As planned', /means the plan itself/u],
        ] as const) {
          await field.fill(typed);
          await button(page, 'New variant').click();
          expect(await field.getAttribute('aria-invalid')).toBe('true');
          const trouble = page.locator(`[id="${(await field.getAttribute('aria-describedby'))!.split(' ')[0]!}"]`);
          expect(await trouble.textContent()).toMatch(said);
        }
        expect(await savedPlan(page)).toBe(PLAN);
      });
    });

    it('renames, deletes, and takes positions into the plan, each one step of undo to the very bytes', async () => {
      await on(async ({ page }) => {
        await tab(page, 'Variants');
        const [first] = documentOf(PLAN).plan.variants;
        const name = first!.name;
        await button(page, new RegExp(`^${name} `, 'u')).click();
        await button(page, `Rename ${name}`).click();
        await page.getByLabel('New name').fill('renamed');
        await page.getByLabel('New name').press('Enter');
        expect(await page.getByLabel('Variant shown').inputValue()).toBe('renamed');
        expect(documentOf(await savedPlan(page)).plan.variants[0]!.name).toBe('renamed');
        await undo(page);
        expect(await page.getByLabel('Variant shown').inputValue()).toBe(name);
        expect(await savedPlan(page)).toBe(PLAN);
        const [wanted] = [analysisOf(PLAN, name)];
        await button(page, `Apply ${name} to plan`).click();
        const taken = await savedPlan(page);
        expect(analysisOf(taken).stations.map(({ at }) => at)).toEqual(wanted.stations.map(({ at }) => at));
        expect(await page.getByLabel('Variant shown').inputValue()).toBe('');
        await undo(page);
        expect(await savedPlan(page)).toBe(PLAN);
        await button(page, `Delete ${name}`).click();
        expect(documentOf(await savedPlan(page)).plan.variants.map((one) => one.name)).not.toContain(name);
        await undo(page);
        expect(await savedPlan(page)).toBe(PLAN);
      });
    });
  });

  describe('race day for the whole plan', () => {
    it('lists every vehicle’s runs with core’s times, and the packs of all stations', async () => {
      await on(async ({ page }) => {
        await tab(page, 'Race day');
        const day = analysisOf(PLAN).day!;
        const tables = page.locator('.run-table');
        const { vehicles } = documentOf(PLAN).plan;
        const runs = vehicles.flatMap(({ id }) => day.runs.filter(({ vehicle }) => vehicle === id));
        expect(runs.length).toBeGreaterThan(1);
        expect(await tables.count()).toBe(runs.length);
        for (const [index, { stops }] of runs.entries()) {
          expect((await cells(tables.nth(index))).map(([, arrives, leaves]) => [arrives, leaves])).toEqual(
            stops.map(({ arrive, leave }) => [formatMinute(arrive), formatMinute(leave)]),
          );
        }
        const totals = page.getByRole('region', { name: 'All stations together' });
        expect((await cells(totals.getByRole('table'))).map((row) => row.at(-1)!.replaceAll(',', ''))).toEqual(
          day.totals.packs.map(({ count }) => String(count)),
        );
      });
    });
  });
});

describe('positions under names', () => {
  it('lays changed positions beside those as planned as core compares them, and goes to a station', async () => {
    await onMap(async ({ page }) => {
      await tab(page, 'Variants');
      await page.getByLabel('Name of a variant', { exact: true }).fill('farther');
      await button(page, 'New variant').click();
      await page.getByLabel('Compare with').selectOption({ label: 'Main plan' });
      await page.getByText('No differences.').waitFor();
      for (const number of [7, 7, 2]) await moveOn(page, number);
      const text = await savedPlan(page);
      expect(JSON.parse(text)).toMatchObject({ stations: (JSON.parse(PLAN) as { stations: unknown }).stations });
      const [before, after] = [analysisOf(text), analysisOf(text, 'farther')];
      const comparison = compareAnalyses(['Main plan', 'farther'], before, after);
      expect(comparison.stations.map(({ id }) => id)).toEqual(['s2', 's7']);
      const beside = page.getByRole('region', { name: 'Compare' });
      const moved = await cells(beside.getByRole('table', { name: /^Stations that move/u }));
      expect(moved.map(([name, by]) => [name, Number(by!.replace(/ m$/u, ''))])).toEqual(
        comparison.stations.map(({ id, name, moved: by }) => [`${id.slice(1)} · ${name}`, expect.closeTo(by, 0)]),
      );
      const km = (value: number): string => (value / 1000).toFixed(2);
      for (const { race, legs, longest, shortest, mean } of comparison.spacing) {
        const name = after.plan.races.find(({ id }) => id === race)!.name;
        const rows = await cells(beside.getByRole('table', { name: new RegExp(`^${name}`, 'u') }));
        expect(rows.map(([, from, to]) => [from, to])).toEqual(
          [longest, shortest, mean, ...legs.map(({ length }) => length)].map((pair) => pair.map((value) => km(value!))),
        );
      }
      const two = (along: number | null, wheel: number | null): string =>
        [along, wheel].map((value) => (value === null ? '–' : metres(value))).join('\n');
      const items = await cells(beside.getByRole('table', { name: /^From the pin/u }));
      expect(items.map(([, from, to]) => [from, to])).toEqual(
        comparison.items.map(({ along, wheel }) => [two(along[0], wheel[0]), two(along[1], wheel[1])]),
      );
      expect(items.length).toBeGreaterThan(0);
      // The chapel's sign is placed by hand and stays where it is: the tables move away from it.
      const signs = await cells(beside.getByRole('table', { name: /^To the first table/u }));
      const sign = comparison.items.find(({ station, item }) => station === 's2' && item === 'sign')!;
      expect(signs.map(([, from, to]) => [from!.split('\n')[0], to!.split('\n')[0]])).toEqual([
        sign.along.map((value) => metres(-value!)),
      ]);
      expect(comparison.findings.lost.map(({ code }) => code)).toContain('leg-long');
      for (const [title, findings] of [
        ['New in farther', comparison.findings.gained],
        ['Resolved from Main plan', comparison.findings.lost],
      ] as const) {
        const heading = await beside.getByRole('heading', { name: new RegExp(`^${title}`, 'u') }).textContent();
        expect(heading).toBe(
          `${title}: ${findings.length === 0 ? 'none' : `${findings.length} finding${findings.length === 1 ? '' : 's'}`}`,
        );
      }
      await beside
        .getByRole('button', { name: /Tidewaiters/u })
        .first()
        .click();
      await expect
        .poll(() =>
          page
            .getByRole('complementary', { name: 'Selected station' })
            .getByRole('heading', { level: 2 })
            .textContent(),
        )
        .toContain('Tidewaiters’ Green');
    });
  });
});

/** Titles of the groups, as core's review has them by theme. */
const themesOf = (text: string): string[] => {
  const { findings, checks } = analysisOf(text);
  const themes = new Set(findings.filter(isOpen).map(({ code }) => checks.find((check) => check.code === code)!.theme));
  return THEMES.filter((theme) => themes.has(theme)).map((theme) => themeText(theme, 'en'));
};
const isOpen = ({ waived }: { readonly waived?: object }): boolean => waived === undefined;

describe('the list of findings', () => {
  const groups = (page: Page): Promise<string[]> => page.locator('.group-title').allTextContents();

  it('is grouped by theme, else by severity or station, by keyboard; folds; and remembers how', async () => {
    await on(async ({ page }) => {
      await tab(page, 'Review');
      expect(await groups(page)).toEqual(themesOf(PLAN));
      const items = page.getByRole('region', { name: 'Signs, tables and boxes 1 error' });
      const head = items.getByRole('button', { name: /^Signs/u });
      expect(await items.getByRole('listitem').count()).toBe(1);
      await head.press('Enter');
      expect(await head.getAttribute('aria-expanded')).toBe('false');
      expect(await items.getByRole('listitem').count()).toBe(0);
      // Another pane and back: it stays folded.
      await tab(page, 'Stations');
      await tab(page, 'Review');
      expect(await items.getByRole('listitem').count()).toBe(0);
      await head.press('Space');
      expect(await items.getByRole('listitem').count()).toBe(1);
      await button(page, 'Station').press('Enter');
      expect(await groups(page)).toEqual(['2 · Stennick Chapel', '8 · Quillet Park', '9 · Packet Pier']);
      await page.reload();
      await mapIdle(page);
      await tab(page, 'Review');
      expect(await button(page, 'Station').getAttribute('aria-pressed')).toBe('true');
      await button(page, 'Severity').click();
      expect(await groups(page)).toEqual(['Errors', 'Warnings', 'Notes']);
    });
  });

  it('offers what mends a finding as one step of undo, and a waived error shows wherever its station does', async () => {
    await on(async ({ page }) => {
      await tab(page, 'Review');
      const remedy = button(page, 'Place the sign by the rules, 2 · Stennick Chapel');
      await remedy.press('Enter');
      // It stands by hand because a driveway is in the way: that is said, and a person decides.
      await page
        .getByText(/^The sign stands by the rules\. But there is a new error: The sign stands in the keep-clear zone/u)
        .waitFor();
      expect(await remedy.count()).toBe(0);
      await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('review-heading');
      const codes = (text: string): string[] => analysisOf(text).findings.map(({ code }) => code);
      const mended = codes(PLAN).map((code) => (code === 'sign-distance' ? 'item-in-zone' : code));
      await button(page, 'Take it back').click();
      expect(await savedPlan(page)).toBe(PLAN);
      await button(page, /^Redo/u).click();
      expect(codes(await savedPlan(page)).toSorted()).toEqual(mended.toSorted());
      await undo(page);
      const confirm = button(page, 'Confirm: only these are served, 9 · Packet Pier');
      await confirm.click();
      await page.getByText('Only the runners served now are served. Undo reverts this.').waitFor();
      expect(await confirm.count()).toBe(0);
      expect(codes(await savedPlan(page))).toEqual(codes(PLAN).filter((code) => code !== 'seen-not-served'));
      await undo(page);
      expect(await savedPlan(page)).toBe(PLAN);
      await button(page, /^Waive, 2 · Stennick Chapel/u).click();
      await page.getByLabel('Waived by').fill('Road captain');
      await page.getByLabel('Reason').fill('Seen on the ground');
      await page.getByLabel('Date').fill('2027-08-01');
      await button(page, 'Waive').click();
      await page.getByRole('region', { name: /^Waived/u }).waitFor();
      expect(await remedy.count()).toBe(0);
      await tab(page, 'Stations');
      const row = page.getByRole('row').filter({ has: button(page, 'Stennick Chapel') });
      expect(await row.locator('.state-cell').textContent()).toMatch(/1 waived error$/u);
      await button(page, 'Stennick Chapel').click();
      const panel = page.getByRole('complementary', { name: 'Selected station' });
      await expect.poll(() => panel.locator('.station-state').textContent()).toContain('1 waived error');
      expect(await panel.textContent()).not.toContain('No problems found');
      await panel.getByRole('button', { name: 'See findings' }).click();
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('station-findings');
      expect(await page.getByRole('button', { name: /^Station 2, .*, 1 waived error$/u }).count()).toBe(1);
      expect(
        await page.getByRole('button', { name: /^Waived error, 2 · Stennick Chapel: The sign is 70 m/u }).count(),
      ).toBe(1);
    });
  });

  it('is gone to from the marks on the strip, by mouse and by keys, and from those on the map', async () => {
    const plan = JSON.parse(PLAN) as { zones: object[] };
    const far: [number, number] = [-17.37, -33.25];
    const [lon, lat] = far;
    const polygon = [far, [lon + 0.001, lat], [lon + 0.001, lat - 0.001], [lon, lat - 0.001]];
    plan.zones.push({ name: 'Ferry ramp', rule: 'keep-clear', polygon });
    await faultless({ ...stage, address: `${stage.address}#bench` }, async ({ page }) => {
      await dropFiles(page, {
        ...DEMO_FILES,
        'plan.json': JSON.stringify(plan),
        'context.geojson': demoText('context.geojson'),
      });
      const marks = page.getByRole('group', { name: 'Findings along the course' }).getByRole('button');
      const focused = (): Promise<string | null | undefined> =>
        page.evaluate(() => document.activeElement?.textContent);
      await marks.first().click();
      await expect.poll(focused).toContain('The sign is 70 m before the first table');
      expect(await page.locator('#tab-review').getAttribute('aria-selected')).toBe('true');
      const head = button(page, /^Distances between stations/u);
      await head.click();
      await marks.first().focus();
      await page.keyboard.press('ArrowRight');
      await expect
        .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
        .toMatch(/^Warning, 8 · Quillet Park: Full marathon runs 5\.16 km/u);
      await page.keyboard.press('Enter');
      // Its group was folded.
      await expect.poll(focused).toContain('Full marathon runs 5.16 km');
      expect(await head.getAttribute('aria-expanded')).toBe('true');
      await button(page, 'Whole plan').click();
      await mapIdle(page);
      const [x, y] = await page.evaluate((at) => {
        const { halfcupBench } = window as unknown as {
          halfcupBench: { place: (at: readonly number[]) => readonly [number, number] };
        };
        return halfcupBench.place(at);
      }, far);
      await page.mouse.click(x, y);
      await expect.poll(focused).toContain('Zone “Ferry ramp” lies');
    });
  });
});

describe('waivers', () => {
  it('waives a finding with name, reason and date; it stays visible; undo gives the bytes, and it can be taken back', async () => {
    await on(async ({ page }) => {
      await tab(page, 'Review');
      const before = analysisOf(PLAN).findings;
      const target = before.find(({ severity, waived }) => severity === 'error' && waived === undefined)!;
      await button(page, /^Waive, 2 · Stennick Chapel: The sign is 70 m/u)
        .first()
        .click();
      await button(page, 'Waive').click();
      await page.getByText('Type the name of the person').waitFor();
      expect(await savedPlan(page)).toBe(PLAN);
      await page.getByLabel('Waived by').fill('Road captain');
      await page.getByLabel('Reason').fill('Seen on the ground');
      await page.getByLabel('Date').fill('2027-02-30');
      await button(page, 'Waive').click();
      await page.getByText('is not a date. Write it as').waitFor();
      await page.getByLabel('Date').fill('2027-08-01');
      await button(page, 'Waive').click();
      const waived = page.getByRole('region', { name: /^Waived/u });
      await waived.waitFor();
      expect(await waived.textContent()).toContain('Road captain, Sunday 1 August 2027: Seen on the ground');
      const text = await savedPlan(page);
      const own = analysisOf(text).findings.filter(
        ({ code, where }) => code === target.code && where.station === target.where.station,
      );
      expect(own.length).toBeGreaterThan(0);
      for (const one of own)
        expect(one.waived).toEqual({ by: 'Road captain', reason: 'Seen on the ground', date: '2027-08-01' });
      await undo(page);
      expect(await savedPlan(page)).toBe(PLAN);
      await button(page, /^Redo/u).click();
      await button(page, /^Remove waiver, 2 · Stennick Chapel/u).click();
      await expect
        .poll(async () => documentOf(await savedPlan(page)).plan.waivers.length)
        .toBe(documentOf(PLAN).plan.waivers.length);
      expect(analysisOf(await savedPlan(page)).findings).toEqual(before);
    });
  });
});

describe('points recorded on the ground', () => {
  it('reads every sign and trash drop as the command line does, leaves the plan as it is, and judges again as it changes', async () => {
    const points = recordedPoints();
    await onMap(async ({ page }) => {
      await tab(page, 'Review');
      await drop(page, 'points.gpx', points);
      const table = page.getByRole('table', { name: /^Signs: distance to the first table/u });
      await table.waitFor();
      const expectRows = async (plan: string): Promise<CliPlaced> => {
        const said = await placedByCommandLine(plan, points);
        const rows = said.placed.map(({ verdict, measured, limit, margin, move }) => [
          [
            { holds: 'OK', fails: 'out of place', 'cannot tell': 'unclear' }[verdict],
            metres(move) === '0' ? '' : `${metres(Math.abs(move))} m ${move < 0 ? 'back' : 'forward'}`,
          ]
            .filter((part) => part !== '')
            .join('\n'),
          `${metres(measured)} ± ${metres(margin)}\n${metres(limit[0])} to ${metres(limit[1])}`,
        ]);
        await expect.poll(async () => (await cells(table)).map(([, ...rest]) => rest)).toEqual(rows);
        const apart = said.built.map(({ distance, margin }) => `${metres(distance)} ± ${metres(margin)}`);
        const stations = await cells(page.getByRole('table', { name: /^Stations, by the first table recorded/u }));
        expect(stations.map((row) => row[3]!.split('\n')[0])).toEqual(apart);
        expect(await page.locator('.finding-built').count()).toBe(said.findings.filter(({ built }) => built).length);
        const count = await page.getByRole('tab', { name: /^Review/u }).textContent();
        expect(count).toBe(`Review${said.findings.filter(({ waived }) => waived === undefined).length}`);
        return said;
      };
      const first = await expectRows(PLAN);
      expect(new Set(first.placed.map(({ verdict }) => verdict))).toEqual(new Set(['holds', 'fails', 'cannot tell']));
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(documentOf(PLAN).plan.name);
      expect(await savedPlan(page)).toBe(PLAN);
      await table.getByRole('button').nth(2).click();
      await mapIdle(page);
      await moveOn(page, 3);
      await expectRows(await savedPlan(page));
      await button(page, 'Remove points').click();
      await expect.poll(() => table.count()).toBe(0);
    });
  });

  it('asks before a file of such points could replace the open plan, and says why a file without any cannot be compared', async () => {
    await on(async ({ page }) => {
      await drop(page, 'points.gpx', recordedPoints());
      await page.getByRole('dialog', { name: 'What is points.gpx?' }).waitFor();
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(documentOf(PLAN).plan.name);
      await button(page, 'Points recorded on the ground').click();
      await page.getByRole('table', { name: /^Signs: distance to the first table/u }).waitFor();
      await page.locator('.placed-file').setInputFiles({
        name: 'course.gpx',
        mimeType: 'application/gpx+xml',
        buffer: Buffer.from(demoText('half.gpx').replaceAll(/<wpt[\s\S]*?<\/wpt>/gu, '')),
      });
      await expect.poll(() => page.getByRole('alert').first().textContent()).toContain('This file has no waypoints');
      expect(await savedPlan(page)).toBe(PLAN);
    });
  });
});

describe('the reviewer’s report', () => {
  it('prints under the page’s policy, styled, naming every file by its SHA-256', async () => {
    await on(async ({ page, requests }) => {
      await page.addInitScript(() => {
        window.print = () => void ((window.top as unknown as { printed: number }).printed = 1);
      });
      await page.reload();
      await mapIdle(page);
      await tab(page, 'Review');
      await drop(page, 'points.gpx', recordedPoints());
      await page.getByRole('table', { name: /^Signs: distance to the first table/u }).waitFor();
      await button(page, 'Print report').click();
      await expect.poll(() => page.evaluate(() => (window as unknown as { printed?: number }).printed)).toBe(1);
      const paper = page.frameLocator('#paper-print');
      expect(await paper.getByRole('heading', { level: 1 }).textContent()).toContain(documentOf(PLAN).plan.name);
      const text = await paper.locator('body').innerText();
      for (const file of Object.values({ ...DEMO_FILES, points: recordedPoints() }))
        expect(text.replaceAll(/\s/gu, '')).toContain(createHash('sha256').update(file).digest('hex'));
      expect(text).toContain('out of place');
      const styled = await paper.locator('html').evaluate((root) => ({
        rules: root.ownerDocument.adoptedStyleSheets[0]!.cssRules.length,
        page: [...root.ownerDocument.adoptedStyleSheets[0]!.cssRules].some((rule) => rule.cssText.startsWith('@page')),
        mode: root.ownerDocument.compatMode,
      }));
      expect(styled).toEqual({ rules: expect.any(Number), page: true, mode: 'CSS1Compat' });
      expect(styled.rules).toBeGreaterThan(5);
      expect(foreignOf(stage, requests)).toEqual([]);
    });
  });
});

describe('better places', () => {
  it('stops when told to, and changes nothing', async () => {
    await on(async ({ page }) => {
      await tab(page, 'Variants');
      await page.getByLabel('May move by up to').fill('5000');
      await button(page, 'Find better places').click();
      await button(page, 'Stop search').click();
      await page.getByText('Search stopped. Nothing was changed.').waitFor();
      await button(page, 'Find better places').waitFor();
      expect(await page.locator('.improve-result').count()).toBe(0);
      expect(await savedPlan(page)).toBe(PLAN);
    });
  });

  it('finds what core’s improve finds, and applies it to the plan or saves it as a variant, one step of undo each', async () => {
    await on(async ({ page }) => {
      await tab(page, 'Variants');
      await button(page, 'None').click();
      const only = ['s7', 's8'];
      for (const name of ['7 · Tidewaiters’ Green', '8 · Quillet Park'])
        await page.getByRole('checkbox', { name }).check();
      await page.getByLabel('May move by up to').fill('150');
      await button(page, 'Find better places').click();
      const expected = improve(analysisOf(PLAN), { only, within: 150 });
      expect(expected.moves.length).toBeGreaterThan(0);
      const moves = page.getByRole('table', { name: /^Moves along the course/u });
      await moves.waitFor({ timeout: 60_000 });
      expect(await cells(moves)).toEqual(
        expected.moves.map(({ shift, measure }) => [
          expect.any(String),
          `${metres(Math.abs(shift))} m ${shift < 0 ? 'back' : 'forward'}`,
          (measure / 1000).toFixed(2),
        ]),
      );
      const standing = await cells(page.getByRole('table', { name: 'Before and after' }));
      expect(standing.slice(0, 2)).toEqual([
        ['Errors', String(expected.before.error), String(expected.after.error)],
        ['Warnings', String(expected.before.warning), String(expected.after.warning)],
      ]);
      if (expected.proof === 'optimal')
        expect(await page.locator('.improve-result').textContent()).toContain(
          `Proven best of all combinations of the ${expected.tried} places tried`,
        );
      await button(page, 'Apply to plan').first().click();
      const wanted = movedText(documentOf(PLAN), expected.plan.stations, expected.moves);
      expect(await savedPlan(page)).toBe(wanted);
      await page.getByText('has changed since').waitFor();
      await undo(page);
      expect(await savedPlan(page)).toBe(PLAN);
      await page.getByLabel('Or as a variant named').fill('searched');
      await button(page, 'Save as variant').click();
      const kept = await savedPlan(page);
      expect(analysisOf(kept, 'searched').stations.map(({ at }) => at)).toEqual(
        expected.analysis.stations.map(({ at }) => at),
      );
      await undo(page);
      expect(await savedPlan(page)).toBe(PLAN);
    });
  });
});

/** Presses Tab until an element of that name has focus. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  // The page moves the focus to what took the place of a pressed button in the frame after: nobody types faster than that.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  for (let press = 0; press < 200; press++) {
    const found = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement & { labels?: NodeListOf<HTMLLabelElement> | null };
      return element.getAttribute('aria-label') ?? (element.labels?.[0] ?? element).textContent.trim();
    });
    if (name.test(found)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`no ${String(name)} within 200 presses of Tab`);
}

describe('the safety reviewer', () => {
  it('does everything by keyboard alone: goes to a finding, waives it, takes that back, adds points, goes to one, prints', async () => {
    await on(async ({ page }) => {
      // From now on choosers are caught: asked for only when one is due, it may open before.
      const chosen = page.waitForEvent('filechooser', { timeout: 120_000 });
      chosen.catch(() => undefined);
      await page.addInitScript(() => {
        window.print = () => void ((window.top as unknown as { printed: number }).printed = 1);
      });
      await page.reload();
      await mapIdle(page);
      await tabTo(page, /^Stations$/u);
      for (
        let step = 0;
        step < 8 && (await page.locator('#tab-review').getAttribute('aria-selected')) !== 'true';
        step++
      )
        await page.keyboard.press('ArrowRight');
      await tabTo(page, /^The sign is 70 m before the first table/u);
      await page.keyboard.press('Enter');
      await expect
        .poll(() =>
          page
            .getByRole('complementary', { name: 'Selected station' })
            .getByRole('heading', { level: 2 })
            .textContent(),
        )
        .toContain('Stennick Chapel');
      await tabTo(page, /^Waive, 2 · Stennick Chapel/u);
      await page.keyboard.press('Enter');
      await expect
        .poll(() => page.getByLabel('Waived by').evaluate((field) => field === document.activeElement))
        .toBe(true);
      await page.keyboard.type('Road captain');
      await tabTo(page, /^Reason$/u);
      await page.keyboard.type('Seen on the ground');
      await page.keyboard.press('Enter');
      await page.getByRole('region', { name: /^Waived/u }).waitFor();
      await tabTo(page, /^Remove waiver, 2 · Stennick Chapel/u);
      await page.keyboard.press('Enter');
      await expect.poll(() => button(page, /^Waive, 2 · Stennick Chapel/u).count()).toBe(1);
      await tabTo(page, /^Choose points/u);
      await page.keyboard.press('Enter');
      const chooser = await chosen;
      await chooser.setFiles({
        name: 'points.gpx',
        mimeType: 'application/gpx+xml',
        buffer: Buffer.from(recordedPoints()),
      });
      await page.getByRole('table', { name: /^Signs: distance to the first table/u }).waitFor();
      await tabTo(page, /^1 · Strand Road$/u);
      await page.keyboard.press('Enter');
      await expect
        .poll(() =>
          page
            .getByRole('complementary', { name: 'Selected station' })
            .getByRole('heading', { level: 2 })
            .textContent(),
        )
        .toContain('Strand Road');
      await tabTo(page, /^Print report$/u);
      await page.keyboard.press('Enter');
      await expect.poll(() => page.evaluate(() => (window as unknown as { printed?: number }).printed)).toBe(1);
    });
  }, 120_000);
});

describe('these panels', () => {
  it('are clean by axe, and no wider than their room, light and dark, 1440 and 360 px wide', async () => {
    await on(async ({ page }) => {
      const check = (where: string): Promise<void> =>
        inLooks(page, LOOKS, async (look) => {
          await expectNoAxeFaults(page, { where, ...look }, PANEL);
          const room = await page.locator('#panel').evaluate((panel) => panel.scrollWidth - panel.clientWidth);
          expect(room).toBeLessThanOrEqual(0);
        });
      await tab(page, 'Variants');
      await page.getByLabel('Name of a variant', { exact: true }).fill('as planned');
      await button(page, 'Save current as variant').click();
      const [first, second] = documentOf(PLAN).plan.variants;
      await page.getByLabel('Compare with').selectOption({ label: first!.name });
      await page.getByLabel('Variant shown').selectOption({ label: second!.name });
      await page.getByRole('heading', { name: /^New in/u }).waitFor();
      await page.getByLabel('May move by up to').fill('25');
      await button(page, 'Find better places').click();
      await page.locator('.improve-result').waitFor({ timeout: 60_000 });
      await check('positions under names');
      await tab(page, 'Review');
      await button(page, /^Waive,/u)
        .first()
        .click();
      await button(page, 'Waive').click();
      await drop(page, 'points.gpx', recordedPoints());
      await page.getByRole('table', { name: /^Signs: distance to the first table/u }).waitFor();
      await check('the review');
      await tab(page, 'Race day');
      await check('race day');
      await button(page, 'Wrack Fork').click();
      await check('a station on race day');
    });
  });
});
