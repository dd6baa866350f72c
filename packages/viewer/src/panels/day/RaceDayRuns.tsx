/** Drop and collection runs, a table for each vehicle's run, in the order of its stops. */
import { type RaceDay } from '@halfcup/core';
import { formatMass, formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { grouped, kgOf, packWord, RUN_WORD } from './words.ts';
import { numberOf } from '../../state/view/derive.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { counted, sideWords } from '../../words.ts';
import { StopHead } from './StopHead.tsx';
import { chooseStation } from '../../state/view/choose.ts';

type Run = RaceDay['runs'][number];

interface Props {
  readonly open: OpenPlan;
  readonly day: RaceDay;
}

function RunTable({
  run,
  open,
  title,
}: {
  readonly run: Run;
  readonly open: OpenPlan;
  readonly title: string;
}): JSX.Element {
  const store = useStore();
  const units = store.units.value;
  return (
    <table class="items run-table">
      <caption>
        {title}: {counted(run.stops.length, 'stop')}, {formatMass(run.kg, units)}
      </caption>
      <StopHead />
      <tbody>
        {run.stops.map((stop, index) => {
          const station = open.analysis.stations.find(({ id }) => id === stop.station);
          return (
            <tr key={`${stop.station}-${index}`}>
              <th scope="row" class="left">
                <button type="button" class="link-button" onClick={() => chooseStation(store, stop.station)}>
                  {station === undefined ? stop.station : `${numberOf(station)} · ${station.name}`}
                </button>
                <span class="wording soft">{sideWords(stop.side)}</span>
                {stop.load.length === 0 ? null : (
                  <span class="wording soft">
                    {stop.load.map((part) => `${grouped(part.count)} × ${packWord(part)}`).join(', ')}
                  </span>
                )}
              </th>
              <td class="figure">{formatMinute(stop.arrive)}</td>
              <td class="figure">{formatMinute(stop.leave)}</td>
              <td class="figure">{formatMass(kgOf(stop), units)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Runs of one kind by one vehicle, numbered where there are several. */
function titleOf(run: Run, runs: readonly Run[]): string {
  const alike = runs.filter(({ vehicle, kind }) => vehicle === run.vehicle && kind === run.kind);
  return alike.length > 1 ? `${RUN_WORD[run.kind]} ${alike.indexOf(run) + 1} of ${alike.length}` : RUN_WORD[run.kind];
}

export function RaceDayRuns({ open, day }: Props): JSX.Element {
  const { vehicles } = open.analysis.plan;
  const ids = [...new Set([...vehicles.map(({ id }) => id), ...day.runs.map(({ vehicle }) => vehicle)])];
  return (
    <section aria-labelledby="day-runs">
      <h3 id="day-runs">Drop-off and collection runs</h3>
      {vehicles.length === 0 ? (
        <p class="soft">No vehicles yet. In Plan › Vehicles, add one to plan its runs.</p>
      ) : (
        <p class="soft">In course order. Choose a station to see its runs on the map.</p>
      )}
      {ids.map((id) => {
        const own = day.runs.filter(({ vehicle }) => vehicle === id);
        return (
          <section key={id} aria-label={vehicles.find((one) => one.id === id)?.name ?? id}>
            <h4>{vehicles.find((one) => one.id === id)?.name ?? id}</h4>
            {own.length === 0 ? (
              <p class="soft">No runs: nothing left for it to carry.</p>
            ) : (
              own.map((run, index) => <RunTable key={index} run={run} open={open} title={titleOf(run, day.runs)} />)
            )}
          </section>
        );
      })}
    </section>
  );
}
