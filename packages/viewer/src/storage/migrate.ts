/** Brings the database from any earlier version to this one, inside the browser's own version change: all or nothing. */
import type { IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';
import { EMPTY_HISTORY } from '../state/store/history.ts';
import type { KeptPlan } from './records.ts';
import type { Tables } from './tables.ts';

type Change = IDBPTransaction<Tables, StoreNames<Tables>[], 'versionchange'>;

/** Version 1 kept the texts of the GPX files inside the plan's record, and no history. */
interface First {
  readonly id: string;
  readonly name: string;
  readonly file: string;
  readonly text: string;
  readonly gpx: Readonly<Record<string, string>>;
  readonly changed: number;
}

const isFirst = (value: unknown): value is First => {
  const one = value as Partial<First> | null;
  return (
    [one?.id, one?.name, one?.file, one?.text].every((part) => typeof part === 'string') &&
    typeof one?.gpx === 'object' &&
    typeof one.changed === 'number'
  );
};

const secondOf = ({ id, name, file, text, changed }: First): KeptPlan => ({
  id,
  revision: 1,
  name,
  file,
  text,
  variant: null,
  history: EMPTY_HISTORY,
  saved: null,
  handle: null,
  modified: null,
  copy: false,
  changed,
  opened: changed,
});

/** Each record goes aside as it was; those that can be understood are written anew. */
async function fromFirst(change: Change): Promise<void> {
  const [plans, files, aside] = [change.objectStore('plans'), change.objectStore('files'), change.objectStore('aside')];
  const [keys, records] = await Promise.all([plans.getAllKeys(), plans.getAll()]);
  for (const [index, record] of records.entries()) {
    await aside.add({ why: 'before-migration', at: Date.now(), record });
    if (isFirst(record)) {
      await plans.put(secondOf(record));
      for (const [name, text] of Object.entries(record.gpx))
        await files.put({ plan: record.id, name, blob: new Blob([text]) });
    } else await plans.delete(keys[index]!);
  }
}

export async function migrate(database: IDBPDatabase<Tables>, from: number, change: Change): Promise<void> {
  if (!database.objectStoreNames.contains('plans')) database.createObjectStore('plans', { keyPath: 'id' });
  if (from < 2) {
    database.createObjectStore('files', { keyPath: ['plan', 'name'] });
    database.createObjectStore('aside', { autoIncrement: true });
    if (from === 1) await fromFirst(change);
  }
  if (from < 3) database.createObjectStore('journal', { keyPath: ['plan', 'seq'] });
}
