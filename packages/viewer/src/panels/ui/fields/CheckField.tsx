/** Yes or no; what is so by default is not written. */
import type { JSX } from 'preact';
import { describedBy } from './FieldFrame.tsx';
import type { FieldProps } from './target.ts';
import { useChange } from './useChange.ts';

interface Props extends FieldProps {
  readonly fallback?: boolean | undefined;
}

export function CheckField(field: Props): JSX.Element {
  const { label, hint, fallback = false } = field;
  const { id, raw, trouble, change } = useChange(field);
  return (
    <div class="entry entry-check">
      <input
        id={id}
        type="checkbox"
        checked={raw === undefined ? fallback : raw === true}
        aria-invalid={trouble !== null}
        aria-describedby={describedBy(id, { hint, trouble })}
        onChange={(event) => change(event.currentTarget.checked === fallback ? undefined : event.currentTarget.checked)}
      />
      <label class="entry-label" for={id}>
        {label}
      </label>
      {hint === undefined ? null : (
        <p class="entry-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {trouble === null ? null : (
        <p class="entry-trouble" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}
