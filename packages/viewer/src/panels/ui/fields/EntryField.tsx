/** A line of text that is read as something; the fields below say what. */
import type { JSX } from 'preact';
import { pointerTo } from '../../../state/edits/edits.ts';
import { describedBy, FieldFrame } from './FieldFrame.tsx';
import type { FieldProps } from './target.ts';
import { useEntry, type Form } from './useEntry.ts';

interface Props {
  readonly field: FieldProps;
  readonly form: Form;
  readonly unit?: string | undefined;
  readonly placeholder?: string | undefined;
  /** Figures stand right. */
  readonly figure?: boolean | undefined;
  /** The label stands above. */
  readonly stack?: boolean | undefined;
  /** More than one line to write on. */
  readonly rows?: number | undefined;
}

export function EntryField({ field, form, unit, placeholder, figure, stack, rows }: Props): JSX.Element {
  const { id, trouble, ...entry } = useEntry(field, form, rows !== undefined);
  const { label, hint, bare } = field;
  const given = {
    id,
    ...entry,
    placeholder: placeholder ?? '',
    spellcheck: false,
    autocomplete: 'off',
    ...(field.station === undefined ? { 'data-path': pointerTo(field.path) } : {}),
    'aria-invalid': trouble !== null,
    'aria-required': field.required === true,
    'aria-describedby': describedBy(id, { hint, unit, trouble }),
  } as const;
  return (
    <FieldFrame
      id={id}
      label={label}
      hint={hint}
      bare={bare}
      unit={unit}
      trouble={trouble}
      wide={figure !== true}
      stack={stack}
    >
      {rows === undefined ? (
        <input type="text" class={figure === true ? 'entry-figure' : 'entry-text'} {...given} />
      ) : (
        <textarea class="entry-text" rows={rows} {...given} />
      )}
    </FieldFrame>
  );
}
