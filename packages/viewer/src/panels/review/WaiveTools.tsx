/** Under a finding: waiving it, or taking its waiver back. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { isOpen } from '../../state/view/derive.ts';
import { useStore, type Store } from '../../state/store/store.ts';
import { sameKind, takeWaiverBack, waiverAt } from '../../state/edits/waivers.ts';
import { run } from '../../state/edits/workbench.ts';
import { WaiveForm } from './WaiveForm.tsx';
import { reviewed } from '../../state/view/placed.ts';

/** Where focus goes once the card has moved to another group. */
const toReview = (): void => void requestAnimationFrame(() => document.getElementById('review-heading')?.focus());

function takeBack(store: Store, finding: Finding): void {
  const open = store.open.value;
  if (open === null) return;
  const [refused] = run(store, takeWaiverBack(open, finding));
  store.notice.value = {
    text: refused === undefined ? `Waiver taken back: ${finding.code}` : `Not done: ${refused.message}`,
  };
  if (refused === undefined) toReview();
}

export function WaiveTools({
  finding,
  station,
}: {
  readonly finding: Finding;
  readonly station: string | null;
}): JSX.Element | null {
  const store = useStore();
  const [asked, setAsked] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const open = store.open.value;
  if (open === null) return null;
  const at = station === null ? '' : ` at ${station}`;
  if (waiverAt(open, finding) >= 0) {
    return (
      <button
        type="button"
        class="finding-tool"
        aria-label={`Take the waiver of ${finding.code}${at} back`}
        onClick={() => takeBack(store, finding)}
      >
        Take the waiver back
      </button>
    );
  }
  // What reading a file has found is no finding of a check: no waiver is held against it.
  const count = reviewed(open, store.placed.value).filter((one) => isOpen(one) && sameKind(one, finding)).length;
  if (count === 0) return null;
  const close = (): void => {
    setAsked(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  const done = (): void => {
    setAsked(false);
    store.notice.value = { text: `Waived: ${finding.code}${at}. Undo takes it back.` };
    toReview();
  };
  return (
    <>
      <button
        ref={button}
        type="button"
        class="finding-tool"
        aria-expanded={asked}
        aria-label={`Waive ${finding.code}${at}`}
        onClick={() => setAsked(!asked)}
      >
        Waive…
      </button>
      {asked ? <WaiveForm finding={finding} count={count} onDone={done} onCancel={close} /> : null}
    </>
  );
}
