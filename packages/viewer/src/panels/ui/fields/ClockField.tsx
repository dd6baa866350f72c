/** A clock time, "08:00" or "08:00:30"; hours may pass 24. */
import { formatClock, formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { EntryField } from './EntryField.tsx';
import type { QuantityProps } from './QuantityField.tsx';
import type { Form } from './useEntry.ts';

const FORM: Form = { show: String, write: (text) => text };

export function ClockField(field: QuantityProps): JSX.Element {
  const { fallback } = field;
  return (
    <EntryField
      field={field}
      form={FORM}
      unit="h:min"
      placeholder={fallback === undefined ? '' : fallback % 60 === 0 ? formatMinute(fallback) : formatClock(fallback)}
      figure
    />
  );
}
