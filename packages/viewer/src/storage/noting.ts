/** Notes each change in the journal while the page waits, before the frame that shows it. */
import type { History } from '../state/store/history.ts';
import type { OpenPlan, Origin } from '../state/store/store.ts';
import { entryOf, sameSnapshot, type Beginning, type Entry, type Snapshot } from './journal.ts';
import { noteInPage } from './journalPage.ts';
import type { Database } from './tables.ts';

/** What is open, without a trial. */
export interface State {
  readonly open: OpenPlan;
  readonly origin: Origin;
  readonly history: History;
}

/** What the journal is known to hold of the open plan. */
export interface Noted {
  /** The last entry's number, or that of the record. */
  seq: number;
  /** From where the next entry goes on; `null`: there is no record, so that the next one stands on its own. */
  base: Snapshot | null;
  /** The kept plan that has the same files, while this one has no record. */
  filesOf: string | null;
  /** The last change is in no part of the page's storage: leaving may lose it. */
  loose: boolean;
}

export const snapshotOf = ({ open, history }: State): Snapshot => ({
  text: open.document.text,
  history,
  variant: open.variant,
});

/** The database's part: sent off at once and whole, so that it is on its way while the frame is drawn. */
function noteInDatabase(database: Database, entry: Entry): void {
  try {
    const transaction = database.transaction('journal', 'readwrite', { durability: 'relaxed' });
    transaction.store.put(entry).catch(() => undefined);
    // Where it fails, the record fails too, which is told.
    transaction.done.catch(() => undefined);
    transaction.commit();
  } catch {
    // The database is closed; writing the record finds that too, and opens it again.
  }
}

const beginningOf = ({ open, origin }: State, filesOf: string | null): Beginning => ({
  name: open.document.plan.name,
  file: open.document.file,
  copy: origin.copy,
  demo: origin.from === 'demo',
  filesOf,
});

/** Whether there was a change, which is then noted. */
export function note(noted: Noted, database: Database, state: State): boolean {
  const next = snapshotOf(state);
  if (noted.base !== null && sameSnapshot(noted.base, next)) return false;
  noted.seq++;
  const begin = noted.base === null ? beginningOf(state, noted.filesOf) : null;
  const entry = entryOf({ plan: state.origin.id, seq: noted.seq, at: Date.now(), begin }, noted.base, next);
  noteInDatabase(database, entry);
  noted.loose = !noteInPage(entry);
  // Where an entry may be missing, the next one stands on its own.
  noted.base = noted.loose ? null : next;
  return true;
}
