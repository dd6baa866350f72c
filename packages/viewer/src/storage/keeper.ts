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

export function startKeeping(store: Store, database: Database, keeping: Keeping): Keeper {
  const known: Known = { id: '', revision: 0, files: null, state: null };
  let adopted: KeptPlan | null = null;
  let claim: Claim | null = null;
  let claimed: 'asked' | 'mine' | 'elsewhere' = 'asked';
  let writing = false;
  let asked = false;
  /** What could not be written; tried again when it has changed, or when a person says so. */
  let failed: State | null = null;
  let failing = false;

  const current = (): State | null => untracked(() => stateOf(store));

  const copy = (): void => {
    const origin = store.origin.value;
    store.question.value = null;
    if (origin !== null)
      store.origin.value = { ...origin, id: freshId(), from: 'file', handle: null, modified: null, copy: true };
  };
  const takeOver = (): void => {
    store.question.value = null;
    claim?.takeOver();
  };

  const granted = (late: boolean): void => {
    claimed = 'mine';
    batch(() => {
      store.keeping.value = 'kept';
      if (late) store.question.value = null;
      if (late) store.notice.value = { text: 'This tab now edits the plan. Your changes here are saved.' };
    });
    // Another tab may have changed it since it was read here.
    if (late) void keeping.reopen(known.id);
    else void write();
  };
  const elsewhere = (tell: (store: Store, copy: () => void, takeOver: () => void) => void) => (): void => {
    claimed = 'elsewhere';
    store.keeping.value = 'elsewhere';
    tell(store, copy, takeOver);
    check();
  };

  const take = (state: State, kept: KeptPlan): void =>
    void Object.assign(known, { id: kept.id, revision: kept.revision, files: state.open.files, state });

  const begin = (state: State): void => {
    const kept = adopted?.id === state.origin.id ? adopted : null;
    adopted = null;
    // Opened again: this tab has its claim, or waits for it, already.
    if (kept !== null && kept.id === known.id) return take(state, kept);
    claim?.release();
    if (claimed === 'elsewhere') store.question.value = null;
    claimed = 'asked';
    if (kept === null) Object.assign(known, { id: state.origin.id, revision: 0, files: null, state: null });
    else {
      take(state, kept);
      void touchPlan(database, kept.id, Date.now()).catch((error: unknown) => tellFailed(store, error, write));
    }
    claim = claimPlan(state.origin.id, { granted, held: elsewhere(tellElsewhere), lost: elsewhere(tellLost) });
    return undefined;
  };

  const check = (): void => {
    const state = current();
    if (state === null) return;
    if (state.origin.id !== known.id || adopted?.id === known.id) begin(state);
    else if (claimed === 'elsewhere') {
      if (known.state !== null && !sameText(known.state, state)) copy();
    } else if (!same(failed, state)) void write();
  };

  const askToStay = (): void => {
    if (asked) return;
    asked = true;
    // A browser that says no keeps the plan as long as there is room.
    void (navigator as Partial<Navigator>).storage?.persist?.().catch(() => false);
  };

  const others = (theirs: KeptPlan): void => {
    // Mine goes on as a copy at once, so that nothing hangs on the answer.
    copy();
    tellOthers(store, theirs, () => keeping.reopen(theirs.id));
  };

  const writeState = async (state: State): Promise<void> => {
    const files = known.files === state.open.files ? null : state.open.files;
    const plan = keptOf(state.open, state.origin, state.history, known.revision + 1, Date.now());
    const result = await writePlan(database, { plan, files: files?.originals ?? null, seen: known.revision });
    if (known.id !== plan.id) return;
    if (result.kind === 'others') others(result.plan);
    else if (result.kind === 'gone') Object.assign(known, { revision: 0, files: null });
    else {
      Object.assign(known, { revision: plan.revision, files: state.open.files, state });
      keeping.kept(plan.id);
    }
  };

  /** What is to be written, where this tab may. */
  const due = (): State | null => {
    const state = current();
    return state !== null &&
      claimed === 'mine' &&
      state.origin.id === known.id &&
      !same(known.state, state) &&
      !isFresh(state, known)
      ? state
      : null;
  };

  const settle = (): void => {
    // What was asked when it could not be written is answered by now.
    if (failing) store.question.value = null;
    failing = false;
    store.keeping.value = 'kept';
  };

  /** Writes until what the browser holds is what is open. */
  async function write(): Promise<void> {
    if (writing) return;
    writing = true;
    failed = null;
    try {
      for (let state = due(); state !== null; state = due()) {
        store.keeping.value = 'writing';
        await writeState(state);
        askToStay();
      }
      if (claimed === 'mine') settle();
    } catch (error) {
      failed = current();
      failing = true;
      store.keeping.value = 'failed';
      tellFailed(store, error, write);
    } finally {
      writing = false;
    }
    if (claimed === 'elsewhere') check();
  }

  const end = effect(() => {
    stateOf(store);
    untracked(check);
  });
  const warn = (event: BeforeUnloadEvent): void => {
    if (store.keeping.value === 'failed' || store.keeping.value === 'writing') event.preventDefault();
  };
  window.addEventListener('beforeunload', warn);
  return {
    adopt: (plan) => void (adopted = plan),
    close: () => {
      end();
      claim?.release();
      window.removeEventListener('beforeunload', warn);
    },
  };
}
