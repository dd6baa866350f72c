/** How far long work has come, in one line on stderr that goes away; silent where stderr is no terminal. */

export interface Progress {
  /** `share`: 0 to 1. */
  readonly show: (share: number) => void;
  readonly clear: () => void;
}

/** What is needed of stderr. */
export interface Terminal {
  readonly isTTY?: boolean;
  readonly columns?: number | undefined;
  readonly write: (text: string) => unknown;
}

export const SILENT: Progress = { show: () => undefined, clear: () => undefined };

/** Back to the line's beginning, and wipe what stands there (ECMA-48: CR, EL). */
const WIPE = '\r\u001B[K';

/** One line with percent, no wider than the terminal and written only when the number changes. */
export function progressOf(what: string, terminal: Terminal): Progress {
  if (terminal.isTTY !== true) return SILENT;
  // A file's name may hold what would move the cursor or turn the reading order.
  const plain = Array.from(what.replaceAll(/[\s\p{Cc}\u202A-\u202E\u2066-\u2069]+/gu, ' '));
  let shown = -1;
  const show = (share: number): void => {
    const percent = Math.floor(Math.min(Math.max(share, 0), 1) * 100);
    if (percent === shown) return;
    shown = percent;
    // A terminal that does not know its width says 0.
    const columns = terminal.columns === undefined || terminal.columns === 0 ? 80 : terminal.columns;
    const room = columns - ' 100 %'.length - 1;
    const shortened = plain.length > room ? `${plain.slice(0, Math.max(room - 1, 0)).join('')}…` : plain.join('');
    terminal.write(`${WIPE}${shortened} ${percent} %`);
  };
  const clear = (): void => {
    if (shown >= 0) terminal.write(WIPE);
    shown = -1;
  };
  return { show, clear };
}
