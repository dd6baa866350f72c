/** Finish times in one of four forms; choosing another form puts a first value of it in the old one's place. */
import type { JSX } from 'preact';
import type { Path } from '../../state/edits/edits.ts';
import { DurationField } from '../ui/fields/DurationField.tsx';
import { FieldFrame } from '../ui/fields/FieldFrame.tsx';
import { LinesField } from '../ui/fields/LinesField.tsx';
import { NumberField } from '../ui/fields/NumberField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { useChange } from '../ui/fields/useChange.ts';

/** A first value of each form, invented. */
const FIRST = {
  median: { median: '4:30:00', spread: 0.2 },
  quantiles: {
    quantiles: [
      [0, '2:30:00'],
      [0.5, '4:30:00'],
      [1, '7:00:00'],
    ],
  },
  times: { times: ['4:30:00'] },
  csv: { csv: 'results.csv', column: 'net' },
} as const;
const LABELS = {
  median: 'median and spread',
  quantiles: 'shares and their times',
  times: 'list of times',
  csv: 'past results (CSV file)',
} as const;

type Form = keyof typeof FIRST;
const FORMS = Object.keys(FIRST) as Form[];

const formOf = (raw: unknown): Form | '' =>
  typeof raw === 'object' && raw !== null ? (FORMS.find((form) => Object.hasOwn(raw, form)) ?? '') : '';

export function FinishFields({ path, none }: { readonly path: Path; readonly none: string }): JSX.Element {
  const { id, raw, trouble, change } = useChange({ label: 'Finish times', path });
  const form = formOf(raw);
  return (
    <>
      <FieldFrame id={id} label="Finish times from" trouble={trouble}>
        <select
          id={id}
          class="entry-choice"
          value={form}
          onChange={(event) =>
            change(event.currentTarget.value === '' ? undefined : FIRST[event.currentTarget.value as Form])
          }
        >
          <option value="">{none}</option>
          {FORMS.map((one) => (
            <option key={one} value={one}>
              {LABELS[one]}
            </option>
          ))}
        </select>
      </FieldFrame>
      {form === 'median' ? (
        <>
          <DurationField label="Median" path={[...path, 'median']} required />
          <NumberField label="Spread" path={[...path, 'spread']} required />
        </>
      ) : null}
      {form === 'quantiles' ? (
        <LinesField
          label="Share, time"
          path={[...path, 'quantiles']}
          required
          several
          hint="One per line: 0 is the fastest finisher, 1 the slowest"
        />
      ) : null}
      {form === 'times' ? <LinesField label="Times" path={[...path, 'times']} required hint="One per line" /> : null}
      {form === 'csv' ? (
        <>
          <TextField label="File" path={[...path, 'csv']} required />
          <TextField label="Column" path={[...path, 'column']} required />
        </>
      ) : null}
    </>
  );
}
