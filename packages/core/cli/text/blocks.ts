/** What every text for people is made of: headings, paragraphs, and the caution at its end. */
import { CAUTION } from '../caution.ts';
import { oneLine } from '../breaks.ts';
import { paragraph } from '../lineBreaks.ts';
import type { Screen } from '../screen.ts';

/** Blocks with an empty line between them, the caution last. */
export const page = (blocks: readonly string[], { width }: Screen): string =>
  `${[...blocks.filter((block) => block !== ''), paragraph(CAUTION, width)].join('\n\n')}\n`;

/** A heading, what is to be known to read what stands under it, and that. */
export function section(title: string, body: string, { paint, width }: Screen, hint: string = ''): string {
  const lines = [paint('heading', oneLine(title)), ...(hint === '' ? [] : [paragraph(hint, width)]), body];
  return lines.join('\n');
}

/** The plan's name, or what else the page is of. */
export const heading = (parts: readonly string[], { paint, width }: Screen): string =>
  paint(
    'heading',
    paragraph(
      parts
        .map(oneLine)
        .filter((part) => part !== '')
        .join(' · '),
      width,
    ),
  );

/** Where there is no value. */
export const NONE = '–';
