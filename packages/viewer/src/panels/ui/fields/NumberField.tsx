/** A number with no unit of length, time, volume or mass; `unit` says what is counted. */
import { typedCount } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { EntryField } from './EntryField.tsx';
import type { FieldProps } from './target.ts';
import type { Form } from './useEntry.ts';

interface Props extends FieldProps {
  readonly fallback?: number | undefined;
  readonly unit?: string | undefined;
  /** A whole number of people: its thousands may be grouped. */
  readonly people?: boolean;
}

const FORM: Form = {
  show: String,
  write: (text) =>
    /^[-+]?(?:\d+(?:\.\d+)?|\.\d+)$/u.test(text.replace('−', '-')) ? Number(text.replace('−', '-')) : text,
};

const PEOPLE: Form = { ...FORM, write: (text, raw) => typedCount(text) ?? FORM.write(text, raw) };

export const NumberField = (field: Props): JSX.Element => (
  <EntryField
    field={field}
    form={field.people === true ? PEOPLE : FORM}
    unit={field.unit ?? ''}
    placeholder={field.fallback === undefined ? '' : String(Number(field.fallback.toPrecision(12)))}
    figure
  />
);
