/** Items that stand where somebody put them, not in their standard place. */
import type { Finding, Item } from '@halfcup/core';
import type { JSX } from 'preact';
import { leadOf } from '../../state/view/derive.ts';
import { useStore } from '../../state/store/store.ts';
import { ITEM_WORD } from '../../words.ts';
import { PairField } from '../ui/fields/PairField.tsx';
import { ownField, ownRaw, setOwn, type Editing } from './editing.ts';

function OneItem({ item, ...editing }: Editing & { readonly item: Item }): JSX.Element {
  const store = useStore();
  const { kind } = item;
  const word = ITEM_WORD[kind];
  const lower = word.toLowerCase();
  const byHand = ownRaw(editing, ['items', kind]) !== undefined;
  const save = (value: unknown): readonly Finding[] =>
    value === undefined
      ? setOwn(store, editing, ['items', kind], undefined, `put ${lower} back in its standard place`)
      : setOwn(store, editing, ['items', kind, 'at'], value, `place ${lower} by hand`);
  const [at] = item.at;
  return (
    <div class="by-hand">
      <PairField
        {...ownField(editing, ['items', kind, 'at'], word)}
        save={save}
        fallback={at === null ? undefined : [Number(at[0].toFixed(7)), Number(at[1].toFixed(7))]}
        wide
      />
      {byHand ? (
        <button type="button" onClick={() => void save(undefined)}>
          Put {lower} back in its standard place
        </button>
      ) : null}
    </div>
  );
}

export function ItemsByHand(editing: Editing): JSX.Element {
  const items = leadOf(editing.station)?.items.toSorted((a, b) => a.from - b.from) ?? [];
  return (
    <>
      <p class="soft">
        Longitude and latitude of items that are not in their standard place. Clear a field to put the item back.
      </p>
      {items.map((item) => (
        <OneItem key={item.kind} item={item} {...editing} />
      ))}
    </>
  );
}
