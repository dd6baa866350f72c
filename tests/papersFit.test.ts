/** The papers as a browser prints them: how many pages each takes, and that nothing is cut off, whatever fonts the system has. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Analysis, analyse } from '../packages/core/src/analyse.ts';
import { reviewDocument } from '../packages/core/src/export/reviewDocument.ts';
import { readGround } from '../packages/core/src/ground/readGround.ts';
import { readGpx } from '../packages/core/src/gpx/read.ts';
import { contextOf } from '../packages/core/src/papers/context.ts';
import { pageBox } from '../packages/core/src/papers/frameStyle.ts';
import { papersOf } from '../packages/core/src/papers/papers.ts';
import { reportBox } from '../packages/core/src/papers/reportStyle.ts';
import { textWidth } from '../packages/core/src/papers/textBox.ts';
import { readPlan } from '../packages/core/src/plan/read.ts';
import { valueOf } from '../packages/core/src/testing/courses.ts';
import { LANGUAGES } from '../packages/core/src/text/languages.ts';
import { documentHtml, html } from '../packages/core/src/papers/html.ts';
import { drawingOf, randomStations } from '../packages/core/src/testing/randomStations.ts';
import { ROOT } from './support/build.ts';
import { FONT_SETS, type FontSet, browserWith } from './support/fontSets.ts';
import { type Printed, printed } from './support/printed.ts';

const folder = mkdtempSync(join(tmpdir(), 'halfcup-fonts-'));
const browsers = new Map<FontSet, Browser>();
beforeAll(async () => {
  for (const set of FONT_SETS) browsers.set(set, await browserWith(set, folder));
});
afterAll(async () => {
  for (const browser of browsers.values()) await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

const demoFile = (name: string): string => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');
const analysed = (keys: object): Analysis => {
  const text = { ...(JSON.parse(demoFile('plan.json')) as object), ...keys };
  const { plan } = valueOf(readPlan(JSON.stringify(text), 'plan.json'));
  return valueOf(
    analyse(plan, {
      gpx: new Map(['full.gpx', 'half.gpx'].map((name) => [name, valueOf(readGpx(demoFile(name), name))])),
      ground: new Map([['ground.geojson', valueOf(readGround(demoFile('ground.geojson'), 'ground.geojson'))]]),
    }),
  );
};
const demo = analysed({});
/** The demo with all that a plan may hold of the year around race day. */
const year = analysed({
  weather: [
    { at: '07:00', airC: 16, humidity: 0.8, windKmh: 12 },
    { at: '09:00', wbgtC: 19.5, windKmh: 35 },
    { at: '12:00', wbgtC: 24, windKmh: 45 },
  ],
});
/** Fourteen stations along the demo's two courses; at the seventh 17 tables. */
const many = analysed({
  stations: Array.from({ length: 14 }, (_, k) => ({
    id: `m${k}`,
    name: `Kerb ${String.fromCodePoint(65 + k)}`,
    on: { course: 'full', measure: `${2.4 + 2.8 * k} km`, side: k % 2 === 0 ? 'right' : 'left' },
    serves: ['gel', 'sportsDrink', 'water'],
    ...(k === 6 ? { tables: { gel: 3, sportsDrink: 6, water: 8 } } : {}),
  })),
  variants: [],
  waivers: [],
});
const PLANS = { demo, year, many } as const;
const context = contextOf(JSON.parse(demoFile('context.geojson')))!;

const CASES = LANGUAGES.flatMap(({ language }) =>
  (['a4', 'letter'] as const).map((paper) => [language, paper] as const),
);
/** Papers bring their font: every set of fonts for one language and sheet, and for all of them where CI has the time. */
const setsFor = (language: string, paper: string): readonly FontSet[] =>
  process.env['CI'] !== undefined || (language === 'en' && paper === 'a4') ? FONT_SETS : FONT_SETS.slice(-1);
