/** Every control's words in every state against what lies behind them: 4.5 : 1 (WCAG 2.2, 1.4.3), also where it is disabled. */
import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { type Stage, openStage } from './support/browser.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

const LEAST = 4.5;
const CONTROLS = 'button, a[href], input, select, textarea, summary, label, [role="button"], [role="tab"]';
const STATES: readonly (readonly string[])[] = [
  [],
  ['hover'],
  ['focus', 'focus-visible'],
  ['active', 'hover'],
  ['hover', 'focus', 'focus-visible'],
];

/** What a control's words are too faint for: where it is, its state, what it says, and the ratio. */
const faint = (page: Page, state: string): Promise<string[]> =>
  page.evaluate(
    ([controls, now, least]) => {
      type Colour = readonly [number, number, number, number];
      const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true })!;
      const known = new Map<string, Colour>();
      // Painted, so that every notation is read as the browser reads it.
      const read = (text: string): Colour => {
        const before = known.get(text);
        if (before !== undefined) return before;
        canvas.clearRect(0, 0, 1, 1);
        canvas.fillStyle = text;
        canvas.fillRect(0, 0, 1, 1);
        const [r = 0, g = 0, b = 0, a = 0] = canvas.getImageData(0, 0, 1, 1).data;
        const colour: Colour = [r, g, b, a / 255];
        known.set(text, colour);
        return colour;
      };
      const over = (top: Colour, under: Colour): Colour => {
        const mix = (at: 0 | 1 | 2): number => top[at] * top[3] + under[at] * (1 - top[3]);
        return [mix(0), mix(1), mix(2), 1];
      };
      const ground = (element: Element): Colour => {
        const layers: Colour[] = [];
        for (let at: Element | null = element; at !== null; at = at.parentElement) {
          layers.push(read(getComputedStyle(at).backgroundColor));
          if (layers.at(-1)![3] === 1) break;
        }
        return layers.reduceRight<Colour>((under, top) => over(top, under), read('Canvas'));
      };
      const luminance = (colour: Colour): number => {
        const [r, g, b] = [colour[0], colour[1], colour[2]].map((part) => {
          const share = part / 255;
          return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
        }) as [number, number, number];
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const ratio = (a: Colour, b: Colour): number => {
        const [x, y] = [luminance(a), luminance(b)].toSorted((one, other) => other - one) as [number, number];
        return (x + 0.05) / (y + 0.05);
      };
      const opacityOf = (element: Element): number => {
        let opacity = 1;
        for (let at: Element | null = element; at !== null; at = at.parentElement)
          opacity *= Number(getComputedStyle(at).opacity);
        return opacity;
      };
      const found: string[] = [];
      const judge = (element: Element, words: string, foreground: string, behind: Colour): void => {
        const [r, g, b, a] = read(foreground);
        const value = ratio(over([r, g, b, a * opacityOf(element)], behind), behind);
        if (value < least)
          found.push(
            `${now || 'as it is'}: ${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} “${words.slice(0, 40)}” ${value.toFixed(2)}`,
          );
      };
      const ownText = (element: Element): string =>
        [...element.childNodes].map((node) => (node.nodeType === 3 ? (node.textContent ?? '').trim() : '')).join('');
      for (const control of document.querySelectorAll(controls)) {
        if (!(control as HTMLElement).checkVisibility()) continue;
        for (const element of [control, ...control.querySelectorAll('*')]) {
          const style = getComputedStyle(element);
          const words = ownText(element);
          if (element instanceof SVGTextElement) {
            const ring = element.closest('.strip-ring')?.querySelector('circle:not(.strip-touch)');
            const inside = ring !== null && ring !== undefined && !element.classList.contains('strip-name');
            if (words !== '')
              judge(element, words, style.fill, inside ? read(getComputedStyle(ring).fill) : ground(element));
          } else if (
            element instanceof HTMLInputElement ||
            element instanceof HTMLTextAreaElement ||
            element instanceof HTMLSelectElement
          ) {
            judge(element, element.value, style.color, ground(element));
            if (!(element instanceof HTMLSelectElement) && element.placeholder !== '')
              judge(element, element.placeholder, getComputedStyle(element, '::placeholder').color, ground(element));
          } else if (words !== '' && !element.classList.contains('unseen'))
            judge(element, words, style.color, ground(element));
        }
      }
      return [...new Set(found)];
    },
    [CONTROLS, state, LEAST] as const,
  );

