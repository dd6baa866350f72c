/** Everything that the plan holds beside its stations, with the defaults where it says nothing. */
import type { Plan } from '@halfcup/core';
import type { ComponentChildren, JSX, TargetedToggleEvent } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { CrewFields } from '../ui/fields/CrewFields.tsx';
import { PracticeFields } from '../ui/fields/PracticeFields.tsx';
import { SuppliesFields } from '../ui/fields/SuppliesFields.tsx';
import { AboutFields } from './AboutFields.tsx';
import { CourseFields } from './CourseFields.tsx';
import { EntryList } from './EntryList.tsx';
import { freeId } from '../../state/edits/freeId.ts';
import { ClockList, VehicleList, ZoneList } from './PlanLists.tsx';
import { PriceList } from './PriceList.tsx';
import { PartsForm } from './PartsForm.tsx';
import { RaceFields } from './RaceFields.tsx';
import { WeatherList } from './WeatherList.tsx';

/** Sections that are unfolded stay so while the page is open, whichever pane is shown. */
const unfolded = new Set<string>();

function Section({
  title,
  about,
  children,
}: {
  readonly title: string;
  readonly about: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  const id = `plan-${title.toLowerCase().replaceAll(' ', '-')}`;
  const keep = ({ currentTarget }: TargetedToggleEvent<HTMLDetailsElement>): void =>
    void (currentTarget.open ? unfolded.add(id) : unfolded.delete(id));
  return (
    <details class="plan-section" id={id} open={unfolded.has(id)} onToggle={keep}>
      <summary>
        <h2 class="plan-title">{title}</h2> <span class="soft">{about}</span>
      </summary>
      {children}
    </details>
  );
}

interface OfPlan {
  readonly plan: Plan;
}

const CourseList = ({ plan }: OfPlan): JSX.Element => (
  <EntryList
    path={['courses']}
    word="course"
    least={1}
    title={(index) => plan.courses[index]?.name ?? `${index + 1}`}
    entry={(index) =>
      plan.courses[index] === undefined ? null : <CourseFields course={plan.courses[index]} at={index} plan={plan} />
    }
  />
);

const RaceList = ({ plan }: OfPlan): JSX.Element => (
  <EntryList
    path={['races']}
    word="race"
    least={1}
    title={(index) => plan.races[index]?.name ?? `${index + 1}`}
    beside={(index) => {
      const of = plan.courses.find(({ id }) => id === plan.races[index]?.course);
      return of === undefined ? '' : `on ${of.name}`;
    }}
    fresh={() => ({
      id: freeId(
        'r',
        plan.races.map(({ id }) => id),
      ),
      course: plan.courses[0]?.id ?? '',
    })}
    entry={(index) =>
      plan.races[index] === undefined ? null : <RaceFields race={plan.races[index]} at={index} plan={plan} />
    }
  />
);

export function PlanPanel(): JSX.Element {
  const { open } = useStore();
  if (open.value === null) return <p class="empty">No plan is open.</p>;
  const { plan } = open.value.document;
  const counted = (count: number, word: string): string =>
    `${count === 0 ? 'no' : count} ${word}${count === 1 ? '' : 's'}`;
  return (
    <div class="plan">
      <p class="soft">Values in italics are defaults. Clear a field to restore its default.</p>
      <Section title="About" about={plan.name}>
        <AboutFields plan={plan} />
      </Section>
      <Section title="Courses" about={plan.courses.map(({ name }) => name).join(', ')}>
        <CourseList plan={plan} />
        <PartsForm plan={plan} />
      </Section>
      <Section title="Races" about={plan.races.map(({ name }) => name).join(', ')}>
        <RaceList plan={plan} />
      </Section>
      <Section title="Distances" about="layout, tolerances, limits">
        <PracticeFields fallback={plan.practice} />
      </Section>
      <Section title="Supplies" about="heat, cups, packs, weights">
        <SuppliesFields fallback={plan.supplies} />
      </Section>
      <Section title="Prices" about={counted(plan.prices?.items.length ?? 0, 'price')}>
        <PriceList plan={plan} />
      </Section>
      <Section title="Weather" about={counted(plan.weather?.length ?? 0, 'time')}>
        <WeatherList plan={plan} />
      </Section>
      <Section title="Crew" about="who pours, hands out, cleans up">
        <CrewFields fallback={plan.crew} />
      </Section>
      <Section title="Vehicles" about={counted(plan.vehicles.length, 'vehicle')}>
        <VehicleList plan={plan} />
      </Section>
      <Section title="Road times" about={counted(plan.clock.length, 'place')}>
        <ClockList plan={plan} />
      </Section>
      <Section title="Zones" about={counted(plan.zones.length, 'zone')}>
        <ZoneList plan={plan} />
      </Section>
    </div>
  );
}
