/** What every field has around it: its label, a line about it, its unit, and what is wrong with it. */
import type { ComponentChildren, JSX } from 'preact';

interface Props {
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly bare?: boolean | undefined;
  /** What a number without a unit means, or what the value is in the units shown. */
  readonly unit?: string | undefined;
  readonly trouble: string | null;
  readonly wide?: boolean | undefined;
  /** The label stands above, for what is long. */
  readonly stack?: boolean | undefined;
  readonly children: ComponentChildren;
}

/** The ids of the lines that tell about a field, as `aria-describedby` takes them. */
export const describedBy = (
  id: string,
  {
    hint,
    unit,
    trouble,
  }: { readonly hint?: string | undefined; readonly unit?: string | undefined; readonly trouble: string | null },
): string | undefined =>
  [
    trouble === null ? '' : `${id}-trouble`,
    unit === undefined || unit === '' ? '' : `${id}-unit`,
    hint === undefined ? '' : `${id}-hint`,
  ]
    .filter((one) => one !== '')
    .join(' ') || undefined;

export function FieldFrame({ id, label, hint, bare, unit, trouble, wide, stack, children }: Props): JSX.Element {
  return (
    <div
      class={`entry${stack === true ? ' entry-stack' : wide === true ? ' entry-wide' : ''}${bare === true ? ' entry-bare' : ''}`}
    >
      <label class={bare === true ? 'unseen' : 'entry-label'} for={id}>
        {label}
      </label>
      <div class="entry-control">
        {children}
        {unit === undefined ? null : (
          <span class="entry-unit" id={`${id}-unit`}>
            {unit}
          </span>
        )}
      </div>
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
