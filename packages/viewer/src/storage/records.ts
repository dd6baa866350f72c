/** What the browser keeps of a plan: its text with what is needed to go on working, and the files that it names. Pure. */
import { EMPTY_HISTORY, apply, inverse, type History, type Step } from '../state/store/history.ts';
import type { OpenPlan, Origin } from '../state/store/store.ts';

export interface KeptPlan {
  readonly id: string;
  /** Counts the writes, so that one tab sees that another has written. */
  readonly revision: number;
  readonly name: string;
  readonly file: string;
  readonly text: string;
  readonly variant: string | null;
  readonly history: History;
  readonly saved: string | null;
  readonly handle: FileSystemFileHandle | null;
  readonly modified: number | null;
  readonly copy: boolean;
  /** Milliseconds since 1970. */
  readonly changed: number;
  readonly opened: number;
  /** The last change that the journal counted and that is in `text`; absent in records of before there was a journal. */
  readonly seq?: number;
}

export interface KeptFile {
  readonly plan: string;
  readonly name: string;
  readonly blob: Blob;
}

export type Why = 'before-migration' | 'unreadable';

/** A record that is not used, but not thrown away either. */
export interface SetAside {
  readonly why: Why;
  readonly at: number;
  readonly record: unknown;
}

/** Which write a record is of: its revision, the last change that it has, and its time. */
export interface Write {
  readonly revision: number;
  readonly seq: number;
  readonly now: number;
}

export function keptOf(open: OpenPlan, origin: Origin, history: History, { revision, seq, now }: Write): KeptPlan {
  const { document, variant } = open;
  const { id, saved, handle, modified, copy } = origin;
  return {
    id,
    revision,
    name: document.plan.name,
    file: document.file,
    text: document.text,
    variant,
    history,
    saved,
    handle,
    modified,
    copy,
    changed: now,
    opened: now,
    seq,
  };
}

const isText = (value: unknown): value is string => typeof value === 'string';
const isCount = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** Whether a record can be used; anything may stand in a database that other versions, and other hands, have written to. */
export function isKeptPlan(value: unknown): value is KeptPlan {
  if (typeof value !== 'object' || value === null) return false;
  const { id, revision, name, file, text, variant, saved, handle, modified, copy, changed, opened } = value as Readonly<
    Record<string, unknown>
  >;
  return (
    [id, name, file, text].every(isText) &&
    [revision, changed, opened].every(isCount) &&
    typeof copy === 'boolean' &&
    [variant, saved].every((one) => one === null || isText(one)) &&
    (modified === null || isCount(modified)) &&
    typeof handle === 'object'
  );
}

const isStep = (value: unknown): value is Step => {
  const step = value as Partial<Step> | null;
  return isText(step?.label) && isCount(step.patch?.at) && isText(step.patch.removed) && isText(step.patch.inserted);
};

/** Whether every step back leads to a text and every step forward again from it. */
function fits(text: string, steps: readonly Step[], back: boolean): boolean {
  let now = text;
  for (const step of steps) {
    const patch = back ? inverse(step.patch) : step.patch;
    if (now.slice(patch.at, patch.at + patch.removed.length) !== patch.removed) return false;
    now = apply(now, patch);
  }
  return true;
}

/** The history that was kept with a text; an empty one where it does not belong to that text. */
export function soundHistory(text: string, history: unknown): History {
  const { past, future } = (history ?? {}) as Partial<History>;
  if (!Array.isArray(past) || !Array.isArray(future) || ![...past, ...future].every(isStep)) return EMPTY_HISTORY;
  return fits(text, past.toReversed(), true) && fits(text, future, false) ? { past, future } : EMPTY_HISTORY;
}
