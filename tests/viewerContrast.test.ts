/** Every control's words in every state against what lies behind them: 4.5 : 1 (WCAG 2.2, 1.4.3), also where it is disabled. */
import { type CDPSession, type Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { type Stage, during, openStage } from './support/browser.ts';

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

/** All controls in a state at once, as the browser's own tools force it. */
async function force(tools: CDPSession, states: readonly string[]): Promise<number> {
  const { root } = await tools.send('DOM.getDocument', { depth: 0 });
  const { nodeIds } = await tools.send('DOM.querySelectorAll', { nodeId: root.nodeId, selector: CONTROLS });
  for (const nodeId of nodeIds) await tools.send('CSS.forcePseudoState', { nodeId, forcedPseudoClasses: [...states] });
  return nodeIds.length;
}

async function walk(page: Page, tools: CDPSession): Promise<string[]> {
  const found: string[] = [];
  for (const states of STATES) {
    expect(await force(tools, states)).toBeGreaterThan(20);
    found.push(...(await faint(page, states.join('+'))));
  }
  await force(tools, []);
  return found;
}

const toolsOf = async (page: Page): Promise<CDPSession> => {
  const tools = await page.context().newCDPSession(page);
  await tools.send('DOM.enable');
  await tools.send('CSS.enable');
  return tools;
};

it('the measure finds what is too faint, in the state in which it is', async () => {
  await during(stage, async ({ page }) => {
    const tools = await toolsOf(page);
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync('.top-tools button:hover { color: #bbb !important; background: #fff !important; }');
      document.adoptedStyleSheets = [sheet];
    });
    expect(await faint(page, '')).toEqual([]);
    await force(tools, ['hover']);
    expect((await faint(page, 'hover')).filter((line) => line.includes('“Open”'))).toHaveLength(1);
  });
});

for (const colorScheme of ['light', 'dark'] as const) {
  for (const width of [1440, 360]) {
    it(`words of every control have 4.5 : 1 in every state, ${colorScheme}, ${width} px wide`, async () => {
      await during(
        stage,
        async ({ page }) => {
          const tools = await toolsOf(page);
          await page.getByRole('button', { name: 'Wrack Fork', exact: true }).click();
          await page.getByRole('button', { name: /Keep offset/u }).click();
          const found: string[] = [];
          for (const tab of await page.getByRole('tab').all()) {
            const name = (await tab.textContent())!;
            await tab.click();
            await page.waitForTimeout(100);
            await page.evaluate(() => {
              for (const folded of document.querySelectorAll('details')) folded.open = true;
            });
            found.push(...(await walk(page, tools)).map((line) => `${name}: ${line}`));
          }
          for (const name of ['Plans', 'Background']) {
            await page.getByRole('button', { name, exact: true }).click();
            found.push(...(await walk(page, tools)).map((line) => `${name}: ${line}`));
          }
          expect(found).toEqual([]);
        },
        { colorScheme, viewport: { width, height: width === 360 ? 740 : 900 } },
      );
    });
  }
}
