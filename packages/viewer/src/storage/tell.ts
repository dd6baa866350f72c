/** Notices about the keeping of the plan, and what can be done about it. */
import type { Notice, Store } from '../state/store/store.ts';
import type { KeptPlan } from './records.ts';
import { reasonOf } from '../trouble.ts';
import { save } from './saveFile.ts';

const nameOf = (store: Store): string => store.open.value?.document.plan.name ?? '';
const clear = (store: Store) => (): void => void (store.question.value = null);

/** What the person is told; the same question stays where the trouble does. */
export function tellFailed(store: Store, error: unknown, again: () => Promise<void>): Notice {
  const question: Notice = {
    text: `The last change is not saved in this browser: ${reasonOf(error)}. The plan is still open; save it to a file so that nothing is lost.`,
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
  const asked = store.question.value;
  if (asked?.text === question.text) return asked;
  store.question.value = question;
  return question;
}

/** Without a database; the question, to be taken back when there is one. */
export function tellNothingKept(store: Store, error: unknown): Notice {
  store.keeping.value = 'failed';
  const question: Notice = {
    text: `This browser saves nothing for this page: ${reasonOf(error)}. Save the plan to a file before you close the page.`,
    choices: [{ label: 'OK', act: clear(store) }],
  };
  store.question.value = question;
  return question;
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
          store.notice.value = { text: 'This tab now has a copy. The other tab keeps the plan.' };
        },
      },
      { label: 'Edit it here', act: takeOver },
      { label: 'View only', act: clear(store) },
    ],
  };
};

export const tellElsewhere = (store: Store, copy: () => void, takeOver: () => void): void =>
  choose(store, `“${nameOf(store)}” is open in another tab. Changing it here makes a copy.`, copy, takeOver);

export const tellLost = (store: Store, copy: () => void, takeOver: () => void): void =>
  choose(store, `“${nameOf(store)}” is now edited in another tab. Changing it here makes a copy.`, copy, takeOver);

/** Mine has been kept as a copy by then. `take`: opens what the other tab has written. */
export function tellOthers(store: Store, theirs: KeptPlan, take: () => Promise<void>): void {
  store.question.value = {
    text: `“${theirs.name}” was changed in another tab meanwhile. Your version is now a copy; nothing was overwritten.`,
    choices: [
      { label: 'Keep my copy', act: clear(store) },
      {
        label: 'Open the other tab’s version',
        act: () => {
          store.question.value = null;
          void take();
        },
      },
    ],
  };
}
