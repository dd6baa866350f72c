/** All stations: where, on which side, how far from the one before, and how far the sign stands before it. */
import type { Severity } from '@halfcup/core';
import type { PlanRace, Units } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { StationRow } from '../../state/view/derive.ts';
import { shownRows, type Sorting } from '../../state/view/rows.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { countWords, DASH, longFigure, longUnit, sureText, waivedWords, wheelFigure, wheelUnit } from '../../words.ts';
import { AddStation } from '../station/AddStation.tsx';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { chooseStation } from '../../state/view/choose.ts';
import { SortHead } from './SortHead.tsx';
import { StationSheet } from './StationSheet.tsx';
import { StationTools } from './StationTools.tsx';

/** What the checks have found; a waived error shows beside what is open. */
function State({ row: { counts, waived, worst } }: { readonly row: StationRow }): JSX.Element {
  const words = [countWords(counts), waivedWords(waived)].filter((part) => part !== '').join(', ');
  if (worst === null && waived.errors === 0)
    return (
      <span class="state-none" {...(words === '' ? {} : { title: words })}>
        {DASH}
        <span class="unseen">{words === '' ? 'no findings' : words}</span>
      </span>
    );
  return (
    <span class="counts" title={words}>
      {worst === null ? null : (
        <span class={`state state-${worst}`} aria-hidden="true">
          <SeverityMark severity={worst} />
          {counts.error + counts.warning + counts.note}
        </span>
      )}
      {waived.errors === 0 ? null : (
        <span class="state state-waived" aria-hidden="true">
          <SeverityMark severity="waived" />
          {waived.errors}
        </span>
      )}
      <span class="unseen">{words}</span>
    </span>
  );
}

const flagged = (severity: Severity | null): string =>
  severity === null || severity === 'note' ? 'figure' : `figure flag-${severity}`;

/** Arrow keys go from row to row. */
function move(event: KeyboardEvent): void {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (step === 0) return;
  const buttons = [
    ...((event.currentTarget as HTMLElement)
      .closest('tbody')
      ?.querySelectorAll<HTMLButtonElement>('button.row-button') ?? []),
  ];
  const next = buttons[buttons.indexOf(event.currentTarget as HTMLButtonElement) + step];
  if (next === undefined) return;
  event.preventDefault();
  next.focus();
}

function Row({
  row,
  races,
  picked,
}: {
  readonly row: StationRow;
  readonly races: readonly PlanRace[];
  readonly picked: boolean;
}): JSX.Element {
  const store = useStore();
  const units = store.units.value;
  return (
    <tr class={picked ? 'picked' : ''} onClick={() => chooseStation(store, row.id)}>
      <td class="figure soft">{row.number}</td>
      <th scope="row">
        <button type="button" class="row-button" aria-pressed={picked} onKeyDown={move}>
          {row.name}
        </button>
      </th>
      <td class="figure">{longFigure(row.measure, units)}</td>
      <td class="side">
        <span class={row.side === 'unclear' ? 'flag-warning' : ''}>{row.side}</span>
        {row.confidence === null || row.declared || sureText(row.confidence) === '' ? null : (
          <span class="soft confidence">{sureText(row.confidence)}</span>
        )}
      </td>
      {row.legs.map((legs, index) => (
        <td key={races[index]?.id} class="figure leg">
          {legs.length === 0
            ? DASH
            : legs.map((leg, at) => (
                <span key={at} class={`stacked ${flagged(leg.flag)}`}>
                  {longFigure(leg.length, units)}
                </span>
              ))}
        </td>
      ))}
      <td class={`sign-cell ${flagged(row.sign)}`}>{wheelFigure(row.signAlong, units)}</td>
      <td class="figure sign-cell">{wheelFigure(row.signWheel, units)}</td>
      <td class="state-cell">
        <State row={row} />
      </td>
    </tr>
  );
}

interface Sorted {
  readonly sorting: Sorting;
  readonly onSort: (sorting: Sorting) => void;
}

const Head = ({
  races,
  units,
  ...sorted
}: Sorted & { readonly races: readonly PlanRace[]; readonly units: Units }): JSX.Element => (
  <thead>
    <tr>
      <SortHead by="number" {...sorted}>
        <span class="unseen">Number</span>
      </SortHead>
      <SortHead by="name" left {...sorted}>
        Station
      </SortHead>
      <SortHead by="measure" {...sorted}>
        Distance<span class="unit">{longUnit(units)}</span>
      </SortHead>
      <SortHead by="side" left {...sorted}>
        Side
      </SortHead>
      {races.map((race) => (
        <th key={race.id} scope="col" class="leg" title={`${race.name}: distance from the station before`}>
          {race.name}
          <span class="unit">leg, {longUnit(units)}</span>
        </th>
      ))}
      <th scope="col" class="sign-cell">
        Sign<span class="unit">{wheelUnit(units)}</span>
      </th>
      <th scope="col" class="sign-cell">
        By wheel<span class="unit">{wheelUnit(units)}</span>
      </th>
      <th scope="col">
        <span class="unseen">Findings</span>
      </th>
    </tr>
  </thead>
);

function Read({
  open,
  rows,
  ...sorted
}: Sorted & { readonly open: OpenPlan; readonly rows: readonly StationRow[] }): JSX.Element {
  const store = useStore();
  const { races } = open.analysis.plan;
  return (
    <table class="stations">
      <caption class="unseen">Stations by number</caption>
      <Head races={races} units={store.units.value} {...sorted} />
      <tbody>
        {rows.map((row) => (
          <Row key={row.id} row={row} races={races} picked={row.id === store.selected.value} />
        ))}
      </tbody>
    </table>
  );
}

function Table({ open }: { readonly open: OpenPlan }): JSX.Element {
  const [query, setQuery] = useState('');
  const [sorting, setSorting] = useState<Sorting>({ key: 'number', down: false });
  const [editing, setEditing] = useState(false);
  const rows = shownRows(open, query, sorting);
  const sorted = { sorting, onSort: setSorting };
  return (
    <>
      <StationTools
        query={query}
        onQuery={setQuery}
        editing={editing}
        onEditing={setEditing}
        open={open}
        found={rows.length}
      />
      {editing ? <StationSheet open={open} rows={rows} {...sorted} /> : <Read open={open} rows={rows} {...sorted} />}
      <AddStation open={open} />
    </>
  );
}

export function StationTable(): JSX.Element {
  const store = useStore();
  const open = store.open.value;
  if (open === null)
    return (
      <p class="empty">
        {store.loading.value
          ? 'Reading the plan.'
          : 'No plan is open. Open a GPX file of the course, or a plan with its GPX files.'}
      </p>
    );
  if (open.analysis.stations.length > 0) return <Table open={open} />;
  return (
    <>
      <p class="empty">No stations yet. Add one here, or open a GPX file with waypoints: each becomes a station.</p>
      <AddStation open={open} />
    </>
  );
}