/** The page's rules hold for a class as well wherever they hold for a state: `button:hover` for `button.is-hover`, at the same weight. */
const statesAsClasses = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const STATE = /:(hover|active|focus-visible|focus)(?![\w-])/gu;
    let changed = 0;
    const change = (rules: CSSRuleList): void => {
      for (const rule of rules) {
        if (rule instanceof CSSStyleRule && STATE.test(rule.selectorText)) {
          rule.selectorText = `${rule.selectorText}, ${rule.selectorText.replaceAll(STATE, '.is-$1')}`;
          changed++;
        } else if (rule instanceof CSSGroupingRule) change(rule.cssRules);
      }
    };
    for (const sheet of [...document.styleSheets, ...document.adoptedStyleSheets]) change(sheet.cssRules);
    return changed;
  });

/** Puts all controls into a state at once, and what they lie in where that is pointed at with them. */
const putInto = (page: Page, states: readonly string[]): Promise<void> =>
  page.evaluate(
    ([controls, now]) => {
      for (const name of ['hover', 'active', 'focus', 'focus-visible'])
        for (const element of document.querySelectorAll(`.is-${name}`)) element.classList.remove(`is-${name}`);
      for (const name of now) {
        const whole = name === 'hover' || name === 'active';
        for (const control of document.querySelectorAll(controls))
          for (let at: Element | null = control; at !== null; at = whole ? at.parentElement : null)
            at.classList.add(`is-${name}`);
      }
    },
    [CONTROLS, states] as const,
  );

async function walk(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const states of STATES) {
    await putInto(page, states);
    found.push(...(await faint(page, states.join('+'))));
  }
  await putInto(page, []);
  return found;
}

/** Without the map, which has no words in its controls and takes the machine's time. */
async function withoutMap(act: (page: Page) => Promise<void>, options: BrowserContextOptions = {}): Promise<void> {
  const context = await stage.browser.newContext({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
    ...options,
  });
  try {
    await context.route(/connect-[^/]*\.js$/u, (route) => route.abort());
    const page = await context.newPage();
    await page.goto(`${stage.address}#example`);
    await page.getByRole('button', { name: 'Wrack Fork', exact: true }).waitFor();
    await act(page);
  } finally {
    await context.close();
  }
}

it('the measure finds what is too faint, in the state in which it is', async () => {
  await withoutMap(async (page) => {
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync('.top-tools .open-button:hover { color: #bbb; background: #fff; }');
      document.adoptedStyleSheets = [sheet];
    });
    expect(await statesAsClasses(page)).toBeGreaterThan(20);
    expect(await faint(page, '')).toEqual([]);
    await putInto(page, ['focus']);
    expect(await faint(page, 'focus')).toEqual([]);
    await putInto(page, ['hover']);
    expect(await faint(page, 'hover')).toEqual([expect.stringMatching(/^hover: button\.open-button.* “Open” 1\.9/u)]);
  });
});

for (const colorScheme of ['light', 'dark'] as const) {
  for (const width of [1440, 360]) {
    it(`words of every control have 4.5 : 1 in every state, ${colorScheme}, ${width} px wide`, async () => {
      await withoutMap(
        async (page) => {
          expect(await statesAsClasses(page)).toBeGreaterThan(20);
          await page.getByRole('button', { name: 'Wrack Fork', exact: true }).click();
          const found: string[] = [];
          for (const tab of await page.getByRole('tab').all()) {
            const name = (await tab.textContent())!;
            await tab.click();
            await page.waitForTimeout(100);
            await page.evaluate(() => {
              for (const folded of document.querySelectorAll('details')) folded.open = true;
            });
            found.push(...(await walk(page)).map((line) => `${name}: ${line}`));
            if (name !== 'Stations') continue;
            await page.getByRole('button', { name: 'Edit', exact: true }).click();
            await page.getByLabel('Select Wrack Fork').click();
            found.push(...(await walk(page)).map((line) => `sheet: ${line}`));
          }
          for (const name of ['Plans', 'Background']) {
            await page.getByRole('button', { name, exact: true }).click();
            found.push(...(await walk(page)).map((line) => `${name}: ${line}`));
          }
          expect(found).toEqual([]);
        },
        { colorScheme, viewport: { width, height: width === 360 ? 740 : 900 } },
      );
    });
  }
}
