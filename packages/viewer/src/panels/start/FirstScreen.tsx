/** What stands there while no plan is open: what this is, the two ways to begin, and the plans that are kept. */
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useStore, type Store } from '../../state/store/store.ts';
import { listKept } from '../../storage/database.ts';
import { openDemo, openKept } from '../../storage/kept.ts';
import type { KeptPlan } from '../../storage/records.ts';
import { useShelf } from '../../storage/shelf.ts';
import { OpenButton } from '../files/OpenButton.tsx';
import { Refused } from '../files/Refused.tsx';

function Kept(): JSX.Element | null {
  const store = useStore();
  const shelf = useShelf();
  const [plans, setPlans] = useState<readonly KeptPlan[]>([]);
  useEffect(() => {
    // What cannot be listed here is told of where plans are managed.
    if (shelf !== null)
      void listKept(shelf.database).then(
        (listed) => setPlans(listed.plans),
        () => undefined,
      );
  }, [shelf]);
  if (shelf === null || plans.length === 0) return null;
  return (
    <>
      <h2>Plans saved in this browser</h2>
      <ul class="first-plans">
        {plans.map((plan) => (
          <li key={plan.id}>
            <button type="button" onClick={() => void openKept(store, shelf, plan.id)}>
              {plan.name}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** No plan is open, and none is about to be. */
export const isFirst = (store: Store): boolean =>
  store.open.value === null && !store.loading.value && store.waiting.value === null;

export function FirstScreen(): JSX.Element | null {
  const store = useStore();
  if (!isFirst(store)) return null;
  return (
    <section class="first-screen" aria-label="Begin">
      {store.refusal.value === null ? null : <Refused refusal={store.refusal.value} />}
      <p class="first-line">
        Halfcup plans the water and aid stations of a road race, from the course to the printed sheets.
      </p>
      <div class="row">
        <OpenButton label="Open your course (GPX)" large />
        <button type="button" class="first-example" onClick={() => void openDemo(store)}>
          Look at the example
        </button>
      </div>
      <p class="soft">
        Or drop files anywhere on this page: one GPX file for each course, a plan with its files, or a packed plan
        (ZIP). The example is an invented race on an invented island. Nothing leaves this device.
      </p>
      <Kept />
    </section>
  );
}
