/** Race day at all stations: who comes when, and from when to when the station stands. */
import { type RaceDay } from '@halfcup/core';
import { formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { grouped, minuteOrDash } from './words.ts';
import { numberOf } from '../../state/view/derive.ts';
import { useStore, type OpenPlan, type Store } from '../../state/store/store.ts';
import { DASH } from '../../words.ts';
import { chooseStation } from '../../state/view/choose.ts';

/** Of the station's own view, to which choosing here leads. */
export const DAY_HEADING = 'day-heading';

/** The table may go or lie below what was asked for, so that focus follows to the heading. */
export function chooseDay(store: Store, station: string): void {
  chooseStation(store, station);
  requestAnimationFrame(() => document.getElementById(DAY_HEADING)?.focus());
}

export function DayTable({ day, open }: { readonly day: RaceDay; readonly open: OpenPlan }): JSX.Element {
  const store = useStore();
  const rows = open.analysis.stations.flatMap((station) => {
    const found = day.stations.find(({ id }) => id === station.id);
    return found === undefined ? [] : [{ station, found }];
  });
  return (
    <table class="stations day-table">
      <caption class="unseen">Race day at each station, in the plan’s order</caption>
      <thead>
        <tr>
          <th scope="col">
            <span class="unseen">Number</span>
          </th>
          <th scope="col" class="left">
            Station
          </th>
          <th scope="col">Arrivals</th>
          <th scope="col">First</th>
          <th scope="col">
            Busiest<span class="unit">minute</span>
          </th>
          <th scope="col">
            Crew<span class="unit">arrives</span>
          </th>
          <th scope="col">
            Open<span class="unit">until</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ station, found }) => {
          const picked = station.id === store.selected.value;
          return (
            <tr key={station.id} class={picked ? 'picked' : ''} onClick={() => chooseDay(store, station.id)}>
              <td class="figure soft">{numberOf(station)}</td>
              <th scope="row">
                <button type="button" class="row-button" aria-pressed={picked}>
                  {station.name}
                </button>
              </th>
              <td class="figure">{grouped(found.arrivals)}</td>
              <td class="figure">{minuteOrDash(found.quantiles?.first ?? null)}</td>
              <td class="figure">
                {found.peak === null ? (
                  DASH
                ) : (
                  <>
                    <span class="stacked">{grouped(found.peak.count)}</span>
                    <span class="stacked soft">{formatMinute(found.peak.at)}</span>
                  </>
                )}
              </td>
              <td class="figure">{minuteOrDash(found.crewAt)}</td>
              <td class="figure">{minuteOrDash(found.openUntil)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
