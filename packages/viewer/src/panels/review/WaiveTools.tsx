/** Under a finding: waiving it, or removing its waiver. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { isOpen } from '../../state/view/derive.ts';
import { matterOf, messageOf } from '../../state/view/voice.ts';
import { useStore, type Store } from '../../state/store/store.ts';
import { waivedTogether, removeWaiver, waiverAt } from '../../state/edits/waivers.ts';
import { run } from '../../state/edits/workbench.ts';
import { WaiveForm } from './WaiveForm.tsx';
import { reviewedByCode } from '../../state/view/placed.ts';

/** Where focus goes once the card has moved to another group. */
const toReview = (): void => void requestAnimationFrame(() => document.getElementById('review-heading')?.focus());

function unwaive(store: Store, finding: Finding): void {
  const open = store.open.value;
  if (open === null) return;
  const [refused] = run(store, removeWaiver(open, finding));
  store.notice.value = {
    text: refused === undefined ? 'Waiver removed. Undo brings it back.' : messageOf(store, refused),
  };
  if (refused === undefined) toReview();
}

export function WaiveTools({
  finding,
  subject,
}: {
  readonly finding: Finding;
  readonly subject: string;
}): JSX.Element | null {
  const store = useStore();
  const [asked, setAsked] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const open = store.open.value;
  if (open === null) return null;
  const at = subject === '' ? '' : `, ${subject}`;
  if (waiverAt(open, finding) >= 0) {
    return (
      <button
        type="button"
        class="finding-tool"
        aria-label={`Remove waiver${at}: ${matterOf(store, finding)}`}
        onClick={() => unwaive(store, finding)}
      >
        Remove waiver
      </button>
    );
  }
  // What reading a file has found is no finding of a check: it cannot be waived.
  const alike = (reviewedByCode(open, store.placed.value).get(finding.code) ?? []).filter(isOpen);
  if (!alike.some((one) => waivedTogether(finding, one))) return null;
  const close = (): void => {
    setAsked(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  const done = (): void => {
    setAsked(false);
    store.notice.value = { text: `Waived${at}. Undo reverts this.` };
    toReview();
  };
  return (
    <>
      <button
        ref={button}
        type="button"
        class="finding-tool"
        aria-expanded={asked}
        aria-label={`Waive${at}: ${matterOf(store, finding)}`}
        onClick={() => setAsked(!asked)}
      >
        Waive…
      </button>
      {asked ? (
        <WaiveForm
          finding={finding}
          count={alike.filter((one) => waivedTogether(finding, one)).length}
          onDone={done}
          onCancel={close}
        />
      ) : null}
    </>
  );
}
