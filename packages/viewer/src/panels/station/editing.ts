/** What the parts of the station's editor share. */
import type { Finding, StationLayout } from '@halfcup/core';
import { rawStation, setOfStation, valueAt, type Path } from '../../state/edits/edits.ts';
import type { OpenPlan, Store } from '../../state/store/store.ts';
import { firstMessage } from '../../state/view/voice.ts';
import { run } from '../../state/edits/workbench.ts';
import type { FieldProps } from '../ui/fields/target.ts';

export interface Editing {
  readonly station: StationLayout;
  readonly open: OpenPlan;
}

/** The field of one of the station's own values. */
export const ownField = ({ station }: Editing, path: Path, label: string): FieldProps => ({
  label,
  path,
  station: station.id,
  about: station.name,
});

export const ownRaw = ({ open, station }: Editing, path: Path): unknown => valueAt(rawStation(open, station.id), path);

export const setOwn = (
  store: Store,
  { station }: Editing,
  path: Path,
  value: unknown,
  what: string,
): readonly Finding[] => run(store, setOfStation(station.id, path, value, `${what}, ${station.name}`));

/** Shows at the foot of the map what has come of an action. */
export function notify(store: Store, findings: readonly Finding[], done: string): void {
  store.notice.value = { text: firstMessage(store, findings) ?? done };
}

export const keysOf = (value: unknown): number =>
  typeof value === 'object' && value !== null ? Object.keys(value).length : 0;

/** "2 set here" for a summary. */
export const ownCount = (value: unknown): string =>
  keysOf(value) === 0 ? 'same as plan' : `${keysOf(value)} set here`;
