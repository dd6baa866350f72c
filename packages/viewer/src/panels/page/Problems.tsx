/** Why files did not open, and what a plan still waits for. */
import type { JSX } from 'preact';
import { useStore, type WaitingPlan } from '../../state/store/store.ts';
import { counted } from '../../words.ts';
import { OpenButton } from '../files/OpenButton.tsx';
import { Refused } from '../files/Refused.tsx';
import { isFirst } from '../start/FirstScreen.tsx';

function Waits({ waiting }: { readonly waiting: WaitingPlan }): JSX.Element {
  const store = useStore();
  const open = store.open.value;
  return (
    <section class="problem waits" role="alert" aria-labelledby="waits-title">
      <header>
        <h2 id="waits-title">
          “{waiting.document.plan.name}” needs {counted(waiting.missing.length, 'more file')}
        </h2>
        <button type="button" onClick={() => void (store.waiting.value = null)}>
          Close
        </button>
      </header>
      <p>
        {waiting.document.file} uses these files, which were not opened with it. Add them here, or drop them on the
        page.
      </p>
      <ul>
        {waiting.missing.map((name) => (
          <li key={name}>
            <span class="file-place">{name}</span>
          </li>
        ))}
      </ul>
      <p class="row">
        <OpenButton label="Add files" />
        <span class="soft">{open === null ? '' : `“${open.document.plan.name}” stays open until then.`}</span>
      </p>
    </section>
  );
}

export function Problems(): JSX.Element | null {
  const store = useStore();
  const { refusal, waiting } = store;
  // The first screen shows its own.
  if (isFirst(store) || (refusal.value === null && waiting.value === null)) return null;
  return (
    <div class="problems">
      {refusal.value === null ? null : <Refused refusal={refusal.value} />}
      {waiting.value === null ? null : <Waits waiting={waiting.value} />}
    </div>
  );
}
