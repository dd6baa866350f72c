/**
 * The journal of changes that are not in a kept plan yet: each entry says how the plan's text and history went on from
 * the one before. Replayed over the kept plan they give what was last on the screen. Pure.
 */
import { apply, patchBetween, EMPTY_HISTORY, type History, type Patch, type Step } from '../state/store/history.ts';

/** What a journal keeps of a plan. */
export interface Snapshot {
  readonly text: string;
  readonly history: History;
  readonly variant: string | null;
}

/** What is needed of a plan that is in no record yet. */
export interface Beginning {
  readonly name: string;
  readonly file: string;
  readonly copy: boolean;
  /** The example's files come with the page. */
  readonly demo: boolean;
  /** The kept plan that has the same files. */
  readonly filesOf: string | null;
}

/** Steps that stay, counted, and those that are new after or before them; `drop`: so many of the oldest are let go. */
interface Steps {
  readonly drop: number;
  readonly keep: number;
  readonly add: readonly Step[];
}

export interface Entry {
  readonly plan: string;
  /** Counts the changes of a plan; that of the last one in the record is in the record. */
  readonly seq: number;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Sums of the text before and after; `null`: the entry stands on its own, from an empty text. */
  readonly before: number | null;
  readonly after: number;
  readonly patch: Patch;
  readonly past: Steps;
  readonly future: Steps;
  readonly variant: string | null;
  readonly begin: Beginning | null;
}

/** FNV-1a (IETF draft-eastlake-fnv) over UTF-16 code units: tells texts apart, protects from nothing else. */
export function sumOf(text: string): number {
  let sum = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193);
  return sum >>> 0;
}

export const sameSnapshot = (a: Snapshot, b: Snapshot): boolean =>
  a.text === b.text && a.variant === b.variant && a.history === b.history;

const NOTHING: Snapshot = { text: '', history: EMPTY_HISTORY, variant: null };

/** How many steps two lists have in common from their beginning, the first without its oldest `drop`; a history hands on the same records. */
function commonStart(a: readonly Step[], b: readonly Step[], drop: number): number {
  let count = 0;
  while (drop + count < a.length && count < b.length && a[drop + count] === b[count]) count++;
  return count;
}

function commonEnd(a: readonly Step[], b: readonly Step[]): number {
  let count = 0;
  while (count < a.length && count < b.length && a[a.length - 1 - count] === b[b.length - 1 - count]) count++;
  return count;
}

/** How a plan went on. `base`: `null` where no record is there to go on from. */
export function entryOf(
  about: Pick<Entry, 'plan' | 'seq' | 'at' | 'begin'>,
  base: Snapshot | null,
  next: Snapshot,
): Entry {
  const { text, history } = base ?? NOTHING;
  const [oldest] = next.history.past;
  const drop = oldest === undefined ? 0 : Math.max(0, history.past.indexOf(oldest));
  const kept = commonStart(history.past, next.history.past, drop);
  const ahead = commonEnd(history.future, next.history.future);
  return {
    ...about,
    before: base === null ? null : sumOf(text),
    after: sumOf(next.text),
    patch: patchBetween(text, next.text),
    past: { drop, keep: kept, add: next.history.past.slice(kept) },
    future: { drop: 0, keep: ahead, add: next.history.future.slice(0, next.history.future.length - ahead) },
    variant: next.variant,
  };
}

const isText = (value: unknown): value is string => typeof value === 'string';
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0;
const isSteps = (value: unknown): value is Steps => {
  const steps = value as Partial<Steps> | null;
  return isCount(steps?.keep) && isCount(steps.drop) && Array.isArray(steps.add);
};
const isBeginning = (value: unknown): boolean => {
  if (value === null) return true;
  const begin: Partial<Beginning> = typeof value === 'object' ? value : {};
  return (
    isText(begin.name) &&
    isText(begin.file) &&
    typeof begin.copy === 'boolean' &&
    typeof begin.demo === 'boolean' &&
    (begin.filesOf === null || isText(begin.filesOf))
  );
};

/** Whether something that was kept is an entry; others may have written there. */
export function isEntry(value: unknown): value is Entry {
  const entry = value as Partial<Entry> | null;
  if (typeof entry !== 'object' || entry === null) return false;
  const { patch, variant, before } = entry;
  return (
    isText(entry.plan) &&
    isCount(entry.seq) &&
    typeof entry.at === 'number' &&
    (before === null || isCount(before)) &&
    isCount(entry.after) &&
    isCount(patch?.at) &&
    isText(patch.removed) &&
    isText(patch.inserted) &&
    isSteps(entry.past) &&
    isSteps(entry.future) &&
    (variant === null || isText(variant)) &&
    isBeginning(entry.begin)
  );
}

/** One entry carried out; `null` where it does not belong to what is there. */
function carriedOut(now: Snapshot | null, entry: Entry): Snapshot | null {
  const base = entry.before === null ? NOTHING : now;
  if (base === null || (entry.before !== null && sumOf(base.text) !== entry.before)) return null;
  const text = apply(base.text, entry.patch);
  if (sumOf(text) !== entry.after) return null;
  const { past, future } = base.history;
  return {
    text,
    variant: entry.variant,
    history: {
      past: [...past.slice(entry.past.drop, entry.past.drop + entry.past.keep), ...entry.past.add],
      future: [...entry.future.add, ...future.slice(future.length - entry.future.keep)],
    },
  };
}

export interface Replayed {
  readonly snapshot: Snapshot;
  /** The last entry that was carried out; `null`: none had to be. */
  readonly last: Entry | null;
  /** What would not fit. */
  readonly unfit: readonly Entry[];
}

/** What is kept, with all that the journal has after it. `kept`: `null` where there is no record; the answer is too where there is nothing at all. */
export function replayed(kept: Snapshot | null, seq: number, entries: readonly Entry[]): Replayed | null {
  const due = entries.filter((entry) => entry.seq > seq).toSorted((a, b) => a.seq - b.seq);
  let now = kept;
  let last: Entry | null = null;
  let unfit: Entry[] = [];
  for (const entry of due) {
    const next = carriedOut(now, entry);
    if (next === null) unfit.push(entry);
    else {
      // An entry that stands on its own has all that came before it.
      if (entry.before === null) unfit = [];
      now = next;
      last = entry;
    }
  }
  return now === null ? null : { snapshot: now, last, unfit };
}
