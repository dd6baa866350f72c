/**
 * The browser's database of plans (IndexedDB, W3C Indexed Database API 3.0). Every write is one transaction
 * that first compares the revision, so that a tab never writes over what another has written.
 */
import { openDB } from 'idb';
import { dropFromPage } from './journalPage.ts';
import { migrate } from './migrate.ts';
import { isKeptPlan, type KeptFile, type KeptPlan, type SetAside } from './records.ts';
import type { Database, Tables } from './tables.ts';

export const DATABASE = 'halfcup';
export const VERSION = 3;

/** What happens to an open database from outside. */
export interface Ending {
  /** A newer version of the page wants the database; this one can keep nothing more. */
  readonly outdated: () => void;
  /** The browser has closed it, or somebody has cleared what it holds. */
  readonly lost: () => void;
}

export const openDatabase = ({ outdated, lost }: Ending, name: string = DATABASE): Promise<Database> =>
  openDB<Tables>(name, VERSION, {
    upgrade: (database, from, _to, transaction) => migrate(database, from, transaction),
    blocking: (_current, wanted, event) => {
      (event.target as IDBDatabase).close();
      if (wanted === null) lost();
      else outdated();
    },
    terminated: lost,
  });

export interface Written {
  readonly plan: KeptPlan;
  /** `null`: as they were written before. */
  readonly files: ReadonlyMap<string, Blob> | null;
  /** The revision that this tab has seen last; 0 where it has written none. */
  readonly seen: number;
}

/** `others`: what another tab has written meanwhile; nothing was written then. `gone`: another tab has deleted the plan, files and all. */
export type Writing =
  | { readonly kind: 'written' }
  | { readonly kind: 'others'; readonly plan: KeptPlan }
  | { readonly kind: 'gone' };

const ofPlan = (id: string): IDBKeyRange => IDBKeyRange.bound([id, ''], [id, '\u{FFFF}']);

const notedUpTo = (id: string, seq: number): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, seq]);

/** Writes a plan and its files, all or nothing, and lets go the journal of what the record has. Rejects where the disk is full. */
export async function writePlan(database: Database, { plan, files, seen }: Written): Promise<Writing> {
  const transaction = database.transaction(['plans', 'files', 'journal'], 'readwrite', { durability: 'strict' });
  const [plans, kept] = [transaction.objectStore('plans'), transaction.objectStore('files')];
  const now = await plans.get(plan.id);
  if (isKeptPlan(now) && now.revision !== seen) {
    await transaction.done;
    return { kind: 'others', plan: now };
  }
  if (now === undefined && files === null) {
    await transaction.done;
    return { kind: 'gone' };
  }
  const writes: Promise<unknown>[] = [
    plans.put(plan),
    transaction.objectStore('journal').delete(notedUpTo(plan.id, plan.seq ?? 0)),
    transaction.done,
  ];
  if (files !== null)
    writes.push(
      kept.delete(ofPlan(plan.id)),
      ...[...files].map(([name, blob]) => kept.put({ plan: plan.id, name, blob })),
    );
  await Promise.all(writes);
  return { kind: 'written' };
}

export interface KeptRead {
  readonly plan: unknown;
  readonly files: readonly KeptFile[];
}

export async function readKept(database: Database, id: string): Promise<KeptRead> {
  const transaction = database.transaction(['plans', 'files']);
  const [plan, files] = await Promise.all([
    transaction.objectStore('plans').get(id),
    transaction.objectStore('files').getAll(ofPlan(id)),
  ]);
  return { plan, files };
}

/** The plans that can be used, the one opened last first; and the keys of records that cannot. */
export async function listKept(
  database: Database,
): Promise<{ readonly plans: readonly KeptPlan[]; readonly broken: readonly string[] }> {
  const transaction = database.transaction('plans');
  const [keys, values] = await Promise.all([transaction.store.getAllKeys(), transaction.store.getAll()]);
  const plans = values.filter(isKeptPlan).toSorted((a, b) => b.opened - a.opened);
  return { plans, broken: keys.filter((_, index) => !isKeptPlan(values[index])) };
}

/** Marks a plan as the one opened last; its revision stays. */
export async function touchPlan(database: Database, id: string, now: number): Promise<void> {
  const transaction = database.transaction('plans', 'readwrite');
  const plan = await transaction.store.get(id);
  if (isKeptPlan(plan)) await transaction.store.put({ ...plan, opened: now });
  await transaction.done;
}

export async function deletePlan(database: Database, id: string): Promise<void> {
  const transaction = database.transaction(['plans', 'files', 'journal'], 'readwrite');
  await Promise.all([
    transaction.objectStore('plans').delete(id),
    transaction.objectStore('files').delete(ofPlan(id)),
    transaction.objectStore('journal').delete(notedUpTo(id, Infinity)),
    transaction.done,
  ]);
  dropFromPage(id, Infinity);
}

/** Puts back what was deleted. */
export async function restorePlan(database: Database, plan: KeptPlan, files: readonly KeptFile[]): Promise<void> {
  const transaction = database.transaction(['plans', 'files'], 'readwrite');
  const kept = transaction.objectStore('files');
  await Promise.all([
    transaction.objectStore('plans').put(plan),
    ...files.map((file) => kept.put(file)),
    transaction.done,
  ]);
}

/** Takes a record out of use and keeps it with its files' names beside, all or nothing. */
export async function setAside(database: Database, id: string, now: number): Promise<void> {
  const transaction = database.transaction(['plans', 'aside'], 'readwrite');
  const plans = transaction.objectStore('plans');
  const record = await plans.get(id);
  await Promise.all([
    transaction.objectStore('aside').add({ why: 'unreadable', at: now, record }),
    plans.delete(id),
    transaction.done,
  ]);
}

export const listAside = (database: Database): Promise<SetAside[]> => database.getAll('aside');
