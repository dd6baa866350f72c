/** Better places: which stations may move and how far, the search, and what it found. */
import { type StationLayout } from '@halfcup/core';
import { type Units } from '@halfcup/core/plan';
import { parseLength } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { useStore, type Store } from '../../state/store/store.ts';
import { SEARCHING } from '../../work/improveMessages.ts';
import { wheelUnit } from '../../words.ts';
import { FieldFrame } from '../ui/fields/FieldFrame.tsx';
import { LENGTH, writeQuantity } from '../ui/fields/quantity.ts';
import { ImproveResult } from './ImproveResult.tsx';
import { MovableStations } from './MovableStations.tsx';
import { planWithoutTrial } from '../../state/store/trial.ts';

/** Metres of what was typed; a bare number is in the unit shown. */
function withinOf(text: string, units: Units): { readonly metres: number } | { readonly trouble: string } {
  const read = parseLength(writeQuantity(LENGTH, text.trim(), undefined, wheelUnit(units)));
  const least = units === 'metric' ? '1 m' : '1.1 yd';
  if (read.ok && read.value >= 1) return { metres: read.value };
  return {
    trouble: `Type how far a station may move along the course, at least ${least}: for example 500, or 0.3 mi.`,
  };
}

async function start(store: Store, only: readonly string[], within: number): Promise<void> {
  const open = planWithoutTrial(store);
  if (open === null) return;
  store.improved.value = null;
  const { searchPlaces } = await import('../../work/improving.ts');
  const found = await searchPlaces(store, open, { only, within });
  if (typeof found === 'object' && found !== null) store.improved.value = found;
  store.notice.value = {
    text:
      found === null
        ? 'Search stopped. Nothing was changed.'
        : typeof found === 'string'
          ? `The search stopped early: ${found}.`
          : found.moves.length === 0
            ? 'No better places found.'
            : 'Better places found. Nothing changes until you apply them.',
  };
}

const canMove = ({ station, passes }: StationLayout): boolean => !station.fixed && passes.some(({ served }) => served);

/** How far a station may move. */
function WithinField({
  text,
  trouble,
  onInput,
  onEnter,
}: {
  readonly text: string;
  readonly trouble: string | null;
  readonly onInput: (text: string) => void;
  readonly onEnter: () => void;
}): JSX.Element {
  const store = useStore();
  const id = useId();
  return (
    <FieldFrame id={`${id}-within`} label="May move by up to" unit={wheelUnit(store.units.value)} trouble={trouble}>
      <input
        id={`${id}-within`}
        type="text"
        class="entry-figure"
        value={text}
        autocomplete="off"
        aria-invalid={trouble !== null}
        aria-describedby={`${id}-within-unit${trouble === null ? '' : ` ${id}-within-trouble`}`}
        onInput={(event) => onInput(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') onEnter();
        }}
      />
    </FieldFrame>
  );
}

export function ImproveSection(): JSX.Element | null {
  const store = useStore();
  const id = useId();
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [text, setText] = useState('500');
  const [trouble, setTrouble] = useState<{ readonly within?: string; readonly stations?: string }>({});
  const open = store.open.value;
  if (open === null) return null;
  const { stations } = open.analysis;
  const units = store.units.value;
  const running = store.job.value?.label === SEARCHING;
  const press = (): void => {
    if (running) return store.job.value?.stop();
    const within = withinOf(text, units);
    const only = stations.filter((station) => canMove(station) && !left.has(station.id)).map((station) => station.id);
    const wrong = {
      ...('trouble' in within ? { within: within.trouble } : {}),
      ...(only.length === 0 ? { stations: 'Choose at least one station that may move.' } : {}),
    };
    setTrouble(wrong);
    if ('metres' in within && only.length > 0) void start(store, only, within.metres);
    return undefined;
  };
  return (
    <section class="improve" aria-labelledby={`${id}-heading`}>
      <h3 id={`${id}-heading`}>Better places</h3>
      <p class="soft">
        Searches along the course for places with fewer errors, then fewer warnings, then shorter longest legs. It
        cannot see driveways, permits or anything not in the plan: walk each new place.
      </p>
      <MovableStations
        stations={stations}
        left={left}
        canMove={canMove}
        onChange={setLeft}
        trouble={trouble.stations ?? null}
      />
      <WithinField
        text={text}
        trouble={trouble.within ?? null}
        onInput={setText}
        onEnter={() => {
          if (!running) press();
        }}
      />
      <div class="button-row">
        <button type="button" class="improve-button" onClick={press}>
          {running ? 'Stop search' : 'Find better places'}
        </button>
        <span class="soft" role="status">
          {running ? `${SEARCHING}…` : ''}
        </span>
      </div>
      {store.improved.value === null ? null : <ImproveResult improved={store.improved.value} open={open} />}
    </section>
  );
}
