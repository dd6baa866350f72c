/** Zones, vehicles, and when roads close and reopen. */
import type { Plan } from '@halfcup/core';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { ChoiceField } from '../ui/fields/ChoiceField.tsx';
import { ClockField } from '../ui/fields/ClockField.tsx';
import { DurationField } from '../ui/fields/DurationField.tsx';
import { LengthField } from '../ui/fields/LengthField.tsx';
import { LinesField } from '../ui/fields/LinesField.tsx';
import { MassField } from '../ui/fields/MassField.tsx';
import { CheckField } from '../ui/fields/CheckField.tsx';
import { NumberField } from '../ui/fields/NumberField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { farText } from '../../words.ts';
import { EntryList } from './EntryList.tsx';
import { freeId } from '../../state/edits/freeId.ts';

const RULES = [
  { value: 'keep-clear', label: 'keep clear: nothing may stand here' },
  { value: 'allowed', label: 'allowed: things may stand only here' },
] as const;

/** About 40 m either way. */
const HALF = 0.0004;

/** A square around where one is looking, to be given its true corners. */
function squareAround([lon, lat]: readonly [number, number]): number[][] {
  const at = (x: number, y: number): number[] => [
    Number((lon + x * HALF).toFixed(6)),
    Number((lat + y * HALF).toFixed(6)),
  ];
  return [at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)];
}

export function ZoneList({ plan }: { readonly plan: Plan }): JSX.Element {
  const { open, selected, tool, destination } = useStore();
  const near =
    open.value?.analysis.stations.find(({ id }) => id === selected.value) ?? open.value?.analysis.stations[0];
  return (
    <EntryList
      path={['zones']}
      word="zone"
      title={(index) => plan.zones[index]?.name || `${index + 1}`}
      none="Areas to keep clear (driveways, hydrants, crossings), or the only areas where things may stand."
      fresh={() => ({
        name: `Zone ${plan.zones.length + 1}`,
        rule: 'keep-clear',
        polygon: squareAround(near === undefined ? [0, 0] : [near.at[0], near.at[1]]),
      })}
      addLabel={near === undefined ? 'Add a zone' : `Add a zone at ${near.name}`}
      entry={(index) => (
        <>
          <TextField label="Name" path={['zones', index, 'name']} />
          <ChoiceField label="Rule" path={['zones', index, 'rule']} choices={RULES} required />
          <button
            type="button"
            onClick={() => {
              tool.value = { kind: 'reshape', zone: index, corners: null };
              const at = plan.zones[index]?.polygon[0];
              if (at !== undefined) destination.value = { kind: 'place', course: null, measure: null, at };
            }}
          >
            Reshape on the map
          </button>
          <LinesField
            label="Corners"
            path={['zones', index, 'polygon']}
            required
            several
            hint="One corner per line: longitude, latitude"
          />
        </>
      )}
    />
  );
}

export const VehicleList = ({ plan }: { readonly plan: Plan }): JSX.Element => (
  <EntryList
    path={['vehicles']}
    word="vehicle"
    title={(index) => plan.vehicles[index]?.name ?? `${index + 1}`}
    none="No vehicles yet. Add one to plan drop-off and collection runs."
    fresh={() => ({
      id: freeId(
        'v',
        plan.vehicles.map(({ id }) => id),
      ),
    })}
    entry={(index) => {
      const vehicle = plan.vehicles[index];
      const field = (key: string): { readonly path: readonly (string | number)[] } => ({
        path: ['vehicles', index, key],
      });
      return (
        <>
          <TextField label="Name" {...field('name')} fallback={vehicle?.id} />
          <MassField label="Carries up to" {...field('kg')} fallback={vehicle?.kg} />
          <NumberField label="Stations per run" {...field('places')} fallback={vehicle?.places} />
          <NumberField label="Speed" {...field('kmh')} unit="km/h" fallback={vehicle?.kmh} />
          <DurationField label="Time per stop (else by weight)" {...field('stop')} fallback={vehicle?.stop} />
          <NumberField label="Unloads" {...field('unload')} fallback={vehicle?.unload} unit="kg/min" />
          <ClockField label="Ready from" {...field('from')} fallback={vehicle?.from} />
          <CheckField label="Kept for second deliveries" {...field('standBy')} />
        </>
      );
    }}
  />
);

export function ClockList({ plan }: { readonly plan: Plan }): JSX.Element {
  const { units } = useStore();
  const course = plan.courses[0]?.id ?? '';
  return (
    <EntryList
      path={['clock']}
      word="place"
      title={(index) => {
        const one = plan.clock[index];
        return one === undefined
          ? `${index + 1}`
          : `${plan.courses.find(({ id }) => id === one.course)?.name ?? one.course}, ${farText(one.measure, units.value)}`;
      }}
      none="When roads close, are swept and reopen, place by place. The sweep is the vehicle or crew behind the last walker: who falls behind it leaves the road."
      fresh={() => ({ course, measure: '0 km' })}
      entry={(index) => (
        <>
          <ChoiceField
            label="Course"
            path={['clock', index, 'course']}
            choices={plan.courses.map(({ id, name }) => ({ value: id, label: name }))}
            required
          />
          <LengthField label="Course distance" path={['clock', index, 'measure']} long required />
          <ClockField label="Access opens" path={['clock', index, 'accessOpens']} />
          <ClockField label="Road closes" path={['clock', index, 'closes']} />
          <ClockField label="Sweep comes by" path={['clock', index, 'sweep']} />
          <ClockField label="Road reopens" path={['clock', index, 'reopens']} />
        </>
      )}
    />
  );
}
