/** What a person is told about the keeping of the plan, and what can be done about it. */
import type { Store } from '../state/store/store.ts';
import type { KeptPlan } from './records.ts';
import { save } from './saveFile.ts';

const nameOf = (store: Store): string => store.open.value?.document.plan.name ?? '';
const clear = (store: Store) => (): void => void (store.question.value = null);

/** In words that a person can act on. */
export function reasonOf(error: unknown): string {
  if (error instanceof DOMException && error.name === 'QuotaExceededError')
    return 'this browser has no room left for it';
  return error instanceof Error ? error.message : String(error);
}

export function tellFailed(store: Store, error: unknown, again: () => Promise<void>): void {
  store.question.value = {
    text: `The last change is not kept in this browser: ${reasonOf(error)}. The plan stays open as it is; save it to a file, so that nothing is lost.`,
    choices: [
      { label: 'Save to a file', act: () => void save(store) },
      {
        label: 'Try again',
        act: () => {
          store.question.value = null;
          void again();
        },
      },
    ],
  };
}

/** Without a database. */
export function tellNothingKept(store: Store, error: unknown): void {
  store.keeping.value = 'failed';
  store.question.value = {
    text: `This browser keeps nothing for this page (${reasonOf(error)}). Save the plan to a file before you close the page.`,
    choices: [{ label: 'Understood', act: clear(store) }],
  };
}

const choose = (store: Store, text: string, copy: () => void, takeOver: () => void): void => {
  store.question.value = {
    text,
    choices: [
      {
        label: 'Work on a copy',
        act: () => {
          store.question.value = null;
          copy();
          store.notice.value = { text: 'This is a copy now. The other tab keeps the plan.' };
        },
      },
      { label: 'Take over here', act: takeOver },
      { label: 'Only look', act: clear(store) },
    ],
  };
};

export const tellElsewhere = (store: Store, copy: () => void, takeOver: () => void): void =>
  choose(store, `“${nameOf(store)}” is open in another tab. A change here would begin a copy of it.`, copy, takeOver);

export const tellLost = (store: Store, copy: () => void, takeOver: () => void): void =>
  choose(
    store,
    `Another tab has taken over “${nameOf(store)}”. A change here would begin a copy of it.`,
    copy,
    takeOver,
  );

/** Mine has been kept as a copy by then. `take`: opens what the other tab has written. */
export function tellOthers(store: Store, theirs: KeptPlan, take: () => Promise<void>): void {
  store.question.value = {
    text: `Another tab has changed “${theirs.name}” meanwhile. What stands here goes on as a copy; nothing was written over.`,
    choices: [
      { label: 'Go on with my copy', act: clear(store) },
      {
        label: 'Open the other tab’s plan',
        act: () => {
          store.question.value = null;
          void take();
        },
      },
    ],
  };
}
