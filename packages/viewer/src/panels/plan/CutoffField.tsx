/** A race's cutoff, typed as a time of day or as a time after the last start; the plan keeps the time of day. */
import type { PlanRace } from '@halfcup/core/plan';
import { formatClock, formatDuration, formatMinute, parseDuration } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { useStore } from '../../state/store/store.ts';
import { setValue } from '../../state/edits/edits.ts';
import { run } from '../../state/edits/workbench.ts';
import { ClockField } from '../ui/fields/ClockField.tsx';
import { EntryField } from '../ui/fields/EntryField.tsx';
import type { FieldProps } from '../ui/fields/target.ts';
import type { Form } from '../ui/fields/useEntry.ts';

const FORM: Form = { show: String, write: (text) => text };

const clock = (seconds: number): string => (seconds % 60 === 0 ? formatMinute(seconds) : formatClock(seconds));

/** Of several waves the last: nobody has less time than the duration says. */
const lastStart = (race: PlanRace): number | null =>
  race.waves.length === 0 ? null : Math.max(...race.waves.map(({ time }) => time));

interface Props extends FieldProps {
  readonly race: PlanRace;
}

function AfterStart({ race, start, ...field }: Props & { readonly start: number }): JSX.Element {
  const store = useStore();
  const raw = race.cutoff === undefined ? undefined : formatDuration(race.cutoff - start);
  const save: FieldProps['save'] = (value) => {
    const label = `change cutoff, ${race.name}`;
    if (value === undefined) return run(store, setValue(field.path, undefined, label));
    const read = parseDuration(value);
    if (!read.ok) return [{ code: 'plan-value', severity: 'error', message: read.message, where: {} }];
    return run(store, setValue(field.path, clock(start + read.value), label));
  };
  return <EntryField field={{ ...field, raw, save }} form={FORM} unit="h:min:s" placeholder="" figure />;
}

/** The same in the other form. */
function Beside({ race, start }: { readonly race: PlanRace; readonly start: number }): JSX.Element | null {
  const { cutoff } = race;
  if (cutoff === undefined) return null;
  return (
    <p class="entry-hint">
      {cutoff < start
        ? `At ${clock(cutoff)}, which is before the last start at ${clock(start)}. It should be after it.`
        : `At ${clock(cutoff)}, ${formatDuration(cutoff - start)} after the last start at ${clock(start)}.`}
    </p>
  );
}

export function CutoffField(props: Props): JSX.Element {
  const { race } = props;
  const [after, setAfter] = useState(false);
  const start = lastStart(race);
  const name = `cutoff-${race.id}`;
  return (
    <div class="cutoff">
      <div class="entry-set-row" role="radiogroup" aria-label={`Cutoff given as, ${race.name}`}>
        {[
          { value: false, label: 'Cutoff as a time of day' },
          { value: true, label: 'after the last start' },
        ].map(({ value, label }) => (
          <label key={label} class="entry-set-one">
            <input
              type="radio"
              name={name}
              checked={after === value}
              disabled={value && start === null}
              onChange={() => setAfter(value)}
            />
            {label}
          </label>
        ))}
      </div>
      {after && start !== null ? (
        <AfterStart {...props} label="Cutoff after the last start" start={start} />
      ) : (
        <ClockField {...props} label="Cutoff" />
      )}
      {start === null ? (
        <p class="entry-hint">Add a wave to give the cutoff as a time after the start.</p>
      ) : (
        <Beside race={race} start={start} />
      )}
    </div>
  );
}
