/** What a field edits: a value of the plan's text at a path, of the whole plan or of one station as shown. */
import type { Finding } from '@halfcup/core';
import {
  pointerTo,
  rawPlan,
  rawStation,
  setOfStation,
  setValue,
  valueAt,
  type Path,
} from '../../../state/edits/edits.ts';
import { useStore, type Store } from '../../../state/store/store.ts';
import { firstMessage } from '../../../state/view/voice.ts';
import { run } from '../../../state/edits/workbench.ts';

export interface FieldProps {
  readonly label: string;
  /** From the plan's root, or with `station` from one of that station's keys. */
  readonly path: Path;
  /** The id of a station: what is shown and written is its own, or that of the variant shown. */
  readonly station?: string | undefined;
  /** Whose value it is, for the name that undo gives: "Strand Road". */
  readonly about?: string | undefined;
  /** The key may not go: an emptied field says what is accepted. */
  readonly required?: boolean | undefined;
  /** One line under the label. */
  readonly hint?: string | undefined;
  /** The label is for screen readers only, where a table's head or a row says it already. */
  readonly bare?: boolean | undefined;
  /** Instead of the value at the path. */
  readonly raw?: unknown;
  /** Instead of setting the value at the path; says why it was not taken. */
  readonly save?: ((value: unknown) => readonly Finding[]) | undefined;
}

export interface Target {
  /** As the file has it; `undefined` where it has none. */
  readonly raw: unknown;
  readonly save: (value: unknown) => readonly Finding[];
}

const changeOf = ({ label, about }: FieldProps): string =>
  `change ${label.charAt(0).toLowerCase()}${label.slice(1)}${about === undefined ? '' : `, ${about}`}`;

function rawOf(store: Store, { path, station }: FieldProps): unknown {
  const open = store.open.value;
  if (open === null) return undefined;
  return valueAt(station === undefined ? rawPlan(open.document) : rawStation(open, station), path);
}

export function useTarget(props: FieldProps): Target {
  const store = useStore();
  const { path, station } = props;
  const label = changeOf(props);
  return {
    raw: Object.hasOwn(props, 'raw') ? props.raw : rawOf(store, props),
    save:
      props.save ??
      ((value) =>
        run(store, station === undefined ? setValue(path, value, label) : setOfStation(station, path, value, label))),
  };
}

/** Of several findings the one about this very value, else the first, in words. */
export function troubleOf(store: Store, findings: readonly Finding[], path: Path): string | null {
  const own = findings.find((finding) => finding.where.path?.endsWith(pointerTo(path)));
  return firstMessage(store, own === undefined ? findings : [own]);
}
