/** When vehicles stop at one station: what is dropped there and what is collected. */
import { type RaceDay } from '@halfcup/core';
import { formatMass, formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { kgOf, RUN_WORD } from './words.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { StopHead } from './StopHead.tsx';

export function StationStops({
  station,
  day,
  open,
}: {
  readonly station: string;
  readonly day: RaceDay;
  readonly open: OpenPlan;
}): JSX.Element {
  const { units } = useStore();
  const stops = day.runs.flatMap(({ vehicle, kind, stops: all }) =>
    all.filter((stop) => stop.station === station).map((stop) => ({ vehicle, kind, stop })),
  );
  const { vehicles } = open.analysis.plan;
  const nameOf = (id: string): string => vehicles.find((one) => one.id === id)?.name ?? id;
  if (stops.length === 0) {
    return (
      <p class="soft">
        {vehicles.length === 0
          ? 'No vehicles yet. In Plan › Vehicles, add one to plan its runs.'
          : 'No vehicle stops here; see this station’s findings.'}
      </p>
    );
  }
  return (
    <table class="items day-stops">
      <StopHead />
      <tbody>
        {stops.map(({ vehicle, kind, stop }) => (
          <tr key={`${kind}-${vehicle}-${stop.arrive}`}>
            <th scope="row" class="left">
              {RUN_WORD[kind]}
              <span class="soft wording">{nameOf(vehicle)}</span>
            </th>
            <td class="figure">{formatMinute(stop.arrive)}</td>
            <td class="figure">{formatMinute(stop.leave)}</td>
            <td class="figure">{formatMass(kgOf(stop), units.value)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
