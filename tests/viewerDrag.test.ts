/** The station under the pointer: dragged across the line and along it, it stays there, and changes side with the pointer alone. */
import type { LonLat } from '@halfcup/core';
import { courseFromGpx } from '@halfcup/core/gpx';
import { type Course, indexCourse, passesOf, pointAt } from '@halfcup/core/geometry';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Stage, type Visit, during, mapIdle, openStage } from './support/browser.ts';
import { ROOT } from './support/build.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

function fullCourse(): Course {
  const course = courseFromGpx(readFileSync(join(ROOT, 'fixtures/demo/full.gpx'), 'utf8'), {
    id: 'full',
    name: 'Full',
  });
  if (!course.ok) throw new Error('full.gpx is no course');
  return course.value;
}

interface Bench {
  readonly held: (station: string) => { readonly at: readonly [number, number]; readonly side: string } | null;
  readonly place: (at: LonLat) => readonly [number, number];
  readonly ground: (at: readonly [number, number]) => readonly [number, number];
}

const ask = <K extends keyof Bench>(
  page: Page,
  name: K,
  given: Parameters<Bench[K]>[0],
): Promise<ReturnType<Bench[K]>> =>
  page.evaluate(
    ([key, value]) =>
      (window as unknown as { halfcupBench: Record<string, (one: unknown) => unknown> }).halfcupBench[key]!(
        value,
      ) as never,
    [name, given as unknown] as const,
  );

const NAME = 'Strand Road';
const ID = 's1';
/** From the station's pin, pixels: over the line and back, then along it, a little and a lot, beside the line and on it. */
const ACROSS = [-60, -14, -5, -3, 3, 5, 14, 60, 4, -4, -20];
const ALONG = [-80, -12, 0, 12, 80];
/** Nearer to the line than this a pointer is on neither side: half a pixel. */
const ON_THE_LINE = 0.5;

interface Hand {
  readonly down: (x: number, y: number) => Promise<unknown>;
  readonly move: (x: number, y: number) => Promise<unknown>;
  readonly up: () => Promise<unknown>;
}

const mouse = ({ page }: Visit): Hand => ({
  down: async (x, y) => {
    await page.mouse.move(x, y);
    await page.mouse.down();
  },
  move: (x, y) => page.mouse.move(x, y),
  up: () => page.mouse.up(),
});

async function finger({ page, context }: Visit): Promise<Hand> {
  const session = await context.newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: readonly object[]): Promise<unknown> =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: points as never });
  return {
    down: (x, y) => send('touchStart', [{ x, y, id: 1 }]),
    move: (x, y) => send('touchMove', [{ x, y, id: 1 }]),
    up: () => send('touchEnd', []),
  };
}

/** Two frames: the move is told in the next one, and drawn in the one after. */
const drawn = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

/** Goes to the station, and zooms out some steps. */
async function near(page: Page, out: number): Promise<void> {
  await page.getByRole('button', { name: NAME, exact: true }).click();
  await page.waitForTimeout(200);
  await mapIdle(page);
  for (let step = 0; step < out; step++) {
    await page.getByRole('button', { name: 'Zoom out', exact: true }).click();
    await page.waitForTimeout(50);
    await mapIdle(page);
  }
}

/** Where the course runs on the page: a point of it, and the unit vectors along it and to its left. */
async function lineOnPage(
  page: Page,
  course: Course,
  measure: number,
): Promise<{
  readonly along: readonly [number, number];
  readonly left: readonly [number, number];
  readonly foot: readonly [number, number];
}> {
  const [before, foot, after] = await Promise.all(
    [measure - 5, measure, measure + 5].map((at) => ask(page, 'place', pointAt(course, at)!.at)),
  );
  const [dx, dy] = [after![0] - before![0], after![1] - before![1]];
  const length = Math.hypot(dx, dy);
  const along = [dx / length, dy / length] as const;
  return { along, left: [along[1], -along[0]], foot: foot! };
}

/** The side of the course on which a place on the page lies; `null` on the line. */
async function sideOf(
  page: Page,
  indexed: ReturnType<typeof indexCourse>,
  at: readonly [number, number],
  scale: number,
): Promise<string | null> {
  const ground = await ask(page, 'ground', at);
  const pass = passesOf(indexed, [ground[0], ground[1]]).toSorted((a, b) => a.measure - b.measure)[0];
  if (pass === undefined || Math.abs(pass.offset) < ON_THE_LINE * scale) return null;
  return pass.offset > 0 ? 'left' : 'right';
}

describe.each([
  ['mouse', 0],
  ['mouse', 2],
  ['mouse', 4],
  ['finger', 0],
  ['finger', 2],
  ['finger', 4],
] as const)('a station dragged by %s, %i zoom steps out', (by, out) => {
  it('stays under the pointer, and is on its side of the line', async () => {
    await during(
      { ...stage, address: `${stage.address}#bench` },
      async (seen) => {
        const { page, faults } = seen;
        const course = fullCourse();
        const indexed = indexCourse(course);
        await near(page, out);
        const start = (await ask(page, 'held', ID))!;
        const pin = await ask(page, 'place', [start.at[0], start.at[1]]);
        const measure = passesOf(indexed, [start.at[0], start.at[1]])[0]!.measure;
        const { along, left, foot } = await lineOnPage(page, course, measure);
        const [one, other] = await Promise.all([
          ask(page, 'ground', foot),
          ask(page, 'ground', [foot[0] + 100, foot[1]]),
        ]);
        const scale = (Math.abs(other[0] - one[0]) * 111_320 * Math.cos((one[1] * Math.PI) / 180)) / 100;
        const hand = by === 'mouse' ? mouse(seen) : await finger(seen);
        await hand.down(...pin);
        const places = [
          ...ACROSS.map((by) => [foot[0] + left[0] * by, foot[1] + left[1] * by] as const),
          ...[-6, 25].flatMap((beside) =>
            ALONG.map(
              (by) => [foot[0] + along[0] * by + left[0] * beside, foot[1] + along[1] * by + left[1] * beside] as const,
            ),
          ),
        ];
        // A finger has to go some way before it drags.
        await hand.move(pin[0] + 30, pin[1] + 30);
        await drawn(page);
        const seenSides = new Set<string>();
        let clear = 0;
        for (const place of places) {
          await hand.move(...place);
          await drawn(page);
          const held = (await ask(page, 'held', ID))!;
          const at = await ask(page, 'place', [held.at[0], held.at[1]]);
          expect(Math.hypot(at[0] - place[0], at[1] - place[1])).toBeLessThan(12);
          const side = await sideOf(page, indexed, place, scale);
          if (side === null) continue;
          clear++;
          seenSides.add(held.side);
          expect([place, held.side]).toEqual([place, side]);
        }
        // Far out the outer places are beyond the course's reach, and on no side of it.
        expect(clear).toBeGreaterThan(10);
        expect([...seenSides].toSorted()).toEqual(['left', 'right']);
        await hand.up();
        await page.getByText(/^Strand Road moved: /u).waitFor();
        expect(faults).toEqual([]);
      },
      { reducedMotion: 'reduce', ...(by === 'finger' ? { hasTouch: true } : {}) },
    );
  });
});
