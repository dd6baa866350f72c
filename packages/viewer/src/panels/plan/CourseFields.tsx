/** One course: where its line comes from, how long it is, and what calibrates it. */
import type { Plan } from '@halfcup/core';
import type { PlanCourse } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { CheckField } from '../ui/fields/CheckField.tsx';
import { ChoiceField } from '../ui/fields/ChoiceField.tsx';
import { LengthField } from '../ui/fields/LengthField.tsx';
import { PairField } from '../ui/fields/PairField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { EntryList } from './EntryList.tsx';

const GAPS = [
  { value: 'refuse', label: 'refuse the course' },
  { value: 'join', label: 'join with a straight line' },
  { value: 'skip', label: 'skip them, adding no distance' },
] as const;
const DRAWN = [
  { value: 'recorded', label: 'recorded along the course' },
  { value: 'centre', label: 'drawn along the middle of the road' },
  { value: 'shortest', label: 'drawn along the shortest route' },
] as const;

function Parts({
  course,
  at,
  plan,
}: {
  readonly course: PlanCourse;
  readonly at: number;
  readonly plan: Plan;
}): JSX.Element {
  const others = plan.courses.filter(({ id }) => id !== course.id).map(({ id, name }) => ({ value: id, label: name }));
  return (
    <EntryList
      path={['courses', at, 'parts']}
      word="part"
      least={1}
      title={(index) => `${index + 1}`}
      fresh={() => ({ of: others[0]?.value ?? '', from: 0 })}
      entry={(index) => (
        <>
          <ChoiceField label="Part of course" path={['courses', at, 'parts', index, 'of']} choices={others} required />
          <LengthField label="From" path={['courses', at, 'parts', index, 'from']} long fallback={0} />
          <LengthField
            label="To"
            path={['courses', at, 'parts', index, 'to']}
            long
            hint="Empty: to the end of that course"
          />
        </>
      )}
    />
  );
}

export function CourseFields({
  course,
  at,
  plan,
}: {
  readonly course: PlanCourse;
  readonly at: number;
  readonly plan: Plan;
}): JSX.Element {
  const field = (key: string): { readonly path: readonly (string | number)[]; readonly about: string } => ({
    path: ['courses', at, key],
    about: course.name,
  });
  return (
    <>
      <TextField label="Name" {...field('name')} fallback={course.id} />
      {course.gpx === undefined ? null : (
        <>
          <TextField label="GPX file" {...field('gpx')} required />
          <TextField label="Track" {...field('track')} hint="Name of the track or route; empty for the first" />
          <ChoiceField label="Gaps in the track" {...field('gaps')} choices={GAPS} fallback="refuse the course" />
          <CheckField label="Run in reverse" {...field('reverse')} />
        </>
      )}
      {course.line === undefined ? null : (
        <p class="soft">A line of {course.line.length} points, stored in the plan.</p>
      )}
      {course.parts === undefined ? null : <Parts course={course} at={at} plan={plan} />}
      <ChoiceField label="The line was" {...field('drawn')} choices={DRAWN} fallback="recorded along the course" />
      <LengthField label="Known length" {...field('length')} long hint="As measured; the course is scaled to it" />
      <TextField label="Certificate number" {...field('certificate')} />
      <h3>Marks</h3>
      <EntryList
        path={['courses', at, 'marks']}
        word="mark"
        title={(index) => course.marks[index]?.name ?? `${index + 1}`}
        none="Points with a known course distance, such as painted kilometre marks."
        fresh={() => ({ at: firstPoint(plan), measure: '1 km' })}
        entry={(index) => (
          <>
            <PairField label="Longitude, latitude" path={['courses', at, 'marks', index, 'at']} wide />
            <LengthField label="Course distance" path={['courses', at, 'marks', index, 'measure']} long />
            <TextField label="Name" path={['courses', at, 'marks', index, 'name']} />
          </>
        )}
      />
    </>
  );
}

/** Somewhere to begin: the first station's pin. */
const firstPoint = ({ stations }: Plan): readonly number[] =>
  stations.find((station) => station.at !== undefined)?.at ?? [0, 0];
