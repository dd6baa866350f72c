/** Which rows are selected: one after another, a range with Shift, all shown. Pure but for the hook. */
import { useState } from 'preact/hooks';

export interface Selection {
  readonly chosen: ReadonlySet<string>;
  /** Where a range begins. */
  readonly anchor: string | null;
}

export const NONE: Selection = { chosen: new Set(), anchor: null };

/** The one row alone. */
export const only = (id: string): Selection => ({ chosen: new Set([id]), anchor: id });

/** The row in or out, the others as they are. */
export const toggled = ({ chosen }: Selection, id: string): Selection => ({
  chosen: chosen.has(id) ? new Set([...chosen].filter((one) => one !== id)) : new Set([...chosen, id]),
  anchor: id,
});

/** Added: all from the anchor to a row, in the order in which they are shown. */
export function extended(selection: Selection, id: string, shown: readonly string[]): Selection {
  const [from, to] = [shown.indexOf(selection.anchor ?? id), shown.indexOf(id)];
  if (from === -1 || to === -1) return toggled(selection, id);
  const range = shown.slice(Math.min(from, to), Math.max(from, to) + 1);
  return { chosen: new Set([...selection.chosen, ...range]), anchor: selection.anchor ?? id };
}

export interface Selecting extends Selection {
  readonly set: (next: Selection) => void;
}

/** What is selected of the rows that are there. */
export function useSelection(there: readonly string[]): Selecting {
  const [selection, set] = useState(NONE);
  return { chosen: new Set(there.filter((id) => selection.chosen.has(id))), anchor: selection.anchor, set };
}
