import 'fake-indexeddb/auto';
import { deleteDB, openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { EMPTY_HISTORY } from '../state/store/history.ts';
import {
  deletePlan,
  listAside,
  listKept,
  openDatabase,
  readKept,
  restorePlan,
  setAside,
  touchPlan,
  writePlan,
} from './database.ts';
import type { KeptPlan } from './records.ts';
import type { Database } from './tables.ts';

const ENDING = { outdated: () => undefined, lost: () => undefined };
let count = 0;
const fresh = (): Promise<Database> => openDatabase(ENDING, `test-${count++}`);

const plan = (id: string, revision: number, extra: Partial<KeptPlan> = {}): KeptPlan => ({
  id,
  revision,
  name: id,
  file: `${id}.json`,
  text: `{"n":${revision}}`,
  variant: null,
  history: EMPTY_HISTORY,
  saved: null,
  handle: null,
  modified: null,
  copy: false,
  changed: revision,
  opened: revision,
  ...extra,
});
const files = new Map([['a.gpx', new Blob(['<gpx/>'])]]);

describe('writePlan', () => {
  it('writes the first time with files, then without, and counts on the revision that was seen', async () => {
    const database = await fresh();
    expect(await writePlan(database, { plan: plan('p', 1), files, seen: 0 })).toEqual({ kind: 'written' });
    expect(await writePlan(database, { plan: plan('p', 2), files: null, seen: 1 })).toEqual({ kind: 'written' });
    const read = await readKept(database, 'p');
    expect(read.plan).toEqual(plan('p', 2));
    expect(read.files.map(({ name }) => name)).toEqual(['a.gpx']);
  });

  it('writes nothing where another tab has written since, and gives what it wrote', async () => {
    const database = await fresh();
    await writePlan(database, { plan: plan('p', 1), files, seen: 0 });
    await writePlan(database, { plan: plan('p', 2, { text: 'theirs' }), files: null, seen: 1 });
    expect(await writePlan(database, { plan: plan('p', 2, { text: 'mine' }), files: null, seen: 1 })).toEqual({
      kind: 'others',
      plan: plan('p', 2, { text: 'theirs' }),
    });
    expect((await readKept(database, 'p')).plan).toEqual(plan('p', 2, { text: 'theirs' }));
  });

  it('asks for the files again where another tab has deleted the plan', async () => {
    const database = await fresh();
    await writePlan(database, { plan: plan('p', 1), files, seen: 0 });
    await deletePlan(database, 'p');
    expect(await writePlan(database, { plan: plan('p', 2), files: null, seen: 1 })).toEqual({ kind: 'gone' });
    expect((await listKept(database)).plans).toEqual([]);
  });

  it('replaces the files, and touches those of no other plan', async () => {
    const database = await fresh();
    await writePlan(database, { plan: plan('p', 1), files, seen: 0 });
    await writePlan(database, { plan: plan('q', 1), files, seen: 0 });
    await writePlan(database, { plan: plan('p', 2), files: new Map([['b.gpx', new Blob(['<gpx/>'])]]), seen: 1 });
    expect((await readKept(database, 'p')).files.map(({ name }) => name)).toEqual(['b.gpx']);
    expect((await readKept(database, 'q')).files.map(({ name }) => name)).toEqual(['a.gpx']);
  });
});

describe('the list', () => {
  it('has the plan opened last first, and names records that cannot be used', async () => {
    const database = await fresh();
    for (const [k, id] of ['p', 'q', 'r'].entries())
      await writePlan(database, { plan: plan(id, k + 1), files, seen: 0 });
    await touchPlan(database, 'p', 99);
    await database.put('plans', { id: 'broken', text: 5 });
    const { plans, broken } = await listKept(database);
    expect(plans.map(({ id }) => id)).toEqual(['p', 'r', 'q']);
    expect(broken).toEqual(['broken']);
    expect(plans[0]?.revision).toBe(1);
  });

  it('loses a plan with its files when it is forgotten, and has both again when it is brought back', async () => {
    const database = await fresh();
    await writePlan(database, { plan: plan('p', 1), files, seen: 0 });
    const before = await readKept(database, 'p');
    await deletePlan(database, 'p');
    expect(await readKept(database, 'p')).toEqual({ plan: undefined, files: [] });
    await restorePlan(database, plan('p', 1), before.files);
    expect((await readKept(database, 'p')).plan).toEqual(plan('p', 1));
    expect((await readKept(database, 'p')).files.length).toBe(1);
  });

  it('keeps what is set aside as it was', async () => {
    const database = await fresh();
    await database.put('plans', { id: 'broken', text: 5 });
    await setAside(database, 'broken', 7);
    expect(await listAside(database)).toEqual([{ why: 'unreadable', at: 7, record: { id: 'broken', text: 5 } }]);
    expect((await listKept(database)).broken).toEqual([]);
  });
});

describe('a database of version 1', () => {
  it('becomes one of this version, every old record set aside, the readable ones rewritten', async () => {
    const name = `test-${count++}`;
    const first = { id: 'old', name: 'Old', file: 'old.json', text: '{}', gpx: { 'a.gpx': '<gpx/>' }, changed: 5 };
    const old = await openDB(name, 1, {
      upgrade: (database) => void database.createObjectStore('plans', { keyPath: 'id' }),
    });
    await old.put('plans', first);
    await old.put('plans', { id: 'strange' });
    old.close();
    const database = await openDatabase(ENDING, name);
    const { plans, broken } = await listKept(database);
    expect(plans.map(({ id, text, opened }) => ({ id, text, opened }))).toEqual([{ id: 'old', text: '{}', opened: 5 }]);
    expect(broken).toEqual([]);
    expect((await readKept(database, 'old')).files.map((file) => file.name)).toEqual(['a.gpx']);
    expect((await listAside(database)).map(({ why, record }) => ({ why, record }))).toEqual([
      { why: 'before-migration', record: first },
      { why: 'before-migration', record: { id: 'strange' } },
    ]);
  });

  it('tells a page of an older version that a newer one wants the database', async () => {
    const name = `test-${count++}`;
    let told = 0;
    await openDatabase({ ...ENDING, outdated: () => void told++ }, name);
    const newer = await openDB(name, 4);
    expect(told).toBe(1);
    newer.close();
  });

  it('tells a page whose database somebody deletes that it is lost, not that the page is old', async () => {
    const name = `test-${count++}`;
    let lost = 0;
    await openDatabase({ outdated: () => expect.unreachable(), lost: () => void lost++ }, name);
    await deleteDB(name);
    expect(lost).toBe(1);
  });
});
