/** Folds a part of the page away, and brings it back: the map has its room meanwhile. */
import type { JSX } from 'preact';
import { useStore, type Part, type Store } from '../../state/store/store.ts';

export function fold(store: Store, part: Part, folded: boolean): void {
  const others = [...store.folds.value].filter((one) => one !== part);
  store.folds.value = new Set(folded ? [...others, part] : others);
}

/** `controls`: the id of what is folded. */
export function FoldButton({
  part,
  name,
  controls,
}: {
  readonly part: Part;
  readonly name: string;
  readonly controls: string;
}): JSX.Element {
  const store = useStore();
  const folded = store.folds.value.has(part);
  return (
    <button
      type="button"
      class="fold-button"
      aria-expanded={!folded}
      aria-controls={controls}
      aria-label={`${name}: ${folded ? 'unfold' : 'fold'}`}
      onClick={() => fold(store, part, !folded)}
    >
      <span aria-hidden="true">{folded ? '▸' : '▾'}</span>
    </button>
  );
}
