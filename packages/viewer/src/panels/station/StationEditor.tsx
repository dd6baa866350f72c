/** Everything that the plan holds of one station, in folded parts. */
import type { JSX } from 'preact';
import { leadOf } from '../../state/view/derive.ts';
import { useStore } from '../../state/store/store.ts';
import { counted, farText, SERVED_WORD } from '../../words.ts';
import { CrewFields } from '../ui/fields/CrewFields.tsx';
import { PracticeFields } from '../ui/fields/PracticeFields.tsx';
import { SuppliesFields } from '../ui/fields/SuppliesFields.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { keysOf, ownCount, ownField, ownRaw, type Editing } from './editing.ts';
import { ItemsByHand } from './ItemsByHand.tsx';
import { PlaceFields } from './PlaceFields.tsx';
import { PointsFields } from './PointsFields.tsx';
import { NoteFields, PeopleFields, UsedFields } from './RecordFields.tsx';
import { Section } from './Section.tsx';
import { ServedFields } from './ServedFields.tsx';
import { TablesFields } from './TablesFields.tsx';

export function StationEditor(editing: Editing): JSX.Element {
  const { units } = useStore();
  const { station, open } = editing;
  const { plan } = open.analysis;
  const lead = leadOf(station);
  const rules = { station: station.id, about: station.name };
  const byHand = keysOf(ownRaw(editing, ['items']));
  const { serves, points, people } = station.station;
  return (
    <section class="edit" aria-label="Edit the station">
      <h3>Edit</h3>
      <TextField {...ownField(editing, ['name'], 'Name')} fallback={station.id} />
      <Section title="Place" about={lead === undefined ? 'off the course' : farText(lead.measure, units.value)}>
        <PlaceFields {...editing} />
      </Section>
      <Section
        title="Runners"
        about={`${station.passes.filter((pass) => pass.served).length} of ${station.passes.length} served`}
      >
        <ServedFields {...editing} />
      </Section>
      <Section title="Tables" about={serves.map((kind) => SERVED_WORD[kind]).join(', ')}>
        <TablesFields {...editing} />
      </Section>
      <Section title="Placed by hand" about={byHand === 0 ? 'none' : counted(byHand, 'item')}>
        <ItemsByHand {...editing} />
      </Section>
      <Section title="Points" about={points.length === 0 ? 'none' : counted(points.length, 'point')}>
        <PointsFields {...editing} />
      </Section>
      <Section title="People" about={people.captain}>
        <PeopleFields {...editing} />
      </Section>
      <Section title="Notes">
        <NoteFields {...editing} />
      </Section>
      <Section title="Distances for this station" about={ownCount(ownRaw(editing, ['practice']))}>
        <PracticeFields {...rules} fallback={plan.practice} />
      </Section>
      <Section title="Supplies for this station" about={ownCount(ownRaw(editing, ['supplies']))}>
        <SuppliesFields {...rules} fallback={plan.supplies} />
      </Section>
      <Section title="Crew for this station" about={ownCount(ownRaw(editing, ['crew']))}>
        <CrewFields {...rules} fallback={plan.crew} />
      </Section>
      <Section title="After the race" about={keysOf(ownRaw(editing, ['used'])) === 0 ? 'not counted yet' : 'counted'}>
        <UsedFields {...editing} />
      </Section>
    </section>
  );
}
