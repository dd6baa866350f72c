/** A quantity in the unit beside it. */
import type { JSX } from 'preact';
import { EntryField } from './EntryField.tsx';
import { besideOf, figureIn, quantityForm, type Kind } from './quantity.ts';
import { useTarget, type FieldProps } from './target.ts';

export interface QuantityProps extends FieldProps {
  /** What holds where the file says nothing, in SI units. */
  readonly fallback?: number | undefined;
}

interface Props {
  readonly field: QuantityProps;
  readonly kind: Kind;
  readonly unit: string;
}

export function QuantityField({ field, kind, unit }: Props): JSX.Element {
  const { raw } = useTarget(field);
  const { fallback } = field;
  return (
    <EntryField
      field={field}
      form={quantityForm(kind, unit)}
      unit={besideOf(kind, raw, unit)}
      placeholder={fallback === undefined ? '' : figureIn(kind, fallback, unit)}
      figure
    />
  );
}
