/** Over the sheet: sets one value for all selected rows, copies them, deletes them. */
import type { StationLayout } from '@halfcup/core';
import type { Served } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Command } from '../../state/edits/edits.ts';
import { deleteAll, serveForAll, setForAll, sideForAll } from '../../state/edits/many.ts';
import { run } from '../../state/edits/workbench.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { firstMessage } from '../../state/view/voice.ts';
import { SERVED_KINDS } from '../../state/view/rows.ts';
import { counted, SERVED_WORD } from '../../words.ts';
import { LENGTH, unitFor, writeQuantity } from '../ui/fields/quantity.ts';

/** What is set for all: the key, and the second word for a kind of drink. */
type What = 'side' | 'width' | `serves-${Served}` | `tables-${Served}`;

interface Props {
  readonly open: OpenPlan;
  readonly stations: readonly StationLayout[];
  readonly onCopy: () => void;
  readonly onNone: () => void;
}

const CHOICES: Readonly<Record<string, readonly (readonly [value: string, label: string])[]>> = {
  side: [
    ['left', 'left'],
    ['right', 'right'],
  ],
  serves: [
    ['yes', 'yes'],
    ['no', 'no'],
  ],
};

const whole = (text: string): unknown => (/^\d+$/u.test(text) ? Number(text) : text);

function commandFor(
  open: OpenPlan,
  stations: readonly StationLayout[],
  what: What,
  given: string,
  unit: string,
): Command {
  const [key, kind] = what.split('-') as [string, Served];
  const text = given.trim();
  if (what === 'side') return sideForAll(open, stations, text === 'right' ? 'right' : 'left');
  if (key === 'serves') return serveForAll(stations, kind, text !== 'no');
  if (key === 'tables')
    return setForAll(
      stations,
      ['tables', kind],
      text === '' ? undefined : whole(text),
      `set tables of ${SERVED_WORD[kind]}`,
    );
  const width = text === '' ? undefined : writeQuantity(LENGTH, text, undefined, unit);
  return setForAll(stations, ['width'], width, 'set the road width');
}

interface ValueProps {
  readonly choices: (typeof CHOICES)[string] | undefined;
  readonly given: string;
  readonly onGiven: (given: string) => void;
}

/** One of a few values, or one that is typed. */
const Value = ({ choices, given, onGiven }: ValueProps): JSX.Element =>
  choices === undefined ? (
    <input
      type="text"
      class="cell many-value"
      aria-label="Value for all selected"
      placeholder="default"
      value={given}
      onInput={(event) => onGiven(event.currentTarget.value)}
    />
  ) : (
    <select
      class="cell many-value"
      aria-label="Value for all selected"
      value={given}
      onChange={(event) => onGiven(event.currentTarget.value)}
    >
      {choices.map(([value, label]) => (
        <option key={value} value={value}>
          {label}
        </option>
      ))}
    </select>
  );

function SetForAll({ open, stations }: Pick<Props, 'open' | 'stations'>): JSX.Element {
  const store = useStore();
  const [what, setWhat] = useState<What>('side');
  const [given, setGiven] = useState('left');
  const [trouble, setTrouble] = useState<string | null>(null);
  const unit = unitFor('short', store.units.value);
  const choices = CHOICES[what.split('-')[0] ?? ''];
  const choose = (next: What): void => {
    setWhat(next);
    setGiven(CHOICES[next.split('-')[0] ?? '']?.[0]?.[0] ?? '');
    setTrouble(null);
  };
  const set = (event: Event): void => {
    event.preventDefault();
    const message = firstMessage(store, run(store, commandFor(open, stations, what, given, unit)));
    setTrouble(message);
    if (message === null)
      store.notice.value = { text: `Set for ${counted(stations.length, 'station')}. Undo reverts this.` };
  };
  return (
    <form class="many-set" onSubmit={set}>
      <select
        class="cell"
        aria-label="What to set"
        value={what}
        onChange={(event) => choose(event.currentTarget.value as What)}
      >
        <option value="side">Side</option>
        {SERVED_KINDS.map((kind) => (
          <option key={kind} value={`serves-${kind}`}>
            Serves {SERVED_WORD[kind]}
          </option>
        ))}
        {SERVED_KINDS.map((kind) => (
          <option key={kind} value={`tables-${kind}`}>
            Tables of {SERVED_WORD[kind]}
          </option>
        ))}
        <option value="width">Road width, {unit}</option>
      </select>
      <Value choices={choices} given={given} onGiven={setGiven} />
      <button type="submit">Set for {stations.length}</button>
      {trouble === null ? null : (
        <p class="entry-trouble" role="alert">
          {trouble}
        </p>
      )}
    </form>
  );
}

export function SheetMany({ open, stations, onCopy, onNone }: Props): JSX.Element {
  const store = useStore();
  const remove = (): void => {
    const message = firstMessage(store, run(store, deleteAll(stations)));
    store.notice.value = { text: message ?? `Deleted ${counted(stations.length, 'station')}. Undo brings them back.` };
  };
  return (
    <div class="many" role="group" aria-label="Selected stations">
      <span class="many-count" role="status">
        {stations.length} selected
      </span>
      <SetForAll open={open} stations={stations} />
      <button type="button" onClick={onCopy}>
        Copy rows
      </button>
      <button type="button" onClick={remove}>
        Delete
      </button>
      <button type="button" onClick={onNone}>
        Select none
      </button>
    </div>
  );
}
