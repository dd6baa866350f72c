/** A duration: a bare number means minutes (or `unit`); "4:25:00" is taken too. */
import type { JSX } from 'preact';
import { EntryField } from './EntryField.tsx';
import { DURATION, durationText, quantityForm, showQuantity } from './quantity.ts';
import type { QuantityProps } from './QuantityField.tsx';
import { useTarget } from './target.ts';

interface Props extends QuantityProps {
  readonly unit?: 'min' | 'h' | 's' | undefined;
}

export function DurationField(field: Props): JSX.Element {
  const { unit = 'min', fallback } = field;
  const { raw } = useTarget(field);
  const clock = typeof raw === 'string' && raw.includes(':');
  const text = fallback === undefined ? '' : durationText(fallback);
  return (
    <EntryField
      field={field}
      form={quantityForm(DURATION, unit)}
      unit={clock ? 'h:min:s' : unit}
      placeholder={fallback === undefined ? '' : showQuantity(DURATION, text, unit)}
      figure
    />
  );
}
