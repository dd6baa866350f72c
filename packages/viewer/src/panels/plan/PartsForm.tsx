/** A course made of parts of others: there and back, laps, or stretches; drawn on map and strip before it is taken. */
import type { Finding, Plan } from '@halfcup/core';
import type { PlanPart } from '@halfcup/core/plan';
import { lengthLike } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { type Tried, takeCourse, tryCourse } from '../../state/trial/course.ts';
import { dropTrial, planWithoutTrial } from '../../state/store/trial.ts';
import { useStore } from '../../state/store/store.ts';
import { longUnit } from '../../words.ts';
import { TypedChoice, TypedField } from '../ui/fields/TypedField.tsx';
import { Outcome, Refusals } from './PartsOutcome.tsx';
import {
  type PartsDraft,
  type StretchDraft,
  type Troubles,
  freshDraft,
  keepDraft,
  keptDraft,
  partsOf,
  writtenParts,
} from './partsDraft.ts';

const KINDS = [
  ['back', 'there and back to …'],
  ['laps', 'laps of …'],
  ['stretches', 'from … to … of …'],
] as const;

/** No id of a race is empty. */
const NEW_RACE = '';

type Choices = readonly (readonly [string, string])[];

interface Fields {
  readonly draft: PartsDraft;
  readonly troubles: Troubles;
  readonly courses: Choices;
  readonly change: (part: Partial<PartsDraft>) => void;
}

function Stretch({
  one,
  k,
  fields,
}: {
  readonly one: StretchDraft;
  readonly k: number;
  readonly fields: Fields;
}): JSX.Element {
  const { draft, troubles, courses, change } = fields;
  const unit = longUnit(useStore().units.value);
  const set = (part: Partial<StretchDraft>): void =>
    change({ stretches: draft.stretches.with(k, { ...one, ...part }) });
  return (
    <fieldset class="start-choice">
      <legend>Part {k + 1}</legend>
      <TypedField
        label="From"
        unit={unit}
        value={one.from}
        trouble={troubles.get(`${k}.from`) ?? null}
        change={(from) => set({ from })}
      />
      <TypedField
        label="To"
        unit={unit}
        value={one.to}
        placeholder="its end"
        trouble={troubles.get(`${k}.to`) ?? null}
        change={(to) => set({ to })}
      />
      <TypedChoice label="Of course" value={one.of} choices={courses} change={(of) => set({ of })} />
      <label class="start-check">
        <input
          type="checkbox"
          checked={one.reverse}
          onChange={(event) => set({ reverse: event.currentTarget.checked })}
        />{' '}
        Run backwards
      </label>
      {draft.stretches.length > 1 ? (
        <button
          type="button"
          class="quiet"
          onClick={() => change({ stretches: draft.stretches.filter((_, at) => at !== k) })}
        >
          Remove part {k + 1}
        </button>
      ) : null}
    </fieldset>
  );
}

function KindFields(fields: Fields): JSX.Element {
  const { draft, troubles, courses, change } = fields;
  const unit = longUnit(useStore().units.value);
  if (draft.kind === 'stretches')
    return (
      <>
        {draft.stretches.map((one, k) => (
          <Stretch key={k} one={one} k={k} fields={fields} />
        ))}
        <button
          type="button"
          onClick={() =>
            change({ stretches: [...draft.stretches, { of: draft.of, from: '', to: '', reverse: false }] })
          }
        >
          Add a part
        </button>
      </>
    );
  return (
    <>
      <TypedChoice label="Course" value={draft.of} choices={courses} change={(of) => change({ of })} />
      {draft.kind === 'laps' ? (
        <TypedField
          label="Laps"
          value={draft.laps}
          trouble={troubles.get('laps') ?? null}
          change={(laps) => change({ laps })}
        />
      ) : (
        <>
          <TypedField
            label="From"
            unit={unit}
            value={draft.from}
            trouble={troubles.get('from') ?? null}
            change={(from) => change({ from })}
          />
          <TypedField
            label="Turn at"
            unit={unit}
            value={draft.to}
            trouble={draft.to.trim() === '' ? null : (troubles.get('to') ?? null)}
            change={(to) => change({ to })}
          />
        </>
      )}
    </>
  );
}

