/** A few numbers on one line, or with `rows` several such lines: a pair, a place, a polygon, shares with times. */
import type { JSX } from 'preact';
import { EntryField } from './EntryField.tsx';
import type { FieldProps } from './target.ts';
import type { Form } from './useEntry.ts';

interface Props extends FieldProps {
  readonly fallback?: string | undefined;
  readonly unit?: string | undefined;
  /** A list of such lines. */
  readonly rows?: number | undefined;
}

const NUMBER = /^[-+]?(?:\d+(?:\.\d+)?|\.\d+)$/u;

/** Numbers as numbers; anything else as the text it is, for the schema to judge. */
const read = (text: string): unknown => (NUMBER.test(text.replace('−', '-')) ? Number(text.replace('−', '-')) : text);
const readLine = (line: string): unknown[] => line.split(/[,;\s]+/u).filter((part) => part !== '').map(read);
const showLine = (raw: unknown): string => (Array.isArray(raw) ? raw.map(String).join(', ') : String(raw));

export const LINE: Form = { show: showLine, write: readLine };
export const LINES: Form = {
  show: (raw) => (Array.isArray(raw) ? raw.map(showLine).join('\n') : String(raw)),
  write: (text) => text.split('\n').filter((line) => line.trim() !== '').map(readLine),
};
/** One value a line: finish times. */
export const COLUMN: Form = {
  show: (raw) => (Array.isArray(raw) ? raw.map(String).join('\n') : String(raw)),
  write: (text) => text.split('\n').map((line) => line.trim()).filter((line) => line !== '').map(read),
};

export const NumbersField = (field: Props): JSX.Element => (
  <EntryField field={field} form={field.rows === undefined ? LINE : LINES} unit={field.unit} placeholder={field.fallback} figure={field.rows === undefined} {...(field.rows === undefined ? {} : { rows: field.rows })} />
);
