/** The races of the start sheet: times and runners, each field checked where it is typed. */
import { raceFaults, typedCount } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useStore, type CourseFile } from '../../state/store/store.ts';
import { messageOf } from '../../state/view/voice.ts';
import { farText, longUnit } from '../../words.ts';
import { type RaceDraft, isUntouched, racedLength, raceAnswers, raceDraft } from './draft.ts';
import type { Offer } from './offers.ts';
import { TypedChoice, TypedField } from '../ui/fields/TypedField.tsx';

interface Props {
  readonly races: readonly RaceDraft[];
  readonly files: readonly CourseFile[];
  readonly offers: readonly Offer[];
  readonly names: readonly string[];
  /** The plan was asked for: what is empty is told too. */
  readonly asked: boolean;
  readonly change: (races: readonly RaceDraft[]) => void;
}

interface PartProps {
  readonly race: RaceDraft;
  readonly trouble: string | null;
  readonly set: (part: Partial<RaceDraft>) => void;
}

/** The course of a race: the whole of a file's, there and back on it, or laps of it. */
function RunsOn({ race, trouble, set, props }: PartProps & { readonly props: Props }): JSX.Element {
  const units = useStore().units.value;
  const several = props.names.length > 1;
  const choices = props.names.flatMap((name, at) => [
    [`whole ${at}`, several ? name : 'the whole course'] as const,
    [`back ${at}`, `there and back${several ? ` on ${name}` : ''}, turning at …`] as const,
    [`laps ${at}`, several ? `laps of ${name}` : 'laps of the course'] as const,
  ]);
  const choose = (choice: string): void => {
    const [runs, at] = choice.split(' ') as [RaceDraft['runs'], string];
    set({ runs, course: Number(at) });
  };
  const length = racedLength(race, props.offers[race.course]?.length ?? null, units);
  const hint = length === null ? undefined : `The race is ${farText(length, units)}.`;
  return (
    <>
      <TypedChoice label="Runs on" value={`${race.runs} ${race.course}`} choices={choices} change={choose} />
      {race.runs === 'back' ? (
        <div class="turn-at">
          <TypedField
            label="Turn at"
            value={race.turnAt}
            unit={longUnit(units)}
            {...(hint === undefined ? {} : { hint })}
            trouble={race.turnAt.trim() !== '' ? trouble : props.asked ? 'Give the distance where it turns.' : null}
            change={(turnAt) => set({ turnAt })}
          />
        </div>
      ) : race.runs === 'laps' ? (
        <TypedField
          label="Laps"
          value={race.laps}
          {...(hint === undefined ? {} : { hint })}
          trouble={trouble}
          change={(laps) => set({ laps })}
        />
      ) : null}
    </>
  );
}

function CutoffFields({ race, trouble, set }: PartProps): JSX.Element {
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
  props,
}: {
  readonly race: RaceDraft;
  readonly k: number;
  readonly props: Props;
}): JSX.Element {
  const store = useStore();
  const { races, files, offers, asked, change } = props;
  const found =
    !asked && isUntouched(race)
      ? []
      : raceFaults(raceAnswers(race, files), offers[race.course]?.length ?? undefined, store.units.value);
  const trouble = (...fields: readonly string[]): string | null => {
    const one = found.find(({ where }) => fields.some((field) => where.path === `/${field}`));
    return one === undefined ? null : messageOf(store, one);
  };
  const set = (part: Partial<RaceDraft>): void => change(races.with(k, { ...race, ...part }));
  const entered = typedCount(race.entrants);
  return (
    <section class="start-card start-race" aria-label={`Race ${race.name || k + 1}`}>
      <TypedField label="Race" value={race.name} wide trouble={trouble('name')} change={(name) => set({ name })} />
      <RunsOn race={race} trouble={trouble('turnAt', 'laps')} set={set} props={props} />
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
        left={() => (entered === null ? undefined : set({ entrants: `${entered}` }))}
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
