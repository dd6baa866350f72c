/** Writes the open plan into the browser's database: one write at a time, each with all that has changed since the last. */
import { batch } from '@preact/signals';
import { freshId } from '../state/open/receive.ts';
import { writePlan } from './database.ts';
import { dropFromPage } from './journalPage.ts';
import { current, due, noteNow, type Work } from './keeperWork.ts';
import { snapshotOf, type State } from './noting.ts';
import { keptOf, type KeptPlan } from './records.ts';
import { tellFailed, tellOthers } from './tell.ts';

/** Milliseconds until what could not be written is tried again: soon at first, for what passes by itself, such as a clearing. */
const SOONEST = 100;
const LATEST = 5000;
/** From the wait that is as long as this on, the person is told. */
const PATIENCE = 1000;
const pauseAfter = (tries: number): number => Math.min(LATEST, SOONEST * 2 ** tries);

/** The connection is gone, or leads to a database that somebody has cleared. */
const isClosed = (error: unknown): boolean =>
  error instanceof DOMException && ['InvalidStateError', 'AbortError', 'NotFoundError'].includes(error.name);

/** Goes on with the open plan as a copy. */
export function copy({ store }: Work): void {
  const origin = store.origin.value;
  store.question.value = null;
  if (origin !== null)
    store.origin.value = { ...origin, id: freshId(), from: 'file', handle: null, modified: null, copy: true };
}

/** Tries again later; says so where it is no matter of moments. */
export function failedToWrite(work: Work, error: unknown): void {
  const { store } = work;
  const pause = pauseAfter(work.tries++);
  clearTimeout(work.again);
  work.again = setTimeout(() => void write(work), pause);
  if (isClosed(error)) work.database = null;
  if (work.database === null && pause < PATIENCE) return;
  store.keeping.value = 'failed';
  work.told = tellFailed(store, error, () => write(work));
}

function askToStay(work: Work): void {
  if (work.asked) return;
  work.asked = true;
  // A browser that says no keeps the plan as long as there is room.
  void (navigator as Partial<Navigator>).storage?.persist?.().catch(() => false);
}

/** Another tab has written meanwhile. */
export function others(work: Work, theirs: KeptPlan): void {
  // Mine goes on as a copy at once, so that nothing hangs on the answer.
  copy(work);
  tellOthers(work.store, theirs, () => work.keeping.reopen(theirs.id));
}

async function writeState(work: Work, state: State): Promise<void> {
  const { known, noted, keeping } = work;
  const files = known.files === state.open.files ? null : state.open.files;
  const { seq } = noted;
  const write = { revision: known.revision + 1, seq, now: Date.now() };
  const plan = keptOf(state.open, state.origin, state.history, write);
  const result = await writePlan(work.last, { plan, files: files?.originals ?? null, seen: known.revision });
  if (known.id !== plan.id) return;
  if (result.kind === 'others') others(work, result.plan);
  else if (result.kind === 'gone') {
    Object.assign(known, { revision: 0, files: null });
    noted.base = null;
  } else {
    Object.assign(known, { revision: plan.revision, files: state.open.files, state });
    // Without a change since, the next one goes on from the record.
    if (noted.seq === seq) Object.assign(noted, { base: snapshotOf(state), loose: false });
    dropFromPage(plan.id, seq);
    keeping.kept(plan.id);
  }
}

function settle(work: Work): void {
  const { store } = work;
  clearTimeout(work.again);
  work.tries = 0;
  batch(() => {
    store.keeping.value = 'kept';
    if (work.told === null) return;
    // What was asked when it could not be written is answered by now.
    if (store.question.value === work.told) store.question.value = null;
    store.notice.value = { text: 'Your changes are saved in this browser again.' };
  });
  work.told = null;
}

/** Opens the database again that the browser has closed; what somebody has cleared is written anew, with all files. */
async function resume(work: Work): Promise<void> {
  const { known, noted } = work;
  // What was noted may be cleared too.
  Object.assign(noted, { base: null, filesOf: null });
  noteNow(work);
  const database = await work.keeping.database();
  work.database = database;
  work.last = database;
  const record = await database.get('plans', known.id);
  if (record === undefined) Object.assign(known, { revision: 0, files: null, state: null });
}

/** Writes until what the browser holds is what is open. */
export async function write(work: Work): Promise<void> {
  if (work.writing) return;
  work.writing = true;
  work.failed = null;
  try {
    if (work.database === null) await resume(work);
    for (let state = due(work); state !== null; state = due(work)) {
      work.store.keeping.value = 'writing';
      await writeState(work, state);
      askToStay(work);
    }
    if (work.claimed === 'mine') settle(work);
  } catch (error) {
    work.failed = current(work);
    failedToWrite(work, error);
  } finally {
    work.writing = false;
  }
  if (work.claimed === 'elsewhere') work.check();
}

/** The browser has closed the database, or somebody has cleared it: what is open is noted whole, and written again. */
export function lost(work: Work): void {
  work.database = null;
  void write(work);
}
