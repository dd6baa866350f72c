/** Where the stations of the start sheet come from: waypoints, a spacing, a list, or nowhere yet. */
import type { Finding } from '@halfcup/core';
import { listColumns, readStationList } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { useStore } from '../../state/store/store.ts';
import { filePlace, messageOf } from '../../state/view/voice.ts';
import { counted, longUnit } from '../../words.ts';
import { textOfFile } from '../../work/textOfFile.ts';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { typedDistance } from '../ui/fields/typedDistance.ts';
import type { Draft, From, SideChoice } from './draft.ts';
import type { Offer } from './offers.ts';
import { TypedChoice, TypedField } from '../ui/fields/TypedField.tsx';

interface Props {
  readonly draft: Draft;
  readonly offers: readonly Offer[];
  readonly names: readonly string[];
  readonly change: (part: Partial<Draft>) => void;
}

const SIDES = [
  ['right', 'right-hand side'],
  ['left', 'left-hand side'],
  ['alternate', 'right and left in turn'],
] as const;

const sumOf = (offers: readonly Offer[], key: 'stations' | 'distances'): number =>
  offers.reduce((sum, { offered }) => sum + (offered.ok ? offered.value[key] : 0), 0);

function ListFields({ draft, offers, names, change }: Props): JSX.Element {
  const store = useStore();
  const id = useId();
  const [refused, setRefused] = useState<readonly Finding[]>([]);
  const take = async (file: File): Promise<void> => {
    const text = await textOfFile(file);
    setRefused(text.findings);
    if (text.ok) change({ list: text.value.replace(/^\uFEFF/u, ''), listFile: file.name });
  };
  return (
    <div class="start-list">
      <label for={id}>Paste rows from a spreadsheet, or choose a CSV or TSV file</label>
      <textarea
        id={id}
        rows={6}
        spellcheck={false}
        placeholder={'name\tdistance\tside\tserves\ttables\nMill\t2.5\tleft\twater\t3'}
        value={draft.list}
        onInput={(event) => {
          setRefused([]);
          change({ list: event.currentTarget.value, listFile: 'the pasted list' });
        }}
      />
      <input
        type="file"
        aria-label="A list of stations (CSV or TSV)"
        accept=".csv,.tsv,.txt,text/csv"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          if (file !== undefined) void take(file);
        }}
      />
      {refused.length === 0 ? null : (
        <p role="alert" class="field-trouble">
          {refused.map((finding) => filePlace(finding) + messageOf(store, finding)).join(' ')}
        </p>
      )}
      <p class="soft">
        The first row names the columns: name, distance or lon and lat, side, serves, tables, width, captain, phone,
        radio, note; course where there are several. Distances without a unit are in {longUnit(store.units.value)}.
      </p>
      {names.length > 1 ? (
        <TypedChoice
          label="Its distances are along"
          value={`${draft.listOn}`}
          choices={names.map((name, k) => [`${k}`, name] as const)}
          change={(at) => change({ listOn: Number(at) })}
        />
      ) : null}
      {draft.list.trim() === '' ? null : <ListResult draft={draft} offers={offers} names={names} />}
    </div>
  );
}

/** What a list can give, and which of its columns were understood; it comes into view when it changes. */
function ListResult({ draft, offers, names }: Omit<Props, 'change'>): JSX.Element {
  const store = useStore();
  const ref = useRef<HTMLDivElement>(null);
  const courses = names.map((name, k) => ({
    id: name,
    name,
    ...(offers[k]?.length ? { length: offers[k].length } : {}),
  }));
  const { units } = store;
  const own = courses.splice(draft.listOn, 1);
  const list = readStationList(draft.list, {
    file: draft.listFile,
    units: units.value,
    courses: [...own, ...courses],
  });
  const faults = new Set(list.findings.filter(({ code }) => code === 'list-row').map(({ params }) => params?.['row']))
    .size;
  const columns = list.ok ? listColumns(draft.list) : [];
  useEffect(() => ref.current?.scrollIntoView({ block: 'nearest' }), [draft.list]);
  return (
    <div role="status" class="start-list-result" ref={ref}>
      <p>
        {list.ok
          ? `${counted(list.value.length, 'station')} can be taken${faults === 0 ? '' : `; ${counted(faults, 'row')} left out`}.`
          : 'The list cannot be read.'}
      </p>
      {columns.length === 0 ? null : <p class="soft">Columns understood: {columns.join(', ')}.</p>}
      <ul class="start-faults">
        {list.findings.map((finding, k) => (
          <li key={k}>
            <SeverityMark severity={finding.severity} />
            <span>{messageOf(store, finding)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

export function StationSource(props: Props): JSX.Element {
  const { draft, offers, change } = props;
  const { units } = useStore();
  const name = useId();
  const [stations, distances] = [sumOf(offers, 'stations'), sumOf(offers, 'distances')];
  const option = (from: From, label: string, more: JSX.Element | null = null): JSX.Element => (
    <>
      <label class="start-option">
        <input type="radio" name={name} checked={draft.from === from} onChange={() => change({ from })} /> {label}
      </label>
      {draft.from === from ? more : null}
    </>
  );
  return (
    <fieldset class="start-choice">
      <legend>Stations</legend>
      {stations + distances === 0 ? null : (
        <p class="soft">
          {counted(stations + distances, 'waypoint')}: {stations}{' '}
          {stations === 1 ? 'looks like a station' : 'look like stations'}, {distances} like distances.
        </p>
      )}
      {stations === 0 ? null : option('waypoints', `From the files’ waypoints (${stations})`)}
      {option(
        'every',
        'Every so far along the course',
        <div class="start-inside">
          <TypedField
            label="Every"
            value={draft.every}
            unit={longUnit(units.value)}
            trouble={
              !((typedDistance(draft.every, units.value) ?? 0) > 0)
                ? 'It should be a distance over 0, such as 2.5.'
                : null
            }
            change={(every) => change({ every })}
          />
          <TypedChoice
            label="Side"
            value={draft.side}
            choices={SIDES}
            change={(side) => change({ side: side as SideChoice })}
          />
        </div>,
      )}
      {option('list', 'From a list', <ListFields {...props} />)}
      {option('none', 'None yet')}
      {distances === 0 ? null : (
        <label class="start-option">
          <input
            type="checkbox"
            checked={draft.marks}
            onChange={(event) => change({ marks: event.currentTarget.checked })}
          />{' '}
          Use the {counted(distances, 'waypoint')} named by a distance to measure the course
        </label>
      )}
    </fieldset>
  );
}
