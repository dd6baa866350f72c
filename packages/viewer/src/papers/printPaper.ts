/**
 * A paper (a whole HTML page that core has written) in a frame of its own, to be seen and printed. The
 * page's policy lets no style of the text through, so its styles are taken out and adopted as sheets
 * (CSSOM, Constructable Stylesheets), which also holds for `@page`. Asks nobody for anything.
 */

/** A paper parted into what may be written as it is, and its styles. */
interface Parted {
  readonly html: string;
  readonly styles: string;
}

/** The attribute in which an element's own style waits until it may be set. */
const WAITING = 'data-paper-style';

function parted(html: string): Parted {
  const styles: string[] = [];
  const bare = html
    .replace(/<style[^>]*>([\s\S]*?)<\/style>/giu, (_, text: string) => {
      styles.push(text);
      return '';
    })
    // The paper's own policy is for the file; the frame has the page's, which is stricter.
    .replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/giu, '')
    .replace(/<[a-z][^<>]*>/giu, (tag) => tag.replace(/\sstyle=/giu, ` ${WAITING}=`));
  return { html: bare, styles: styles.join('\n') };
}

/** Shows a paper in a frame that is in the page and has no address of its own. */
export function showPaper(frame: HTMLIFrameElement, html: string): void {
  const [view, document] = [frame.contentWindow, frame.contentDocument];
  if (view === null || document === null)
    throw new Error('a paper needs a frame that is in the page and has no address');
  const { html: bare, styles } = parted(html);
  document.open();
  document.write(bare);
  document.close();
  const sheet = new (view as Window & typeof globalThis).CSSStyleSheet();
  sheet.replaceSync(styles);
  document.adoptedStyleSheets = [sheet];
  for (const element of document.querySelectorAll<HTMLElement | SVGElement>(`[${WAITING}]`)) {
    element.style.cssText = element.getAttribute(WAITING) ?? '';
    element.removeAttribute(WAITING);
  }
}

const FRAME = 'paper-print';

/**
 * Opens the browser's print dialogue for a paper. The frame stays in the page, out of sight, until the
 * next paper is printed: some browsers print after the call has returned.
 */
export async function printPaper(html: string): Promise<void> {
  document.getElementById(FRAME)?.remove();
  const frame = document.createElement('iframe');
  frame.id = FRAME;
  frame.className = 'paper-out-of-sight';
  frame.title = 'Paper being printed';
  frame.tabIndex = -1;
  frame.ariaHidden = 'true';
  document.body.append(frame);
  showPaper(frame, html);
  const view = frame.contentWindow!;
  // The paper's own font is read as it is first used: printed at once, a paper could come out in another.
  await Promise.allSettled(Array.from(view.document.fonts, (font) => font.load()));
  view.focus();
  view.print();
}
