import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { EMPTY_HISTORY, recorded, redone, undone, type History } from '../state/store/history.ts';
import { tries } from '../testing.ts';
import { listAside, listKept, openDatabase, readKept, writePlan } from './database.ts';
import { entryOf, replayed, sumOf, type Beginning, type Entry, type Snapshot } from './journal.ts';
import { dropFromPage, noteInPage, notedInPage } from './journalPage.ts';
import { recoverPlans } from './recover.ts';
import type { KeptPlan } from './records.ts';
import type { Database } from './tables.ts';

/** As much of Web Storage as the journal asks for. */
const stored = new Map<string, string>();
const storage = {
  get length() {
    return stored.size;
  },
  key: (at: number) => [...stored.keys()][at] ?? null,
  getItem: (key: string) => stored.get(key) ?? null,
  setItem: (key: string, value: string) => void stored.set(key, value),
  removeItem: (key: string) => void stored.delete(key),
};
/** Put in the place of a browser's own while these tests run; without locks every plan is free. */
const STANDINS = { localStorage: storage, navigator: {} };
const before = Object.keys(STANDINS).map((key) => [key, Object.getOwnPropertyDescriptor(globalThis, key)] as const);
beforeAll(() => {
  for (const [key, value] of Object.entries(STANDINS))
    Object.defineProperty(globalThis, key, { value, configurable: true });
});
afterAll(() => {
  for (const [key, own] of before) {
    if (own === undefined) Reflect.deleteProperty(globalThis, key);
    else Object.defineProperty(globalThis, key, own);
  }
});
beforeEach(() => stored.clear());

const START: Snapshot = { text: '{"name":"Pier run"}', history: EMPTY_HISTORY, variant: null };
const begin: Beginning = { name: 'Pier run', file: 'pier.json', copy: false, demo: false, filesOf: null };

/** A change of any kind that the page makes: a step, a nudge that merges, undo, redo, another variant. */
const change = fc.oneof(
  fc.record({ kind: fc.constant('step' as const), text: fc.string({ maxLength: 20 }) }),
  fc.record({ kind: fc.constant('nudge' as const), text: fc.string({ maxLength: 20 }) }),
  fc.record({ kind: fc.constantFrom('undo' as const, 'redo' as const) }),
  fc.record({ kind: fc.constant('variant' as const), variant: fc.option(fc.string({ maxLength: 3 })) }),
);
type Change = typeof change extends fc.Arbitrary<infer T> ? T : never;

function changed(now: Snapshot, one: Change): Snapshot {
  if (one.kind === 'variant') return { ...now, variant: one.variant };
  if (one.kind === 'step' || one.kind === 'nudge') {
    const history = recorded(now.history, 'change', now.text, one.text, one.kind === 'nudge' ? 'n' : undefined);
    return { ...now, text: one.text, history };
  }
  const moved = (one.kind === 'undo' ? undone : redone)(now.history, now.text);
  return moved === null ? now : { ...now, text: moved.text, history: moved.history };
}

/** The states of a plan and the entries between them. */
function written(changes: readonly Change[], whole: boolean): { states: Snapshot[]; entries: Entry[] } {
  const states = [START];
  const entries: Entry[] = [];
  for (const [k, one] of changes.entries()) {
    const last = states.at(-1)!;
    const next = changed(last, one);
    const base = whole && k === 0 ? null : last;
    entries.push(entryOf({ plan: 'p', seq: k + 1, at: k, begin: base === null ? begin : null }, base, next));
    states.push(next);
  }
  // As they come back from storage.
  return { states, entries: entries.map((entry) => JSON.parse(JSON.stringify(entry)) as Entry) };
}

describe('the journal', () => {
  it('gives the last state from any record on the way, and from nothing where it began with nothing', () => {
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 12 }), fc.nat(), fc.boolean(), (changes, at, whole) => {
        const { states, entries } = written(changes, whole);
        const k = at % states.length;
        const from = whole && k === 0 ? null : (JSON.parse(JSON.stringify(states[k])) as Snapshot);
        const now = replayed(from, k, entries.toReversed());
        expect(now?.snapshot).toEqual(states.at(-1));
        expect(now?.unfit).toEqual([]);
      }),
      { seed: 20, numRuns: tries(500) },
    );
  });

  it('begins with the last entry that stands on its own, whatever is left of earlier ones', () => {
    const { entries: old } = written(
      [
        { kind: 'step', text: 'a' },
        { kind: 'step', text: 'b' },
      ],
      false,
    );
    const { entries, states } = written(
      [
        { kind: 'step', text: 'c' },
        { kind: 'step', text: 'd' },
      ],
      true,
    );
    const later = entries.map((entry) => ({ ...entry, seq: entry.seq + 2 }));
    expect(replayed(null, 0, [old[1]!, ...later])).toMatchObject({ snapshot: states[2], unfit: [] });
  });

  it('keeps a long history short: a step over the deepest one lets the oldest go', () => {
    let history: History = EMPTY_HISTORY;
    for (let k = 0; k < 2000; k++) history = recorded(history, 'step', `${k}`, `${k + 1}`);
    const full: Snapshot = { text: '2000', history, variant: null };
    const next = { ...full, text: 'x', history: recorded(history, 'step', '2000', 'x') };
    const entry = entryOf({ plan: 'p', seq: 1, at: 0, begin: null }, full, next);
    expect(entry.past).toMatchObject({ drop: 1, keep: 1999 });
    expect(entry.past.add).toHaveLength(1);
    expect(replayed(full, 0, [entry])?.snapshot).toEqual(next);
  });

  it('stops where an entry does not belong to the text, and hands over what would not fit', () => {
    const { entries } = written(
      [
        { kind: 'step', text: 'a' },
        { kind: 'step', text: 'b' },
        { kind: 'step', text: 'c' },
      ],
      false,
    );
    const now = replayed(START, 0, [entries[0]!, entries[2]!]);
    expect(now?.snapshot.text).toBe('a');
    expect(now?.unfit).toEqual([entries[2]]);
    expect(replayed({ ...START, text: 'other' }, 0, entries)?.unfit).toHaveLength(3);
  });

  it('tells texts apart by FNV-1a; its values for no text and for "a" are those of the draft', () => {
    expect([sumOf(''), sumOf('a')]).toEqual([0x811c9dc5, 0xe40c292c]);
  });
});

