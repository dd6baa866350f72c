/** On the road, telephone in hand: what to place next, how far it is, and one button to record it. */
import type { Units } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { numberOf } from '../../state/view/derive.ts';
import {
  keepRecord,
  keptRecord,
  nextPeg,
  pegsOf,
  recordGpx,
  wayTo,
  wayWords,
  type Fix,
  type Peg,
  type Stood,
} from '../../state/view/road.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { exportFile } from '../../storage/saveFile.ts';
import { lengthText, sideWords, wheelUnit } from '../../words.ts';
import { useFix } from './useFix.ts';
import { takePlaced } from '../../work/placed.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const titleOf = (peg: Peg): string => `${numberOf(peg.station)} · ${peg.station.name}: ${peg.title}`;

interface Recording {
  readonly record: readonly Stood[];
  readonly put: (next: readonly Stood[]) => void;
}

/** What was recorded of a plan, kept in the browser at each change. */
function useRecord(plan: string): Recording {
  const store = useStore();
  const [record, setRecord] = useState<readonly Stood[]>(() => keptRecord(() => localStorage, plan));
  const put = (next: readonly Stood[]): void => {
    setRecord(next);
    const why = keepRecord(() => localStorage, plan, next);
    if (why !== null) store.notice.value = { text: why };
  };
  return { record, put };
}

/** The position of the device with the distance as it was wheeled; a bare number is in the unit shown. */
function stoodOf(fix: Fix, peg: Peg, wheeled: string, units: Units): Stood {
  const typed = wheeled.trim();
  return {
    ...fix,
    name: peg.name,
    wheeled: typed === '' ? null : /^[\d.]+$/u.test(typed) ? `${typed} ${wheelUnit(units)}` : typed,
  };
}

const PegChoice = ({
  pegs,
  peg,
  record,
  onChoose,
}: Pick<Recording, 'record'> & {
  readonly pegs: readonly Peg[];
  readonly peg: Peg;
  readonly onChoose: (name: string) => void;
}): JSX.Element => (
  <label class="road-choice">
    Next to place
    <select aria-label="Next to place" value={peg.name} onChange={(event) => onChoose(event.currentTarget.value)}>
      {pegs.map((one) => (
        <option
          key={one.name}
          value={one.name}
        >{`${record.some(({ name }) => name === one.name) ? '✓ ' : ''}${titleOf(one)}`}</option>
      ))}
    </select>
  </label>
);

/** How far it is from the device, which is `null` until its position is known. */
function WayLines({
  open,
  peg,
  fix,
  on,
}: {
  readonly open: OpenPlan;
  readonly peg: Peg;
  readonly fix: Fix | null;
  readonly on: boolean;
}): JSX.Element {
  const units = useStore().units.value;
  const way = fix === null ? null : wayTo(open.analysis, peg, fix);
  return (
    <>
      <p class="road-way" role="status">
        {on
          ? way === null
            ? 'Waiting for this device’s position'
            : wayWords(way, peg.side, units)
          : `${capital(sideWords(peg.side))} (facing the way runners go)`}
      </p>
      {way === null || fix === null ? null : (
        <p class="road-small">
          {way.wheel === null ? 'Cannot be wheeled' : `${lengthText(Math.abs(way.wheel), units)} by wheel`} ·{' '}
          {lengthText(way.straight, units)} in a straight line · position within {lengthText(fix.accuracy, units)}
        </p>
      )}
    </>
  );
}

const WheelField = ({
  peg,
  units,
  wheeled,
  onInput,
}: {
  readonly peg: Peg;
  readonly units: Units;
  readonly wheeled: string;
  readonly onInput: (text: string) => void;
}): JSX.Element => (
  <label class="road-choice">
    Wheel reading {peg.title.startsWith('Trash') ? 'from last table' : 'to first table'} ({wheelUnit(units)}), optional
    <input type="text" inputMode="decimal" value={wheeled} onInput={(event) => onInput(event.currentTarget.value)} />
  </label>
);

/** What can be done with what was recorded. */
function RecordTools({ plan, record }: Pick<Recording, 'record'> & { readonly plan: string }): JSX.Element {
  const store = useStore();
  const text = (): string => recordGpx(plan, record);
  return (
    <div class="row">
      <button
        type="button"
        class="road-second"
        disabled={record.length === 0}
        onClick={() =>
          void exportFile(store, 'as-placed.gpx', new Blob([text()], { type: 'application/gpx+xml' }), [
            'Recorded points',
            'application/gpx+xml',
            '.gpx',
          ])
        }
      >
        Save points
      </button>
      <button
        type="button"
        class="road-second"
        disabled={record.length === 0}
        onClick={() => void takePlaced(store, new File([text()], 'as-placed.gpx'))}
      >
        Check against the plan
      </button>
    </div>
  );
}

function Record({ open }: { readonly open: OpenPlan }): JSX.Element {
  const store = useStore();
  const units = store.units.value;
  const plan = open.document.plan.name;
  const [on, setOn] = useState(false);
  const { record, put } = useRecord(plan);
  const [chosen, setChosen] = useState<string | null>(null);
  const [wheeled, setWheeled] = useState('');
  const { fix, trouble } = useFix(on);
  const pegs = pegsOf(open.analysis);
  const peg = pegs.find(({ name }) => name === chosen) ?? nextPeg(pegs, record) ?? pegs[0];
  if (peg === undefined) return <p class="empty">Nothing to place yet: no course passes a station.</p>;
  const change = (next: readonly Stood[]): void => {
    put(next);
    setChosen(null);
    setWheeled('');
  };
  const take = (): void => {
    if (fix === null) return;
    change([...record.filter(({ name }) => name !== peg.name), stoodOf(fix, peg, wheeled, units)]);
    store.notice.value = { text: `Recorded: ${titleOf(peg)}` };
  };
  const last = record.at(-1);
  const undone = pegs.find(({ name }) => name === last?.name);
  return (
    <>
      {on ? null : (
        <button type="button" class="road-main" onClick={() => setOn(true)}>
          Start guiding me
        </button>
      )}
      {trouble === null ? null : (
        <p class="entry-trouble" role="alert">
          {trouble}
        </p>
      )}
      <PegChoice pegs={pegs} peg={peg} record={record} onChoose={setChosen} />
      <WayLines open={open} peg={peg} fix={fix} on={on} />
      <WheelField peg={peg} units={units} wheeled={wheeled} onInput={setWheeled} />
      <button type="button" class="road-main" disabled={fix === null} onClick={take}>
        Record here
      </button>
      <button
        type="button"
        class="road-second"
        disabled={last === undefined}
        onClick={() => change(record.slice(0, -1))}
      >
        {last === undefined ? 'Nothing recorded yet' : `Undo: ${undone === undefined ? last.name : titleOf(undone)}`}
      </button>
      <p class="road-small">
        {record.length} of {pegs.length} recorded.
      </p>
      <RecordTools plan={plan} record={record} />
    </>
  );
}

export function RoadPanel(): JSX.Element {
  const open = useStore().open.value;
  if (open === null) return <p class="empty">No plan is open.</p>;
  return (
    <div class="road">
      <h2>On the road</h2>
      <Record key={open.document.plan.name} open={open} />
      <p class="road-small">
        Keep off the road until it is closed, and face the traffic. A phone’s position is a few metres off: where it
        matters, measure by wheel.
      </p>
    </div>
  );
}
