/** One race: its course, who starts when, and how fast they are. */
import type { Plan, PlanRace } from '@halfcup/core';
import type { JSX } from 'preact';
import { CheckField } from '../ui/fields/CheckField.tsx';
import { ChoiceField } from '../ui/fields/ChoiceField.tsx';
import { ClockField } from '../ui/fields/ClockField.tsx';
import { LengthField } from '../ui/fields/LengthField.tsx';
import { NumberField } from '../ui/fields/NumberField.tsx';
import { PairField } from '../ui/fields/PairField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { EntryList } from './EntryList.tsx';
import { FinishFields } from './FinishFields.tsx';

const DIVISIONS = [
  { value: 'run', label: 'runners' },
  { value: 'walk', label: 'walkers' },
  { value: 'wheels', label: 'wheelchair racers' },
] as const;
const LATE = [
  { value: 'out', label: 'are out of the race' },
  { value: 'served', label: 'are served all the same' },
] as const;

export function RaceFields({
  race,
  at,
  plan,
}: {
  readonly race: PlanRace;
  readonly at: number;
  readonly plan: Plan;
}): JSX.Element {
  const field = (key: string): { readonly path: readonly (string | number)[]; readonly about: string } => ({
    path: ['races', at, key],
    about: race.name,
  });
  return (
    <>
      <TextField label="Name" {...field('name')} fallback={race.id} />
      <ChoiceField
        label="Course"
        {...field('course')}
        choices={plan.courses.map(({ id, name }) => ({ value: id, label: name }))}
        required
      />
      <ChoiceField label="Who" {...field('division')} choices={DIVISIONS} fallback="runners" />
      <h3>Waves</h3>
      <EntryList
        path={['races', at, 'waves']}
        word="wave"
        title={(index) => `${index + 1}`}
        none="Without a wave nobody arrives: no cups, no crew and no clock can be reckoned."
        fresh={() => ({ time: '08:00', entrants: 500 })}
        entry={(index) => (
          <>
            <ClockField label="Starts at" path={['races', at, 'waves', index, 'time']} required />
            <NumberField label="Entrants" path={['races', at, 'waves', index, 'entrants']} required />
            <FinishFields path={['races', at, 'waves', index, 'finish']} none="as the race" />
          </>
        )}
      />
      <h3>Finish times</h3>
      <FinishFields path={['races', at, 'finish']} none="not known" />
      <h3>How they run</h3>
      <NumberField label="Share that shows up" {...field('show')} unit="of 1" fallback={race.show} />
      <PairField
        label="Slowing: the first, the last"
        {...field('slow')}
        unit="of 1"
        fallback={race.slow === undefined ? undefined : [race.slow[0], race.slow[1]]}
      />
      <LengthField label="Width of the start" {...field('startWidth')} />
      <NumberField label="Flow over the start" {...field('startFlow')} unit="a min" />
      <ClockField label="Cutoff" {...field('cutoff')} />
      <ChoiceField label="Those after it" {...field('late')} choices={LATE} fallback="are out of the race" />
      <CheckField label="Slower uphill, faster down" {...field('gradient')} />
    </>
  );
}
