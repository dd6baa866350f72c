/** Fields for rules of the plan, or with `station` for what one station has of its own. */
import type { JSX } from 'preact';
import type { Path } from '../../state/edits.ts';
import { DurationField } from '../fields/DurationField.tsx';
import { LengthField } from '../fields/LengthField.tsx';
import { MassField } from '../fields/MassField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { VolumeField } from '../fields/VolumeField.tsx';
import type { Row } from './keys.ts';

interface Props {
  readonly rows: readonly Row<string>[];
  /** Where the keys stand. */
  readonly at: Path;
  /** What holds where the file says nothing. */
  readonly holds: Readonly<Record<string, unknown>>;
  readonly station?: string | undefined;
  readonly about?: string | undefined;
}

export function RuleFields({ rows, at, holds, station, about }: Props): JSX.Element {
  return (
    <>
      {rows.map(({ key, label, kind, unit }) => {
        const value = holds[key];
        const field = { label, path: [...at, key], station, about, fallback: typeof value === 'number' ? value : undefined };
        if (kind === 'length' || kind === 'long') return <LengthField key={key} {...field} long={kind === 'long'} />;
        if (kind === 'duration') return <DurationField key={key} {...field} />;
        if (kind === 'mass') return <MassField key={key} {...field} />;
        if (kind === 'number') return <NumberField key={key} {...field} unit={unit} />;
        return <VolumeField key={key} {...field} small={kind === 'small'} />;
      })}
    </>
  );
}
