/** A list with one entry a line: a place, a share with its time, a time. */
import type { JSX } from 'preact';
import { EntryField } from './EntryField.tsx';
import type { FieldProps } from './target.ts';
import type { Form } from './useEntry.ts';

interface Props extends FieldProps {
  /** Several values on a line, with commas or spaces between; else one. */
  readonly several?: boolean | undefined;
}

const NUMBER = /^[-+]?(?:\d+(?:\.\d+)?|\.\d+)$/u;

/** Numbers as numbers; anything else as the text it is, for the schema to judge. */
const read = (text: string): unknown => (NUMBER.test(text.replace('−', '-')) ? Number(text.replace('−', '-')) : text);
const show = (raw: unknown): string => (Array.isArray(raw) ? raw.map(String).join(', ') : String(raw));
const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
const form = (readLine: (line: string) => unknown): Form => ({
  show: (raw) => (Array.isArray(raw) ? raw.map(show).join('\n') : String(raw)),
  write: (text) => linesOf(text).map(readLine),
});

export const SEVERAL: Form = form((line) =>
  line
    .split(/[,;\s]+/u)
    .filter((part) => part !== '')
    .map(read),
);
export const SINGLE: Form = form(read);

export const LinesField = (field: Props): JSX.Element => (
  <EntryField field={field} form={field.several === true ? SEVERAL : SINGLE} rows={6} />
);

/** A name a line, also where it looks like a number. */
export const NAMES: Form = form((line) => line);

export const NamesField = ({
  field,
  fallback = [],
}: {
  readonly field: FieldProps;
  /** What holds where the file says nothing. */
  readonly fallback?: readonly string[] | undefined;
}): JSX.Element => <EntryField field={field} form={NAMES} rows={3} placeholder={fallback.join('\n')} />;
