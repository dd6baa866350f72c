/** The tables of the browser's database. */
import type { DBSchema, IDBPDatabase } from 'idb';
import type { Entry } from './journal.ts';
import type { KeptFile, SetAside } from './records.ts';

export interface Tables extends DBSchema {
  /** `unknown`: what stands there is looked at before it is used. */
  readonly plans: { readonly key: string; readonly value: unknown };
  readonly files: { readonly key: [string, string]; readonly value: KeptFile };
  /** Changes that are not in a plan's record yet. */
  readonly journal: { readonly key: [string, number]; readonly value: Entry };
  readonly aside: { readonly key: number; readonly value: SetAside };
}

export type Database = IDBPDatabase<Tables>;
