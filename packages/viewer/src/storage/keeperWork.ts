/** What the keeper of the open plan knows, and what follows from it. */
import { untracked } from '@preact/signals';
import type { PlanFiles } from '../state/store/planFiles.ts';
import type { Notice, Store } from '../state/store/store.ts';
import { planWithoutTrial } from '../state/store/trial.ts';
import type { Claim } from './claim.ts';
import { note, type Noted, type State } from './noting.ts';
import type { KeptPlan } from './records.ts';
import type { Database } from './tables.ts';

/** What the browser is known to hold of the open plan. */
interface Known {
  id: string;
  revision: number;
  files: PlanFiles | null;
  state: State | null;
}

export interface Keeping {
  /** The record of a plan that this tab has to itself, with what the journal has after it. */
  readonly recovered: (id: string) => Promise<unknown>;
  /** Opens a plan again from what the browser holds of it. */
  readonly reopen: (id: string) => Promise<void>;
  /** Told when the browser holds a plan. */
  readonly kept: (id: string) => void;
  /** Opens the database again after the browser has closed it. */
  readonly database: () => Promise<Database>;
}

/** All that the keeper knows. */
export interface Work {
  readonly store: Store;
  /** `null`: the browser has closed it. */
  database: Database | null;
  /** The one that was open last. */
  last: Database;
  readonly keeping: Keeping;
  /** Looks at what has changed. */
  readonly check: () => void;
  readonly known: Known;
  readonly noted: Noted;
  adopted: KeptPlan | null;
  claim: Claim | null;
  claimed: 'asked' | 'mine' | 'elsewhere';
  writing: boolean;
  /** The browser was asked to let nothing go. */
  asked: boolean;
  /** What could not be written; tried again when it has changed, after a while, or when a person says so. */
  failed: State | null;
  /** What the person was told of it. */
  told: Notice | null;
  again: ReturnType<typeof setTimeout> | undefined;
  /** How often it has failed since it last went well. */
  tries: number;
}

export function stateOf(store: Store): State | null {
  const open = planWithoutTrial(store);
  const origin = store.origin.value;
  return open === null || origin === null ? null : { open, origin, history: store.history.value };
}

export const sameText = (a: State | null, b: State): boolean =>
  a !== null && a.open.document.text === b.open.document.text;
export const same = (a: State | null, b: State): boolean =>
  a !== null && sameText(a, b) && a.open.variant === b.open.variant && a.history === b.history && a.origin === b.origin;

/** A plan that has been opened and not been changed yet. */
const isUntouched = ({ history }: State): boolean => history.past.length + history.future.length === 0;

/** The demo is kept once somebody has changed it. */
const isFresh = ({ open, origin, history }: State, { revision }: Known): boolean =>
  origin.from === 'demo' && revision === 0 && history.past.length === 0 && origin.saved === open.document.text;

export const current = ({ store }: Work): State | null => untracked(() => stateOf(store));

/** What is to be written, where this tab may. */
export function due(work: Work): State | null {
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

/** Notes a change where this tab may write it, or nobody else can have the plan. */
export function noteNow(work: Work): void {
  const { known, noted, keeping } = work;
  const state = current(work);
  if (state === null || state.origin.id !== known.id || (work.claimed !== 'mine' && known.revision > 0)) return;
  // What was opened and not changed is in the files that it came from.
  if (noted.base === null && isUntouched(state)) return;
  if (note(noted, work.database ?? work.last, state)) keeping.kept(known.id);
}

/** Whether leaving now would lose something: what is not written and not noted, or noted without its files. */
export function mayLose(work: Work): boolean {
  const { known, noted } = work;
  const state = due(work);
  const bare = known.revision === 0 && noted.filesOf === null && state?.origin.from !== 'demo';
  return state !== null && (noted.loose || bare);
}
