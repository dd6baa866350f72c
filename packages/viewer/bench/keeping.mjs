/**
 * Whether the last change that was on the screen is there again after the page or its browser has ended in the middle of
 * changes: each way of ending so many times, half of them while a name is typed, half while a station is dragged.
 * `node packages/viewer/bench/keeping.mjs [WAY,… [TIMES]]`, ways: reload, kill, cleared, quota, tabs. Takes the built
 * viewer of VIEWER_DIST or dist, and CHROMIUM_PATH, else /usr/bin/chromium. Exits with 1 where a change is lost.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const WAYS = ['reload', 'kill', 'cleared', 'quota', 'tabs'];
const [ways = WAYS.join(','), times = '20'] = process.argv.slice(2);
const FLAGS = [
  '--headless=new',
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-rasterization',
  '--window-size=1100,760',
  '--remote-debugging-port=0',
];

const pause = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));
const between = (from, to) => from + Math.random() * (to - from);

/** A browser of its own over a profile that outlives it. */
async function start(profile) {
  rmSync(join(profile, 'DevToolsActivePort'), { force: true });
  const child = spawn(
    process.env.CHROMIUM_PATH || '/usr/bin/chromium',
    [...FLAGS, `--user-data-dir=${profile}`, 'about:blank'],
    {
      stdio: 'ignore',
      detached: true,
    },
  );
  const port = join(profile, 'DevToolsActivePort');
  while (!existsSync(port) || !readFileSync(port, 'utf8').includes('\n')) await pause(50);
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${readFileSync(port, 'utf8').split('\n')[0]}`);
  const ended = new Promise((done) => child.once('exit', done));
  const kill = async () => {
    // The whole group, as a machine that stops would.
    process.kill(-child.pid, 'SIGKILL');
    await ended;
    await browser.close().catch(() => undefined);
  };
  return { browser, context: browser.contexts()[0], kill };
}

/** The page at work; `shown` is the last state that it said was on the screen. */
async function openPage(context, address) {
  const page = await context.newPage();
  const seen = { page, shown: null, asked: 0 };
  page.on('dialog', (dialog) => {
    seen.asked++;
    void dialog.accept().catch(() => undefined);
  });
  await page.exposeBinding('reportShown', (_, text) => void (seen.shown = text));
  await page.goto(`${address}#bench`);
  await ready(page);
  return seen;
}

async function ready(page) {
  await page.locator('[data-map="idle"]').waitFor({ state: 'attached', timeout: 60_000 });
  await page.waitForFunction(() => typeof window.halfcupBench?.text() === 'string');
}

/** The text of the one plan that the page asks the files of, which somebody has cleared. */
const waitingText = (page) =>
  page.evaluate(
    () =>
      new Promise((done, failed) => {
        const opening = indexedDB.open('halfcup');
        opening.addEventListener('error', () => failed(opening.error));
        opening.addEventListener('success', () => {
          const asked = opening.result.transaction('plans').objectStore('plans').getAll();
          asked.addEventListener('success', () => {
            opening.result.close();
            done(asked.result.toSorted((a, b) => b.opened - a.opened)[0]?.text ?? '');
          });
        });
      }),
  );

/** After storage was cleared: the plan, or where its files are gone with it what the page still has of it. */
async function textAfterClearing(page, seen) {
  await page.reload();
  await page.waitForFunction(
    () => document.querySelector('.waits') !== null || typeof window.halfcupBench?.text() === 'string',
  );
  if ((await page.locator('.waits').count()) === 0) {
    await ready(page);
    return textOf(page);
  }
  seen.waits = true;
  return waitingText(page);
}

const textOf = (page) => page.evaluate(() => window.halfcupBench.text());

/** Types names into the plan and enters them until the page ends, and reports each in the frame that shows it. */
async function type(page, mark) {
  await page.getByRole('tab', { name: 'Plan', exact: true }).click();
  const name = page.getByLabel('Name', { exact: true }).first();
  await name.evaluate((field, own) => {
    let count = 0;
    const once = () => {
      field.focus();
      field.value = `Pier run ${own} ${++count}`;
      field.dispatchEvent(new Event('input', { bubbles: true }));
      // The field takes what is typed before the key comes.
      setTimeout(() => {
        field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
        requestAnimationFrame(() => window.reportShown(window.halfcupBench.text()));
        setTimeout(once, 20 + Math.random() * 120);
      }, 10);
    };
    once();
  }, mark);
}

/** Drags a station up and down, and ends with it in the hand. */
async function drag(page, turns) {
  for (let turn = 0; ; turn++) {
    const [x, y] = await page.evaluate(() => {
      const pins = window.halfcupBench.pins();
      return window.halfcupBench.place(pins[Object.keys(pins)[2]]);
    });
    await page.mouse.move(x, y);
    await page.mouse.down();
    const way = turn % 2 === 0 ? 1 : -1;
    for (let step = 1; step <= 5; step++) await page.mouse.move(x + way * 5 * step, y + way * 3 * step);
    if (turn >= turns) return;
    await page.mouse.up();
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => done(window.reportShown(window.halfcupBench.text())))),
    );
  }
}

/** What a state that typing has made says of itself: how many names were entered. */
const countOf = (text) => Number(/Pier run \S+ (\d+)/u.exec(text)?.[1] ?? -1);

