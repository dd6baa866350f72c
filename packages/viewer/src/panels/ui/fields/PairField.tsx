/** Two numbers in one field, written as a list: a position ("longitude, latitude"), or two shares. */
import type { JSX } from 'preact';
import { EntryField } from './EntryField.tsx';
import type { FieldProps } from './target.ts';
import type { Form } from './useEntry.ts';

interface Props extends FieldProps {
  readonly fallback?: readonly [number, number] | undefined;
  readonly unit?: string | undefined;
  /** For a position. */
  readonly wide?: boolean | undefined;
}

const NUMBER = /^[-+]?(?:\d+(?:\.\d+)?|\.\d+)$/u;

/** "−17.42, 33.2" as [-17.42, 33.2]; anything else as it is. */
export function pairOf(text: string): unknown {
  const parts = text
    .replaceAll('−', '-')
    .replace(/^\[|\]$/gu, '')
    .split(/\s*[,;]\s*|\s+/u)
    .filter((part) => part !== '');
  return parts.length === 2 && parts.every((part) => NUMBER.test(part)) ? parts.map(Number) : text;
}

const FORM: Form = { show: (raw) => (Array.isArray(raw) ? raw.join(', ') : String(raw)), write: pairOf };

export const PairField = (field: Props): JSX.Element => (
  <EntryField
    field={field}
    form={FORM}
    unit={field.unit}
    placeholder={field.fallback?.join(', ') ?? ''}
    figure={field.wide !== true}
    stack={field.wide}
  />
);
