/**
 * Keeps the open plan in the browser at every change: one write at a time, each with all that has changed
 * since the last. What cannot be kept is said at once, and the plan stays open. Another tab is never written over.
 */
import { batch, effect, untracked } from '@preact/signals';
import type { Store } from '../state/store/store.ts';
import { claimPlan } from './claim.ts';
import { touchPlan } from './database.ts';
import { current, mayLose, noteNow, same, sameText, stateOf, type Keeping, type Work } from './keeperWork.ts';
import { snapshotOf, type State } from './noting.ts';
import { isKeptPlan, type KeptPlan } from './records.ts';
import type { Database } from './tables.ts';
import { tellElsewhere, tellLost } from './tell.ts';
import { copy, failedToWrite, lost, others, write } from './writing.ts';

export interface Keeper {
  /** Makes known which record of a kept plan is about to be opened. */
  readonly adopt: (plan: KeptPlan) => void;
  /** The browser has closed the database, or what it held is gone. */
  readonly lost: () => void;
  readonly close: () => void;
}

/** `late`: another tab has had the plan until now. */
function granted(work: Work, late: boolean): void {
  const { store } = work;
  if (late) return void grantedLate(work);
  work.claimed = 'mine';
  store.keeping.value = 'kept';
  noteNow(work);
  return void write(work);
}

/** The other tab may have changed the plan since it was read here; what was changed here since then goes on as a copy. */
async function grantedLate(work: Work): Promise<void> {
  const { store, keeping, known } = work;
  const { id } = known;
  work.claimed = 'asked';
  batch(() => {
    store.question.value = null;
    store.notice.value = { text: 'This tab now edits the plan. Your changes here are saved.' };
  });
  try {
    const record = await keeping.recovered(id);
    if (known.id !== id) return;
    work.claimed = 'mine';
    store.keeping.value = 'kept';
    if (!isKeptPlan(record) || record.revision === known.revision) {
      noteNow(work);
      await write(work);
    } else if (sameText(known.state, current(work)!)) await keeping.reopen(id);
    else others(work, record);
  } catch (error) {
    work.claimed = 'mine';
    failedToWrite(work, error);
  }
}

const elsewhere = (work: Work, tell: typeof tellElsewhere) => (): void => {
  const { store } = work;
  work.claimed = 'elsewhere';
  store.keeping.value = 'elsewhere';
  const takeOver = (): void => {
    store.question.value = null;
    work.claim?.takeOver();
  };
  tell(store, () => copy(work), takeOver);
  check(work);
};

function take({ known, noted }: Work, state: State, kept: KeptPlan): void {
  Object.assign(known, { id: kept.id, revision: kept.revision, files: state.open.files, state });
  Object.assign(noted, { seq: kept.seq ?? 0, base: snapshotOf(state), filesOf: null, loose: false });
}

/** Begins with a plan that has just been opened. */
function begin(work: Work, state: State): void {
  const { known, noted, store } = work;
  const kept = work.adopted?.id === state.origin.id ? work.adopted : null;
  work.adopted = null;
  // Opened again: this tab has its claim, or waits for it, already.
  if (kept !== null && kept.id === known.id) return take(work, state, kept);
  work.claim?.release();
  if (work.claimed === 'elsewhere') store.question.value = null;
  work.claimed = 'asked';
  if (kept === null) {
    const filesOf = known.revision > 0 && known.files === state.open.files ? known.id : null;
    Object.assign(noted, { seq: 0, base: null, filesOf, loose: false });
    Object.assign(known, { id: state.origin.id, revision: 0, files: null, state: null });
    noteNow(work);
  } else {
    take(work, state, kept);
    void touchPlan(work.last, kept.id, Date.now()).catch((error: unknown) => failedToWrite(work, error));
  }
  work.claim = claimPlan(state.origin.id, {
    granted: (late) => granted(work, late),
    held: elsewhere(work, tellElsewhere),
    lost: elsewhere(work, tellLost),
  });
  return undefined;
}

/** Looks at what has changed, and does what is due. */
function check(work: Work): void {
  const { known } = work;
  const state = current(work);
  if (state === null) return;
  if (state.origin.id !== known.id || work.adopted?.id === known.id) begin(work, state);
  else if (work.claimed === 'elsewhere') {
    if (known.state !== null && !sameText(known.state, state)) copy(work);
  } else {
    noteNow(work);
    if (!same(work.failed, state)) void write(work);
  }
}

/** What is typed in a field and not entered yet counts as entered when the page is left. */
const takeTyped = (): void => {
  const field = document.activeElement;
  if (field instanceof HTMLElement) field.blur();
};

export function startKeeping(store: Store, database: Database, keeping: Keeping): Keeper {
  const work: Work = {
    store,
    database,
    last: database,
    keeping,
    check: () => check(work),
    known: { id: '', revision: 0, files: null, state: null },
    noted: { seq: 0, base: null, filesOf: null, loose: false },
    adopted: null,
    claim: null,
    claimed: 'asked',
    writing: false,
    asked: false,
    failed: null,
    told: null,
    again: undefined,
    tries: 0,
  };
  const end = effect(() => {
    stateOf(store);
    untracked(() => check(work));
  });
  const warn = (event: BeforeUnloadEvent): void => {
    if (mayLose(work)) event.preventDefault();
  };
  window.addEventListener('beforeunload', warn);
  window.addEventListener('pagehide', takeTyped);
  return {
    adopt: (plan) => void (work.adopted = plan),
    lost: () => lost(work),
    close: () => {
      end();
      clearTimeout(work.again);
      work.claim?.release();
      window.removeEventListener('beforeunload', warn);
      window.removeEventListener('pagehide', takeTyped);
    },
  };
}
