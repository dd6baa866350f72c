/** The start sheet: courses without a plan, and what a plan of them is to be. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { makePlan } from '../../work/starting.ts';
import { useStore, type Starting, type Store } from '../../state/store/store.ts';
import { filePlace, messageOf } from '../../state/view/voice.ts';
import { counted } from '../../words.ts';
import { CourseCard } from './CourseCard.tsx';
import { answersOf, firstDraft, lacksTurn, renamed, type CourseDraft, type Draft } from './draft.ts';
import { type Offer, offersOf, sharedLines, workOut } from './offers.ts';
import { RaceRows } from './RaceRows.tsx';
import { StationSource } from './StationSource.tsx';
import { TypedField } from '../ui/fields/TypedField.tsx';
import { useModal } from './useModal.ts';

function CannotYet({ findings }: { readonly findings: readonly Finding[] }): JSX.Element | null {
  const store = useStore();
  if (findings.length === 0) return null;
  return (
    <div class="entry-trouble" role="alert">
      <p>The plan cannot be made yet:</p>
      <ul>
        {findings.map((finding, k) => (
          <li key={k}>
            {filePlace(finding)}
            {messageOf(store, finding)}
          </li>
        ))}
      </ul>
    </div>
  );
}

interface CoursesProps {
  readonly starting: Starting;
  readonly draft: Draft;
  readonly offers: readonly Offer[];
  readonly names: readonly string[];
  readonly change: (part: Partial<Draft>) => void;
}

function Courses({ starting, draft, offers, names, change }: CoursesProps): JSX.Element {
  const { units } = useStore();
  const set = (k: number, part: Partial<CourseDraft>): void =>
    change(
      part.name === undefined
        ? { courses: draft.courses.with(k, { ...draft.courses[k]!, ...part }) }
        : renamed(draft, k, part.name),
    );
  return (
    <>
      <h3>Courses</h3>
      <div class="start-cards">
        {draft.courses.map((course, k) => (
          <CourseCard
            key={course.file}
            original={starting.files[k]!}
            offer={offers[k]!}
            draft={course}
            change={(part) => set(k, part)}
          />
        ))}
      </div>
      {sharedLines(offers, names, units.value).map((line) => (
        <p key={line}>{line}</p>
      ))}
    </>
  );
}

function SheetHead({ count }: { readonly count: number }): JSX.Element {
  const open = useStore().open.value;
  return (
    <header>
      <h2 id="start-title">A new plan from {counted(count, 'course file')}</h2>
      <p class="soft">
        Everything here can be changed later.
        {open === null
          ? ''
          : ` “${open.document.plan.name}” stays open until the new plan is made, and then under Plans.`}
      </p>
    </header>
  );
}

/** What every paper says at its head; both may wait. */
function DayFields({ draft, change }: Pick<CoursesProps, 'draft' | 'change'>): JSX.Element {
  const date = draft.date.trim();
  return (
    <>
      <TypedField
        label="Date"
        value={draft.date}
        placeholder="2027-09-12"
        hint="Optional: year-month-day."
        trouble={date === '' || /^\d{4}-\d{2}-\d{2}$/u.test(date) ? null : 'It should be a date such as 2027-09-12.'}
        change={(value) => change({ date: value })}
      />
      <TypedField
        label="Emergency"
        value={draft.emergency}
        hint="Optional: the local emergency number; it comes first on every sheet."
        change={(emergency) => change({ emergency })}
      />
    </>
  );
}

/** Where the race with that index says where it turns. */
const turnField = (sheet: HTMLElement | null, race: number): HTMLInputElement | null =>
  sheet?.querySelectorAll('.start-race')[race]?.querySelector<HTMLInputElement>('.turn-at input') ?? null;

/** What the files offer by the choices made; of a long course worked out elsewhere, with the offer before until then. */
function useOffers(store: Store, starting: Starting, courses: readonly CourseDraft[]): readonly Offer[] {
  const { offers, due } = offersOf(starting, courses);
  const [, workedOut] = useState(0);
  useEffect(() => {
    if (due !== null) void workOut(store, due).then(() => workedOut((count) => count + 1));
  }, [due?.original, JSON.stringify(due?.choice)]);
  return offers;
}

function Sheet({ starting }: { readonly starting: Starting }): JSX.Element {
  const store = useStore();
  const close = (): void => void (store.starting.value = null);
  const ref = useModal(close);
  const units = store.units.value;
  const [draft, setDraft] = useState<Draft>(() => begun(starting, units));
  const [asked, setAsked] = useState(false);
  const [refused, setRefused] = useState<readonly Finding[]>([]);
  const offers = useOffers(store, starting, draft.courses);
  const files = offers.map(({ file }) => file);
  const names = draft.courses.map(({ name, file }) => name.trim() || file);
  const change = (part: Partial<Draft>): void => setDraft((before) => ({ ...before, ...part }));
  const make = (): void => {
    setAsked(true);
    if (draft.name.trim() === '') return ref.current?.querySelector('input')?.focus();
    const turnless = draft.races.findIndex(lacksTurn);
    if (turnless >= 0) return turnField(ref.current, turnless)?.focus();
    void makePlan(store, { ...starting, files }, answersOf(draft, files, units)).then(setRefused);
  };
  return (
    <dialog ref={ref} class="start-sheet" aria-labelledby="start-title">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          make();
        }}
      >
        <SheetHead count={starting.files.length} />
        <TypedField
          label="Name of the plan"
          value={draft.name}
          wide
          hint="Files that you save are called after it."
          trouble={asked && draft.name.trim() === '' ? 'Give the plan a name.' : null}
          change={(name) => change({ name })}
        />
        <DayFields draft={draft} change={change} />
        <Courses starting={starting} draft={draft} offers={offers} names={names} change={change} />
        <h3>Races</h3>
        <RaceRows
          races={draft.races}
          files={files}
          offers={offers}
          names={names}
          asked={asked}
          change={(races) => change({ races })}
        />
        <StationSource draft={draft} offers={offers} names={names} change={change} />
        <CannotYet findings={refused} />
        <footer class="row">
          <button type="submit" class="primary">
            Make the plan
          </button>
          <button type="button" onClick={close}>
            Cancel
          </button>
        </footer>
      </form>
    </dialog>
  );
}

function begun(starting: Starting, units: 'metric' | 'imperial'): Draft {
  const draft = firstDraft(starting.files, 0, units);
  const waypoints = offersOf(starting, draft.courses).offers.some(
    ({ offered }) => offered.ok && offered.value.stations > 0,
  );
  return waypoints ? { ...draft, from: 'waypoints' } : draft;
}

export function StartSheet(): JSX.Element | null {
  const starting = useStore().starting.value;
  return starting === null ? null : (
    <Sheet key={starting.files.map(({ name }) => name).join('/')} starting={starting} />
  );
}
