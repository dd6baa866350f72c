/** What a browser makes of a paper: how many pages, and what of it is cut off or lies on something else. */
import type { Browser, Page } from 'playwright-core';

/** Pages of a PDF: each is an object of type Page (ISO 32000-1, 7.7.3.3). */
const pagesOf = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type\s*\/Page\b/gu)?.length ?? 0;

/** A text as it is drawn, with its size in points and its width in millimetres. */
export interface DrawnText {
  readonly text: string;
  readonly points: number;
  readonly bold: boolean;
  readonly width: number;
}

export interface Printed {
  readonly pages: number;
  /** Texts outside of their drawing or of the page, cut off, or lying on each other in a drawing. */
  readonly faults: readonly string[];
  readonly drawn: readonly DrawnText[];
}

/** Prints a paper on pages whose text is so many millimetres wide. */
export async function printed(browser: Browser, html: string, width: number): Promise<Printed> {
  const page = await browser.newPage({ viewport: { width: Math.round((width / 25.4) * 96), height: 1200 } });
  try {
    await page.emulateMedia({ media: 'print' });
    await page.setContent(html);
    const faults = await faultsOf(page);
    const drawn = await drawnTexts(page);
    return { pages: pagesOf(await page.pdf({ preferCSSPageSize: true })), faults, drawn };
  } finally {
    await page.close();
  }
}

const faultsOf = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const faults: string[] = [];
    const { left, right } = document.body.getBoundingClientRect();
    const within = (a: DOMRect, b: DOMRect): boolean =>
      a.left > b.left - 0.5 && a.right < b.right + 0.5 && a.top > b.top - 1.5 && a.bottom < b.bottom + 1.5;
    // What a drawing clips at its edge is meant to be: of drawings the frame, and further down the words.
    for (const element of document.body.querySelectorAll('*:not(svg *)')) {
      const box = element.getBoundingClientRect();
      const words = (element.textContent ?? '').trim().slice(0, 40);
      if (box.left < left - 0.5 || box.right > right + 0.5) faults.push(`<${element.tagName}> off the page: ${words}`);
      if (element instanceof HTMLElement && element.clientWidth > 0 && element.scrollWidth > element.clientWidth + 1)
        faults.push(`<${element.tagName}> holds more than fits: ${words}`);
    }
    const lines = (words: Node): DOMRect[] => {
      const range = document.createRange();
      range.selectNodeContents(words);
      return [...range.getClientRects()];
    };
    const outside: { readonly words: string; readonly box: DOMRect }[] = [];
    const nodes = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = nodes.nextNode(); node !== null; node = nodes.nextNode()) {
      const words = (node.textContent ?? '').trim().slice(0, 40);
      if (node.parentElement?.closest('svg') === null) outside.push(...lines(node).map((box) => ({ words, box })));
    }
    for (const svg of document.querySelectorAll('svg')) {
      const picture = svg.getBoundingClientRect();
      for (const { words, box } of outside) {
        const wide = Math.min(picture.right, box.right) - Math.max(picture.left, box.left);
        const high = Math.min(picture.bottom, box.bottom) - Math.max(picture.top, box.top);
        if (wide > 1 && high > 4) faults.push(`a picture lies on “${words}”`);
      }
      const texts = [...svg.querySelectorAll('text')].map((text) => ({
        words: text.textContent ?? '',
        box: text.getBoundingClientRect(),
      }));
      const frame = svg.getBoundingClientRect();
      for (const { words, box } of texts) if (!within(box, frame)) faults.push(`drawn outside: ${words}`);
      texts.forEach((a, k) => {
        for (const b of texts.slice(k + 1)) {
          const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
          const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
          // A line's box is higher than its letters.
          if (wide > 0.5 && high > 4) faults.push(`“${a.words}” lies on “${b.words}”`);
        }
      });
    }
    return faults;
  });

const drawnTexts = (page: Page): Promise<DrawnText[]> =>
  page.evaluate(() =>
    Array.from(document.querySelectorAll('svg text'), (text) => ({
      text: text.textContent ?? '',
      points: (Number(text.getAttribute('font-size')) * 72) / 25.4,
      bold: text.getAttribute('font-weight') === 'bold',
      width: (text as SVGTextElement).getComputedTextLength(),
    })),
  );
