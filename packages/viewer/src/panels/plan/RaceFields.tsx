/** One race: its course, who starts when, and how fast they are. */
import type { Plan } from '@halfcup/core';
import type { PlanRace } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { CheckField } from '../ui/fields/CheckField.tsx';
import { ChoiceField } from '../ui/fields/ChoiceField.tsx';
import { ClockField } from '../ui/fields/ClockField.tsx';
import { LengthField } from '../ui/fields/LengthField.tsx';
import { NumberField } from '../ui/fields/NumberField.tsx';
import { PairField } from '../ui/fields/PairField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { CutoffField } from './CutoffField.tsx';
import { EntryList } from './EntryList.tsx';
import { FinishFields } from './FinishFields.tsx';

const DIVISIONS = [
  { value: 'run', label: 'runners' },
  { value: 'walk', label: 'walkers' },
  { value: 'wheels', label: 'wheelchair racers' },
] as const;
const LATE = [
  { value: 'out', label: 'are out of the race' },
  { value: 'served', label: 'are still served' },
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
        none="No waves yet. Cups, crew and clock times need each wave’s start time and number of runners."
        fresh={() => ({ time: '08:00', entrants: 500 })}
        entry={(index) => (
          <>
            <ClockField label="Starts at" path={['races', at, 'waves', index, 'time']} required />
            <NumberField label="Runners entered" path={['races', at, 'waves', index, 'entrants']} required people />
            <FinishFields path={['races', at, 'waves', index, 'finish']} none="same as the race" />
          </>
        )}
      />
      <h3>Finish times</h3>
      <FinishFields path={['races', at, 'finish']} none="not known" />
      <h3>How they run</h3>
      <NumberField label="Share that starts" {...field('show')} unit="(0–1)" fallback={race.show} />
      <PairField
        label="Slowing over the race: fastest, slowest"
        {...field('slow')}
        unit="(0–1)"
        fallback={race.slow === undefined ? undefined : [race.slow[0], race.slow[1]]}
      />
      <LengthField label="Start line width" {...field('startWidth')} />
      <NumberField label="Flow over the start line" {...field('startFlow')} unit="runners/min" />
      <CutoffField label="Cutoff" {...field('cutoff')} race={race} />
      <ChoiceField label="Runners after the cutoff" {...field('late')} choices={LATE} fallback="are out of the race" />
      <CheckField label="Slower uphill, faster downhill" {...field('gradient')} />
    </>
  );
}
