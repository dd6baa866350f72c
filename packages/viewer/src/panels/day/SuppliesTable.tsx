/** What the station is sent, in whole packs. */
import type { StationDay } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
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
        <th scope="col">Needed</th>
        <th scope="col">Per pack</th>
        <th scope="col">Packs</th>
      </tr>
    </thead>
    <tbody>
      {packs.map((pack) => (
        <tr key={`${packWord(pack)}-${pack.pack}`}>
          <th scope="row" class="left">
            {packWord(pack)}
          </th>
          <td class="figure">{needText(pack, units)}</td>
          <td class="figure">{packText(pack, units)}</td>
          <td class="figure strong">{grouped(pack.count)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);
