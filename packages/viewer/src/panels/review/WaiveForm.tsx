/** Who accepts a finding, why, and when; what is missing is shown at its field. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useStore } from '../../state/store/store.ts';
import { readWaiver, today, waiveFinding, type Waiver } from '../../state/edits/waivers.ts';
import { run } from '../../state/edits/workbench.ts';
import { matterOf, messageOf } from '../../state/view/voice.ts';
import { counted } from '../../words.ts';
import { FieldFrame } from '../ui/fields/FieldFrame.tsx';

type Typed = Readonly<Record<keyof Waiver, string>>;

interface Props {
  readonly finding: Finding;
  /** How many findings the waiver will be for. */
  readonly count: number;
  readonly onDone: () => void;
  readonly onCancel: () => void;
}

const FIELDS: readonly (readonly [keyof Waiver, string])[] = [
  ['by', 'Waived by'],
  ['reason', 'Reason'],
  ['date', 'Date'],
];

export function WaiveForm({ finding, count, onDone, onCancel }: Props): JSX.Element {
  const store = useStore();
  const id = useId();
  const first = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState<Typed>({ by: '', reason: '', date: today() });
  const [trouble, setTrouble] = useState<Partial<Record<keyof Waiver, string>>>({});
  // Before the next key can come.
  useLayoutEffect(() => first.current?.focus(), []);
  const waive = (): void => {
    const open = store.open.value;
    if (open === null) return;
    const read = readWaiver(typed, open.document.plan.date);
    const wrong = 'trouble' in read ? read.trouble : {};
    setTrouble(wrong);
    const [missing] = Object.keys(wrong);
    if (missing !== undefined) return document.getElementById(`${id}-${missing}`)?.focus();
    const [refused] = 'waiver' in read ? run(store, waiveFinding(open, finding, read.waiver)) : [];
    if (refused === undefined) onDone();
    else setTrouble({ reason: messageOf(store, refused) });
  };
  return (
    <form
      class="waive-form"
      aria-label={`Waive: ${matterOf(store, finding)}`}
      onSubmit={(event) => {
        event.preventDefault();
        waive();
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onCancel();
      }}
    >
      <p class="soft">
        {count > 1 ? `This waives ${counted(count, 'finding')} that show the same thing. ` : ''}A waived finding stays
        in the list and in the report, with the name of who waived it. It counts again if another thing is found, or the
        same grows worse by a tenth. On the road nothing changes.
      </p>
      {FIELDS.map(([key, label], index) => (
        <FieldFrame key={key} id={`${id}-${key}`} label={label} trouble={trouble[key] ?? null} wide>
          <input
            ref={index === 0 ? first : null}
            id={`${id}-${key}`}
            type="text"
            class="entry-text"
            value={typed[key]}
            autocomplete="off"
            aria-required
            aria-invalid={trouble[key] !== undefined}
            {...(trouble[key] === undefined ? {} : { 'aria-describedby': `${id}-${key}-trouble` })}
            onInput={(event) => setTyped({ ...typed, [key]: event.currentTarget.value })}
          />
        </FieldFrame>
      ))}
      <div class="button-row">
        <button type="submit">Waive</button>
        <button type="button" onClick={onCancel}>
          Cancel
        </button>
      </div>
    </form>
  );
}
