/** The papers as a browser prints them: how many pages each takes, on both sizes of paper and in every language. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { type Analysis, analyse } from '../packages/core/src/analyse.ts';
import { papersOf } from '../packages/core/src/papers/papers.ts';
import { LANGUAGES } from '../packages/core/src/text/languages.ts';
import { readGpx } from '../packages/core/src/gpx/read.ts';
import { readPlan } from '../packages/core/src/plan/read.ts';
import { valueOf } from '../packages/core/src/testing/courses.ts';
import { sharedBrowser } from './support/browser.ts';
import { ROOT } from './support/build.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const demoFile = (name: string): string => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');

function demoAnalysis(): Analysis {
  const { plan } = valueOf(readPlan(demoFile('plan.json'), 'plan.json'));
  return valueOf(
    analyse(plan, {
      gpx: new Map(['full.gpx', 'half.gpx'].map((name) => [name, valueOf(readGpx(demoFile(name), name))])),
    }),
  );
}

/** Pages of a PDF: each is an object of type Page (ISO 32000-1, 7.7.3.3). */
const pagesOf = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type\s*\/Page\b/gu)?.length ?? 0;

const CASES = LANGUAGES.flatMap(({ language }) =>
  (['a4', 'letter'] as const).map((paper) => [language, paper] as const),
);

it.each(CASES)(
  'the demo’s captains have one page a station, its cards two to a page, its overview one page, in %s on %s',
  async (language, paper) => {
    const analysis = demoAnalysis();
    const stations = analysis.stations.length;
    const papers = papersOf(analysis, { paper, language, printedAt: '2027-09-01 18:30' });
    const page = await browser.newPage();
    const pages: Record<string, number> = {};
    for (const { name, html } of papers.filter((one) =>
      ['captains.html', 'cards.html', 'overview.html'].includes(one.name),
    )) {
      await page.setContent(html);
      pages[name] = pagesOf(await page.pdf({ preferCSSPageSize: true }));
    }
    await page.close();
    expect(pages).toEqual({ 'overview.html': 1, 'captains.html': stations, 'cards.html': stations });
  },
);