/** Whether what came back has the last change that was on the screen; typing may have gone on after the last report. */
const holds = (typing, shown, back) => shown === null || (typing ? countOf(back) >= countOf(shown) : back === shown);

async function session(page) {
  return page.context().newCDPSession(page);
}

/** Ends the page's work in one way; the state that is there afterwards. */
const END = {
  reload: async ({ seen }) => {
    await seen.page.reload();
    await ready(seen.page);
    return textOf(seen.page);
  },
  kill: async ({ seen, stage }) => {
    await stage.kill();
    Object.assign(stage, await start(stage.profile));
    const again = await openPage(stage.context, stage.address);
    seen.asked += again.asked;
    return textOf(again.page);
  },
  cleared: async ({ seen, stage, typing }) => {
    const client = await session(seen.page);
    await client.send('Storage.clearDataForOrigin', { origin: new URL(stage.address).origin, storageTypes: 'all' });
    await pause(typing ? between(100, 700) : between(300, 700));
    return textAfterClearing(seen.page, seen);
  },
  quota: async ({ seen, stage, typing }) => {
    const client = await session(seen.page);
    const origin = new URL(stage.address).origin;
    await client.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    if (typing) await pause(between(100, 900));
    else {
      await seen.page.mouse.up();
      await seen.page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => done(window.reportShown(window.halfcupBench.text())))),
      );
    }
    const back = await END.reload({ seen });
    await client.send('Storage.overrideQuotaForOrigin', { origin });
    return back;
  },
};

/** The next round begins with nothing kept. */
async function clearAll(page, from) {
  const client = await session(page);
  await page.goto('about:blank');
  await client.send('Storage.clearDataForOrigin', { origin: new URL(from).origin, storageTypes: 'all' });
}

async function single(way, stage, typing, mark) {
  const seen = await openPage(stage.context, stage.address);
  const work = typing ? type(seen.page, mark) : drag(seen.page, 1 + Math.floor(Math.random() * 3));
  await work;
  while (seen.shown === null) await pause(20);
  if (typing) await pause(between(50, 1500));
  const back = await END[way]({ seen, stage, typing });
  const ok = holds(typing, seen.shown, back);
  if (way === 'cleared') await clearAll(seen.page, stage.address);
  await seen.page.close().catch(() => undefined);
  return { ok, waits: seen.waits === true, asked: seen.asked, shown: seen.shown, back };
}

/** Two tabs on one plan: the second makes a copy at its first change; both are reloaded at once. */
async function double(stage, typing, mark) {
  const first = await openPage(stage.context, stage.address);
  await type(first.page, `${mark}a`);
  await pause(400);
  const second = await openPage(stage.context, stage.address);
  await second.page.bringToFront();
  if (typing) {
    await type(second.page, `${mark}b`);
    while (second.shown === null) await pause(20);
    await pause(between(0, 900));
  } else await drag(second.page, 1);
  const shown = [first.shown, second.shown];
  await Promise.all([first.page.reload(), second.page.reload()]);
  await first.page.bringToFront();
  await ready(first.page);
  const one = await textOf(first.page);
  await second.page.bringToFront();
  await ready(second.page);
  const two = await textOf(second.page);
  const ok =
    holds(true, shown[0], one) &&
    one.includes(`${mark}a`) &&
    holds(typing, shown[1], two) &&
    (!typing || two.includes(`${mark}b`));
  await second.page.close();
  // A station dragged round after round would leave the map.
  await clearAll(first.page, stage.address);
  await first.page.close();
  return { ok, asked: first.asked + second.asked, shown: shown.join('\n'), back: `${one}\n${two}` };
}

const dist = resolve(root, process.env.VIEWER_DIST ?? 'dist');
const server = await preview({
  root,
  build: { outDir: dist },
  preview: { port: 0, host: '127.0.0.1' },
  logLevel: 'error',
});
const address = server.resolvedUrls.local[0];
let lost = 0;
try {
  for (const way of ways.split(',')) {
    const tally = { held: 0, lost: 0, idle: 0, waits: 0, asked: 0 };
    const profile = mkdtempSync(join(tmpdir(), 'halfcup-keeping-'));
    const stage = { profile, address, ...(await start(profile)) };
    try {
      for (let k = 0; k < Number(times); k++) {
        const typing = k % 2 === 0;
        const { ok, waits, asked, shown, back } =
          way === 'tabs' ? await double(stage, typing, `${k}`) : await single(way, stage, typing, `${k}`);
        tally[ok ? 'held' : 'lost']++;
        tally.asked += asked;
        if (waits === true) tally.waits++;
        // Nothing was on the screen yet: it proves nothing.
        if (shown === null) tally.idle++;
        if (!ok)
          console.log(
            `${way} ${k} ${typing ? 'typing' : 'dragging'}: shown ${countOf(shown ?? '')}, back ${countOf(back)}`,
          );
      }
    } finally {
      await stage.kill();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    }
    lost += tally.lost;
    console.log(
      `${way}: ${tally.held} of ${times} held, ${tally.lost} lost, ${tally.idle} before any change, ${tally.waits} held and waiting for their files, ${tally.asked} questions of the browser`,
    );
  }
} finally {
  await server.close();
}
process.exit(lost === 0 ? 0 : 1);
