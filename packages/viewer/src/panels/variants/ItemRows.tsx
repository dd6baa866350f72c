/** Items whose distances or side differ: along the course and by wheel, from the pin to the item's upstream end. */
import type { Units } from '@halfcup/core/plan';
import type { Change, ChangedItem } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { DASH, ITEM_WORD, wheelFigure } from '../../words.ts';
import { ChangeCells, ChangeTable, type Names } from './ChangeTable.tsx';

interface Props {
  readonly items: readonly ChangedItem[];
  readonly variants: Change<string>;
  readonly names: Names;
  readonly unit: string;
  readonly units: Units;
}

const sideText = ([before, after]: ChangedItem['side']): string =>
  before === after ? '' : `${before ?? DASH} → ${after ?? DASH}`;

export function ItemRows({ items, variants, names, unit, units }: Props): JSX.Element {
  const figure = (value: number | null): string => wheelFigure(value, units);
  return (
    <ChangeTable
      caption="From the pin to the item’s near end: along the course, below it by wheel"
      unit={unit}
      names={variants}
      head="Item"
    >
      <tbody>
        {items.map(({ station, item, lead, race, along, wheel, side }, index) => (
          <tr key={`${station}-${item}-${race}-${index}`}>
            <th scope="row" class="left">
              <button type="button" class="link-button" onClick={() => names.choose(station)}>
                {names.stationOf(station)}
              </button>
              <span class="wording soft">
                {[ITEM_WORD[item], lead ? '' : 'other direction', sideText(side)]
                  .filter((part) => part !== '')
                  .join(', ')}
              </span>
            </th>
            <ChangeCells along={along} wheel={wheel} figure={figure} />
          </tr>
        ))}
      </tbody>
    </ChangeTable>
  );
}
