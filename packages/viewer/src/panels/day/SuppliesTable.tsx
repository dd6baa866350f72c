/** What the station is sent, in whole packs. */
import type { StationDay, Units } from '@halfcup/core';
import type { JSX } from 'preact';
import { grouped, needText, packText, packWord } from './words.ts';

export const SuppliesTable = ({
  packs,
  units,
}: {
  readonly packs: StationDay['packs'];
  readonly units: Units;
}): JSX.Element => (
  <table class="items day-packs">
    <caption>Rounded up to whole packs</caption>
    <thead>
      <tr>
        <th scope="col" class="left">
          Item
        </th>
        <th scope="col">needed</th>
        <th scope="col">in a pack</th>
        <th scope="col">packs</th>
      </tr>
    </thead>
    <tbody>
      {packs.map((pack) => (
        <tr key={`${pack.item}-${pack.pack}`}>
          <th scope="row" class="left">
            {packWord(pack.item)}
          </th>
          <td class="figure">{needText(pack, units)}</td>
          <td class="figure">{packText(pack, units)}</td>
          <td class="figure strong">{grouped(pack.count)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);
