/** A second delivery: ordered when so much is left, and how long it takes. The two come and go together. */
import type { Finding } from '@halfcup/core';
import { formatDuration } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { setOfStation, setValue, valueAt, rawPlan, rawStation } from '../../../state/edits/edits.ts';
import { useStore } from '../../../state/store/store.ts';
import { run } from '../../../state/edits/workbench.ts';
import { DurationField } from './DurationField.tsx';
import { NumberField } from './NumberField.tsx';
import { ruleField, type SuppliesProps } from './rules.ts';

const PATH = ['supplies', 'resupply'] as const;
/** What the other of the two is where only one was typed; shown at once, to be changed. */
const AT = 0.25;
const TAKES = '40 min';

export function ResupplyFields(props: SuppliesProps): JSX.Element {
  const store = useStore();
  const open = store.open.value;
  const { station, about, fallback } = props;
  const now =
    open === null
      ? undefined
      : valueAt(station === undefined ? rawPlan(open.document) : rawStation(open, station), PATH);
  const save =
    (key: 'at' | 'takes') =>
    (value: unknown): readonly Finding[] => {
      const before = {
        at: valueAt(now, ['at']) ?? fallback.resupply?.at ?? AT,
        takes:
          valueAt(now, ['takes']) ??
          (fallback.resupply === undefined ? TAKES : formatDuration(fallback.resupply.takes)),
      };
      const whole = value === undefined ? undefined : { ...before, [key]: value };
      const label = `change second delivery${about === undefined ? '' : `, ${about}`}`;
      return run(
        store,
        station === undefined ? setValue(PATH, whole, label) : setOfStation(station, PATH, whole, label),
      );
    };
  return (
    <>
      <NumberField
        {...ruleField(props, [...PATH, 'at'], 'Share left when ordering a second delivery')}
        fallback={fallback.resupply?.at}
        unit="(0–1)"
        save={save('at')}
      />
      <DurationField
        {...ruleField(props, [...PATH, 'takes'], 'Second delivery takes')}
        fallback={fallback.resupply?.takes}
        save={save('takes')}
      />
    </>
  );
}
