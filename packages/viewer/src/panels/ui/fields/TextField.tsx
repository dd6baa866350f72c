/** Words; with `rows` more than one line of them (Enter then makes a line, leaving the field commits). */
import type { JSX } from 'preact';
import { EntryField } from './EntryField.tsx';
import type { FieldProps } from './target.ts';
import type { Form } from './useEntry.ts';

interface Props extends FieldProps {
  readonly fallback?: string | undefined;
  readonly rows?: number | undefined;
}

const FORM: Form = { show: String, write: (text) => text };

export const TextField = (field: Props): JSX.Element => (
  <EntryField field={field} form={FORM} placeholder={field.fallback} rows={field.rows} />
);
