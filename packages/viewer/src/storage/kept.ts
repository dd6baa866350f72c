/** Opens plans that the browser keeps; at the start the one of this tab, else the one opened last, else the demo. */
import { batch } from '@preact/signals';
import { fetchDemo } from '../state/open/demo.ts';
import type { Notice, Origin, Store } from '../state/store/store.ts';
import { showVariant } from '../state/edits/workbench.ts';
import { openBlobs } from '../work/opening.ts';
import { listKept, openDatabase, readKept, setAside, type KeptRead } from './database.ts';
import { startKeeping } from './keeper.ts';
import { plainError, reasonOf } from '../trouble.ts';
import { firstMessage } from '../state/view/voice.ts';
import { recover, recoverPlans } from './recover.ts';
import { isKeptPlan, soundHistory, type KeptPlan } from './records.ts';
import type { Shelf, ShelfSignal } from './shelf.ts';
import type { Database } from './tables.ts';
import { tellNothingKept } from './tell.ts';
import { receive } from '../state/open/receive.ts';

/** A sentence as a clause of another one. */
const clauseOf = (sentence: string): string => sentence.replace(/\.$/u, '');

const DEMO = 'demo';
const TAB = 'halfcup-tab';

/** Which plan this tab shows; lost with the tab. */
const tabPlan = {
  read: (): string | null => {
    try {
      return sessionStorage.getItem(TAB);
    } catch {
      return null;
    }
  },
  write: (id: string): void => {
    try {
      sessionStorage.setItem(TAB, id);
    } catch {
      // Without it the plan opened last is opened.
    }
  },
};

/** `atStart`: unless somebody has opened a plan meanwhile. */
export async function openDemo(store: Store, atStart = false): Promise<void> {
  try {
    const files = await fetchDemo();
    const named = files.map(({ name, bytes }) => ({ name, blob: new Blob([bytes]) }));
    const opening = await openBlobs(store, named, null);
    if (atStart && (store.open.value !== null || store.waiting.value !== null)) return;
    if (opening === null) {
      store.loading.value = false;
      return;
    }
    receive(
      store,
      files.map((file) => file.name),
      opening,
      { from: 'demo' },
    );
    tabPlan.write(DEMO);
  } catch (error) {
    const message = `The demo could not be loaded: ${reasonOf(error)}. You can open a plan or a GPX file of your own.`;
    receive(store, ['the demo'], {
      kind: 'refused',
      findings: [{ code: 'demo-unreadable', severity: 'error', message, where: {} }],
    });
  }
}

const originOf = ({ id, saved, handle, modified, copy }: KeptPlan): Origin => ({
  id,
  from: 'kept',
  saved,
  handle,
  modified,
  copy,
});

/** Shows a kept plan with its variant and its history; why not, where it cannot be read. */
async function show(store: Store, shelf: Shelf, { plan, files }: KeptRead): Promise<string | null> {
  if (!isKeptPlan(plan)) return 'the copy saved in this browser is damaged';
  const named = [{ name: plan.file, blob: new Blob([plan.text]) }, ...files.map(({ name, blob }) => ({ name, blob }))];
  const before = store.open.value;
  const opening = await openBlobs(store, named, null);
  // Stopped; or this very plan was changed here meanwhile, which its keeper takes care of.
  if (opening === null || (store.origin.value?.id === plan.id && store.open.value !== before)) return null;
  if (opening.kind === 'refused') return clauseOf(firstMessage(store, opening.findings) ?? 'it cannot be read');
  if (opening.kind === 'waiting') {
    // Its files were cleared before they could be written again: the page asks for them.
    receive(store, [plan.file], opening);
    return null;
  }
  if (opening.kind === 'starting') return 'it has no plan';
  shelf.keeper.adopt(plan);
  batch(() => {
    receive(store, [plan.file], opening, originOf(plan));
    store.history.value = soundHistory(plan.text, plan.history);
    showVariant(store, plan.variant);
  });
  return null;
}

