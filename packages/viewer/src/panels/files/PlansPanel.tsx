/** Other ways to save, and the plans that this browser keeps. */
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { deletePlan, listAside, listKept, readKept, restorePlan } from '../../storage/database.ts';
import { openDemo, openKept } from '../../storage/kept.ts';
import type { KeptPlan, SetAside } from '../../storage/records.ts';
import { exportFile, saveCopy, savePacked } from '../../storage/saveFile.ts';
import { reasonOf } from '../../trouble.ts';
import { useShelf, type Shelf } from '../../storage/shelf.ts';
import { useStore, type Store } from '../../state/store/store.ts';

interface Listed {
  readonly plans: readonly KeptPlan[];
  readonly aside: readonly SetAside[];
}

const WHEN = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
});
const notify = (store: Store, text: string): void => void (store.notice.value = { text });

const list = async ({ database }: Shelf): Promise<Listed> => {
  const [{ plans }, aside] = await Promise.all([listKept(database), listAside(database)]);
  return { plans, aside };
};

/** Deletes a plan from the browser; until the notice is answered it can be restored. */
async function deleteKept(store: Store, { database }: Shelf, plan: KeptPlan, refresh: () => void): Promise<void> {
  const { files } = await readKept(database, plan.id);
  await deletePlan(database, plan.id);
  refresh();
  const clear = (): void => void (store.question.value = null);
  const back = async (): Promise<void> => {
    await restorePlan(database, plan, files);
    clear();
    refresh();
  };
  store.question.value = {
    text: `Deleted “${plan.name}” from this browser. Files you saved it to are still there.`,
    choices: [
      { label: 'Restore', act: () => void back() },
      { label: 'OK', act: clear },
    ],
  };
}

/** The text where there is one, else the whole record, for somebody who knows the format to look at. */
async function saveAside(store: Store, { record }: SetAside, index: number): Promise<void> {
  const text = (record as { readonly text?: unknown } | null)?.text;
  const content = typeof text === 'string' ? text : JSON.stringify(record, null, 2);
  await exportFile(store, `set-aside-${index + 1}.json`, new Blob([content]), ['Plan', 'application/json', '.json']);
}

const nameOf = ({ record }: SetAside): string => {
  const name = (record as { readonly name?: unknown } | null)?.name;
  return typeof name === 'string' ? name : 'Unnamed plan';
};

const WHY = { 'before-migration': 'as an earlier version saved it', unreadable: 'could not be opened' } as const;

function Kept({
  plans,
  shelf,
  refresh,
  close,
}: {
  readonly plans: readonly KeptPlan[];
  readonly shelf: Shelf;
  readonly refresh: () => void;
  readonly close: () => void;
}): JSX.Element {
  const store = useStore();
  const current = store.origin.value?.id;
  const open = async (id: string): Promise<void> => {
    close();
    await openKept(store, shelf, id);
  };
  if (plans.length === 0) return <p class="soft">None yet. A plan is saved here once you change it.</p>;
  return (
    <ul class="kept-plans">
      {plans.map((plan) => (
        <li key={plan.id}>
          <span>
            <strong>{plan.name}</strong>
            {plan.copy ? ' (copy)' : ''}
            <span class="soft kept-when">
              {WHEN.format(plan.changed)}
              {plan.id === current ? ' · open now' : ''}
            </span>
          </span>
          <button
            type="button"
            disabled={plan.id === current}
            aria-label={`Open ${plan.name}, changed ${WHEN.format(plan.changed)}`}
            onClick={() => void open(plan.id)}
          >
            Open
          </button>
          <button
            type="button"
            disabled={plan.id === current}
            aria-label={`Delete ${plan.name} from this browser, changed ${WHEN.format(plan.changed)}`}
            onClick={() =>
              void deleteKept(store, shelf, plan, refresh).catch((error: unknown) =>
                notify(store, `The plan could not be deleted: ${reasonOf(error)}.`),
              )
            }
          >
            Delete from this browser
          </button>
        </li>
      ))}
    </ul>
  );
}

function Aside({ aside }: Pick<Listed, 'aside'>): JSX.Element {
  const store = useStore();
  return (
    <>
      <h2>Set aside</h2>
      <ul class="kept-plans">
        {aside.map((one, index) => (
          <li key={index}>
            <span>
              <strong>{nameOf(one)}</strong>
              <span class="soft kept-when">
                {WHY[one.why]}, {WHEN.format(one.at)}
              </span>
            </span>
            <button
              type="button"
              aria-label={`Save ${nameOf(one)}, set aside ${WHEN.format(one.at)}, to a file`}
              onClick={() => void saveAside(store, one, index)}
            >
              Save to a file
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

export function PlansPanel({ close }: { readonly close: () => void }): JSX.Element {
  const store = useStore();
  const shelf = useShelf();
  const [listed, setListed] = useState<Listed | null>(null);
  const refresh = (): void => {
    if (shelf !== null)
      void list(shelf).then(setListed, (error: unknown) =>
        notify(store, `The list of plans could not be read: ${reasonOf(error)}.`),
      );
  };
  useEffect(refresh, [shelf, store.origin.value?.id, store.keeping.value === 'kept']);
  const noPlan = store.open.value === null;
  const act = (what: () => Promise<void>) => (): void => {
    close();
    void what();
  };
  return (
    <div
      class="plans-panel"
      id="plans"
      role="group"
      aria-label="Plans"
      onKeyDown={(event) => event.key === 'Escape' && close()}
    >
      <div class="row">
        <button type="button" disabled={noPlan} onClick={act(() => savePacked(store))}>
          Save packed (ZIP)
        </button>
        <button type="button" disabled={noPlan} onClick={act(() => saveCopy(store))}>
          Save a copy
        </button>
        <button type="button" onClick={act(() => openDemo(store))}>
          Open the demo
        </button>
      </div>
      <p class="soft">To share a plan, save it packed and send that one file. Nothing leaves this device by itself.</p>
      <h2>Saved in this browser</h2>
      {shelf === null ? (
        <p class="soft">This browser saves nothing for this page. Save plans to files.</p>
      ) : (
        <Kept plans={listed?.plans ?? []} shelf={shelf} refresh={refresh} close={close} />
      )}
      {listed === null || listed.aside.length === 0 ? null : <Aside aside={listed.aside} />}
      <button type="button" onClick={close}>
        Close
      </button>
    </div>
  );
}