/** What comes of showing a course while it is drawn up; it is put away with the form. */
function useTried(plan: Plan, name: string, parts: readonly PlanPart[]): Tried | null {
  const store = useStore();
  const [tried, setTried] = useState<Tried | null>(null);
  useEffect(() => {
    if (parts.length === 0) dropTrial(store);
    setTried(parts.length === 0 ? null : tryCourse(store, { name, parts }));
  }, [JSON.stringify(parts), plan]);
  useEffect(() => () => dropTrial(store), []);
  return tried;
}

const RaceChoice = ({
  plan,
  by,
  choose,
}: {
  readonly plan: Plan;
  readonly by: string;
  readonly choose: (race: string) => void;
}): JSX.Element => (
  <TypedChoice
    label="Which race runs on it?"
    value={by}
    choices={[[NEW_RACE, 'a new race of the same name'], ...plan.races.map((one) => [one.id, one.name] as const)]}
    change={choose}
  />
);

interface FootProps {
  readonly ready: boolean;
  readonly take: () => void;
  readonly close: () => void;
}

const Foot = ({ ready, take, close }: FootProps): JSX.Element => (
  <div class="row">
    <button type="button" disabled={!ready} onClick={take}>
      Take the course
    </button>
    <button type="button" onClick={close}>
      Close
    </button>
  </div>
);

function Form({ plan, close }: { readonly plan: Plan; readonly close: () => void }): JSX.Element {
  const store = useStore();
  const id = store.origin.value?.id ?? '';
  const units = store.units.value;
  const [draft, setDraft] = useState<PartsDraft>(() => keptDraft(id) ?? freshDraft(plan));
  const [refused, setRefused] = useState<readonly Finding[]>([]);
  const [by, setBy] = useState(NEW_RACE);
  const indexed = planWithoutTrial(store)?.analysis.courses ?? [];
  const { parts, troubles } = partsOf(draft, units, indexed);
  const name = draft.name.trim();
  const tried = useTried(plan, name || 'New course', parts);
  const change = (part: Partial<PartsDraft>): void => {
    const next = { ...draft, ...part };
    setDraft(next);
    keepDraft(id, next);
  };
  const take = (): void => {
    const written = writtenParts(parts, indexed, (metres) => lengthLike(units === 'metric' ? '1 km' : '1 mi', metres));
    const race = plan.races.find(({ id: one }) => one === by);
    const called = name || 'New course';
    const findings = takeCourse(store, called, written, race === undefined ? 'new' : { race: race.id });
    setRefused(findings);
    if (findings.length > 0) return;
    keepDraft(id, null);
    store.notice.value = {
      text: `${called} is a new course; ${race === undefined ? 'a new race of that name' : race.name} runs on it.`,
    };
    close();
  };
  return (
    <div class="parts-form">
      <TypedField
        label="Name"
        value={draft.name}
        wide
        placeholder="New course"
        change={(value) => change({ name: value })}
      />
      <TypedChoice
        label="It runs"
        value={draft.kind}
        choices={KINDS}
        change={(kind) => change({ kind: kind as PartsDraft['kind'] })}
      />
      <KindFields
        draft={draft}
        troubles={troubles}
        courses={plan.courses.map((one) => [one.id, one.name] as const)}
        change={change}
      />
      <RaceChoice plan={plan} by={by} choose={setBy} />
      <Outcome tried={tried} />
      <Refusals findings={refused} />
      <Foot ready={tried?.ok === true} take={take} close={close} />
    </div>
  );
}

export function PartsForm({ plan }: { readonly plan: Plan }): JSX.Element {
  const [shown, setShown] = useState(false);
  return shown ? (
    <Form plan={plan} close={() => setShown(false)} />
  ) : (
    <button type="button" onClick={() => setShown(true)}>
      Make a course from parts of others
    </button>
  );
}
