/** The races of the start sheet: times and runners, each field checked where it is typed. */
import { raceFaults } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useStore, type CourseFile } from '../../state/store/store.ts';
import { messageOf } from '../../state/view/voice.ts';
import { type RaceDraft, raceAnswers, raceDraft } from './draft.ts';
import type { Offer } from './offers.ts';
import { TypedChoice, TypedField } from '../ui/fields/TypedField.tsx';

interface Props {
  readonly races: readonly RaceDraft[];
  readonly files: readonly CourseFile[];
  readonly offers: readonly Offer[];
  readonly names: readonly string[];
  readonly change: (races: readonly RaceDraft[]) => void;
}

function CutoffFields({
  race,
  trouble,
  set,
}: {
  readonly race: RaceDraft;
  readonly trouble: string | null;
  readonly set: (part: Partial<RaceDraft>) => void;
}): JSX.Element {
  return (
    <>
      <TypedChoice
        label="Cutoff is"
        value={race.cutoffIs}
        choices={[
          ['after', 'a time limit from the start'],
          ['at', 'a time of day'],
        ]}
        change={(cutoffIs) => set({ cutoffIs: cutoffIs as RaceDraft['cutoffIs'] })}
      />
      <TypedField
        label={race.cutoffIs === 'after' ? 'Time limit' : 'Cutoff at'}
        value={race.cutoff}
        placeholder={race.cutoffIs === 'after' ? '3:30' : '11:30'}
        trouble={trouble}
        change={(cutoff) => set({ cutoff })}
      />
    </>
  );
}

function Race({
  race,
  k,
  props: { races, files, offers, names, change },
}: {
  readonly race: RaceDraft;
  readonly k: number;
  readonly props: Props;
}): JSX.Element {
  const store = useStore();
  const found = raceFaults(raceAnswers(race, files), offers[race.course]?.length ?? undefined);
  const trouble = (...fields: readonly string[]): string | null => {
    const one = found.find(({ where }) => fields.some((field) => where.path === `/${field}`));
    return one === undefined ? null : messageOf(store, one);
  };
  const set = (part: Partial<RaceDraft>): void => change(races.with(k, { ...race, ...part }));
  return (
    <section class="start-card" aria-label={`Race ${race.name || k + 1}`}>
      <TypedField label="Race" value={race.name} wide trouble={trouble('name')} change={(name) => set({ name })} />
      {names.length > 1 ? (
        <TypedChoice
          label="Runs on"
          value={`${race.course}`}
          choices={names.map((name, at) => [`${at}`, name] as const)}
          change={(course) => set({ course: Number(course) })}
        />
      ) : null}
      <TypedField
        label="Start time"
        value={race.start}
        placeholder="08:00"
        trouble={trouble('start')}
        change={(start) => set({ start })}
      />
      <TypedField
        label="Runners entered"
        value={race.entrants}
        trouble={trouble('entrants')}
        change={(entrants) => set({ entrants })}
      />
      <TypedField
        label="A typical runner takes"
        value={race.finish}
        placeholder="2:10"
        hint="Hours and minutes, or 0:28:30. Others are spread about it (0.2, common practice); change that under Plan."
        trouble={trouble('finish')}
        change={(finish) => set({ finish })}
      />
      <CutoffFields race={race} trouble={trouble('cutoff', 'cutoffAt')} set={set} />
      {races.length > 1 ? (
        <button type="button" class="quiet" onClick={() => change(races.filter((_, at) => at !== k))}>
          Remove race {race.name}
        </button>
      ) : null}
    </section>
  );
}

export const RaceRows = (props: Props): JSX.Element => (
  <>
    {props.races.map((race, k) => (
      <Race key={k} race={race} k={k} props={props} />
    ))}
    <button type="button" onClick={() => props.change([...props.races, raceDraft('', 0)])}>
      Add a race
    </button>
    <p class="soft">Times and runners can wait: without them everything but race day is worked out.</p>
  </>
);