/** Millimetres: Chromium gives widths in 64ths, and cuts advances to a 16th of a pixel (measured). */
const ROUNDING = 0.02;
const STEP = 25.4 / 96 / 16;
const PRINTED_AT = '2027-09-01 18:30';

it('gives each browser only the fonts of its set, on Linux', async () => {
  const widths = new Set<number>();
  for (const browser of browsers.values()) {
    const page = await browser.newPage();
    await page.setContent('<span style="font: 100px sans-serif">Hamburgefonts</span>');
    widths.add(await page.evaluate(() => document.querySelector('span')!.getBoundingClientRect().width));
    await page.close();
  }
  expect(widths.size).toBe(process.platform === 'linux' ? FONT_SETS.length : 1);
});

describe.each([
  ...CASES.map(([language, paper]) => ['demo', language, paper] as const),
  ...CASES.map(([language, paper]) => ['year', language, paper] as const),
  ['many', 'en', 'a4'] as const,
  ['many', 'es', 'letter'] as const,
])('the papers of the plan %s in %s on %s', (which, language, paper) => {
  const analysis = PLANS[which];
  const review = reviewDocument(analysis, { sha256: '0'.repeat(64), inputs: [] });
  const papers = papersOf(analysis, { paper, language, context, printedAt: PRINTED_AT, review });
  const widthOf = (name: string): number => (name === 'report.html' ? reportBox(paper) : pageBox(paper)).width;
  const sets = which === 'demo' ? setsFor(language, paper) : FONT_SETS.slice(-1);
  const pages = new Map<FontSet, Readonly<Record<string, number>>>();

  it.each(sets)(
    'fit, with nothing cut off or lying on another, on a system with these fonts: %s',
    async (set) => {
      const all: Record<string, Printed> = {};
      for (const { name, html } of papers) all[name] = await printed(browsers.get(set)!, html, widthOf(name));
      const each = Object.entries(all);
      pages.set(set, Object.fromEntries(each.map(([name, one]) => [name, one.pages])));
      expect(each.flatMap(([name, { faults }]) => faults.map((fault) => `${name}: ${fault}`))).toEqual([]);

      // One page a station, the overview on one. Four role cards are two pages a station; gel's card makes it three.
      const stations = analysis.stations.length;
      const gel = analysis.stations.filter(({ station }) => station.serves.includes('gel')).length;
      const wanted = { 'overview.html': 1, 'captains.html': stations, 'cards.html': 2 * stations + gel };
      expect(pages.get(set)).toMatchObject(wanted);

      // Drawings are laid out before any browser sees them: no text is wider than core took it to be, and none much narrower.
      const drawn = each.flatMap(([, one]) => one.drawn);
      expect(drawn.length).toBeGreaterThan(100);
      const off = drawn.filter(({ text, points, bold, width }) => {
        const spare = textWidth(text, points, bold) - width;
        return !(spare > -ROUNDING && spare < ROUNDING + text.length * STEP);
      });
      expect(off).toEqual([]);
    },
    600_000,
  );

  it('take as many pages whatever fonts the system has', () => {
    expect([...pages.keys()]).toEqual([...sets]);
    const [first, ...rest] = pages.values();
    expect(Object.keys(first!).length).toBeGreaterThan(6);
    for (const one of rest) expect(one).toEqual(first);
  });
});

it.each(FONT_SETS)(
  'draws random stations with no label on another and none cut, on a system with these fonts: %s',
  async (set) => {
    const stations = randomStations(process.env['CI'] === undefined ? 60 : 300, 7);
    const body = html`${stations.map((one) => html`<p>${drawingOf(one).svg}</p>`)}`;
    const { faults, drawn } = await printed(
      browsers.get(set)!,
      documentHtml({ lang: 'en', title: 'Drawings', style: 'body { margin: 0; } svg { display: block; }', body }),
      270,
    );
    expect(drawn.length).toBeGreaterThan(stations.length * 8);
    expect(faults).toEqual([]);
  },
  300_000,
);
