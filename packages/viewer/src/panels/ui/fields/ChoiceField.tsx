/** One of a few; without `required` also none, which is what holds by default. */
import type { JSX } from 'preact';
import { describedBy, FieldFrame } from './FieldFrame.tsx';
import type { FieldProps } from './target.ts';
import { useChange } from './useChange.ts';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

interface Props extends FieldProps {
  readonly choices: readonly Choice[];
  /** The label stands above, for long choices. */
  readonly stack?: boolean | undefined;
  /** The words for the default: "right-hand side, by geometry". */
  readonly fallback?: string | undefined;
}

export function ChoiceField(field: Props): JSX.Element {
  const { label, hint, bare, choices, fallback = 'not set' } = field;
  const { id, raw, trouble, change } = useChange(field);
  const value = typeof raw === 'string' || typeof raw === 'number' ? String(raw) : '';
  const known = value === '' || choices.some((choice) => choice.value === value);
  return (
    <FieldFrame id={id} label={label} hint={hint} bare={bare} trouble={trouble} stack={field.stack}>
      <select
        id={id}
        class="entry-choice"
        value={value}
        aria-invalid={trouble !== null}
        aria-describedby={describedBy(id, { hint, trouble })}
        onChange={(event) => change(event.currentTarget.value === '' ? undefined : event.currentTarget.value)}
      >
        {field.required === true ? null : <option value="">{fallback}</option>}
        {known ? null : <option value={value}>{value}</option>}
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
