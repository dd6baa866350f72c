import { expect, it } from 'vitest';
import { escapeText, html, said, table } from './html.ts';

// The five characters of WHATWG HTML, 13.3, and quotes, which end attributes.
it('escapes every sign that could become markup, in texts, lists and tables', () => {
  const text = `<script>alert("a" & 'b')</script>`;
  const safe = '&lt;script&gt;alert(&quot;a&quot; &amp; &#39;b&#39;)&lt;/script&gt;';
  expect(escapeText(text)).toBe(safe);
  expect(html`<p>${text}${[text, html`<b>${1}</b>`]}</p>`.html).toBe(`<p>${safe}${safe}<b>1</b></p>`);
  expect(said(text).html).toBe(`<bdi>${safe}</bdi>`);
  expect(table([text], [[text]], text).html).not.toContain('<script>');
});

it('shows controls that would hide or turn the text around them (Unicode Standard Annex 9), and keeps letters of every script', () => {
  expect(escapeText('a\u202Eb\u2066c\u0000d')).toBe('a\uFFFDb\uFFFDc\uFFFDd');
  expect(escapeText('محطة الماء 🚰\n')).toBe('محطة الماء 🚰\n');
});

it('sets a column to the right whose heading begins with a space', () => {
  expect(table(['A', ' B'], [['1', '2']]).html).toContain('<td>1</td><td class="number">2</td>');
});
