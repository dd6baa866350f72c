/** On the road, telephone in hand: what to place next, how far it is, and one button to record it. */
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

function Record({ open }: { readonly open: OpenPlan }): JSX.Element {
  const store = useStore();
  const units = store.units.value;
  const plan = open.document.plan.name;
  const [on, setOn] = useState(false);
  const [record, setRecord] = useState<readonly Stood[]>(() => keptRecord(() => localStorage, plan));
  const [chosen, setChosen] = useState<string | null>(null);
  const [wheeled, setWheeled] = useState('');
  const { fix, trouble } = useFix(on);
  const pegs = pegsOf(open.analysis);
  const peg = pegs.find(({ name }) => name === chosen) ?? nextPeg(pegs, record) ?? pegs[0];
  if (peg === undefined) return <p class="empty">Nothing to place yet: no course passes a station.</p>;
  const way = fix === null ? null : wayTo(open.analysis, peg, fix);
  const put = (next: readonly Stood[]): void => {
    setRecord(next);
    setChosen(null);
    setWheeled('');
    const why = keepRecord(() => localStorage, plan, next);
    if (why !== null) store.notice.value = { text: why };
  };
  const take = (): void => {
    if (fix === null) return;
    const typed = wheeled.trim();
    put([
      ...record.filter(({ name }) => name !== peg.name),
      {
        ...fix,
        name: peg.name,
        wheeled: typed === '' ? null : /^[\d.]+$/u.test(typed) ? `${typed} ${wheelUnit(units)}` : typed,
      },
    ]);
    store.notice.value = { text: `Recorded: ${titleOf(peg)}` };
  };
  const last = record.at(-1);
  const text = (): string => recordGpx(plan, record);
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
      <label class="road-choice">
        Next to place
        <select aria-label="Next to place" value={peg.name} onChange={(event) => setChosen(event.currentTarget.value)}>
          {pegs.map((one) => (
            <option
              key={one.name}
              value={one.name}
            >{`${record.some(({ name }) => name === one.name) ? '✓ ' : ''}${titleOf(one)}`}</option>
          ))}
        </select>
      </label>
      <p class="road-way" role="status">
        {on
          ? way === null
            ? 'Waiting for this device’s position'
            : wayWords(way, peg.side, units)
          : `${capital(sideWords(peg.side))} (facing with the runners)`}
      </p>
      {way === null || fix === null ? null : (
        <p class="road-small">
          {way.wheel === null ? 'Cannot be wheeled' : `${lengthText(Math.abs(way.wheel), units)} by wheel`} ·{' '}
          {lengthText(way.straight, units)} in a straight line · position within {lengthText(fix.accuracy, units)}
        </p>
      )}
      <label class="road-choice">
        Wheel reading {peg.title.startsWith('Trash') ? 'from last table' : 'to first table'} ({wheelUnit(units)}),
        optional
        <input
          type="text"
          inputMode="decimal"
          value={wheeled}
          onInput={(event) => setWheeled(event.currentTarget.value)}
        />
      </label>
      <button type="button" class="road-main" disabled={fix === null} onClick={take}>
        Record here
      </button>
      <button type="button" class="road-second" disabled={last === undefined} onClick={() => put(record.slice(0, -1))}>
        {last === undefined
          ? 'Nothing recorded yet'
          : `Undo: ${pegs.find(({ name }) => name === last.name)?.title ?? last.name}`}
      </button>
      <p class="road-small">
        {record.length} of {pegs.length} recorded.
      </p>
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