/** Opens a kept plan; one that cannot be read is set aside with a notice, and nothing else changes. `false`: it did not open. */
export async function openKept(store: Store, shelf: Shelf, id: string): Promise<boolean> {
  await recoverPlans(shelf.database, demoFiles, { id });
  const read = await readKept(shelf.database, id);
  const reason = await show(store, shelf, read);
  if (reason === null) {
    tabPlan.write(id);
    return true;
  }
  await setAside(shelf.database, id, Date.now());
  const name = isKeptPlan(read.plan) ? `“${read.plan.name}”` : 'A plan saved in this browser';
  store.question.value = {
    text: `${name} could not be opened: ${reason}. It is set aside unchanged; save it to a file under “Plans”.`,
    choices: [{ label: 'OK', act: () => void (store.question.value = null) }],
  };
  return false;
}

/** What this tab showed, else the plan changed last; where nothing is kept, the ways to begin. */
async function openLast(store: Store, shelf: Shelf): Promise<void> {
  const { plans, broken } = await listKept(shelf.database);
  for (const id of broken) await openKept(store, shelf, id);
  const last = tabPlan.read();
  if (last === DEMO) return openDemo(store, true);
  const ordered = [...plans.filter(({ id }) => id === last), ...plans.filter(({ id }) => id !== last)];
  for (const { id } of ordered) {
    if (await openKept(store, shelf, id)) {
      // A person who stopped a long reading is shown the ways to begin.
      store.loading.value = false;
      return;
    }
  }
  if (asksForExample()) return openDemo(store, true);
  store.loading.value = false;
}

/** A link may lead to the example; measurements are made on it. */
const asksForExample = (): boolean => location.hash === '#example' || location.hash === '#bench';

/** Milliseconds until a browser that keeps nothing is asked again. */
const PAUSE = 10_000;

/** The demo's files beside its plan. */
async function demoFiles(): Promise<ReadonlyMap<string, Blob>> {
  const [, ...files] = await fetchDemo();
  return new Map(files.map(({ name, bytes }) => [name, new Blob([bytes])]));
}

/** Opens the database and keeps plans in it from now on. */
async function shelve(store: Store, signal: ShelfSignal): Promise<Shelf> {
  const ending = {
    outdated: () =>
      void tellNothingKept(store, plainError('a newer version of this page is open in another tab; reload this one')),
    lost: () => signal.value?.keeper.lost(),
  };
  const first = await openDatabase(ending);
  await recoverPlans(first, demoFiles, { own: tabPlan.read() });
  const database = async (): Promise<Database> => {
    const again = await openDatabase(ending);
    signal.value = { database: again, keeper };
    return again;
  };
  const recovered = async (id: string): Promise<unknown> => {
    const { database: now } = signal.value!;
    await recover(now, id, demoFiles);
    return now.get('plans', id);
  };
  const reopen = async (id: string): Promise<void> => void (await openKept(store, signal.value!, id));
  const keeper = startKeeping(store, first, { recovered, reopen, kept: tabPlan.write, database });
  signal.value = { database: first, keeper };
  return signal.value;
}

/** Asks a browser that keeps nothing again and again; once it does, what is open is kept. */
function shelveLater(store: Store, signal: ShelfSignal, told: Notice): void {
  const again = async (): Promise<void> => {
    try {
      await shelve(store, signal);
      if (store.question.value === told) store.question.value = null;
      store.notice.value = { text: 'This browser saves your plans again.' };
    } catch {
      setTimeout(() => void again(), PAUSE);
    }
  };
  setTimeout(() => void again(), PAUSE);
}

/** Opens the database and the plan; from then on every change is kept. Where nothing can be kept the page works all the same. */
export async function startShelf(store: Store, signal: ShelfSignal): Promise<void> {
  try {
    await openLast(store, await shelve(store, signal));
  } catch (error) {
    const told = tellNothingKept(store, error);
    if (signal.value === null) shelveLater(store, signal, told);
    if (store.open.value !== null) return;
    if (asksForExample()) await openDemo(store, true);
    else store.loading.value = false;
  }
}
