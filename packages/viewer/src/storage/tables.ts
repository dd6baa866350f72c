/** The tables of the browser's database. */
import type { DBSchema, IDBPDatabase } from 'idb';
import type { KeptFile, SetAside } from './records.ts';

export interface Tables extends DBSchema {
  /** `unknown`: what stands there is looked at before it is used. */
  readonly plans: { readonly key: string; readonly value: unknown };
  readonly files: { readonly key: [string, string]; readonly value: KeptFile };
  readonly aside: { readonly key: number; readonly value: SetAside };
}

export type Database = IDBPDatabase<Tables>;
