/** A field that is chosen in, not typed in: every choice is taken at once, or refused with what is accepted. */
import { useEffect, useId, useState } from 'preact/hooks';
import { pointerTo } from '../../../state/edits/edits.ts';
import { useStore } from '../../../state/store/store.ts';
import { troubleOf, useTarget, type FieldProps } from './target.ts';

export interface Change {
  readonly id: string;
  readonly raw: unknown;
  readonly trouble: string | null;
  readonly change: (value: unknown) => void;
}

export function useChange(props: FieldProps): Change {
  const store = useStore();
  const id = useId();
  const { raw, save } = useTarget(props);
  const [trouble, setTrouble] = useState<string | null>(null);
  const place = `${props.station ?? ''}${pointerTo(props.path)}`;
  useEffect(() => setTrouble(null), [place, JSON.stringify(raw)]);
  return { id, raw, trouble, change: (value) => setTrouble(troubleOf(store, save(value), props.path)) };
}
