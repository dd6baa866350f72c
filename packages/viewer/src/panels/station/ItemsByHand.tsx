/** Items that stand where somebody put them, not where the rule would. */
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
  const byHand = ownRaw(editing, ['items', kind]) !== undefined;
  const save = (value: unknown): readonly Finding[] =>
    value === undefined
      ? setOwn(store, editing, ['items', kind], undefined, `put ${word} back by rule`)
      : setOwn(store, editing, ['items', kind, 'at'], value, `place ${word} by hand`);
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
          Put {word} back by rule
        </button>
      ) : null}
    </div>
  );
}

export function ItemsByHand(editing: Editing): JSX.Element {
  const items = leadOf(editing.station)?.items.toSorted((a, b) => a.from - b.from) ?? [];
  return (
    <>
      <p class="soft">Longitude and latitude of what stands elsewhere than the rule puts it; empty: by rule.</p>
      {items.map((item) => (
        <OneItem key={item.kind} item={item} {...editing} />
      ))}
    </>
  );
}
