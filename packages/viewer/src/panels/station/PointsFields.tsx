/** Points near the station: where trucks unload, medical, toilets. */
import type { PointKind } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { POINT_WORD } from '../../words.ts';
import { ChoiceField } from '../ui/fields/ChoiceField.tsx';
import { PairField } from '../ui/fields/PairField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { ownField, ownRaw, setOwn, type Editing } from './editing.ts';

const KINDS = (Object.keys(POINT_WORD) as PointKind[]).map((value) => ({
  value,
  label: value === 'other' ? 'Other' : POINT_WORD[value],
}));

function OnePoint({
  index,
  list,
  ...editing
}: Editing & { readonly index: number; readonly list: readonly unknown[] }): JSX.Element {
  const store = useStore();
  const point = editing.station.station.points[index];
  const title = point?.name ?? (point === undefined ? '' : POINT_WORD[point.kind]);
  const remove = (): void => {
    // A variant holds the whole list.
    if (editing.open.variant === null && list.length > 1)
      setOwn(store, editing, ['points', index], undefined, `delete ${title}`);
    else
      setOwn(
        store,
        editing,
        ['points'],
        list.length > 1 ? list.filter((_, at) => at !== index) : undefined,
        `delete ${title}`,
      );
  };
  return (
    <fieldset class="point-fields">
      <legend>
        Point {index + 1}
        {title === '' ? '' : `: ${title}`}
      </legend>
      <ChoiceField {...ownField(editing, ['points', index, 'kind'], 'Kind')} choices={KINDS} required />
      <PairField {...ownField(editing, ['points', index, 'at'], 'Longitude, latitude')} required wide />
      <TextField {...ownField(editing, ['points', index, 'name'], 'Name')} />
      <TextField {...ownField(editing, ['points', index, 'street'], 'Street')} />
      <TextField {...ownField(editing, ['points', index, 'note'], 'Note')} rows={2} />
      <button type="button" onClick={remove}>
        Delete point {index + 1}
      </button>
    </fieldset>
  );
}

export function PointsFields(editing: Editing): JSX.Element {
  const store = useStore();
  const raw = ownRaw(editing, ['points']);
  const list: readonly unknown[] = Array.isArray(raw) ? raw : [];
  const add = (): void => {
    const { at } = editing.station;
    const point = { kind: 'drop', at: [Number(at[0].toFixed(7)), Number(at[1].toFixed(7))] };
    if (list.length > 0 && editing.open.variant === null) setOwn(store, editing, ['points', '-'], point, 'add a point');
    else setOwn(store, editing, ['points'], [...list, point], 'add a point');
  };
  return (
    <>
      {list.map((_, index) => (
        <OnePoint key={index} index={index} list={list} {...editing} />
      ))}
      <button type="button" onClick={add}>
        Add a point at the pin
      </button>
    </>
  );
}
