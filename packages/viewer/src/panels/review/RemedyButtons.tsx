/** Under a finding: what one press mends, each a step of undo. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { applyRemedy, remediesOf, type Remedy } from '../../state/edits/remedies.ts';
import { useStore, type Store } from '../../state/store/store.ts';

interface Props {
  readonly finding: Finding;
  readonly subject: string;
  /** Id of what takes the focus when the card has gone. */
  readonly heading: string;
}

function apply(store: Store, remedy: Remedy, heading: string): void {
  const { text, ok } = applyRemedy(store, remedy);
  store.notice.value = { text };
  if (ok) requestAnimationFrame(() => document.getElementById(heading)?.focus());
}

export function RemedyButtons({ finding, subject, heading }: Props): JSX.Element | null {
  const store = useStore();
  const open = store.open.value;
  // While a station is moved its findings come and go: nothing is offered until it is put down.
  if (open === null || store.trial.value !== null) return null;
  const remedies = remediesOf(open, finding, store.units.value);
  if (remedies.length === 0) return null;
  return (
    <div class="remedies">
      {remedies.map((remedy) => (
        <button
          key={remedy.label}
          type="button"
          class="remedy"
          {...(subject === '' ? {} : { 'aria-label': `${remedy.label}, ${subject}` })}
          onClick={() => apply(store, remedy, heading)}
        >
          {remedy.label}
        </button>
      ))}
    </div>
  );
}
