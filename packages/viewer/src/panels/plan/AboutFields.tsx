/** The plan's own facts, and whom to call. */
import type { Plan } from '@halfcup/core';
import type { JSX } from 'preact';
import { ChoiceField } from '../ui/fields/ChoiceField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';

const UNITS = [
  { value: 'metric', label: 'km, m' },
  { value: 'imperial', label: 'mi, yd' },
] as const;

export const AboutFields = ({ plan }: { readonly plan: Plan }): JSX.Element => (
  <>
    <TextField label="Name" path={['name']} />
    <TextField label="Version" path={['revision']} />
    <TextField label="Date" path={['date']} hint="Year-month-day, such as 2027-09-12" />
    <TextField label="Time zone" path={['timeZone']} hint="IANA name, such as Etc/GMT+1" />
    <ChoiceField label="Units on papers" path={['units']} choices={UNITS} fallback="km, m" />
    <TextField label="Language of papers" path={['language']} fallback="en" />
    <TextField label="Background drawing" path={['context']} hint="A GeoJSON file next to the plan" />
    <TextField
      label="Map of the ground"
      path={['ground']}
      hint="Streets, houses and hydrants beside the courses: a ground.geojson next to the plan"
    />
    <h3>Contacts</h3>
    <TextField
      label="Emergency"
      path={['contacts', 'emergency']}
      hint="The local emergency number; it comes first on every sheet"
      fallback={plan.contacts.emergency}
    />
    <TextField label="Race control" path={['contacts', 'raceControl']} />
    <TextField label="Radio channel" path={['contacts', 'radioChannel']} />
  </>
);
