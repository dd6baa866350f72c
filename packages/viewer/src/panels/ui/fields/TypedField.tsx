/** A field of a sheet that is filled in before there is a plan: what is typed is checked at once. */
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { describedBy, FieldFrame } from './FieldFrame.tsx';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly trouble?: string | null;
  readonly hint?: string;
  readonly unit?: string;
  readonly wide?: boolean;
  readonly placeholder?: string;
  readonly change: (value: string) => void;
  /** The field is left: what was typed may be written as it is understood. */
  readonly left?: () => void;
}

export function TypedField({
  label,
  value,
  trouble = null,
  hint,
  unit,
  wide,
  placeholder,
  change,
  left,
}: Props): JSX.Element {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} hint={hint} unit={unit} trouble={trouble} wide={wide}>
      <input
        id={id}
        type="text"
        autocomplete="off"
        class={wide === true ? '' : 'entry-figure'}
        value={value}
        placeholder={placeholder}
        aria-invalid={trouble !== null}
        aria-describedby={describedBy(id, { hint, unit, trouble })}
        onInput={(event) => change(event.currentTarget.value)}
        onBlur={() => left?.()}
      />
    </FieldFrame>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [value: string, label: string])[];
  readonly change: (value: string) => void;
}

export function TypedChoice({ label, value, choices, change }: ChoiceProps): JSX.Element {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} trouble={null}>
      <select id={id} class="entry-choice" value={value} onChange={(event) => change(event.currentTarget.value)}>
        {choices.map(([one, words]) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
