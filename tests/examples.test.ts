/** The examples of core, as an outsider would run them: the programs in a process of their own, the pages built by Vite and opened in a browser. */
import { AxeBuilder } from '@axe-core/playwright';
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build, preview } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sharedBrowser } from './support/browser.ts';
import { CORE, ROOT } from './support/build.ts';
import { OCEAN, go, gpxText, straight } from './support/courses.ts';
import { documentIn } from './support/halfcup.ts';

const EXAMPLES = join(CORE, 'examples');
const scratch = mkdtempSync(join(tmpdir(), 'halfcup-examples-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

interface Ended {
  readonly status: number | null;
  readonly out: readonly string[];
  readonly err: string;
}

function example(name: string, ...args: readonly string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(EXAMPLES, name), ...args], {
    cwd: scratch,
    encoding: 'utf8',
  });
  expect(stderr).not.toMatch(/^\s+at /mu);
  return { status, out: stdout.split('\n').filter((line) => line !== ''), err: stderr };
}

const written = (name: string, text: string): string => {
  writeFileSync(join(scratch, name), text);
  return name;
};

describe('spacing.mjs', () => {
  const points = straight(OCEAN, 90, 51, 100);

  it('prints each leg from start to finish, both passes of an out-and-back among them, and the longest', async () => {
    const file = written(
      'back.gpx',
      gpxText([[...points, ...points.toReversed()]], [{ at: go(points[20]!, 0, 5), name: 'Tap' }]),
    );
    const { status, out } = example('spacing.mjs', file);
    expect(status).toBe(0);
    expect(out).toHaveLength(4);
    const [snapped] = ((await documentIn(scratch, 'snap', file)) as { points: { passes: { measure: number }[] }[] })
      .points;
    const measures = [
      0,
      ...snapped!.passes.map(({ measure }) => measure),
      ((await documentIn(scratch, 'course', file)) as { length: number }).length,
    ];
    const legs = measures.slice(1).map((measure, k) => ((measure - measures[k]!) / 1000).toFixed(3));
    expect(out.slice(0, 3)).toEqual([
      `  ${legs[0]!} km  start to Tap`,
      `  ${legs[1]!} km  Tap to Tap`,
      `  ${legs[2]!} km  Tap to finish`,
    ]);
    expect(out[3]).toBe(`  ${legs[1]!} km  is the longest leg`);
    expect(legs.map(Number)).toEqual([2, 6, 2]);
  });

  it('says which waypoint no course passes, and of a file that is none what was found', () => {
    const file = written('far.gpx', gpxText([points], [{ at: go(points[20]!, 0, 500), name: 'Far' }]));
    expect(example('spacing.mjs', file).err).toContain('Far is left out');
    expect(example('spacing.mjs', file).out[0]).toBe('  5.000 km  start to finish');
    expect(example('spacing.mjs', written('none.gpx', 'no course'))).toMatchObject({
      status: 2,
      out: [],
      err: expect.stringContaining('none.gpx:1:1: ') as string,
    });
    expect(example('spacing.mjs', 'nowhere.gpx')).toMatchObject({
      status: 2,
      out: [],
      err: expect.stringContaining('nowhere.gpx: cannot be read') as string,
    });
  });
});

describe('sign-check.mjs', () => {
  const demo = join(ROOT, 'fixtures/demo');
  const text = readFileSync(join(demo, 'plan.json'), 'utf8');

  it('fails a build with the place of the sign in the plan, what was measured, and the limit', () => {
    const { status, out } = example('sign-check.mjs', join(demo, 'plan.json'));
    expect(status).toBe(1);
    expect(out).toHaveLength(1);
    // The demo has one sign placed by hand, on purpose too near.
    const line = text.slice(0, text.indexOf('"sign": {')).split('\n').length;
    expect(out[0]).toMatch(
      new RegExp(
        `plan\\.json:${line}:\\d+: The sign is 70 m before the first table .*\\[sign-distance: measured 70\\.0 m, limit 81\\.0 to 99\\.0 m\\]$`,
        'u',
      ),
    );
  });

  it('passes a plan whose signs stand as they should, and one whose finding somebody has waived', () => {
    cpSync(demo, join(scratch, 'demo'), { recursive: true });
    const plan = JSON.parse(text) as { stations: { items?: object }[] };
    const good = written(
      'demo/good.json',
      JSON.stringify({ ...plan, stations: plan.stations.map((station) => ({ ...station, items: undefined })) }),
    );
    const waived = written(
      'demo/waived.json',
      JSON.stringify({
        ...plan,
        waivers: [{ code: 'sign-distance', station: 's2', by: 'A. Tern', reason: 'a driveway', date: '2027-08-01' }],
      }),
    );
    expect(example('sign-check.mjs', good, waived)).toEqual({ status: 0, out: [], err: '' });
  });

  it('ends with 2 where a plan cannot be used, and still tells of the others', () => {
    const { status, out, err } = example(
      'sign-check.mjs',
      'none.json',
      written('odd.json', '{ "format": "halfcup-plan" }'),
      join(demo, 'plan.json'),
    );
    expect(status).toBe(2);
    expect(err).toContain('none.json: cannot be read');
    expect(err).toMatch(/^odd\.json:1:1: /mu);
    expect(out).toHaveLength(1);
    expect(example('sign-check.mjs')).toMatchObject({ status: 2, out: [] });
  });
});

interface Snapped {
  readonly passes: readonly { readonly measure: number; readonly side: string; readonly distance: number }[];
}

interface Layout {
  readonly stations: readonly {
    readonly directions: readonly { readonly items: readonly { readonly along: readonly [number, number] }[] }[];
  }[];
}

