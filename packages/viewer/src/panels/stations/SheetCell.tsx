/** A cell that is typed in. Up and down go to the same cell of the next row, and Enter goes down. */
import type { JSX } from 'preact';
import type { FieldProps } from '../ui/fields/target.ts';
import { useEntry, type Form } from '../ui/fields/useEntry.ts';

interface Props {
  readonly field: FieldProps;
  readonly form: Form;
  /** The column, among which Up and Down look for theirs. */
  readonly column: string;
  readonly placeholder?: string | undefined;
  readonly figure?: boolean;
}

/** Takes the focus to the same column of the row above or below; false where there is none. */
export function moveInColumn(from: HTMLElement, step: 1 | -1): boolean {
  const { column } = from.dataset;
  const cells = [...(from.closest('tbody')?.querySelectorAll<HTMLElement>(`[data-column="${column ?? ''}"]`) ?? [])];
  const next = cells[cells.indexOf(from) + step];
  next?.focus();
  if (next instanceof HTMLInputElement && next.type === 'text') next.select();
  return next !== undefined;
}

export function SheetCell({ field, form, column, placeholder, figure }: Props): JSX.Element {
  const { id, trouble, onKeyDown, ...entry } = useEntry(field, form);
  const press = (event: KeyboardEvent): void => {
    const input = event.currentTarget as HTMLInputElement;
    if (!event.altKey && !event.ctrlKey && !event.metaKey && (event.key === 'ArrowDown' || event.key === 'ArrowUp')) {
      event.preventDefault();
      moveInColumn(input, event.key === 'ArrowDown' ? 1 : -1);
      return;
    }
    onKeyDown(event);
    if (event.key === 'Enter' && !event.isComposing) moveInColumn(input, event.shiftKey ? -1 : 1);
  };
  return (
    <>
      <input
        id={id}
        type="text"
        class={`cell ${figure === true ? 'cell-figure' : ''}`}
        data-column={column}
        aria-label={`${field.label}, ${field.about ?? ''}`}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : `${id}-trouble`}
        placeholder={placeholder ?? ''}
        autocomplete="off"
        spellcheck={false}
        onKeyDown={press}
        {...entry}
      />
      {trouble === null ? null : (
        <p class="entry-trouble cell-trouble" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
    </>
  );
}
