/**
 * Keeps the open plan in the browser at every change: one write at a time, each with all that has changed
 * since the last. What cannot be kept is said at once, and the plan stays open. Another tab is never written over.
 */
import { batch, effect, untracked } from '@preact/signals';
import type { PlanFiles } from '../state/store/planFiles.ts';
import type { History } from '../state/store/history.ts';
import type { OpenPlan, Origin, Store } from '../state/store/store.ts';
import { claimPlan, type Claim } from './claim.ts';
import { touchPlan, writePlan } from './database.ts';
import { keptOf, type KeptPlan } from './records.ts';
import type { Database } from './tables.ts';
import { tellOthers, tellElsewhere, tellFailed, tellLost } from './tell.ts';
import { planWithoutTrial } from '../state/store/trial.ts';
import { freshId } from '../state/open/receive.ts';

interface State {
  readonly open: OpenPlan;
  readonly origin: Origin;
  readonly history: History;
}

export interface Keeper {
  /** Makes known which revision of a kept plan is about to be opened. */
  readonly adopt: (plan: KeptPlan) => void;
  readonly close: () => void;
}

/** What the browser is known to hold of the open plan. */
interface Known {
  id: string;
  revision: number;
  files: PlanFiles | null;
  state: State | null;
}

function stateOf(store: Store): State | null {
  const open = planWithoutTrial(store);
  const origin = store.origin.value;
  return open === null || origin === null ? null : { open, origin, history: store.history.value };
}

const sameText = (a: State | null, b: State): boolean => a !== null && a.open.document.text === b.open.document.text;
const same = (a: State | null, b: State): boolean =>
  a !== null && sameText(a, b) && a.open.variant === b.open.variant && a.history === b.history && a.origin === b.origin;

/** The demo is kept once somebody has changed it. */
const isFresh = ({ open, origin, history }: State, { revision }: Known): boolean =>
  origin.from === 'demo' && revision === 0 && history.past.length === 0 && origin.saved === open.document.text;

export interface Keeping {
  /** Opens a plan again from what the browser holds of it. */
  readonly reopen: (id: string) => Promise<void>;
  /** Told when the browser holds a plan. */
  readonly kept: (id: string) => void;
}

/** All that the keeper knows. */
interface Work {
  readonly store: Store;
  readonly database: Database;
  readonly keeping: Keeping;
  readonly known: Known;
  adopted: KeptPlan | null;
  claim: Claim | null;
  claimed: 'asked' | 'mine' | 'elsewhere';
  writing: boolean;
  /** The browser was asked to let nothing go. */
  asked: boolean;
  /** What could not be written; tried again when it has changed, or when a person says so. */
  failed: State | null;
  failing: boolean;
}

const current = ({ store }: Work): State | null => untracked(() => stateOf(store));

/** Goes on with the open plan as a copy. */
function copy({ store }: Work): void {
  const origin = store.origin.value;
  store.question.value = null;
  if (origin !== null)
    store.origin.value = { ...origin, id: freshId(), from: 'file', handle: null, modified: null, copy: true };
}

/** `late`: another tab has had the plan until now. */
function granted(work: Work, late: boolean): void {
  const { store, keeping, known } = work;
  work.claimed = 'mine';
  batch(() => {
    store.keeping.value = 'kept';
    if (late) store.question.value = null;
    if (late) store.notice.value = { text: 'This tab now edits the plan. Your changes here are saved.' };
  });
  // Another tab may have changed it since it was read here.
  if (late) void keeping.reopen(known.id);
  else void write(work);
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

const take = ({ known }: Work, state: State, kept: KeptPlan): void =>
  void Object.assign(known, { id: kept.id, revision: kept.revision, files: state.open.files, state });

const failedToWrite = (work: Work, error: unknown): void => tellFailed(work.store, error, () => write(work));

/** Begins with a plan that has just been opened. */
function begin(work: Work, state: State): void {
  const { known, store, database } = work;
  const kept = work.adopted?.id === state.origin.id ? work.adopted : null;
  work.adopted = null;
  // Opened again: this tab has its claim, or waits for it, already.
  if (kept !== null && kept.id === known.id) return take(work, state, kept);
  work.claim?.release();
  if (work.claimed === 'elsewhere') store.question.value = null;
  work.claimed = 'asked';
  if (kept === null) Object.assign(known, { id: state.origin.id, revision: 0, files: null, state: null });
  else {
    take(work, state, kept);
    void touchPlan(database, kept.id, Date.now()).catch((error: unknown) => failedToWrite(work, error));
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
  } else if (!same(work.failed, state)) void write(work);
}

function askToStay(work: Work): void {
  if (work.asked) return;
  work.asked = true;
  // A browser that says no keeps the plan as long as there is room.
  void (navigator as Partial<Navigator>).storage?.persist?.().catch(() => false);
}

function others(work: Work, theirs: KeptPlan): void {
  // Mine goes on as a copy at once, so that nothing hangs on the answer.
  copy(work);
  tellOthers(work.store, theirs, () => work.keeping.reopen(theirs.id));
}

async function writeState(work: Work, state: State): Promise<void> {
  const { known, database, keeping } = work;
  const files = known.files === state.open.files ? null : state.open.files;
  const plan = keptOf(state.open, state.origin, state.history, known.revision + 1, Date.now());
  const result = await writePlan(database, { plan, files: files?.originals ?? null, seen: known.revision });
  if (known.id !== plan.id) return;
  if (result.kind === 'others') others(work, result.plan);
  else if (result.kind === 'gone') Object.assign(known, { revision: 0, files: null });
  else {
    Object.assign(known, { revision: plan.revision, files: state.open.files, state });
    keeping.kept(plan.id);
  }
}

/** What is to be written, where this tab may. */
function due(work: Work): State | null {
  const { known } = work;
  const state = current(work);
  return state !== null &&
    work.claimed === 'mine' &&
    state.origin.id === known.id &&
    !same(known.state, state) &&
    !isFresh(state, known)
    ? state
    : null;
}

function settle(work: Work): void {
  // What was asked when it could not be written is answered by now.
  if (work.failing) work.store.question.value = null;
  work.failing = false;
  work.store.keeping.value = 'kept';
}

/** Writes until what the browser holds is what is open. */
async function write(work: Work): Promise<void> {
  if (work.writing) return;
  work.writing = true;
  work.failed = null;
  try {
    for (let state = due(work); state !== null; state = due(work)) {
      work.store.keeping.value = 'writing';
      await writeState(work, state);
      askToStay(work);
    }
    if (work.claimed === 'mine') settle(work);
  } catch (error) {
    work.failed = current(work);
    work.failing = true;
    work.store.keeping.value = 'failed';
    failedToWrite(work, error);
  } finally {
    work.writing = false;
  }
  if (work.claimed === 'elsewhere') check(work);
}

export function startKeeping(store: Store, database: Database, keeping: Keeping): Keeper {
  const work: Work = {
    store,
    database,
    keeping,
    known: { id: '', revision: 0, files: null, state: null },
    adopted: null,
    claim: null,
    claimed: 'asked',
    writing: false,
    asked: false,
    failed: null,
    failing: false,
  };
  const end = effect(() => {
    stateOf(store);
    untracked(() => check(work));
  });
  const warn = (event: BeforeUnloadEvent): void => {
    if (store.keeping.value === 'failed' || store.keeping.value === 'writing') event.preventDefault();
  };
  window.addEventListener('beforeunload', warn);
  return {
    adopt: (plan) => void (work.adopted = plan),
    close: () => {
      end();
      work.claim?.release();
      window.removeEventListener('beforeunload', warn);
    },
  };
}
