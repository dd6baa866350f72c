/** Undo and redo over a text: each step holds only the stretch that changed, so that both ways give the very bytes. */

/** One stretch of a text replaced by another. */
export interface Patch {
  readonly at: number;
  readonly removed: string;
  readonly inserted: string;
}

export interface Step {
  readonly label: string;
  readonly patch: Patch;
  /** Steps that follow one another with the same key are one step for the person. */
  readonly merge?: string;
}

export interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

export const EMPTY_HISTORY: History = { past: [], future: [] };

/** Older steps are let go beyond this many. */
export const DEEPEST = 2000;

/** A copy of its own: what `slice` gives may hold on to the whole text that it was cut from, once for every step. */
const copyOf = (text: string): string => structuredClone(text);

/** The stretch in which two texts differ. */
export function patchBetween(before: string, after: string): Patch {
  const least = Math.min(before.length, after.length);
  let head = 0;
  while (head < least && before.charCodeAt(head) === after.charCodeAt(head)) head++;
  let tail = 0;
  while (
    tail < least - head &&
    before.charCodeAt(before.length - 1 - tail) === after.charCodeAt(after.length - 1 - tail)
  )
    tail++;
  return {
    at: head,
    removed: copyOf(before.slice(head, before.length - tail)),
    inserted: copyOf(after.slice(head, after.length - tail)),
  };
}

export const apply = (text: string, { at, removed, inserted }: Patch): string =>
  text.slice(0, at) + inserted + text.slice(at + removed.length);
export const inverse = ({ at, removed, inserted }: Patch): Patch => ({ at, removed: inserted, inserted: removed });

/** The history after a change from one text to another; what had been undone is let go. A merged step that ends where it began is no step. */
export function recorded(history: History, label: string, before: string, after: string, merge?: string): History {
  const last = history.past.at(-1);
  if (merge !== undefined && last?.merge === merge) {
    const start = apply(before, inverse(last.patch));
    const rest = history.past.slice(0, -1);
    return {
      past: start === after ? rest : [...rest, { label, merge, patch: patchBetween(start, after) }],
      future: [],
    };
  }
  const step: Step = { label, patch: patchBetween(before, after), ...(merge === undefined ? {} : { merge }) };
  return { past: [...history.past, step].slice(-DEEPEST), future: [] };
}

/** The text and history one step back; `null` where there is none. */
export function undone(
  history: History,
  text: string,
): { readonly history: History; readonly text: string; readonly label: string } | null {
  const last = history.past.at(-1);
  if (last === undefined) return null;
  const { merge: _, ...step } = last;
  return {
    label: last.label,
    text: apply(text, inverse(last.patch)),
    history: { past: history.past.slice(0, -1), future: [step, ...history.future] },
  };
}

/** The text and history one step forward again; `null` where nothing was undone. */
export function redone(
  history: History,
  text: string,
): { readonly history: History; readonly text: string; readonly label: string } | null {
  const [next, ...rest] = history.future;
  if (next === undefined) return null;
  return { label: next.label, text: apply(text, next.patch), history: { past: [...history.past, next], future: rest } };
}
