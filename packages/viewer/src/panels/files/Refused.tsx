/** Why files did not open, with file, line and column. */
import type { JSX } from 'preact';
import { useStore, type Refusal } from '../../state/store/store.ts';
import { filePlace, messageOf } from '../../state/view/voice.ts';
import { counted } from '../../words.ts';
import { SeverityMark } from '../ui/SeverityMark.tsx';

export function Refused({ refusal }: { readonly refusal: Refusal }): JSX.Element {
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