let count = 0;
const fresh = (): Promise<Database> =>
  openDatabase({ outdated: () => undefined, lost: () => undefined }, `journal-${count++}`);
const record: KeptPlan = {
  ...START,
  id: 'p',
  revision: 4,
  name: 'Pier run',
  file: 'pier.json',
  saved: null,
  handle: null,
  modified: null,
  copy: false,
  changed: 1,
  opened: 1,
  seq: 0,
};
const noDemo = (): Promise<ReadonlyMap<string, Blob>> => Promise.reject(new Error('not asked for'));
const steps = (...texts: string[]): Change[] => texts.map((text) => ({ kind: 'step', text }));

describe('recovery', () => {
  it('puts both parts of the journal into the record, once, and empties them', async () => {
    const database = await fresh();
    await writePlan(database, { plan: record, files: new Map([['a.gpx', new Blob(['<gpx/>'])]]), seen: 0 });
    const { entries, states } = written(steps('a', 'b', 'c'), false);
    // One stands in both, one only in the database, one only in the page's storage.
    await database.put('journal', entries[0]!);
    await database.put('journal', entries[1]!);
    noteInPage(entries[0]!);
    noteInPage(entries[2]!);
    await recoverPlans(database, noDemo);
    const { plan, files } = await readKept(database, 'p');
    expect(plan).toMatchObject({ ...states[3], revision: 5, seq: 3 });
    expect(files.map(({ name }) => name)).toEqual(['a.gpx']);
    expect([await database.count('journal'), notedInPage().length]).toEqual([0, 0]);
    await recoverPlans(database, noDemo);
    expect((await readKept(database, 'p')).plan).toMatchObject({ revision: 5 });
  });

  it('makes a plan that has no record yet, with the files of the plan that it is a copy of, or the example’s', async () => {
    const database = await fresh();
    await writePlan(database, { plan: record, files: new Map([['a.gpx', new Blob(['<gpx/>'])]]), seen: 0 });
    const { entries } = written(steps('a'), true);
    noteInPage({ ...entries[0]!, plan: 'copy', begin: { ...begin, copy: true, filesOf: 'p' } });
    noteInPage({ ...entries[0]!, plan: 'demo', begin: { ...begin, demo: true } });
    await recoverPlans(database, () => Promise.resolve(new Map([['d.gpx', new Blob(['<gpx/>'])]])));
    const { plans } = await listKept(database);
    expect(new Map(plans.map(({ id, text, copy }) => [id, [text, copy]]))).toEqual(
      new Map([
        ['copy', ['a', true]],
        ['demo', ['a', false]],
        ['p', [START.text, false]],
      ]),
    );
    expect((await readKept(database, 'copy')).files.map(({ name }) => name)).toEqual(['a.gpx']);
    expect((await readKept(database, 'demo')).files.map(({ name }) => name)).toEqual(['d.gpx']);
  });

  it('passes over what the record has already, and puts aside what does not fit it', async () => {
    const database = await fresh();
    const { entries } = written(steps('a', 'b', 'c'), false);
    await writePlan(database, { plan: { ...record, text: 'b', seq: 2 }, files: new Map(), seen: 0 });
    noteInPage(entries[0]!);
    noteInPage({ ...entries[2]!, before: 1 });
    await recoverPlans(database, noDemo);
    expect((await readKept(database, 'p')).plan).toMatchObject({ text: 'b', revision: 4 });
    expect((await listAside(database)).map(({ record: one }) => (one as Entry).seq)).toEqual([3]);
    expect(notedInPage()).toEqual([]);
  });

  it('is not needed for what a write has taken in: the same transaction lets it go', async () => {
    const database = await fresh();
    const { entries } = written(steps('a', 'b'), false);
    for (const entry of entries) await database.put('journal', entry);
    await writePlan(database, { plan: { ...record, text: 'a', seq: 1 }, files: new Map(), seen: 0 });
    expect((await database.getAll('journal')).map(({ seq }) => seq)).toEqual([2]);
  });

  it('reads only what is an entry, and lets go one plan’s alone', () => {
    const { entries } = written(steps('a', 'b'), false);
    for (const entry of entries) noteInPage(entry);
    noteInPage({ ...entries[0]!, plan: 'q' });
    stored.set('halfcup-journal:p:9', '{"plan":"p"}');
    stored.set('halfcup-journal:p:10', 'cut o');
    stored.set('another', 'key');
    expect(notedInPage()).toHaveLength(3);
    dropFromPage('p', 1);
    expect(notedInPage().map(({ plan, seq }) => `${plan}${seq}`)).toEqual(['p2', 'q1']);
  });
});
