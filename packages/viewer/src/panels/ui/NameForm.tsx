/** A name to be typed for a variant, with what may be done under it; what is wrong with the name stands beside it. */
import type { JSX } from 'preact';
import { useId, useRef, useState } from 'preact/hooks';
import { nameTrouble } from '../../state/edits/variants.ts';
import { useStore } from '../../state/store/store.ts';
import { firstMessage } from '../../state/view/voice.ts';
import { FieldFrame } from './fields/FieldFrame.tsx';
import type { Finding } from '@halfcup/core';

export interface NameAction {
  readonly label: string;
  readonly title?: string;
  /** Returns why it was not done. */
  readonly act: (name: string) => readonly Finding[];
}

interface Props {
  readonly label: string;
  /** The first is also what Enter does. */
  readonly actions: readonly NameAction[];
  /** The name that is to be changed. */
  readonly own?: string;
  readonly hint?: string;
  readonly focus?: boolean;
  readonly onCancel?: () => void;
}

/** The first time that the field is on the page. */
function focusOnce(element: HTMLInputElement): void {
  if (document.activeElement === element || element.dataset['seen'] !== undefined) return;
  element.dataset['seen'] = '';
  element.focus();
  element.select();
}

const Buttons = ({
  actions,
  act,
  onCancel,
}: Pick<Props, 'actions'> & {
  readonly act: (action: NameAction) => void;
  readonly onCancel: (() => void) | undefined;
}): JSX.Element => (
  <div class="button-row">
    {actions.map((action, index) => (
      <button
        key={action.label}
        type={index === 0 ? 'submit' : 'button'}
        title={action.title}
        onClick={index === 0 ? undefined : () => act(action)}
      >
        {action.label}
      </button>
    ))}
    {onCancel === undefined ? null : (
      <button type="button" onClick={onCancel}>
        Cancel
      </button>
    )}
  </div>
);

export function NameForm({ label, actions, own, hint, focus, onCancel }: Props): JSX.Element {
  const store = useStore();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(own ?? '');
  const [trouble, setTrouble] = useState<string | null>(null);
  const act = (action: NameAction | undefined): void => {
    const open = store.open.value;
    if (open === null || action === undefined) return;
    const name = text.trim();
    const wrong = nameTrouble(open, name, own ?? null) ?? firstMessage(store, action.act(name));
    setTrouble(wrong);
    if (wrong === null) setText('');
    else input.current?.focus();
  };
  const described = [trouble === null ? '' : `${id}-trouble`, hint === undefined ? '' : `${id}-hint`]
    .filter((one) => one !== '')
    .join(' ');
  return (
    <form
      class="name-form"
      onSubmit={(event) => {
        event.preventDefault();
        act(actions[0]);
      }}
    >
      <FieldFrame id={id} label={label} hint={hint} trouble={trouble} wide>
        <input
          ref={(element) => {
            input.current = element;
            if (focus === true && element !== null) focusOnce(element);
          }}
          id={id}
          type="text"
          class="entry-text"
          value={text}
          autocomplete="off"
          spellcheck={false}
          aria-invalid={trouble !== null}
          {...(described === '' ? {} : { 'aria-describedby': described })}
          onInput={(event) => setText(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Escape') onCancel?.();
          }}
        />
      </FieldFrame>
      <Buttons actions={actions} act={act} onCancel={onCancel} />
    </form>
  );
}