describe('the pages', () => {
  let address: string;
  let browser: Browser;
  let close: () => Promise<void>;
  const of = {} as {
    course: { length: number; points: number };
    passes: Snapped['passes'];
    pier: Snapped['passes'];
    layout: Layout;
  };
  beforeAll(async () => {
    of.course = (await documentIn(ROOT, 'course', 'fixtures/demo/full.gpx')) as typeof of.course;
    of.passes = ((await documentIn(ROOT, 'snap', 'fixtures/demo/full.gpx')) as { points: Snapped[] }).points
      .flatMap(({ passes }) => passes)
      .toSorted((a, b) => a.measure - b.measure);
    of.pier = (
      (await documentIn(ROOT, 'snap', 'fixtures/demo/full.gpx', '-17.3864922,-33.2319296')) as { points: Snapped[] }
    ).points[0]!.passes;
    of.layout = (await documentIn(ROOT, 'layout', 'fixtures/demo/plan.json')) as Layout;
    const outDir = join(scratch, 'pages');
    await build({ root: EXAMPLES, logLevel: 'error', build: { outDir } });
    const server = await preview({
      root: EXAMPLES,
      build: { outDir },
      preview: { port: 0, host: '127.0.0.1' },
      logLevel: 'error',
    });
    address = server.resolvedUrls!.local[0]!;
    browser = await sharedBrowser();
    close = async () => {
      await server.close();
    };
  });
  afterAll(() => close());

  /** A page for as long as a test acts on it: no fault, no request to another host, nothing wider than the window, nothing that axe objects to. */
  async function onPage(
    path: string,
    { width = 1440, colorScheme = 'light' as 'light' | 'dark' },
    act: (page: Page) => Promise<void>,
  ): Promise<void> {
    const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
    const page = await context.newPage();
    const foreign: string[] = [];
    const faults: string[] = [];
    page.on('request', (request) => request.url().startsWith(address) || foreign.push(request.url()));
    page.on('pageerror', ({ message }) => faults.push(message));
    page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
    try {
      await page.goto(address + path);
      await act(page);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`),
      ).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      expect(await page.getByText('A planning aid: local codes').isVisible()).toBe(true);
      expect({ faults, foreign }).toEqual({ faults: [], foreign: [] });
    } finally {
      await context.close();
    }
  }

  const LOOKS = [1440, 360].flatMap((width) =>
    (['light', 'dark'] as const).map((colorScheme) => ({ width, colorScheme })),
  );

  it.each(LOOKS)('the notebook shows below each cell what its code gives: $width px, $colorScheme', async (look) => {
    await onPage('notebook/', look, async (page) => {
      await page.locator('body[data-done]').waitFor();
      const cells = await page.locator('.cell').all();
      expect(cells).toHaveLength(5);
      for (const cell of cells) {
        const name = await cell.getAttribute('data-cell');
        expect(await cell.locator('code').last().textContent()).toBe(
          readFileSync(join(EXAMPLES, `notebook/cells/${name!}.js`), 'utf8').trim(),
        );
        expect(await cell.locator('.result > .problem, .result > .waiting').count()).toBe(0);
      }
      expect(await page.locator('[data-cell="course"] td').allTextContents()).toEqual([
        'Ganneth Island full marathon',
        String(of.course.points),
        `${(of.course.length / 1000).toFixed(3)} km`,
        '9',
      ]);
      const rows = await page.locator('[data-cell="passes"] tbody tr').all();
      expect(await Promise.all(rows.map((row) => row.locator('td').allTextContents()))).toEqual(
        of.passes.map(({ measure, side }) => [
          expect.any(String),
          (measure / 1000).toFixed(3),
          side,
          expect.any(String),
          expect.any(String),
        ]),
      );
      expect(await page.locator('[data-cell="drawing"] circle.pin').count()).toBe(9);
      expect(await page.locator('[data-cell="spacing"] rect').count()).toBe(of.passes.length + 1);
      expect(await page.locator('[data-cell="spacing"] .long').count()).toBe(1);
      const along = of.layout.stations[0]!.directions[0]!.items.map(({ along: [from, to] }) =>
        from === to ? from.toFixed(1) : `${from.toFixed(1)} to ${to.toFixed(1)}`,
      );
      expect(await page.locator('[data-cell="layout"] td:nth-child(2)').allTextContents()).toEqual(along);
    });
  });

  it.each(LOOKS)(
    'the worker answers what it is asked, in words where it cannot: $width px, $colorScheme',
    async (look) => {
      await onPage('worker/', look, async (page) => {
        const ask = async (question: string): Promise<void> => {
          await page.getByLabel('Longitude, latitude').fill(question);
          await page.getByRole('button').click();
        };
        await ask('-17.3864922, -33.2319296');
        await page.locator('table').waitFor();
        expect(page.workers()).toHaveLength(1);
        const rows = await page.locator('tbody tr').all();
        expect(await Promise.all(rows.map((row) => row.locator('td').allTextContents()))).toEqual(
          of.pier.map(({ measure, side, distance }) => [
            (measure / 1000).toFixed(3),
            side,
            expect.stringMatching(/^\d+ %$/u),
            distance.toFixed(1),
          ]),
        );
        await ask('-33.2319296, 197');
        await expect.poll(() => page.locator('output .problem').textContent()).toContain('latitude from -90 to 90');
        await ask('-17.2, -33.2');
        await expect
          .poll(() => page.locator('output').textContent())
          .toBe('The course does not come within 60 m of it.');
      });
    },
  );
});
