/** Under a finding: what one press mends, each a step of undo. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { applyRemedy, remediesOf, type Remedy } from '../../state/edits/remedies.ts';
import { useStore, type Notice, type Store } from '../../state/store/store.ts';
import { undoAndReport } from '../ui/reportedUndo.ts';

interface Props {
  readonly finding: Finding;
  readonly subject: string;
  /** Id of what takes the focus when the card has gone. */
  readonly heading: string;
  /** Shown while the station is moved as well, to be pressed when it is put down. */
  readonly whileHeld?: boolean;
}

/** Where it brings an error a person decides: it stays, or is taken back as long as nothing else was changed. */
function toDecide(store: Store, text: string): Notice {
  const after = store.open.value?.document.text;
  const close = (): void => void (store.notice.value = null);
  const takeBack = (): void => (store.open.value?.document.text === after ? undoAndReport(store) : close());
  return {
    text,
    choices: [
      { label: 'Take it back', act: takeBack },
      { label: 'Keep it', act: close },
    ],
  };
}

function apply(store: Store, remedy: Remedy, heading: string): void {
  const applied = applyRemedy(store, remedy);
  if ('refused' in applied) {
    store.notice.value = { text: applied.refused };
    return;
  }
  const { done, brings } = applied;
  store.notice.value =
    brings === null
      ? { text: `${done} Undo reverts this.` }
      : toDecide(store, `${done} But there is a new error: ${brings}.`);
  requestAnimationFrame(() => document.getElementById(heading)?.focus());
}

export function RemedyButtons({ finding, subject, heading, whileHeld = false }: Props): JSX.Element | null {
  const store = useStore();
  const open = store.open.value;
  const held = store.trial.value !== null;
  // While a station is moved its findings come and go: nothing is carried out until it is put down.
  if (open === null || (held && !whileHeld)) return null;
  const remedies = remediesOf(open, finding, store.units.value);
  if (remedies.length === 0) return null;
  return (
    <div class="remedies">
      {remedies.map((remedy) => (
        <button
          key={remedy.label}
          type="button"
          class="remedy"
          disabled={held}
          {...(subject === '' ? {} : { 'aria-label': `${remedy.label}, ${subject}` })}
          onClick={() => apply(store, remedy, heading)}
        >
          {remedy.label}
        </button>
      ))}
    </div>
  );
}
