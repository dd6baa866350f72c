/**
 * A field that somebody types in: what is typed stays until it is taken. Enter or leaving the field
 * commits it, Escape restores, and the undo keys belong to it only while it holds something of its own.
 */
import { useEffect, useId, useState } from 'preact/hooks';
import { useStore } from '../../../state/store/store.ts';
import { redoAndReport, undoAndReport } from '../reportedUndo.ts';
import { troubleOf, useTarget, type FieldProps } from './target.ts';
import { pointerTo } from '../../../state/edits/edits.ts';

export interface Entry {
  readonly id: string;
  readonly value: string;
  /** What was found and what is accepted; `null` while all is well. */
  readonly trouble: string | null;
  readonly onInput: (event: { readonly currentTarget: { readonly value: string } }) => void;
  readonly onBlur: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

export interface Form {
  /** A value of the file, as this field shows it. */
  readonly show: (raw: unknown) => string;
  /** What was typed, as the file takes it; what it cannot be made of stays text, for the schema to judge. */
  readonly write: (text: string, raw: unknown) => unknown;
}

export function useEntry(props: FieldProps, { show, write }: Form, lines = false): Entry {
  const store = useStore();
  const id = useId();
  const { raw, save } = useTarget(props);
  const [draft, setDraft] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const restore = (): void => {
    setDraft(null);
    setTrouble(null);
  };
  const place = `${props.station ?? ''}${pointerTo(props.path)}`;
  useEffect(restore, [place]);
  const shown = raw === undefined ? '' : show(raw);
  const commit = (): void => {
    if (draft === null) return;
    const text = draft.trim();
    if (text === shown) return restore();
    const message = troubleOf(
      store,
      save(text === '' && props.required !== true ? undefined : write(text, raw)),
      props.path,
    );
    if (message === null) restore();
    else setTrouble(message);
  };
  const history = (event: KeyboardEvent): void => {
    const key = event.key.toLowerCase();
    if (draft !== null || !(event.ctrlKey || event.metaKey) || event.altKey || (key !== 'z' && key !== 'y')) return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) redoAndReport(store);
    else undoAndReport(store);
  };
  return {
    id,
    value: draft ?? shown,
    trouble,
    onInput: (event) => setDraft(event.currentTarget.value),
    onBlur: commit,
    onKeyDown: (event) => {
      if (event.key === 'Enter' && !event.isComposing && (!lines || event.ctrlKey || event.metaKey)) {
        event.preventDefault();
        commit();
      } else if (event.key === 'Escape' && draft !== null) {
        event.preventDefault();
        restore();
      } else history(event);
    },
  };
}
