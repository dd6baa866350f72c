/**
 * Puts the changes of the journal into the kept plans: what was last on the screen is there again after a reload, and
 * after a browser or a machine that has stopped. A plan that another tab has is left to that tab.
 */
import type { Entry } from './journal.ts';
import { isEntry, replayed, type Beginning, type Replayed } from './journal.ts';
import { dropFromPage, notedInPage } from './journalPage.ts';
import { lockName } from './claim.ts';
import { isKeptPlan, soundHistory, type KeptFile, type KeptPlan, type SetAside } from './records.ts';
import type { Database } from './tables.ts';

/** The example's files without its plan, by name. */
export type DemoFiles = () => Promise<ReadonlyMap<string, Blob>>;

const ofPlan = (id: string): IDBKeyRange => IDBKeyRange.bound([id, ''], [id, '\u{FFFF}']);
const entriesOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Infinity]);

/** Of both parts of the journal, each entry once. */
function united(inDatabase: readonly unknown[], inPage: readonly Entry[], id: string): readonly Entry[] {
  const all = [...inDatabase.filter(isEntry), ...inPage].filter(({ plan }) => plan === id);
  return [...new Map(all.map((entry) => [entry.seq, entry])).values()].toSorted((a, b) => a.seq - b.seq);
}

const recordOf = (id: string, begin: Beginning, { snapshot, last }: Replayed): KeptPlan => ({
  ...snapshot,
  id,
  revision: 1,
  name: begin.name,
  file: begin.file,
  saved: null,
  handle: null,
  modified: null,
  copy: begin.copy,
  changed: last?.at ?? 0,
  opened: last?.at ?? 0,
  seq: last?.seq ?? 0,
});

const aside = (record: unknown, at: number): SetAside => ({ why: 'unreadable', at, record });

async function filesFor(begin: Beginning, kept: readonly KeptFile[], demo: DemoFiles): Promise<[string, Blob][]> {
  if (begin.filesOf !== null) return kept.map(({ name, blob }) => [name, blob]);
  return begin.demo ? [...(await demo())] : [];
}

/** What is known of one plan before anything is written. */
interface Here {
  readonly record: unknown;
  readonly entries: readonly Entry[];
}

async function read(database: Database, id: string): Promise<Here> {
  const transaction = database.transaction(['plans', 'journal']);
  const [record, noted] = await Promise.all([
    transaction.objectStore('plans').get(id),
    transaction.objectStore('journal').getAll(entriesOf(id)),
  ]);
  return { record, entries: united(noted, notedInPage(), id) };
}

/** The record with what the journal has after it; `null` where that is nothing. */
function recordAfter(
  id: string,
  { record, entries }: Here,
): { readonly plan: KeptPlan; readonly unfit: readonly Entry[] } | null {
  const kept = isKeptPlan(record) ? record : null;
  const snapshot =
    kept === null ? null : { text: kept.text, history: soundHistory(kept.text, kept.history), variant: kept.variant };
  const now = replayed(snapshot, kept?.seq ?? 0, entries);
  if (now === null || now.last === null) return null;
  const { last, unfit } = now;
  if (kept !== null)
    return {
      plan: { ...kept, ...now.snapshot, revision: kept.revision + 1, changed: last.at, seq: last.seq },
      unfit,
    };
  const begin = entries.findLast((one) => one.begin !== null)?.begin ?? null;
  return begin === null ? null : { plan: recordOf(id, begin, now), unfit };
}

/** Puts the journal of one plan into its record. The caller has the plan to itself. */
export async function recover(database: Database, id: string, demo: DemoFiles): Promise<void> {
  const here = await read(database, id);
  if (here.entries.length === 0 || (here.record !== undefined && !isKeptPlan(here.record))) return;
  const seq = Math.max(...here.entries.map((entry) => entry.seq));
  const after = recordAfter(id, here);
  const begin = here.record === undefined ? (here.entries.findLast((one) => one.begin !== null)?.begin ?? null) : null;
  const source = begin?.filesOf ?? null;
  const kept = source === null ? [] : await database.getAll('files', ofPlan(source));
  const files = after === null || begin === null ? [] : await filesFor(begin, kept, demo);
  const transaction = database.transaction(['plans', 'files', 'journal', 'aside'], 'readwrite', {
    durability: 'strict',
  });
  const lost = after === null ? here.entries.filter(({ seq: own }) => own > seqOf(here.record)) : after.unfit;
  await Promise.all([
    ...(after === null ? [] : [transaction.objectStore('plans').put(after.plan)]),
    ...files.map(([name, blob]) => transaction.objectStore('files').put({ plan: id, name, blob })),
    // What does not fit is not used, and not thrown away either.
    ...lost.map((entry) => transaction.objectStore('aside').add(aside(entry, Date.now()))),
    transaction.objectStore('journal').delete(entriesOf(id)),
    transaction.done,
  ]);
  dropFromPage(id, seq);
}

const seqOf = (record: unknown): number => (isKeptPlan(record) ? (record.seq ?? 0) : 0);

/** How long the page that this one takes the place of may take to let its plan go, milliseconds. */
const LETTING_GO = 1500;

/** Recovers one plan unless another tab has it. `own`: it was this tab's before a reload, so that it is about to be free. */
async function recoverFree(database: Database, id: string, demo: DemoFiles, own: boolean): Promise<void> {
  const locks = (navigator as Partial<Navigator>).locks;
  if (locks === undefined) return recover(database, id, demo);
  const options: LockOptions = own ? { signal: AbortSignal.timeout(LETTING_GO) } : { ifAvailable: true };
  try {
    await locks.request(lockName(id), options, async (lock) => {
      if (lock !== null) await recover(database, id, demo);
    });
  } catch (error) {
    // Another tab has it, and writes its changes itself.
    if (!(error instanceof DOMException && error.name === 'TimeoutError')) throw error;
  }
}

/** All plans that the journal knows of, or one of them. `own`: the one of this tab. */
export async function recoverPlans(
  database: Database,
  demo: DemoFiles,
  { id = null, own = null }: { readonly id?: string | null; readonly own?: string | null } = {},
): Promise<void> {
  const keys = await database.getAllKeys('journal');
  const all = new Set([...keys.map(([plan]) => plan), ...notedInPage().map(({ plan }) => plan)]);
  for (const one of all) if (id === null || one === id) await recoverFree(database, one, demo, one === own);
}
