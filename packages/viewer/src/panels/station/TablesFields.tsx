/** What is served, on how many tables, on a road how wide. */
import type { JSX } from 'preact';
import { leadOf } from '../../state/view/derive.ts';
import { SERVED_KINDS, tablesNow } from '../../state/view/rows.ts';
import { SERVED_WORD } from '../../words.ts';
import { LengthField } from '../ui/fields/LengthField.tsx';
import { NumberField } from '../ui/fields/NumberField.tsx';
import { SetField } from '../ui/fields/SetField.tsx';
import { ownField, type Editing } from './editing.ts';

export function TablesFields(editing: Editing): JSX.Element {
  const { station } = editing;
  const boxes = leadOf(station)?.items.find(({ kind }) => kind === 'trash')?.boxes?.length;
  const shown = SERVED_KINDS.filter(
    (kind) => station.station.serves.includes(kind) || station.station.tables[kind] !== undefined,
  );
  return (
    <>
      <SetField
        {...ownField(editing, ['serves'], 'Serves')}
        choices={SERVED_KINDS.map((kind) => ({ value: kind, label: SERVED_WORD[kind] }))}
        fallback={['sportsDrink', 'water']}
      />
      {shown.map((kind) => (
        <NumberField
          key={kind}
          {...ownField(editing, ['tables', kind], `Tables of ${SERVED_WORD[kind]}`)}
          fallback={tablesNow(editing.open, station.id, kind)}
          unit="tables"
        />
      ))}
      <NumberField {...ownField(editing, ['boxes'], 'Trash boxes')} fallback={boxes} unit="boxes" />
      <LengthField {...ownField(editing, ['width'], 'Road width')} />
    </>
  );
}
