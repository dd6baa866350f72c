/** Why files did not open, with file, line and column; and what a plan still waits for. */
import type { JSX } from 'preact';
import { useStore, type Refusal, type WaitingPlan } from '../../state/store/store.ts';
import { filePlace, messageOf } from '../../state/view/voice.ts';
import { counted } from '../../words.ts';
import { OpenButton } from '../files/OpenButton.tsx';
import { SeverityMark } from '../ui/SeverityMark.tsx';

function Refused({ refusal }: { readonly refusal: Refusal }): JSX.Element {
  const store = useStore();
  const open = store.open.value;
  const names = refusal.files.length > 3 ? counted(refusal.files.length, 'file') : refusal.files.join(', ');
  return (
    <section class="problem" role="alert" aria-labelledby="problem-title">
      <header>
        <h2 id="problem-title">Could not open {names}</h2>
        <button type="button" onClick={() => void (store.refusal.value = null)}>
          Close
        </button>
      </header>
      <p>{open === null ? 'No plan is open.' : `“${open.document.plan.name}” is still open, unchanged.`}</p>
      <ul tabindex={0} aria-label="Reasons">
        {refusal.findings.map((finding, index) => {
          return (
            <li key={index}>
              <SeverityMark severity={finding.severity} />
              <span>
                <span class="file-place">{filePlace(finding)}</span>
                {messageOf(store, finding)}
              </span>
            </li>
          );
        })}
      </ul>
    </section>
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
      <p class="row">
        <OpenButton label="Add files" />
        <span class="soft">{open === null ? '' : `“${open.document.plan.name}” stays open until then.`}</span>
      </p>
    </section>
  );
}

export function Problems(): JSX.Element | null {
  const { refusal, waiting } = useStore();
  if (refusal.value === null && waiting.value === null) return null;
  return (
    <div class="problems">
      {refusal.value === null ? null : <Refused refusal={refusal.value} />}
      {waiting.value === null ? null : <Waits waiting={waiting.value} />}
    </div>
  );
}
