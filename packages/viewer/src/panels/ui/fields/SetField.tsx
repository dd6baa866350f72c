/** Any of a few, written as a list in their order. */
import type { JSX } from 'preact';
import type { Choice } from './ChoiceField.tsx';
import type { FieldProps } from './target.ts';
import { useChange } from './useChange.ts';

interface Props extends FieldProps {
  readonly choices: readonly Choice[];
  /** Which hold where the file says nothing; chosen again, the key goes. */
  readonly fallback: readonly string[];
}

const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((one) => b.includes(one));

export function SetField(field: Props): JSX.Element {
  const { label, choices, fallback, hint } = field;
  const { id, raw, trouble, change } = useChange(field);
  const chosen = Array.isArray(raw) ? raw.map(String) : fallback;
  const toggle = (value: string, on: boolean): void => {
    const next = choices.map((choice) => choice.value).filter((one) => (one === value ? on : chosen.includes(one)));
    change(same(next, fallback) ? undefined : next);
  };
  return (
    <fieldset class="entry-set" aria-describedby={trouble === null ? undefined : `${id}-trouble`}>
      <legend class="entry-label">{label}</legend>
      <div class="entry-set-row">
        {choices.map((choice) => (
          <label key={choice.value} class="entry-set-one">
            <input
              type="checkbox"
              checked={chosen.includes(choice.value)}
              aria-invalid={trouble !== null}
              onChange={(event) => toggle(choice.value, event.currentTarget.checked)}
            />
            {choice.label}
          </label>
        ))}
      </div>
      {hint === undefined ? null : <p class="entry-hint">{hint}</p>}
      {trouble === null ? null : (
        <p class="entry-trouble" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
    </fieldset>
  );
}
