/** Why files did not open, and what a plan still waits for. */
import type { JSX } from 'preact';
import { useStore, type UnclearFile, type WaitingPlan } from '../../state/store/store.ts';
import { settleUnclear } from '../../work/unclear.ts';
import { counted } from '../../words.ts';
import { OpenButton } from '../files/OpenButton.tsx';
import { Refused } from '../files/Refused.tsx';
import { isFirst } from '../start/FirstScreen.tsx';

/** Which of the plan's files one of them is, where its name does not say. */
function WhichFile({ file }: { readonly file: UnclearFile }): JSX.Element {
  const store = useStore();
  const [only] = file.names;
  return (
    <div class="row which-file">
      <span>
        {file.names.length === 1 ? (
          <>
            Is <span class="file-place">{file.name}</span> the file <span class="file-place">{only}</span>?
          </>
        ) : (
          <>
            Which file is <span class="file-place">{file.name}</span>?
          </>
        )}
      </span>
      {file.names.map((name) => (
        <button key={name} type="button" onClick={() => void settleUnclear(store, file, name)}>
          {file.names.length === 1 ? 'Use it' : name}
        </button>
      ))}
    </div>
  );
}

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
      {waiting.unclear.map((file, k) => (
        <WhichFile key={`${k} ${file.name}`} file={file} />
      ))}
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
