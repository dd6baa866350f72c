/** Signs whose distance to the first table differs, in the lead direction. */
import type { StationLayout } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import type { Change } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { leadOf, signDistance } from '../../state/view/derive.ts';
import type { OpenPlan } from '../../state/store/store.ts';
import { wheelFigure, wheelUnit } from '../../words.ts';
import { ChangeCells, ChangeTable, type Names } from './ChangeTable.tsx';

interface Props {
  readonly before: OpenPlan;
  readonly after: OpenPlan;
  readonly variants: Change<string>;
  readonly names: Names;
  readonly units: Units;
}

/** Metres that no crew can measure along a kerb. */
const SAME = 0.05;

const distances = (
  station: StationLayout | undefined,
): { readonly along: number | null; readonly wheel: number | null } => {
  const lead = station === undefined ? undefined : leadOf(station);
  return (lead === undefined ? null : signDistance(lead)) ?? { along: null, wheel: null };
};

const differs = ([a, b]: Change<number | null>): boolean =>
  a === null || b === null ? a !== b : Math.abs(a - b) > SAME;

export function SignRows({ before, after, variants, names, units }: Props): JSX.Element {
  const figure = (value: number | null): string => wheelFigure(value, units);
  const rows = after.analysis.stations.flatMap((station) => {
    const [one, other] = [distances(before.analysis.stations.find(({ id }) => id === station.id)), distances(station)];
    const along: Change<number | null> = [one.along, other.along];
    const wheel: Change<number | null> = [one.wheel, other.wheel];
    return differs(along) || differs(wheel) ? [{ id: station.id, along, wheel }] : [];
  });
  return (
    <>
      <h4>Sign distances</h4>
      {rows.length === 0 ? (
        <p class="soft">No sign distance changes.</p>
      ) : (
        <ChangeTable
          caption="To the first table: along the course, below it by wheel"
          unit={wheelUnit(units)}
          names={variants}
          head="Station"
        >
          <tbody>
            {rows.map(({ id, along, wheel }) => (
              <tr key={id}>
                <th scope="row" class="left">
                  <button type="button" class="link-button" onClick={() => names.choose(id)}>
                    {names.stationOf(id)}
                  </button>
                </th>
                <ChangeCells along={along} wheel={wheel} figure={figure} />
              </tr>
            ))}
          </tbody>
        </ChangeTable>
      )}
    </>
  );
}
