/** The weather that is expected, hour by hour. */
import type { Plan } from '@halfcup/core';
import { formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { ClockField } from '../ui/fields/ClockField.tsx';
import { NumberField } from '../ui/fields/NumberField.tsx';

import { EntryList } from './EntryList.tsx';

const NONE =
  'What is expected on the day. It gives the heat of the supplies where they give none, a weather sheet for captains, and notes in the review. The medical director decides on the level.';

export const WeatherList = ({ plan }: { readonly plan: Plan }): JSX.Element => (
  <EntryList
    path={['weather']}
    word="time"
    title={(index) => {
      const hour = plan.weather?.[index];
      return hour === undefined ? `${index + 1}` : formatMinute(hour.at);
    }}
    none={NONE}
    fresh={() => ({ at: '08:00' })}
    entry={(index) => {
      const field = (key: string): { readonly path: readonly (string | number)[] } => ({
        path: ['weather', index, key],
      });
      return (
        <>
          <ClockField label="From" {...field('at')} required />
          <NumberField
            label="Wet-bulb globe temperature"
            {...field('wbgtC')}
            unit="°C"
            hint="As the weather service or an instrument gives it"
          />
          <NumberField label="Air temperature" {...field('airC')} unit="°C" />
          <NumberField
            label="Humidity"
            {...field('humidity')}
            hint="0 to 1; with the air temperature it stands for a missing wet-bulb globe temperature"
          />
          <NumberField label="Wind" {...field('windKmh')} unit="km/h" />
        </>
      );
    }}
  />
);
