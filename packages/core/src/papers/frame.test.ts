import { expect, it } from 'vitest';
import { en } from '../text/en.ts';
import { es } from '../text/es.ts';
import { headHtml, pageHtml, saidOrBlank, shortened, sizeOf } from './frame.ts';
import { cssString, pageBox } from './frameStyle.ts';
import { html } from './html.ts';

const page = (name: string, revision?: string): string =>
  pageHtml({
    title: 'T',
    paper: 'letter',
    plan: revision === undefined ? { name } : { name, revision },
    printedAt: '2027-09-01 18:30',
    text: en,
    body: html`<p>body</p>`,
  });

/** What a CSS string says, its escapes resolved (CSS Syntax 3, 4.3.7). */
const unescaped = (css: string): string =>
  css
    .slice(1, -1)
    .replaceAll(/\\([0-9a-f]{1,6}) /gu, (_, hex: string) => String.fromCodePoint(Number.parseInt(hex, 16)));

it.each(['plain', 'with "quotes" and \\', '</style><script>', 'line\nbreak', 'محطة 🚰 水'])(
  'writes %j as a CSS string that ends nowhere but at its end',
  (text) => {
    const css = cssString(text);
    expect(css).toMatch(/^"[A-Za-z0-9\\ ]*"$/u);
    expect(unescaped(css)).toBe(text);
  },
);

// ISO 216: A4 is 210 mm × 297 mm. Letter: 8.5 in × 11 in.
it('sets the sheet’s size and leaves the same margins on both papers', () => {
  expect(page('p')).toContain('size: 215.9mm 279.4mm');
  const [a4, letter] = [pageBox('a4'), pageBox('letter')];
  expect(letter.width - a4.width).toBeCloseTo(5.9, 9);
  expect(a4.height - letter.height).toBeCloseTo(17.6, 9);
  expect(a4.width).toBeLessThan(210);
});

it('has plan, version, print time, "destroy older copies", what printed it and page numbers in the margins of every page', () => {
  const style = /<style>(.*?)<\/style>/su.exec(page('Island "Race"', '3'))![1]!;
  const boxes = [...style.matchAll(/@(top|bottom)-(left|right) \{ content: ([^;]*);/gu)].map(([, , , content]) =>
    unescaped(content!.replaceAll(/" counter/gu, '" counter').trim()),
  );
  expect(boxes).toHaveLength(4);
  expect(boxes[0]).toContain('Island "Race"');
  expect(boxes[1]).toContain('Version 3');
  expect(boxes[2]).toContain('Printed 2027-09-01 18:30');
  expect(boxes[2]).toContain('Destroy older copies');
  expect(boxes[3]).toMatch(/^Halfcup \d+\.\d+\.\d+ · Page " counter\(page\) " of " counter\(pages$/u);
});

it('says that there is no name or version rather than inventing one', () => {
  expect(headHtml('T', { name: ' ' }, 'now', es).html).toContain('Plan sin nombre');
  expect(headHtml('T', { name: 'x' }, 'now', es).html).toContain('Sin versión');
  expect(saidOrBlank('  ', en).html).toContain('fill in:');
  expect(saidOrBlank('<b>', en).html).toBe('<bdi>&lt;b&gt;</bdi>');
});

it('shortens by signs, never within one, and says so with an ellipsis', () => {
  expect(shortened('🚰🚰🚰', 3)).toBe('🚰🚰🚰');
  expect(shortened('🚰🚰🚰', 2)).toBe('🚰…');
  expect(sizeOf('x'.repeat(32)).html).toBe('');
  expect(sizeOf('x'.repeat(33)).html).toContain('long');
  expect(sizeOf('x'.repeat(111)).html).toContain('longest');
});

it('forbids everything but its own style', () => {
  expect(page('p')).toContain(
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:">`,
  );
});
