/** Stations that move, and how far. */
import type { Units } from '@halfcup/core/plan';
import type { MovedStation } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { lengthText } from '../../words.ts';
import type { Names } from './ChangeTable.tsx';

export function MovedRows({
  stations,
  names,
  units,
}: {
  readonly stations: readonly MovedStation[];
  readonly names: Names;
  readonly units: Units;
}): JSX.Element {
  if (stations.length === 0) return <p class="soft">No station moves.</p>;
  return (
    <table class="items changes">
      <caption>Stations that move</caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            Station
          </th>
          <th scope="col">Moved by</th>
        </tr>
      </thead>
      <tbody>
        {stations.map(({ id, moved }) => (
          <tr key={id}>
            <th scope="row" class="left">
              <button type="button" class="link-button" onClick={() => names.choose(id)}>
                {names.stationOf(id)}
              </button>
            </th>
            <td class="figure">{lengthText(moved, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
