/** How one race's spacing changes: the longest and the mean leg, and each leg that differs. */
import type { Units } from '@halfcup/core/plan';
import type { Change, ChangedSpacing } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { longFigure } from '../../words.ts';
import { ChangeTable, differing, type Names } from './ChangeTable.tsx';

interface Props {
  readonly race: string;
  readonly spacing: ChangedSpacing;
  readonly variants: Change<string>;
  readonly names: Names;
  readonly unit: string;
  readonly units: Units;
}

export function SpacingRows({ race, spacing, variants, names, unit, units }: Props): JSX.Element {
  const figure = (value: number | null): string => longFigure(value, units);
  const rowOf = (length: Change<number | null>): JSX.Element => (
    <>
      <td class="figure">{figure(length[0])}</td>
      <td class="figure">{figure(length[1])}</td>
      <td class="figure strong">{differing(length, figure)}</td>
    </>
  );
  const end = (id: string): JSX.Element | string =>
    id === 'start' || id === 'finish' ? (
      `the ${id}`
    ) : (
      <button type="button" class="link-button" onClick={() => names.choose(id)}>
        {names.stationOf(id)}
      </button>
    );
  return (
    <ChangeTable caption={race} unit={unit} names={variants} head="Leg">
      <tbody>
        <tr>
          <th scope="row" class="left">
            Longest
          </th>
          {rowOf(spacing.longest)}
        </tr>
        <tr>
          <th scope="row" class="left">
            Shortest
          </th>
          {rowOf(spacing.shortest)}
        </tr>
        <tr>
          <th scope="row" class="left">
            Mean
          </th>
          {rowOf(spacing.mean)}
        </tr>
        {spacing.legs.map(({ from, to, length }, index) => (
          <tr key={`${from}-${to}-${index}`}>
            <th scope="row" class="left">
              {end(from)} to {end(to)}
            </th>
            {rowOf(length)}
          </tr>
        ))}
      </tbody>
    </ChangeTable>
  );
}
