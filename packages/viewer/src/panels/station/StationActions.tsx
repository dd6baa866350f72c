/** What is done to a station as a whole; all of it can be undone. */
import { batch } from '@preact/signals';
import type { JSX } from 'preact';
import { duplicate, remove } from '../../state/edits/moves.ts';
import { useStore, type Store } from '../../state/store/store.ts';
import { notify, type Editing } from './editing.ts';
import { chooseStation } from '../../state/view/choose.ts';

/** Where the focus goes when what had it is gone. */
const focusPanel = (): void => document.querySelector<HTMLElement>('.side-right, #panel')?.focus();

/** The station's own sheet, as it will print. */
const showSheet = (store: Store, station: string): void =>
  batch(() => {
    store.selected.value = station;
    store.paper.value = { name: 'captains.html', allWhile: null };
    store.pane.value = 'papers';
  });

export function StationActions({ station }: Editing): JSX.Element {
  const store = useStore();
  return (
    <div class="station-actions">
      <button type="button" onClick={() => chooseStation(store, station.id)}>
        Show
      </button>
      <button type="button" onClick={() => showSheet(store, station.id)}>
        Captain’s sheet
      </button>
      <button
        type="button"
        onClick={() =>
          notify(
            store,
            duplicate(store, station.id),
            `Added a copy of ${station.name} farther along the course. Undo removes it.`,
          )
        }
      >
        Duplicate
      </button>
      <button
        type="button"
        onClick={() => {
          notify(store, remove(store, station.id), `Deleted ${station.name}. Undo brings it back.`);
          focusPanel();
        }}
      >
        Delete
      </button>
    </div>
  );
}
